// What stands in the way of a capacity whatever hangs on it: the temperature, and a figure that is hardly for one straight leg.
import { greatestRating, temperatureRange } from '../catalog/index.ts';
import { type BoundPlan, given, type Item, lostCauses, openLines, type Thing } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import type { GearTable } from './gear.ts';
import { constructionOf } from './hang/bends.ts';
import { because, type Notes } from './notes.ts';
import { papers } from './papers.ts';
import { doubtedAsWritten } from './plausible.ts';
import type { GearUse } from './types.ts';

/** Why what an item may carry is not known, by item. */
export function conditions(
  plan: BoundPlan,
  gear: readonly GearUse[],
  table: GearTable,
  notes: Notes,
): ReadonlyMap<Thing, readonly Cause[]> {
  const opens = new Map<Thing, Cause[]>();
  const add = (thing: Thing, cause: Cause | null): void => {
    if (cause) opens.set(thing, [...(opens.get(thing) ?? []), cause]);
  };
  for (const [thing, cause] of papers(plan, gear, table, notes)) add(thing, cause);
  const blocks = plan.items.filter((item) => item.keyword === 'gear');
  const nameless = blocks.flatMap((block) =>
    block.children.filter((one) => one.keyword === 'bridle' && !one.names.length),
  );
  const lost = [...blocks.flatMap(lostCauses), ...nameless.flatMap(openLines)]; // it may be the tag over a set
  const told = new Map<Item, readonly (Cause | null)[]>(); // a line that declares several things is told of once
  for (const use of gear)
    if (use.legs.length) {
      const causes = told.get(use.thing.item) ?? [outside(use.thing, plan, table, notes), basis(use, table, notes)];
      told.set(use.thing.item, causes);
      for (const cause of use.kind === 'sling' ? [...causes, ...lost] : causes) add(use.thing, cause);
    }
  return opens;
}

const zero = 273.15; // K at 0 degC

/** The temperature stated for the lift, beyond what the table of its kind allows without asking the maker. */
function outside(thing: Thing, plan: BoundPlan, table: GearTable, notes: Notes): Cause | null {
  const weather = plan.items.find((item) => item.keyword === 'weather' && item.file === plan.file);
  const stated = weather ? given(weather, 'temperature') : null;
  const [lost] = weather ? [] : plan.opens;
  if (lost) return because('A line that cannot be read may state a temperature.', lost);
  if (!weather || !stated || stated.state === 'absent' || stated.state === 'none') return null;
  const of = thing.item.keyword === 'sling' ? constructionOf(thing.item, table) : thing.item.keyword;
  const range = of ? temperatureRange(of) : null;
  if (!range) return null;
  if (stated.state === 'open') return stated.because[0] ?? null;
  const [low, high] = [stated.quantity.low - zero, stated.quantity.high - zero];
  if (low >= range.from - 1e-9 && high <= range.to + 1e-9) return null;
  const temperature = low < range.from ? stated.quantity.low : stated.quantity.high;
  return notes.add(
    'temperature-outside',
    thing.item.nameAt,
    { item: thing.name, from: range.from + zero, to: range.to + zero, source: range.source, temperature },
    `${thing.name} is not for this temperature.`,
    [{ at: stated.at, says: 'temperature' }],
  );
}

/** A capacity that no straight leg of this size has in published tables, but a basket, or several legs under one tag, may have. */
function basis({ thing, capacity }: GearUse, table: GearTable, notes: Notes): Cause | null {
  const of = thing.item.keyword === 'sling' ? constructionOf(thing.item, table) : null;
  const across = table.given(thing.item, 'diameter');
  const clause = table.clause(thing.item, 'capacity');
  if (
    !of ||
    across.state !== 'known' ||
    !clause ||
    capacity.value === null ||
    doubtedAsWritten(thing, capacity.value, table)
  )
    return null;
  const most = greatestRating(of, across.quantity.high);
  if (most === null || capacity.value <= most) return null;
  const text = clause.valueAt.row.text.slice(clause.valueAt.from, clause.valueAt.to);
  const unit = /[A-Za-z][A-Za-z ]*$/.exec(text.trim())?.[0] ?? '';
  const diameter = table.clause(thing.item, 'diameter')?.valueAt;
  return notes.add(
    'capacity-basis-missing',
    clause.at,
    {
      item: thing.name,
      capacity: capacity.value,
      unit,
      usual: most,
      size: `${of}${diameter ? ` of ${diameter.row.text.slice(diameter.from, diameter.to)}` : ''}`,
    },
    `What the capacity of ${thing.name} is for is not clear.`,
    thing.item.clauses.has('capacity') ? [] : [{ at: thing.item.nameAt, says: thing.name }],
  );
}
