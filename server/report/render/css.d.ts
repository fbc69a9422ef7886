// Style sheets are taken in as text, by the bundler and by the tests alike.
declare module '*.css?raw' {
  const text: string;
  export default text;
}
