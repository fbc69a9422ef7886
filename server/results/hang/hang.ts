// How the plan's loads hang: as drawn and in each stage, in every way a basket can lie, held against limits; the worst is what counts.
import { identity } from '../../mechanics/index.ts';
import type { BoundPlan, Item, Thing } from '../../plan/index.ts';
import { type Cause, type Derived, unique } from '../../quantities/derived.ts';
import { write } from '../../quantities/index.ts';
import type { Summed } from '../bodies.ts';
import { letGo } from '../breakout.ts';
import type { GearTable } from '../gear.ts';
import { because, Notes } from '../notes.ts';
import type { Layout } from '../place.ts';
import type { GearUse, LegUse, LoadResult, ResultProblem } from '../types.ts';
import type { Figures } from './figures.ts';
import type { HungLoad } from './hung.ts';
import type { Built } from './model.ts';
import type { Solved } from './solve.ts';
import { readStage, type Step } from './stages.ts';
import { hangWays, type Way } from './ways.ts';
import type { Stand } from './where.ts';
import { type Told, WorstFindings, worstOf } from './worse.ts';

export interface Hanging {
  /** Figures as drawn; things without figures are open for `because`. */
  readonly drawn: ReadonlyMap<Thing, Figures>;
  /** How each load hangs as drawn: tilt, low side, hook over the centre, reach below the hook. */
  readonly loads: readonly HungLoad[];
  /** Where everything stands as drawn; null where it is not worked out. */
  readonly stand: Stand | null;
  readonly stages: readonly HangingStage[];
  readonly because: readonly Cause[];
  readonly built: Built | null;
  readonly solved: Solved | null;
  readonly unjudged: readonly string[]; // in words, for the sheet's head
}

export interface HangingStage {
  readonly name: string;
  readonly item: Item;
  readonly figures: ReadonlyMap<Thing, Figures>; // the worst of its steps
  readonly because: readonly Cause[];
  /** Its loads in the attitude it ends in. */
  readonly loads: readonly HungLoad[];
  /** The attitude it has, or those a sweep begins and ends in, with where everything stands. */
  readonly stands: readonly { readonly angle: number | null; readonly stand: Stand }[];
  /** Over a sweep: at each angle of the incline (rad) the pull of each hook on what hangs (worst, N); null without a sweep. */
  readonly curve: readonly { readonly angle: number; readonly hooks: readonly number[] | null }[] | null;
  /** Of each hook of a sweep the angle at which it pulls most, rad. */
  readonly worst: readonly { readonly hook: Thing; readonly angle: number; readonly pull: number }[];
}

/** A load with what its parts and places are. */
export type HungFrom = LoadResult & { readonly body: Summed; readonly layout: Layout };

export interface HangInput {
  readonly plan: BoundPlan;
  readonly loads: readonly HungFrom[];
  readonly legs: readonly LegUse[];
  readonly gear: readonly GearUse[];
  readonly table: GearTable;
  readonly notes: Notes;
  /** Why what an item may carry is not known whatever hangs on it: its papers, the temperature, what its capacity is for. */
  readonly opens: ReadonlyMap<Thing, readonly Cause[]>;
  /** What it may take to free the load beside lifting it, kg; 0 once nothing holds it. */
  readonly held: Derived;
}

const nothing = (causes: readonly Cause[]): Hanging => ({
  drawn: new Map(),
  loads: [],
  stand: null,
  stages: [],
  because: causes,
  built: null,
  solved: null,
  unjudged: [],
});

/** The hang of a plan; every figure open where something stands in the way. */
export function hangPlan(input: HangInput): Hanging {
  const { plan, legs, notes } = input;
  if (!legs.some((leg) => !leg.broken))
    return nothing([{ what: 'No leg says how the load hangs.', at: plan.head?.at ?? null }]);
  const broken = legs.filter((leg) => leg.broken);
  if (broken.length) return nothing(broken.map((leg) => because('A leg is broken.', leg.item.at)));
  const lines = plan.items
    .filter((item) => item.keyword === 'rig')
    .flatMap((item) => [...item.opens, ...item.children.flatMap((child) => child.opens)]);
  if (lines.length) return nothing(lines.map((at) => because('A line of the rig cannot be read.', at)));
  // A line at file level that is lost may have been a leg: what the others take is not known without it.
  if (plan.opens.length)
    return nothing(plan.opens.map((at) => because('A line that cannot be read may be a leg.', at)));
  const drawn = together([hangWays(input, { angle: null, R: identity, many: false }, null)], [], plan);
  const stages = plan.items
    .filter((item) => item.keyword === 'stage' && item.file === plan.file)
    .map((item) => staged(item, input));
  notes.problems.push(...told(drawn.found, stages));
  return {
    drawn: drawn.figures,
    loads: drawn.loads,
    stand: drawn.stand,
    because: drawn.because,
    built: drawn.built,
    solved: drawn.solved,
    stages: stages.map((one) => one.stage),
    unjudged: [...new Set([...drawn.unjudged, ...stages.flatMap((one) => one.unjudged)])],
  };
}

type Together = Pick<Way, 'figures' | 'because' | 'loads' | 'stand' | 'built' | 'solved' | 'unjudged' | 'found'>;

