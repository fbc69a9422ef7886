// Works a bound plan out: loads, gear, totals, every subject's results, and the state of each `expect`.
import type { BoundPlan, Thing } from '../plan/index.ts';
import { type Cause, type Derived, open, sum, unique } from '../quantities/derived.ts';
import { bodyOf } from './bodies.ts';
import { breakoutOf } from './breakout.ts';
import { conditions } from './conditions.ts';
import { deductions } from './deductions.ts';
import { judgeExpects } from './expect.ts';
import { GearTable } from './gear.ts';
import { hangPlan } from './hang/hang.ts';
import { headrooms } from './hang/headroom.ts';
import { liftOff } from './lift-off.ts';
import { type Listing, listResults } from './list.ts';
import { loadResult } from './load.ts';
import { unknownNames } from './named.ts';
import { loadsElsewhere, notJudged } from './not-judged.ts';
import { because, Notes } from './notes.ts';
import { readLegs } from './path.ts';
import { rigging } from './rigging.ts';
import type { Result, Results } from './types.ts';

const kept = new WeakMap<BoundPlan, Results>();

/** Everything that can be worked out of a plan. The same plan object gives the same results. */
export function workOut(plan: BoundPlan): Results {
  const before = kept.get(plan);
  if (before) return before;
  const results = work(plan);
  kept.set(plan, results);
  return results;
}

function work(plan: BoundPlan): Results {
  const notes = new Notes();
  const table = new GearTable(plan, notes);
  const loads = plan.names
    .kind('load')
    .filter((thing) => !thing.fromLibrary)
    .map((thing) => loadResult(thing, plan, notes));
  const legs = readLegs(plan, table, notes);
  const hung = rigging(plan, legs, table, notes);
  const totals = totalsOf(
    plan,
    loads,
    hung.weight,
    deductions(plan, notes),
    legs.some((leg) => leg.broken),
    notes,
  );
  const opens = conditions(plan, hung.gear, table, notes);
  const breakout = breakoutOf(plan, notes);
  const hanging = hangPlan({ plan, loads, legs, gear: hung.gear, table, notes, opens, held: breakout.pull });
  const headroom = headrooms({ plan, hanging, gear: hung.gear, table, notes });
  const lifting = liftOff({ plan, loads, gear: hung.gear, legs, totals, hanging, breakout, notes });
  const list = listResults({ plan, totals, loads, rigging: hung, hanging, headroom, lifting });
  unknownNames(plan, notes);
  const unjudged = [...hanging.unjudged, ...lifting.unjudged, ...notJudged(plan, notes)];
  const expects = judgeExpects(plan, list, notes);
  return {
    plan,
    get list() {
      return list.all;
    },
    loads,
    bodies: { get: (item) => loads.map(({ body }) => bodyOf(body, item, plan)).find((body) => body !== undefined) },
    gear: hung.gear,
    legs,
    totals,
    expects,
    problems: notes.problems,
    notJudged: unjudged,
    hanging,
    liftOff: lifting,
    ofKinds: (kinds) => list.ofKinds(kinds),
    find: finder(list),
  };
}

/** Looks results up by kind and name; a kind is put in order when it is first asked for. */
function finder(list: Listing): Results['find'] {
  const kinds = new Map<string, ReadonlyMap<string, Result>>();
  return (kind, name, result, stage = null) => {
    const index = kinds.get(kind) ?? indexOf(list.ofKinds([kind]));
    kinds.set(kind, index);
    return index.get(keyOf(name, result, stage));
  };
}

function indexOf(list: readonly Result[]): ReadonlyMap<string, Result> {
  const index = new Map<string, Result>();
  for (const one of list) {
    const key = keyOf(one.subject.name, one.result, one.stage);
    if (!index.has(key)) index.set(key, one);
  }
  return index;
}

const keyOf = (name: string | null, result: string, stage: string | null): string =>
  `${name ?? ''}|${result}|${stage ?? ''}`;

/** Load, rigging and deductions together; open as soon as one is, or a line at file level cannot be read. */
function totalsOf(
  plan: BoundPlan,
  loads: readonly { readonly thing: Thing; readonly weight: Derived }[],
  rigging: Derived,
  deduct: Derived,
  broken: boolean,
  notes: Notes,
): Results['totals'] {
  const lines: Cause[] = plan.opens.map((at) => because('A line here cannot be read.', at));
  const clash = loads
    .filter((load) => load.thing.clash)
    .map((load) => because(`${load.thing.name} is stated twice.`, load.thing.item.nameAt));
  const none: Cause[] = loads.length ? [] : [{ what: 'There is no load.', at: plan.head?.at ?? null }];
  const guard = (value: Derived, causes: readonly Cause[]): Derived =>
    causes.length ? open('kg', unique([...causes, ...value.because]), { at: value.at }) : value;
  const loadWeight = guard(
    sum(
      loads.map((load) => load.weight),
      'kg',
      { formula: 'sum of loads', inputs: loads.map((load) => ({ label: load.thing.name, value: load.weight })) },
    ),
    [...lines, ...clash, ...none, ...loadsElsewhere(plan)],
  );
  const hanging = guard(rigging, lines);
  const deducted = guard(deduct, lines);
  const hooks = notes.problems.filter(
    (problem) => problem.slug === 'hook-missing' || problem.slug === 'connection-missing',
  );
  const missing: Cause[] = hooks.map((problem) =>
    because(
      problem.slug === 'hook-missing' ? 'No hook or block is named.' : 'What joins two items is not named.',
      problem.at,
    ),
  );
  const rig = guard(hanging, missing);
  const gross = sum([loadWeight, rig, deducted], 'kg', {
    formula: 'load weight + rigging weight + deductions',
    inputs: [
      { label: 'load weight', value: loadWeight },
      { label: 'rigging weight', value: rig },
      { label: 'deductions', value: deducted },
    ],
  });
  return {
    loadWeight,
    rigging: rig,
    deductions: deducted,
    gross: broken && gross.value !== null ? open('kg', [because('A leg is broken.', plan.head?.at as never)]) : gross,
  };
}
