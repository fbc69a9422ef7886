// What load cells and the crane's indicator show while the load leaves the ground, and the reading at which the lift stops.
import { type BoundPlan, given, type Thing } from '../plan/index.ts';
import { asWritten, type Derived, type Input, known, open, refigured, sum, unique } from '../quantities/derived.ts';
import type { Breakout } from './breakout.ts';
import type { Hanging } from './hang/hang.ts';
import { carrierOf } from './hang/hung-gear.ts';
import { g } from './hang/model.ts';
import { whileHeld } from './hang/used.ts';
import type { Notes } from './notes.ts';
import { isHook } from './path.ts';
import type { GearUse, LegUse, LoadResult, Results } from './types.ts';

/** One instrument with what it shows; all kg. */
export interface Reading {
  /** The load cell, or one of several hooks, each with an indicator; null: the indicator of the crane that carries all. */
  readonly on: Thing | null;
  /** The gear whose weight it shows; null: a cell in one of several legs, or one of several hooks, which shows its share. */
  readonly below: readonly GearUse[] | null;
  /** While the gear hangs and the load still lies; null where it shows a share. */
  readonly slack: Derived | null;
  /** The most while the load is being broken free; null where nothing holds it. */
  readonly breaking: Derived | null;
  /** Hanging free: without allowance as the value and low end, with it as the high end. */
  readonly expected: Derived;
  readonly stop: Derived;
}

export interface LiftOff {
  readonly breakout: Breakout;
  /** Load cells in the order of the plan, then the crane's indicator, or those of several hooks. */
  readonly readings: readonly Reading[];
  readonly unjudged: readonly string[]; // in words, for the sheet's head
}

interface Asked {
  readonly plan: BoundPlan;
  readonly loads: readonly LoadResult[];
  readonly gear: readonly GearUse[];
  readonly legs: readonly LegUse[];
  readonly totals: Results['totals'];
  readonly hanging: Hanging;
  readonly breakout: Breakout;
  readonly notes: Notes;
}

export function liftOff(asked: Asked): LiftOff {
  const { gear, breakout, legs, loads } = asked;
  const cells = gear.filter((use) => use.kind === 'load cell' && use.hangs === 'leg').map(({ thing }) => thing);
  const stated = statedStop(loads);
  const hooks = hooksOf(legs);
  if (hooks.length > 1)
    return {
      breakout,
      readings: [...cells, ...hooks].map((thing) => ofShare(thing, asked)),
      unjudged: stated ? ['the stop value of a load on several hooks'] : [],
    };
  const read: readonly Over[] = [
    ...cells.flatMap((on) => {
      const below = belowCell(on, asked);
      return below ? [{ on, ...below }] : [];
    }),
    { on: null, below: gear.filter((use) => use.hangs), weight: asked.totals.rigging },
  ];
  const first = read[0] as Over; // `stop at` speaks of a cell over all of the load where there is one
  const readings = [...cells, null].map((on) => {
    const over = read.find((one) => one.on === on);
    return over ? ofAll(over, first.weight, stated, asked) : ofShare(on as Thing, asked);
  });
  const held = readings.find(({ on }) => on === first.on);
  if (stated && held) judgeStop(stated, held, first.weight, asked);
  return { breakout, readings, unjudged: [] };
}

/** The hooks, blocks and balls that legs begin or end at. */
const hooksOf = (legs: readonly LegUse[]): readonly Thing[] => [
  ...new Set(
    legs.flatMap(({ steps }) =>
      [steps[0], steps.at(-1)].flatMap((step) => (step && isHook(step.thing) ? [step.thing] : [])),
    ),
  ),
];

// ---------------------------------------------------------------- an instrument over all of the load

interface Over {
  readonly on: Thing | null;
  readonly below: readonly GearUse[];
  readonly weight: Derived; // of the gear below
}

/** What hangs below a cell that every leg from a hook runs through; null for any other cell. */
function belowCell(cell: Thing, { legs, gear, plan, totals }: Asked): Omit<Over, 'on'> | null {
  const tops = legs.filter(({ steps: [top] }) => top && isHook(top.thing));
  const through = (leg: LegUse): boolean => leg.steps.filter(({ thing }) => thing === cell).length === 1;
  const returns = ({ steps }: LegUse): boolean => isHook((steps.at(-1) as LegUse['steps'][number]).thing);
  if (!tops.length || tops.some((leg) => !through(leg) || returns(leg))) return null;
  const above = new Set(tops.flatMap(({ steps }) => steps.slice(0, at(steps, cell) + 1).map(({ thing }) => thing)));
  const beside = new Map(gear.filter((use) => use.hangs && use.hangs !== 'leg').map((use) => [use.thing, use]));
  const carried = (use: GearUse): 'below' | 'above' | 'anywhere' => {
    if (use.hangs === 'leg') return above.has(use.thing) ? 'above' : 'below';
    const carrier = carrierOf(use, beside, plan);
    return carrier === null ? 'anywhere' : above.has(carrier) ? 'above' : 'below';
  };
  const hanging = gear.filter((use) => use.hangs).map((use) => ({ use, where: carried(use) }));
  const below = hanging.filter(({ where }) => where !== 'above').map(({ use }) => use);
  const inputs = hanging
    .filter(({ where }) => where !== 'above')
    .map(({ use, where }) => ({ label: use.thing.name, value: where === 'below' ? use.weight : perhaps(use.weight) }));
  const values = inputs.map(({ value }) => value);
  const weight = sum(values, 'kg', { formula: 'sum of gear below', inputs });
  const causes = [...totals.rigging.because];
  return { below, weight: causes.length ? open('kg', causes) : weight };
}

