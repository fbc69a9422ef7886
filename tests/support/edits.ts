// Random edits of a plan, the same ones for the same seed: typed, deleted, pasted, cut in lines, undone.
import { random } from '../bench/plans.ts';
import type { Range } from './client.ts';

export interface RandomEdit {
  readonly range: Range;
  readonly text: string;
}

const pieces = [
  ' ',
  '  ',
  '\n',
  '\n  ',
  '\r\n',
  ',',
  ':',
  '"',
  '#',
  '1',
  '0',
  '.',
  '-',
  ' kg',
  ' m',
  ' mm',
  'part',
  'part "A": box 1 m x 1 m x 1 m, of carbon steel, at (0, 0, 0)',
  'load',
  'gear\n',
  'rig\n',
  'use "plan.liftplan"',
  'let a = a',
  'let z = 1 m / 0',
  '\t',
  '🔩',
  'é',
  '\u0301',
  '\u200b',
  '(',
  ')',
  ' of ',
  ' at ',
  ' ± ',
  '>',
  '..',
  '<<<<<<< ours\n',
  '?',
  'none',
  '1e999',
  '00',
  'x',
];

/** An edit that fits the text, and the text after it. */
export function* edits(text: string, seed: number): Generator<{ readonly edit: RandomEdit; readonly text: string }> {
  const next = random(seed);
  const upTo = (n: number): number => Math.floor(next() * n);
  const before: string[] = [];
  let now = text;
  for (;;) {
    if (before.length > 3 && next() < 0.08) {
      // Undone; now and then all of it, or the text would soon be nothing but noise.
      const old = next() < 0.15 ? text : (before.splice(-1 - upTo(3))[0] as string);
      yield { edit: { range: wholeOf(now), text: old }, text: old };
      now = old;
      continue;
    }
    const from = upTo(now.length + 1);
    const kind = next();
    const to = kind < 0.5 ? from : Math.min(now.length, from + 1 + upTo(kind < 0.9 ? 4 : 120));
    const put = kind < 0.5 || next() < 0.3 ? pick(pieces, next, now, upTo) : '';
    const range = { start: positionAt(now, from), end: positionAt(now, to) };
    const after = now.slice(0, offsetAt(now, range.start)) + put + now.slice(offsetAt(now, range.end));
    if (after.length > 3 * text.length + 500) continue;
    before.push(now);
    if (before.length > 20) before.shift();
    now = after;
    yield { edit: { range, text: put }, text: after };
  }
}

/** A piece of the list, or one of the text itself. */
function pick(list: readonly string[], next: () => number, text: string, upTo: (n: number) => number): string {
  if (next() < 0.85) return list[upTo(list.length)] as string;
  const from = upTo(text.length);
  return text.slice(from, from + upTo(80));
}

const ends = /\r\n|\n|\r/g;

/** As the protocol counts: lines end at LF, CRLF or CR; inside CRLF there is no place. */
export function positionAt(text: string, offset: number): { line: number; character: number } {
  let line = 0;
  let start = 0;
  for (const found of text.matchAll(ends)) {
    const end = found.index + found[0].length;
    if (end > offset) return { line, character: Math.min(offset, found.index) - start };
    line += 1;
    start = end;
  }
  return { line, character: offset - start };
}

function offsetAt(text: string, { line, character }: { readonly line: number; readonly character: number }): number {
  let start = 0;
  let n = 0;
  for (const found of text.matchAll(ends)) {
    if (n === line) break;
    n += 1;
    start = found.index + found[0].length;
  }
  return start + character;
}

const wholeOf = (text: string): Range => ({ start: { line: 0, character: 0 }, end: positionAt(text, text.length) });
