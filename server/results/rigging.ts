// What hangs and what it weighs: gear of the legs, what hangs from something, and what is left over; and what each piece may carry.
import {
  type BoundPlan,
  fold,
  has,
  type Item,
  lostCauses,
  namesOf,
  openLines,
  type Thing,
  textOf,
} from '../plan/index.ts';
import { type Cause, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { nearest } from '../quantities/nearest.ts';
import { gearKinds } from '../vocabulary/index.ts';
import { capacityOf, type GearTable, lengthOf, weightOf } from './gear.ts';
import { bridlesOf } from './hang/bridle.ts';
import { because, type Notes } from './notes.ts';
import { countOf, countOpen } from './placing.ts';
import { implausible } from './plausible.ts';
import type { GearUse, LegUse } from './types.ts';

const kinds: ReadonlySet<string> = new Set(gearKinds);

export interface Rigging {
  readonly gear: readonly GearUse[];
  readonly weight: Derived;
}

/** Every piece of the plan's own gear and every library piece in use. */
export function rigging(plan: BoundPlan, legs: readonly LegUse[], table: GearTable, notes: Notes): Rigging {
  const inLegs = new Map<Thing, LegUse[]>();
  for (const leg of legs)
    for (const { thing } of leg.steps) {
      const gear = thing.kind === 'point' && thing.owner ? thing.owner : thing;
      if (gear.kind === 'gear') inLegs.set(gear, [...new Set([...(inLegs.get(gear) ?? []), leg])]);
    }
  const things = plan.names.kind('gear').filter((thing) => kinds.has(thing.item.keyword));
  const gear = things
    .filter((thing) => !thing.fromLibrary || inLegs.has(thing) || has(thing.item, 'hangs from'))
    .map((thing) => use(thing, inLegs.get(thing) ?? [], plan, table, notes));
  leftUnused(plan, gear, legs, notes);
  return { gear, weight: total(plan, gear, legs) };
}

function use(thing: Thing, legs: readonly LegUse[], plan: BoundPlan, table: GearTable, notes: Notes): GearUse {
  const { item } = thing;
  const hangsFrom = has(item, 'hangs from') && target(item, plan, notes);
  const hangs = legs.length ? 'leg' : hangsFrom ? 'hangs from' : has(item, 'spare') ? null : 'left over';
  const each = weightOf(thing, table);
  const count = countOf(item);
  const weight = count === null ? open('kg', [countOpen(item, thing.name)]) : all(each, count);
  const capacity = capacityOf(thing, table);
  if (hangs && table.given(item, 'weight').state === 'absent' && !table.causes(item).length)
    notes.add(
      'gear-weight-missing',
      item.nameAt,
      { item: thing.name, nearest: sameKind(plan, thing) },
      '',
      legs.map((leg) => ({ at: leg.item.at, says: 'leg' })),
    );
  if (
    legs.length &&
    ['absent', 'none'].includes(table.given(item, 'capacity').state) &&
    !table.causes(item).length &&
    !bridlesOf(plan).some(({ slings }) => slings.includes(thing))
  )
    notes.add(
      'gear-capacity-missing',
      item.nameAt,
      { item: thing.name },
      '',
      legs.map((leg) => ({ at: leg.item.at, says: 'leg' })),
    );
  if (legs.length) unfit(thing, table, notes);
  if (thing.name === item.names[0]) implausible(thing, each, capacity, table, notes);
  return {
    thing,
    kind: item.keyword,
    weight,
    each,
    capacity,
    length: lengthOf(thing, table),
    count: count ?? 1,
    hangs,
    legs,
    crane: craneOf(legs),
  };
}

/** Figures without which nothing can be said of a leg: a sling's length, a setting within its range, why a weight is none. */
function unfit(thing: Thing, table: GearTable, notes: Notes): void {
  const { item } = thing;
  if (table.causes(item).length) return;
  const absent = (word: string): boolean => table.given(item, word).state === 'absent';
  const due = (clause: string, why: string): void => {
    notes.add('clause-missing', item.nameAt, { item: thing.name, clause, why }, '');
  };
  if (item.keyword === 'sling' && absent('length') && absent('circumference'))
    due('length', 'without it nothing can be said of angles and pulls');
  if (table.given(item, 'weight').state === 'none' && !table.clause(item, 'from'))
    due('from', '`none` needs the paper or rating that already holds its weight');
  const set = table.given(item, 'set');
  const most = table.given(item, 'take-up');
  const at = table.clause(item, 'set')?.valueAt;
  if (set.state === 'known' && most.state === 'known' && at && set.quantity.value > most.quantity.value)
    notes.add(
      'value-outside',
      at,
      { clause: 'set', value: at.row.text.slice(at.from, at.to), reason: 'it is more than its take-up' },
      '',
    );
}

/** The weight of so many alike. */
function all(each: Derived, count: number): Derived {
  if (each.value === null || count === 1) return each;
  const inputs = [
    { label: 'each', value: each },
    { label: 'count', value: known(count, '1') },
  ];
  const origin = { formula: 'each * count', inputs, source: each.source, at: each.at };
  return known(each.value * count, 'kg', origin, (each.low as number) * count, (each.high as number) * count);
}

const craneOf = ([leg]: readonly LegUse[]): string | null =>
  leg ? (namesOf(leg.rigItem, 'crane')[0]?.parts.at(-1)?.text ?? null) : null;

/** Library pieces of the same kind that `like` could name. */
const sameKind = (plan: BoundPlan, thing: Thing): readonly string[] =>
  plan.names
    .kind('gear')
    .filter((one) => one.fromLibrary && one.item.keyword === thing.item.keyword && one.item.clauses.has('weight'))
    .slice(0, 3)
    .map((one) => one.name);

/** What `hangs from` names: gear, a pick or a load. */
function target(item: Item, plan: BoundPlan, notes: Notes): boolean {
  const [name] = namesOf(item, 'hangs from');
  if (!name) return true; // not readable: it hangs all the same
  const text = name.parts.at(-1)?.text ?? '';
  const fits = (['gear', 'pick', 'load', 'point'] as const).some((kind) => plan.names.find(kind, fold(text)).length);
  if (!fits) {
    const all = plan.names.things
      .filter((thing) => ['gear', 'pick', 'load'].includes(thing.kind))
      .map((thing) => thing.name);
    notes.add(
      'name-unknown',
      { row: item.clauses.get('hangs from')?.[0]?.at.row ?? item.at.row, from: name.span.from, to: name.span.to },
      {
        name: text,
        nearest: nearest(text, all),
        wanted: 'gear, a pick or a load',
        is: plan.names.things.find((thing) => thing.key === fold(text))?.kind ?? null,
        declare: null,
      },
      '',
    );
  }
  return true;
}

/** The plan's own gear in no leg counts all the same; picks in no leg are named. Nothing is said while there are no legs at all. */
function leftUnused(plan: BoundPlan, gear: readonly GearUse[], legs: readonly LegUse[], notes: Notes): void {
  if (!legs.length) return;
  for (const one of gear)
    if (one.hangs === 'left over')
      notes.add('left-unused', one.thing.item.nameAt, { item: one.thing.name, pick: false }, '');
  const used = new Set(legs.flatMap((leg) => leg.steps.map((step) => step.thing)));
  picksUnrated(used, notes);
  if (legs.some((leg) => leg.broken)) return; // the picks below a broken leg are its consequence
  for (const thing of plan.names.kind('pick'))
    if (!used.has(thing) && !thing.fromLibrary)
      notes.add('left-unused', thing.item.nameAt, { item: thing.name, pick: true }, '');
  for (const load of plan.names.kind('load'))
    if (!load.fromLibrary && ![...used].some((thing) => thing.load === load))
      notes.add('hang-unsolved', load.item.nameAt, { load: load.name, reason: 'no leg carries it' }, '');
}

/** Picks that carry need a capacity, but for edges and rounds, which the load itself is. */
function picksUnrated(used: ReadonlySet<Thing>, notes: Notes): void {
  for (const pick of used) {
    if (pick.kind !== 'pick' || pick.item.clauses.has('capacity') || pick.item.opens.length) continue;
    const kind = textOf(pick.item, 'kind');
    if (kind !== 'edge' && kind !== 'round')
      notes.add('gear-capacity-missing', pick.item.nameAt, { item: pick.name }, '');
  }
}

/** The weight of all that hangs; open where a line of gear or rig cannot be read, a hook is missing, or a joint is not named. */
function total(plan: BoundPlan, gear: readonly GearUse[], legs: readonly LegUse[]): Derived {
  const blocks = plan.items.filter((item) => item.keyword === 'gear' || item.keyword === 'rig');
  const causes: Cause[] = blocks
    .filter((item) => item.file === plan.file || item.keyword === 'rig')
    .flatMap((item) => [...openLines(item), ...lostCauses(item), ...unnamed(item)]);
  for (const leg of legs)
    if (leg.broken) causes.push(because('A leg is broken: what hangs on it is not known.', leg.item.at));
  if (!blocks.some((item) => item.keyword === 'rig' && item.children.length))
    causes.push({ what: 'No rig says what hangs.', at: plan.head?.at ?? null });
  const hanging = gear.filter((one) => one.hangs);
  for (const one of hanging)
    if (one.thing.clash) causes.push(because(`${one.thing.name} is stated twice.`, one.thing.item.nameAt));
  const weights = sum(
    hanging.map((one) => one.weight),
    'kg',
    { formula: 'sum of gear', inputs: hanging.map((one) => ({ label: one.thing.name, value: one.weight })) },
  );
  return causes.length ? open('kg', unique([...causes, ...weights.because])) : weights;
}

const unnamed = (block: Item): readonly Cause[] =>
  block.keyword === 'gear'
    ? block.children
        .filter((child) => !child.names.length)
        .map((child) => because(`A ${child.keyword} here has no name that can be read.`, child.at))
    : [];