const at = (steps: LegUse['steps'], cell: Thing): number => steps.findIndex(({ thing }) => thing === cell);

/** Nothing says whether it hangs below: it may be in the reading. */
const perhaps = (weight: Derived): Derived =>
  weight.value === null ? weight : refigured(weight, weight.value, 0, weight.high as number);

function ofAll({ on, below, weight }: Over, reference: Derived, stated: Stop | null, asked: Asked): Reading {
  const { loads, totals, breakout } = asked;
  const origin = { source: 'what hangs below', at: on?.item.nameAt ?? null };
  const bare = bareOf(loads);
  const expected = plus(
    [
      { label: 'weight without allowance', value: bare },
      { label: 'gear below', value: weight },
    ],
    origin,
    {
      high: highOf(totals.loadWeight) + highOf(weight),
    },
  );
  const most = [
    { label: 'load weight', value: top(totals.loadWeight) },
    { label: 'gear below', value: top(weight) },
    ...(breakout.pull.value === 0 ? [] : [{ label: 'breakout', value: top(breakout.pull) }]),
  ];
  const broken = brokenLeg(totals);
  const breaking = breakout.pull.value === 0 ? null : plus(most, origin);
  return {
    on,
    below,
    slack: weight,
    breaking,
    expected: broken.length ? open('kg', broken) : expected,
    stop: broken.length ? open('kg', broken) : stated ? stopOf(stated, weight, reference) : plus(most, origin),
  };
}

/** A leg that runs nowhere leaves what hangs open, as it does the gross load. */
const brokenLeg = ({ gross, loadWeight, rigging, deductions }: Results['totals']) =>
  gross.value === null && [loadWeight, rigging, deductions].every(({ value }) => value !== null) ? gross.because : [];

const highOf = ({ high }: Derived): number => high ?? Number.NaN;

/** The heavy end as a figure of its own. */
const top = (value: Derived): Derived =>
  value.value === null || value.high === value.value ? value : refigured(value, value.high as number);

function plus(
  inputs: readonly Input[],
  origin: { readonly source: string; readonly at: unknown },
  { high }: { readonly high?: number } = {},
): Derived {
  const total = sum(
    inputs.map(({ value }) => value),
    'kg',
    { formula: inputs.map(({ label }) => label).join(' + '), inputs, ...origin },
  );
  if (total.value === null || high === undefined || !Number.isFinite(high)) return total;
  return refigured(total, total.value, total.low as number, high);
}

/** The governing weights without allowance. */
function bareOf(loads: readonly LoadResult[]): Derived {
  const each = loads.map(({ thing, weight, governing }) => ({
    label: thing.name,
    value: weight.value === null || !governing ? open('kg', weight.because) : near(governing.weight),
  }));
  const [only, second] = each;
  if (!only) return open('kg', [{ what: 'There is no load.', at: null }]);
  return second
    ? sum(
        each.map(({ value }) => value),
        'kg',
        { formula: 'sum of loads', inputs: each },
      )
    : only.value;
}

/** The figure itself, its tolerance left out: what is added for doubt is counted at the high end. */
const near = (weight: Derived): Derived =>
  weight.value === null ? weight : refigured(weight, weight.value, weight.low as number, weight.value);

// ---------------------------------------------------------------- a cell in one of several legs, or one of several hooks

