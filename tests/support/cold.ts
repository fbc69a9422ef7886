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

export const order = (a: Plain, b: Plain): number =>
  a.line - b.line || a.from - b.from || a.to - b.to || compare(a.code, b.code) || compare(a.message, b.message);
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The findings of one of the texts, by itself; `inside` names another one in which they stand. */
export function cold(texts: Readonly<Record<string, string>>, file: string, inside = file): readonly Plain[] {
  const { findings, plan } = check(texts, file);
  const tree = plan.files.find((part) => part.file === inside)?.tree;
  return findings
    .filter(({ at }) => at.row.file === inside)
    .map(
      ({ at, slug, message }): Plain => ({
        line: tree?.rowNumber(at.row) ?? -1,
        from: at.from,
        to: at.to > at.from ? at.to : Math.min(at.from + 1, at.row.text.length),
        code: slug,
        message,
      }),
    )
    .sort(order);
}

/** Diagnostics in the same form. A finding covers at least one character where its line has one. */
export const plain = (findings: readonly Shown[]): readonly Plain[] =>
  findings
    .map(
      ({ range: { start, end }, code, message }): Plain => ({
        line: start.line,
        from: start.character,
        to: end.character,
        code,
        message,
      }),
    )
    .sort(order);
