// The generators of .build, which are plain JavaScript, as these tests call them.
declare module '*/.build/grammar.mjs' {
  export function grammarFile(): Promise<string>;
}
declare module '*/.build/textmate.mjs' {
  export function textmateFile(): Promise<string>;
}
