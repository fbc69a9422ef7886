// What a run from nothing finds in texts, to be compared with what a server says that has lived through many edits.
import { check } from '../../server/workspace/memory.ts';
import type { Shown } from './client.ts';

/** A finding as far as both ways can say it. */
export interface Plain {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly code: string;
  readonly message: string;
}

const order = (a: Plain, b: Plain): number => a.line - b.line || a.from - b.from || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0) || a.to - b.to;

/** The findings of one of the texts that stand in the text itself. */
export function cold(texts: Readonly<Record<string, string>>, file: string): readonly Plain[] {
  const { own, tree } = check(texts, file);
  return own
    .map(({ at, slug, message }): Plain => ({ line: tree.rowNumber(at.row), from: at.from, to: at.to > at.from ? at.to : Math.min(at.from + 1, at.row.text.length), code: slug, message }))
    .sort(order);
}

/** Diagnostics in the same form. A finding covers at least one character where its line has one. */
export const plain = (findings: readonly Shown[]): readonly Plain[] =>
  findings.map(({ range: { start, end }, code, message }): Plain => ({ line: start.line, from: start.character, to: end.character, code, message })).sort(order);
