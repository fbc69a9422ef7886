// Figures of the sheet: a worked-out number as a cell, rounded the careful way, or the words "not known".
import { type Derived, type Round, type Style, type System, write } from '../../quantities/index.ts';
import type { Place } from '../../syntax/types.ts';
import { type ResultRow, resultsOf } from '../../vocabulary/index.ts';
import { placeIn } from '../places.ts';
import type { Cell, Row } from './types.ts';

/** Which end of a figure is the worse one: it is rounded that way. */
export type Worse = ResultRow['worse'];

/** A number with its unit and, where it has a tolerance, both ends; `not known` where it is open. */
export function figure(derived: Derived, system: System, worse: Worse = 'up', unit?: string): Cell {
  return derived.value === null ? notKnown : { text: figureText(derived, system, worse, unit) };
}

export const notKnown: Cell = { text: 'not known', is: 'not known' };

/** The same as text alone; `unit` is one to show it in, such as that of an item's tag. */
export const figureText = (derived: Derived, system: System, worse: Worse, unit?: string): string =>
  withEnds(derived, worse, (round) => styled(system, round, unit));

/** Value and, where they differ, both ends: each rounded away from the careless side. */
export function withEnds({ value, low, high, unit }: Derived, worse: Worse, style: (round: Round) => Style): string {
  if (value === null) return notKnown.text;
  const text = (number: number, round: Round) => write(number, unit, style(round));
  if (low === null || high === null || (low === value && high === value)) return text(value, rounding[worse]);
  return `${text(value, rounding[worse])} (${text(low, 'down')} to ${text(high, 'up')})`;
}

/** How figures look on a sheet: with true signs, since it is read and not typed. */
export const styled = (system: System, round: Round, unit?: string): Style => ({
  system,
  round,
  plain: false,
  ...(unit && { unit }),
});

/** How the result of a subject is rounded: the way its row in the table of results says. */
export const worseEnd = (kind: string, result: string): Worse => resultsOf[kind]?.[result]?.worse ?? 'up';

/** To the worse end; where neither is worse, to the nearest. */
export const rounding: Readonly<Record<Worse, Round>> = { up: 'up', down: 'down', either: 'near' };

/** The unit in which a figure was written, such as that of a tag: what stands beside it is shown in the same one. */
export function unitAt({ at }: Derived): string | undefined {
  const place = placeIn(at);
  return place ? /\d\s*([A-Za-z][A-Za-z ]*)$/.exec(place.row.text.slice(place.from, place.to).trim())?.[1] : undefined;
}

/** A row whose first cell names it. */
export const row = (at: readonly Place[], ...cells: readonly (Cell | string)[]): Row => ({
  at,
  cells: cells.map((cell) => (typeof cell === 'string' ? { text: cell } : cell)),
});

/** More than all of a capacity is over, whatever rule applies; the word stands beside the figure. */
export const overCapacity = ({ value, high }: Derived, cell: Cell): Cell =>
  value !== null && (high ?? value) > 1 ? { text: `${cell.text}, over`, is: 'over' } : cell;