/** Its share as it hangs, without allowance and dynamic factor, up to the worst of every way the legs can share. */
function ofShare(on: Thing, { hanging, loads, totals, breakout }: Asked): Reading {
  const figures = hanging.drawn.get(on);
  const [elastic, worst, angle] = [figures?.['elastic tension'], figures?.load, figures?.angle];
  const bare = bareOf(loads);
  const parts = [elastic, worst, bare, totals.loadWeight];
  const causes = unique([
    ...(figures
      ? []
      : hanging.because.length
        ? hanging.because
        : [{ what: `${on.name} is in no leg that was worked out.`, at: on.item.nameAt }]),
    ...parts.flatMap((one) => one?.because ?? []),
  ]);
  if (causes.length || !elastic || !worst) {
    const unknown = open('kg', causes);
    return {
      on,
      below: null,
      slack: null,
      breaking: breakout.pull.value === 0 ? null : unknown,
      expected: unknown,
      stop: unknown,
    };
  }
  const factor = Math.max(1, ...loads.map(({ thing }) => factorOf(thing)));
  const inputs = [
    { label: 'elastic tension', value: elastic },
    { label: 'weight without allowance', value: bare },
    { label: 'load weight', value: totals.loadWeight },
    { label: 'dynamic factor', value: known(factor, '1') },
  ];
  const share =
    ((elastic.value as number) / g) * ((bare.value as number) / (totals.loadWeight.value as number) / factor);
  const expected = known(
    share,
    'kg',
    {
      formula: 'elastic tension / 9.80665 * weight without allowance / load weight / dynamic factor',
      inputs,
      source: elastic.source,
      at: on.item.nameAt,
    },
    share,
    Math.max(share, worst.value as number),
  );
  const most = whileHeld(worst, breakout.pull, angle?.low ?? null);
  return { on, below: null, slack: null, breaking: breakout.pull.value === 0 ? null : most, expected, stop: most };
}

const factorOf = ({ item }: Thing): number => {
  const factor = given(item, 'dynamic factor');
  return factor.state === 'known' ? factor.quantity.value : 1;
};

// ---------------------------------------------------------------- where the lift stops

interface Stop {
  readonly load: Thing;
  readonly value: Derived;
}

/** The lowest `stop at` of the loads; open as soon as one is. */
function statedStop(loads: readonly LoadResult[]): Stop | null {
  const all = loads.flatMap(({ thing }): readonly Stop[] => {
    const stop = given(thing.item, 'stop at');
    if (stop.state === 'known') return [{ load: thing, value: asWritten(stop, 'kg', 'typed here') }];
    return stop.state === 'open' ? [{ load: thing, value: open('kg', stop.because, { at: stop.at }) }] : [];
  });
  const unknown = all.find(({ value }) => value.value === null);
  return unknown ?? [...all].sort((a, b) => (a.value.low as number) - (b.value.low as number))[0] ?? null;
}

/** The same stop on an instrument with other gear below it. */
function stopOf({ value }: Stop, weight: Derived, reference: Derived): Derived {
  if (value.value === null || weight === reference) return value;
  const inputs = [
    { label: 'stop at', value },
    { label: 'gear below', value: weight },
    { label: 'gear below the load cell', value: reference },
  ];
  const causes = unique([...weight.because, ...reference.because]);
  if (causes.length) return open('kg', causes);
  const more = (weight.value as number) - (reference.value as number);
  const origin = {
    formula: 'stop at + gear below - gear below the load cell',
    inputs,
    source: 'typed here',
    at: value.at,
  };
  return known(value.value + more, 'kg', origin, (value.low as number) + more, (value.high as number) + more);
}

/** Beyond this share of the heaviest that is credible a stop lets more pass than the plan knows of: an indicator's step, no more. Chosen here; no source. */
const step = 0.01;

/** A stop below what hangs as planned ends every lift; one above all that is credible ends none in time. Each is asked of the end of its tolerance that does so. */
function judgeStop({ load, value }: Stop, { on, expected, breaking }: Reading, gear: Derived, asked: Asked): void {
  const clause = load.item.clauses.get('stop at')?.[0];
  const heaviest = breaking?.value ?? (breaking ? null : expected.high);
  if (value.low === null || value.high === null || expected.value === null || !clause) return;
  const facts = { load: load.name, low: expected.low as number, cell: on?.name ?? null };
  const related = on ? [{ at: on.item.nameAt, says: 'shows it' }] : [];
  if (value.low < facts.low)
    asked.notes.add(
      'stop-doubtful',
      clause.at,
      { ...facts, kind: 'low', stop: value.low, most: expected.high as number, item: null, used: 0 },
      '',
      related,
    );
  else if (heaviest !== null && value.high > heaviest * (1 + step)) {
    const over = overAt((value.high - (gear.high as number)) / (heaviest - (gear.high as number)), asked);
    const kind = over ? 'over' : 'high';
    asked.notes.add(
      'stop-doubtful',
      clause.at,
      { ...facts, kind, stop: value.high, most: heaviest, item: over?.name ?? null, used: over?.used ?? 0 },
      '',
      related,
    );
  }
}

/** The item that would be used most where every load is so many times as heavy, if that is more than all it may carry. */
function overAt(times: number, { hanging }: Asked): { readonly name: string; readonly used: number } | null {
  const all = [...hanging.drawn].flatMap(([thing, figures]) => {
    const used = figures['capacity used']?.value ?? null;
    return used === null ? [] : [{ name: thing.name, used: used * times }];
  });
  const worst = all.sort((a, b) => b.used - a.used)[0];
  return worst && worst.used > 1 ? worst : null;
}
