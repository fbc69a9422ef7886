// What may still hold the loads when they are lifted, and how much more than their weight the hook may have to pull for it.
import { type BoundPlan, given, type Item, openLines, type Thing, textOf } from '../plan/index.ts';
import { asWritten, type Derived, known, open, sum } from '../quantities/derived.ts';
import type { Notes } from './notes.ts';

export interface Hold {
  readonly load: Thing;
  readonly item: Item; // the `held by` statement
  /** The extra pull, kg; null where it lets go before the load is lifted: `released` is said, and no `breakout`. */
  readonly pull: Derived | null;
}

export interface Breakout {
  readonly holds: readonly Hold[];
  /** All that may hold at once, kg; 0 where nothing does. */
  readonly pull: Derived;
}

/** Of a moment at which nothing holds the loads any more. */
export const letGo: Derived = known(0, 'kg');

/** Every `held by` of the plan's own loads. One that says neither `released` nor `breakout` leaves the pull open. */
export function breakoutOf(plan: BoundPlan, notes: Notes): Breakout {
  const holds = plan.names
    .kind('load')
    .filter((thing) => !thing.fromLibrary)
    .flatMap((load) =>
      load.item.children
        .filter(({ keyword }) => keyword === 'held by')
        .map((item): Hold => ({ load, item, pull: pullOf(load, item, notes) })),
    );
  const pulls = holds.flatMap(({ item, pull }) => (pull ? [{ label: nameOf(item), value: pull }] : []));
  const [only, second] = pulls;
  if (!only) return { holds, pull: letGo };
  if (!second) return { holds, pull: only.value };
  const all = pulls.map(({ value }) => value);
  return { holds, pull: sum(all, 'kg', { formula: 'sum of breakouts', inputs: pulls }) };
}

const nameOf = (item: Item): string => textOf(item, '') ?? 'what holds it';

function pullOf(load: Thing, item: Item, notes: Notes): Derived | null {
  const lines = openLines(item);
  if (lines.length) return open('kg', lines, { at: item.at });
  const breakout = given(item, 'breakout');
  if (breakout.state === 'known') return asWritten(breakout, 'kg', nameOf(item));
  if (breakout.state === 'open') return open('kg', breakout.because, { at: item.at });
  if (textOf(item, 'released')?.trim()) return null;
  const by = nameOf(item);
  const why = `Nothing says how “${by}” lets go of ${load.name}, or how much more than its weight it may take.`;
  return open('kg', [notes.add('release-unstated', item.at, { load: load.name, by }, why)], { at: item.at });
}
