// Figures as the editor shows them: rounded to the side that is worse, "not known" where they are open, and found by what they are of.
import type { Thing } from '../plan/types.ts';
import { type Derived, type Round, type System, write } from '../quantities/index.ts';
import { bodyRows } from '../results/index.ts';
import type { Result, Results } from '../results/types.ts';
import { type ResultRow, resultsOf } from '../vocabulary/index.ts';

export type Worse = ResultRow['worse'];

export const rounding: Readonly<Record<Worse, Round>> = { up: 'up', down: 'down', either: 'near' };

/** A number with its unit, its ends behind it where it has a tolerance; `not known` where it is open. `plain`: characters of a keyboard only. */
export function figure(
  { value, low, high, unit }: Derived,
  system: System,
  worse: Worse = 'up',
  plain = false,
): string {
  if (value === null) return 'not known';
  const text = (number: number, round: Round) => write(number, unit, { system, round, plain });
  if (low === null || high === null || (low === value && high === value)) return text(value, rounding[worse]);
  return `${text(value, rounding[worse])} (${text(low, 'down')} to ${text(high, 'up')})`;
}

/** The end of a number that is the worse one, alone: for places with room for one figure. */
export function worst({ value, low, high, unit }: Derived, system: System, worse: Worse = 'up', plain = true): string {
  const end = worse === 'up' ? high : worse === 'down' ? low : value;
  return value === null ? 'not known' : write(end ?? value, unit, { system, round: rounding[worse], plain });
}

/** Which end of a result is the worse one, by its row in the table of results. */
export const worseEnd = (kind: string, result: string): Worse => resultsOf[kind]?.[result]?.worse ?? 'up';

/** The results of a thing as a subject of its own: by result and stage. */
export function resultsFor(results: Results, thing: Thing): readonly Result[] {
  const body = thing.kind === 'part' || thing.kind === 'assembly' ? results.bodies.get(thing.item) : undefined;
  return body ? bodyRows(body) : (indexOf(results, kindOf(thing)).get(keyOf(thing.path)) ?? []);
}

/** One result of a thing, worst stage first; undefined where it has no such result. */
export function resultOf(results: Results, thing: Thing, result: string): Result | undefined {
  const found = resultsFor(results, thing).filter((one) => one.result === result);
  return (
    found.find(({ value }) => value.value === null) ??
    found.reduce<Result | undefined>((bad, one) => (bad && !isWorse(one, bad) ? bad : one), undefined)
  );
}

/** The kind of subject a thing is: its keyword for gear. */
export const kindOf = (thing: Thing): string => (thing.kind === 'gear' ? thing.item.keyword : thing.kind);

function isWorse({ subject, result, value }: Result, than: Result): boolean {
  const down = worseEnd(subject.kind, result) === 'down';
  const [a, b] = down ? [than.value.low, value.low] : [value.high, than.value.high];
  return (a ?? 0) > (b ?? 0);
}

const indexes = new WeakMap<Results, Map<string, ReadonlyMap<string, readonly Result[]>>>();

/** Results of one kind of subject by its path; put in order when first asked for, since most keys ask for few kinds. */
function indexOf(results: Results, kind: string): ReadonlyMap<string, readonly Result[]> {
  const kinds = indexes.get(results) ?? new Map<string, ReadonlyMap<string, readonly Result[]>>();
  indexes.set(results, kinds);
  const known = kinds.get(kind);
  if (known) return known;
  const index = new Map<string, Result[]>();
  for (const one of results.ofKinds([kind])) {
    const key = keyOf(one.subject.path);
    const list = index.get(key);
    if (list) list.push(one);
    else index.set(key, [one]);
  }
  kinds.set(kind, index);
  return index;
}

const keyOf = (path: readonly string[]): string => JSON.stringify(path);
