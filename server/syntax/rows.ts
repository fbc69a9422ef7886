// The lines of a text: splitting it, changing some of them, and putting it together again.
import type { Row, Tree } from './types.ts';

/** The rows of a text, which end at LF, CRLF or CR and nowhere else; a byte-order mark at its start is left out. */
export function splitRows(file: string, text: string): Row[] {
  return linesOf(text).map((line) => makeRow(file, line));
}

/** The first line end of a text; LF where there is none. */
export function newlineOf(text: string): Tree['newline'] {
  return (/\r\n|\n|\r/.exec(text)?.[0] ?? '\n') as Tree['newline'];
}

/**
 * Rows of a changed text: those whose text is as before, at the start and at the end, are the very ones of `previous`.
 * Costs a comparison a line, so a single change is better given to `replaceRows`.
 */
export function changedRows(file: string, text: string, previous: readonly Row[]): readonly Row[] {
  const lines = linesOf(text);
  let start = 0;
  while (start < lines.length && start < previous.length && lines[start] === previous[start]?.text) start++;
  if (start === lines.length && start === previous.length) return previous;
  let end = 0;
  const most = Math.min(lines.length, previous.length) - start;
  while (end < most && lines[lines.length - 1 - end] === previous[previous.length - 1 - end]?.text) end++;
  const made = lines.slice(start, lines.length - end).map((line) => makeRow(file, line));
  return previous.slice(0, start).concat(made, previous.slice(previous.length - end));
}

/** A place between two characters: row number and UTF-16 column, both from 0. */
export interface Position {
  readonly row: number;
  readonly column: number;
}

/**
 * Rows after the text between two positions was replaced. Lines that stay equal keep their row; nothing but the touched lines is
 * split or compared. Positions outside the text are taken as its nearest place.
 */
export function editRows(rows: readonly Row[], from: Position, to: Position, text: string): Row[] {
  const first = Math.min(Math.max(from.row, 0), rows.length - 1);
  const last = Math.min(Math.max(to.row, first), rows.length - 1);
  const before = rows[first]?.text.slice(0, from.row > first ? undefined : Math.max(from.column, 0)) ?? '';
  const after =
    to.row > last ? '' : (rows[last]?.text.slice(Math.max(to.column, first === last ? before.length : 0)) ?? '');
  return replaceRows(rows, first, last + 1, before + text + after);
}

/** Rows with those from `start` up to `end` (exclusive) replaced by the lines of `text`; lines that stay equal keep their row. */
export function replaceRows(rows: readonly Row[], start: number, end: number, text: string): Row[] {
  const file = rows[0]?.file ?? '';
  const replaced = rows.slice(start, end);
  const lines = linesOf(text);
  const shift = replaced.length - lines.length;
  const free = new Set(replaced); // a row stands in one place only
  const made = lines.map((line, n) => {
    const known =
      [replaced[n], replaced[n + shift]].find((row) => row?.text === line && free.has(row)) ?? makeRow(file, line);
    free.delete(known);
    return known;
  });
  return rows.slice(0, start).concat(made, rows.slice(end));
}

/** The number of a row in those rows, -1 if it is none of them. Quick where `numberRows` was called with them last. */
export function numberIn(rows: readonly Row[], row: Row): number {
  const near = row instanceof NumberedRow ? row.last : -1;
  return rows[near] === row ? near : rows.indexOf(row);
}

/** Remembers in each row from `start` up to `end` (exclusive) where it stands. */
export function numberRows(rows: readonly Row[], start: number, end: number): void {
  for (let n = start; n < end; n++) {
    const row = rows[n];
    if (row instanceof NumberedRow) row.last = n;
  }
}

/** What two versions of rows share: rows up to `same`, and from `tail` on, where the old number is the new one plus `shift`. */
export interface Shared {
  readonly same: number;
  readonly tail: number;
  readonly shift: number;
}

/** The rows, by identity, that two versions share at their start and at their end. */
export function sharedRows(rows: readonly Row[], old: readonly Row[]): Shared {
  const most = Math.min(rows.length, old.length);
  let same = 0;
  while (same < most && rows[same] === old[same]) same++;
  const shift = old.length - rows.length;
  let tail = rows.length;
  while (tail > rows.length - most + same && rows[tail - 1] === old[tail - 1 + shift]) tail--;
  return { same, tail, shift };
}

/** A row that remembers where it stood last; a later version may move it, so that the number is only a guess. */
class NumberedRow implements Row {
  #last = -1;

  constructor(
    readonly file: string,
    readonly text: string,
  ) {}

  get last(): number {
    return this.#last;
  }
  set last(number: number) {
    this.#last = number;
  }
}

/** A row that holds its own characters: a piece cut from a long text would keep all of that text in memory. */
const makeRow = (file: string, text: string): Row =>
  new NumberedRow(file, text.length < 13 ? text : ` ${text}`.slice(1));

function linesOf(text: string): string[] {
  const start = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  return start.includes('\r') ? start.split(/\r\n|\n|\r/) : start.split('\n');
}
