// What the tests use of markdown-it, which brings no types of its own.
declare module 'markdown-it' {
  export default class MarkdownIt {
    constructor(options?: { readonly html?: boolean; readonly linkify?: boolean });
    readonly linkify: { set(options: { readonly fuzzyLink: boolean }): void };
    render(markdown: string): string;
  }
}
