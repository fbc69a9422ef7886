// Names written as a range: `S1..S4` stands for S1, S2, S3 and S4.
import { rangeOf } from '../syntax/index.ts';
import type { NameUse } from '../syntax/types.ts';
import { note, type Sheet } from './evaluate.ts';
import { fold } from './fold.ts';

const most = 200;

/** All names of a range in order, or why there are none. Same stem, ascending, zeros kept. */
export function rangeNames(first: string, last: string): readonly string[] | string {
  const from = /^(.*?)(\d+)$/.exec(first);
  const to = /^(.*?)(\d+)$/.exec(last);
  if (!from || !to || from[1] !== to[1]) return 'both ends of a range need the same name before their number';
  const [start, end] = [Number(from[2]), Number(to[2])];
  if (end < start) return 'a range runs upwards';
  if (end - start + 1 > most) return `a range holds at most ${most}`;
  const width = from[2]?.startsWith('0') ? from[2].length : 0;
  if (width && to[2]?.length !== width)
    return 'both numbers of a range need the same number of digits when they begin with zero';
  return Array.from({ length: end - start + 1 }, (_, i) => `${from[1]}${String(start + i).padStart(width, '0')}`);
}

/** `S1..S4` for a thing of the name `S1-S4` that was meant as a range with `name` in it; null where it was not. */
export function rangeMeant(thing: string, name: string): string | null {
  const range = rangeOf(thing);
  const [first, last] = range?.split('..') ?? [];
  if (!range || first === undefined || last === undefined) return null;
  const names = rangeNames(first, last);
  return typeof names !== 'string' && names.some((one) => fold(one) === fold(name)) ? range : null;
}

/** The names a statement declares. */
export function expandRange(use: NameUse, allowed: boolean, sheet: Sheet, keyword: string): readonly string[] {
  const first = use.parts.at(-1)?.text ?? '';
  const written = sheet.row.text.slice(use.span.from, use.span.to);
  const refuse = (reason: string): readonly string[] => {
    note(sheet, 'value-outside', use.span, { clause: `${keyword} name`, value: written, reason });
    return [];
  };
  if (use.parts.length > 1) return refuse('a dotted name is for using a thing, not for declaring one');
  if (!use.until) return [first];
  if (!allowed) return refuse('only gear is declared as a range');
  const names = rangeNames(first, use.until.text);
  return typeof names === 'string' ? refuse(names) : names;
}
