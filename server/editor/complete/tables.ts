// Entries of the tables with what they weigh: sections, pipes by schedule, bars, constructions of rope and chain, kinds of sheet, bought-in pipework.
import {
  bars,
  constructionsOf,
  nearestSections,
  nearestSheets,
  pipe,
  pipeSchedules,
  pipeSizes,
  sections,
  sheets,
} from '../../catalog/index.ts';
import { textOf } from '../../plan/index.ts';
import { write } from '../../quantities/index.ts';
import { inQuotes } from '../spelling.ts';
import type { Completion } from '../types.ts';
import { itemHere } from './names.ts';
import { pipeworkSizes } from './pipework.ts';
import { type Asked, begun, completion } from './types.ts';

/** At most so many sizes of a table at once: more come with more of the designation. */
export const mostListed = 200;

/** Entries of the table that the clause at the caret reads; those in `used` first. */
export function fromTables(asked: Asked, used: readonly string[]): readonly Completion[] {
  const text = (value: number, unit: 'kg/m' | 'kg/m2') =>
    write(value, unit, { system: asked.s.plan.units, round: 'up' });
  const byLength = (row: { readonly designation: string; readonly massPerLength: number }): Entry => ({
    designation: row.designation,
    detail: () => text(row.massPerLength, 'kg/m'),
  });
  const byArea = (row: { readonly designation: string; readonly massPerArea: number }): Entry => ({
    designation: row.designation,
    detail: () => text(row.massPerArea, 'kg/m2'),
  });
  switch (asked.slot.clause) {
    case 'section':
      return listed(asked, used, sections().map(byLength), (typed) => nearestSections(typed, 10).map(byLength));
    case 'bar':
      return listed(
        asked,
        used,
        bars().map((bar) => byLength({ ...bar, designation: spelt(bar.designation) })),
      );
    case 'pipe':
      return listed(
        asked,
        used,
        pipeSizes().map((designation) => ({ designation, detail: () => sized(asked, designation) })),
      );
    case 'kind':
      return listed(asked, used, sheets().map(byArea), (typed) => nearestSheets(typed, 10).map(byArea));
    case 'construction':
      return listed(
        asked,
        used,
        constructions(asked, (value) => text(value, 'kg/m')),
      );
    default:
      return listed(
        asked,
        used,
        pipeworkSizes(asked).map(({ text: designation, detail }) => ({ designation, detail: () => detail })),
      );
  }
}

/** A bar such as #5 needs quotes, since # begins a note. */
const spelt = (designation: string): string => (designation.startsWith('#') ? inQuotes(designation) : designation);

interface Entry {
  readonly designation: string;
  readonly detail: () => string;
}

/** What a size of pipe weighs, from its lightest to its heaviest schedule. */
function sized(asked: Asked, designation: string): string {
  const masses = pipeSchedules(designation).flatMap((schedule) => pipe(designation, schedule)?.massPerLength ?? []);
  const [low, high] = [Math.min(...masses), Math.max(...masses)];
  const text = (value: number) => write(value, 'kg/m', { system: asked.s.plan.units, round: 'up' });
  return low === high ? text(low) : `${text(low)} to ${text(high)}`;
}

/** Constructions of the rope or chain on this line, with what a length of its diameter weighs. */
function constructions(asked: Asked, text: (massPerLength: number) => string): readonly Entry[] {
  const item = itemHere(asked);
  const line = item?.clauses.has('chain') ? 'chain' : 'rope';
  const across = item?.clauses.get(line)?.[0]?.value;
  const diameter = across?.kind === 'quantity' ? across.quantity.value : null;
  return constructionsOf(line).map(({ construction, factor }) => ({
    designation: construction,
    detail: () => (diameter === null ? '' : text(factor * diameter ** 2)),
  }));
}

/** Schedules, types, classes and ratios of the pipe on this line, each with what a length weighs. */
export function schedules(asked: Asked): readonly Completion[] {
  const item = itemHere(asked);
  const size = (item && textOf(item, 'pipe')) ?? '';
  const of = (item && textOf(item, 'of')) ?? '';
  return pipeSchedules(size).map((schedule) => {
    const found = pipe(size, schedule, of);
    const detail = found ? write(found.massPerLength, 'kg/m', { system: asked.s.plan.units, round: 'up' }) : '';
    return completion(asked, 'word', schedule, { detail: found?.made ? `${detail}, ${found.made}` : detail });
  });
}

/** Entries that begin as typed, else those near to it; those used in this file first. */
function listed(
  asked: Asked,
  before: readonly string[],
  rows: readonly Entry[],
  nearest: (typed: string) => readonly Entry[] = () => [],
): readonly Completion[] {
  const { from, text: typed } = begun(asked);
  const key = (designation: string) => designation.toUpperCase().replace(/[\s"]/g, '').replaceAll('×', 'X');
  const fitting = rows.filter(({ designation }) => key(designation).startsWith(key(typed)));
  const used = new Set(before.map(key));
  const found = fitting.length || !typed ? fitting : nearest(typed);
  const ordered = [
    ...found.filter(({ designation }) => used.has(key(designation))),
    ...found.filter(({ designation }) => !used.has(key(designation))),
  ];
  return ordered
    .slice(0, mostListed)
    .map(({ designation, detail }) =>
      completion(asked, 'material', designation.replace(/(?<=[\d.])X(?=[\d.])/g, 'x'), { from, detail: detail() }),
    );
}