/** The worst of all ways in all steps; what is open in one of them is open. */
function together(steps: readonly (readonly Way[])[], angles: readonly Step[], plan: BoundPlan): Together {
  const ways = steps.flat();
  const open = ways.filter((way) => way.because.length);
  const at = (i: number): string =>
    steps.length > 1 ? `at ${write(angles[i]?.angle ?? 0, 'rad', { system: plan.units, round: 'near' })}` : '';
  const tellings: Told[] = steps.flatMap((list, i) =>
    list.map((way) => ({ words: [at(i), way.words].filter(Boolean).join(', '), figures: way.figures })),
  );
  return {
    figures: open.length ? new Map() : worstOf(tellings, steps.length === 1 ? 'the worse of both ways it can lie' : ''),
    because: unique(open.flatMap((way) => way.because)),
    loads: open.length ? [] : (ways.at(-1)?.loads ?? []),
    stand: open.length ? null : (ways[0]?.stand ?? null),
    built: ways[0]?.built ?? null,
    solved: ways[0]?.solved ?? null,
    unjudged: ways.flatMap((way) => way.unjudged),
    found: worstFound(ways),
  };
}

function worstFound(ways: readonly Way[]): readonly ResultProblem[] {
  const all = new WorstFindings();
  for (const way of ways) for (const problem of way.found) all.take(problem);
  return all.list;
}

interface Staged {
  readonly stage: HangingStage;
  readonly found: readonly ResultProblem[];
  readonly unjudged: readonly string[];
}

/** A stage: what hangs in it, in each of its attitudes. */
function staged(item: Item, input: HangInput): Staged {
  const notes = new Notes();
  const read = readStage(item, { ...input, notes, held: letGo }); // it has left the ground
  const none = { item, figures: new Map(), loads: [], stands: [], curve: null, worst: [] };
  if ('because' in read)
    return { stage: { ...none, name: read.name, because: read.because }, found: notes.problems, unjudged: [] };
  if (!read.input.legs.length)
    return {
      stage: { ...none, name: read.name, because: [because('Nothing hangs in this stage.', item.at)] },
      found: notes.problems,
      unjudged: [],
    };
  const steps = read.steps.map((step) => hangWays(read.input, step, item));
  const all = together(steps, read.steps, input.plan);
  const figures = new Map(all.figures);
  const changed = read.input.loads.filter((load, i) => load !== input.loads[i]);
  for (const load of changed)
    figures.set(load.thing, {
      ...figures.get(load.thing),
      weight: load.weight,
      'cog x': load.cog[0],
      'cog y': load.cog[1],
      'cog z': load.cog[2],
    });
  return {
    stage: {
      name: read.name,
      item,
      figures,
      because: all.because,
      loads: all.loads,
      stands: all.because.length ? [] : standsOf(read.steps, steps),
      ...curveOf(read.steps, steps),
    },
    found: [...notes.problems, ...all.found],
    unjudged: all.unjudged,
  };
}

/** The attitude of a stage, or the two that a sweep begins and ends in. */
function standsOf(steps: readonly Step[], ways: readonly (readonly Way[])[]): HangingStage['stands'] {
  const ends = steps.length > 1 ? [0, steps.length - 1] : [0];
  return ends.flatMap((i) => {
    const stand = ways[i]?.[0]?.stand;
    return stand ? [{ angle: steps[i]?.angle ?? null, stand }] : [];
  });
}

/** The pull of each hook over the angles of a sweep, and where each is largest. */
function curveOf(steps: readonly Step[], ways: readonly (readonly Way[])[]): Pick<HangingStage, 'curve' | 'worst'> {
  if (steps.length < 2) return { curve: null, worst: [] };
  const hooks = ways.flat().find((way) => way.pulls)?.built?.hooks ?? [];
  const curve = steps.map(({ angle }, i) => {
    const pulls = (ways[i] ?? []).map((way) => way.pulls?.anchors ?? null);
    const known = pulls.length > 0 && pulls.every((one) => one !== null);
    return {
      angle: angle ?? 0,
      hooks: known ? hooks.map((_, k) => Math.max(...pulls.map((one) => one?.[k] ?? Number.NaN))) : null,
    };
  });
  const worst = hooks.flatMap((hook, k) => {
    const best = curve.reduce<{ angle: number; pull: number } | null>(
      (most, { angle, hooks: pulls }) =>
        pulls && (!most || (pulls[k] as number) > most.pull) ? { angle, pull: pulls[k] as number } : most,
      null,
    );
    return best ? [{ hook, ...best }] : [];
  });
  return { curve, worst };
}

/** Findings as drawn, and of each stage those that are new in it or worse there; a stage's carry its name. */
function told(drawn: readonly ResultProblem[], stages: readonly Staged[]): readonly ResultProblem[] {
  const all = new WorstFindings();
  for (const problem of drawn) all.take(problem);
  for (const { stage, found } of stages) for (const problem of found) all.take(problem, inStage(problem, stage));
  return all.list;
}

function inStage(problem: ResultProblem, { item, name }: HangingStage): ResultProblem {
  if (problem.at.row === item.at.row) return problem;
  const related = [...problem.related, { at: item.nameAt, says: 'stage' }];
  return { ...problem, facts: { ...problem.facts, inStage: name }, related } as unknown as ResultProblem;
}
