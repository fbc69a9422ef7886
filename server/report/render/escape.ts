// The one way to make HTML here: a template whose values are always escaped, so that text from a plan stays text.
import { visible } from './visible.ts';

/** HTML that is already safe to put into a page; only the `html` template and `join` make it. */
export class Html {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Value = string | Html | readonly Html[] | null;

/** HTML from a template of ours and values of theirs: texts are escaped for element content and quoted attributes alike. */
export function html(strings: TemplateStringsArray, ...values: readonly Value[]): Html {
  let text = strings[0] ?? '';
  values.forEach((value, i) => {
    text += put(value) + (strings[i + 1] ?? '');
  });
  return new Html(text);
}

/** Pieces one after the other, each on a line of its own. */
export const join = (pieces: readonly Html[]): Html => new Html(pieces.map((piece) => piece.text).join('\n'));

function put(value: Value): string {
  if (value === null) return '';
  if (typeof value === 'string') return escape(value);
  return value instanceof Html ? value.text : join(value).text;
}

const escape = (text: string) => visible(text).replace(/[&<>"'`]/g, (character) => entities[character] ?? character);

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '`': '&#96;',
};
