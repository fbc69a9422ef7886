// The live text of an open file: kept as its tree, so that a keystroke never splits the whole text again.
import { type Row, replaceRows, type Tree } from '../syntax/index.ts';
import type { Spot, TextChange } from './types.ts';
import { editedTree, treeOf } from './unread.ts';

export interface Document {
  readonly version: number;
  readonly tree: Tree;
  /** The whole text, where a lone carriage return makes lines depend on what stands beside it; null: the rows say all. */
  readonly text: string | null;
}

/** Rows that a change took out, and those it put in their place; one that stands in both only moved. */
export interface Replaced {
  readonly old: readonly Row[];
  readonly rows: readonly Row[];
}

export function openDocument(file: string, version: number, text: string): Document {
  return { version, tree: treeOf(file, text), text: loneReturn.test(text) ? text : null };
}

const loneReturn = /\r(?!\n)/;

/** The text after one change. Costs the changed lines, and a copy of the list of rows. */
export function changed(
  document: Document,
  version: number,
  { range, text }: TextChange,
): { readonly document: Document; readonly replaced: Replaced } {
  const { tree } = document;
  if (!range) return whole(document, version, text);
  const start = clamped(tree, range.start);
  const end = clamped(tree, range.end);
  const [from, to] = before(end, start) ? [end, start] : [start, end];
  if (document.text !== null || loneReturn.test(text)) {
    const old = document.text ?? tree.rows.map((row) => row.text).join(tree.newline);
    return whole(document, version, old.slice(0, offset(old, from)) + text + old.slice(offset(old, to)));
  }
  const put = lineText(tree, from.line).slice(0, from.character) + text + lineText(tree, to.line).slice(to.character);
  const next = editedTree(tree, replaceRows(tree.rows, from.line, to.line + 1, put));
  const old = tree.rows.slice(from.line, to.line + 1);
  const rows = next.rows.slice(from.line, to.line + 1 + next.rows.length - tree.rows.length);
  return { document: { version, tree: next, text: null }, replaced: { old, rows } };
}

/** Another text, of which rows at its start and end may be as before. */
function whole({ tree }: Document, version: number, text: string): ReturnType<typeof changed> {
  const next = treeOf(tree.file, text, tree);
  const least = Math.min(tree.rows.length, next.rows.length);
  let start = 0;
  while (start < least && tree.rows[start] === next.rows[start]) start++;
  let end = 0;
  while (end < least - start && tree.rows.at(-1 - end) === next.rows.at(-1 - end)) end++;
  const document = { version, tree: next, text: loneReturn.test(text) ? text : null };
  return {
    document,
    replaced: {
      old: tree.rows.slice(start, tree.rows.length - end),
      rows: next.rows.slice(start, next.rows.length - end),
    },
  };
}

const lineText = (tree: Tree, line: number): string => tree.rows[line]?.text ?? '';
const before = (a: Spot, b: Spot): boolean => a.line < b.line || (a.line === b.line && a.character < b.character);

function clamped(tree: Tree, { line, character }: Spot): Spot {
  const last = tree.rows.length - 1;
  if (line < 0) return { line: 0, character: 0 };
  if (line > last) return { line: last, character: lineText(tree, last).length };
  return { line, character: Math.max(0, Math.min(character, lineText(tree, line).length)) };
}

/** Where a spot lies in a text whose lines may end in any way. */
function offset(text: string, { line, character }: Spot): number {
  const ends = /\r\n|\n|\r/g;
  let start = 0;
  for (let n = 0; n < line && ends.exec(text); n++) start = ends.lastIndex;
  return start + character;
}
