// Papers of gear, cranes and permits: numbers that are in two places at once, and dates that have passed on the day of the lift.
import { type BoundPlan, fold, given, type Item, type Thing, textOf } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { wholeMonths } from '../quantities/units.ts';
import type { GearTable } from './gear.ts';
import type { Notes } from './notes.ts';
import type { GearUse } from './types.ts';

/** Judges the papers of what is used; returns the items whose number stands twice, for nobody knows which of them has that tag. */
export function papers(
  plan: BoundPlan,
  gear: readonly GearUse[],
  table: GearTable,
  notes: Notes,
): ReadonlyMap<Thing, Cause> {
  const cranes = plan.names.kind('crane').filter((thing) => !thing.fromLibrary);
  const things = [...gear.map((use) => use.thing), ...cranes].filter((thing) => thing.name === thing.item.names[0]);
  const lift = plan.head ? textOf(plan.head, 'date') : null;
  for (const thing of things)
    inspection(
      thing,
      thing.kind === 'crane' ? given(thing.item, 'interval') : table.given(thing.item, 'interval'),
      lift,
      plan,
      notes,
    );
  for (const item of plan.items) if (item.keyword === 'permit' && item.file === plan.file) permit(item, lift, notes);
  for (const { name, item } of things) {
    ahead(item, 'inspected', `The inspection of ${name}`, lift, plan, notes);
    if (item.clauses.has('interval') && !item.clauses.has('inspected')) notInspected(name, item, notes);
  }
  return serials(gear, things, notes);
}

/** The same number on two items. One line stands for one number, whatever it declares. */
function serials(gear: readonly GearUse[], things: readonly Thing[], notes: Notes): ReadonlyMap<Thing, Cause> {
  const first = new Map<string, Thing>();
  const twice = new Map<Thing, Cause>();
  for (const thing of things) {
    const clause = thing.item.clauses.get('serial')?.[0];
    const serial = textOf(thing.item, 'serial');
    if (!clause || serial === null) continue;
    const other = first.get(fold(serial));
    if (!other) {
      first.set(fold(serial), thing);
      continue;
    }
    const cause = notes.add(
      'serial-repeated',
      clause.at,
      { serial, a: other.name, b: thing.name },
      `${serial} stands on ${other.name} and on ${thing.name}.`,
      [{ at: other.item.clauses.get('serial')?.[0]?.at ?? other.item.nameAt, says: other.name }],
    );
    for (const use of gear)
      if (use.thing.item === thing.item || use.thing.item === other.item) twice.set(use.thing, cause);
  }
  return twice;
}

/** An inspection holds for its interval: up to the same day of a later month, that day no longer in it; any other time in whole days. */
function inspection(
  { name, item }: Thing,
  interval: ReturnType<typeof given>,
  lift: string | null,
  plan: BoundPlan,
  notes: Notes,
): void {
  const clause = item.clauses.get('inspected')?.[0];
  const inspected = textOf(item, 'inspected');
  if (!clause || inspected === null || interval.state !== 'known' || !plan.head) return;
  const until = after(inspected, interval.quantity.low);
  if (until === null || (lift !== null && lift < until)) return;
  notes.add('date-passed', clause.at, { what: 'inspection', item: name, until, lift }, '', dateAt(plan));
}

/** Nobody can have looked or read after the lift. */
export function ahead(
  item: Item,
  clause: string,
  what: string,
  lift: string | null,
  plan: BoundPlan,
  notes: Notes,
): void {
  const date = textOf(item, clause);
  const at = item.clauses.get(clause)?.[0]?.at;
  if (at && date !== null && lift !== null && date > lift)
    notes.add('date-ahead', at, { what, date, lift }, '', dateAt(plan));
}

/** How long an inspection holds says nothing without the day of one. */
function notInspected(name: string, item: Item, notes: Notes): void {
  const why = 'the day of the last inspection, from which its `interval` counts';
  notes.add(
    'clause-missing',
    item.clauses.get('interval')?.[0]?.at ?? item.nameAt,
    { item: name, clause: 'inspected', why },
    '',
  );
}

/** A permit holds on the day it names. */
function permit(item: Item, lift: string | null, notes: Notes): void {
  const until = textOf(item, 'until');
  if (until !== null && lift !== null && lift > until)
    notes.add(
      'date-passed',
      item.clauses.get('until')?.[0]?.at ?? item.at,
      { what: 'permit', item: item.names[0] ?? textOf(item, '') ?? 'the permit', until, lift },
      '',
    );
}

const dateAt = ({ head }: BoundPlan) => {
  const at = head?.clauses.get('date')?.[0]?.at;
  return at ? [{ at, says: 'date of the lift' }] : [];
};

/** A date some time after another, both `2026-05-18`; months by the calendar, the last day of a shorter month where the day is missing. Null for no date. */
export function after(iso: string, seconds: number): string | null {
  const [year, month, day] = iso.split('-').map(Number) as [number, number, number];
  const months = wholeMonths(seconds);
  const start = Date.UTC(year, month - 1, day);
  if (!Number.isFinite(start)) return null;
  if (months === null) return isoOf(start + Math.floor(seconds / 86_400) * 86_400_000);
  const total = month - 1 + months;
  const last = new Date(Date.UTC(year, total + 1, 0)).getUTCDate();
  return isoOf(Date.UTC(year, total, Math.min(day, last)));
}

const isoOf = (time: number): string | null =>
  Number.isFinite(time) && Math.abs(time) < 8.64e15 ? new Date(time).toISOString().slice(0, 10) : null;
