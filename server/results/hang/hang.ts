// How the plan's loads hang: builds the rig, solves it as drawn and in each stage, and holds every item against its limits.
import type { BoundPlan, Item, Thing } from '../../plan/index.ts';
import type { Cause } from '../../quantities/derived.ts';
import type { GearTable } from '../gear.ts';
import { because, type Notes } from '../notes.ts';
import type { Layout } from '../place.ts';
import type { GearUse, LegUse, LoadResult } from '../types.ts';
import { type Figures, figuresOf, type Pulls, pullsOf, pullsOfShare } from './figures.ts';
import { judge, unstable, unsolved } from './judge.ts';
import { build, type Built } from './model.ts';
import { network, type Network } from './network.ts';
import { ratingsOf } from './ratings.ts';
import { type Solved, solveRig } from './solve.ts';
import { pullsStraightUp, share } from './tandem.ts';

export interface Hanging {
  /** Figures as drawn; things without figures are open for `because`. */
  readonly drawn: ReadonlyMap<Thing, Figures>;
  readonly stages: readonly { readonly name: string; readonly figures: ReadonlyMap<Thing, Figures>; readonly because: readonly Cause[] }[];
  readonly because: readonly Cause[];
  readonly built: Built | null;
  readonly solved: Solved | null;
  readonly unjudged: readonly string[]; // in words, for the sheet's head
}

export interface HangInput {
  readonly plan: BoundPlan;
  readonly loads: readonly (LoadResult & { readonly layout: Layout })[];
  readonly legs: readonly LegUse[];
  readonly gear: readonly GearUse[];
  readonly table: GearTable;
  readonly notes: Notes;
  /** Why what an item may carry is not known whatever hangs on it: its papers, the temperature, what its capacity is for. */
  readonly opens: ReadonlyMap<Thing, readonly Cause[]>;
}

const nothing = (causes: readonly Cause[]): Hanging => ({ drawn: new Map(), stages: [], because: causes, built: null, solved: null, unjudged: [] });

/** The hang of a plan; every figure open where something stands in the way. */
export function hangPlan(input: HangInput): Hanging {
  const { plan, legs, gear, table, notes, loads } = input;
  const sound = legs.filter((leg) => !leg.broken);
  if (!sound.length) return nothing([{ what: 'No leg says how the load hangs.', at: plan.head?.at ?? null }]);
  const stages = plan.items.filter((item) => item.keyword === 'stage' && item.file === plan.file);
  if (sound.length < legs.length) return nothing(legs.filter((leg) => leg.broken).map((leg) => because('A leg is broken.', leg.item.at)));
  const net = network(sound);
  const [first] = net.unbuilt;
  if (first) return unbuilt(first.leg.item, first.why, notes);
  const lines = plan.items.filter((item) => item.keyword === 'rig').flatMap((item) => [...item.opens, ...item.children.flatMap((child) => child.opens)]);
  if (lines.length) return nothing(lines.map((at) => because('A line of the rig cannot be read.', at)));
  if (!net.nodes.some((node) => node.kind === 'hook')) return nothing([because('The legs hang from nothing.', sound[0]?.item.at as never)]);
  const uses = new Map(gear.map((one) => [one.thing, one]));
  const built = build(net, { loads, beams: (thing) => table.points(thing.item), uses, table });
  if ('because' in built) return nothing(built.because);
  return hung(input, net, built, uses, stages);
}

function unbuilt(at: Item, why: string, notes: Notes): Hanging {
  const cause = notes.add('not-judged', at.at, { thing: `How ${why} shares its pull`, result: 'the tension in every leg' }, `This version does not work out ${why}.`);
  return { ...nothing([cause]), unjudged: [`the pull in ${why}`] };
}

function hung(input: HangInput, net: Network, built: Built, uses: ReadonlyMap<Thing, GearUse>, stages: readonly Item[]): Hanging {
  const ratings = ratingsOf(input);
  const read = (pulls: Pulls) => figuresOf(built, pulls, uses, ratings);
  if (pullsStraightUp(built)) return straightUp(input, built, stages, read, ratings.words);
  const solved = solveRig(built);
  if ('error' in solved) return { ...nothing([unsolved(input, built, solved)]), built, unjudged: ratings.words };
  if (overturns(solved.rest)) return { ...nothing([unstable(input, built)]), built, solved, unjudged: ratings.words };
  const pulls = pullsOf(built, solved);
  const drawn = read(pulls);
  judge(input, built, pulls, drawn, solved, null);
  const words = [...ratings.words];
  for (const stage of stages) {
    input.notes.add('not-judged', stage.at, { thing: `Stage ${stage.names[0] ?? ''}`.trim(), result: 'what each item takes in it' }, '');
    words.push('stages of a lift that hangs from one hook or from hooks with a place');
  }
  return { drawn, stages: stages.map((stage) => ({ name: stage.names[0] ?? '', figures: new Map(), because: [because('This version does not work this stage out.', stage.at)] })), because: [], built, solved, unjudged: [...new Set(words)] };
}

/** It lets go of the pose drawn: no rest there, or one that is found only upside down. What merely turns far is tilted. */
const overturns = (rest: Solved['rest']): boolean => rest.status === 'unstable' || (rest.turnsOver && rest.turned > Math.PI / 2);

/** Two hooks that pull straight up: as drawn, and inclined as each stage says; a sweep shows its worst step. */
function straightUp(input: HangInput, built: Built, stages: readonly Item[], read: (pulls: Pulls) => ReadonlyMap<Thing, Figures>, words: readonly string[]): Hanging {
  const first = share(built, null);
  if ('unbuilt' in first) return unbuilt(input.legs[0]?.rigItem as Item, first.unbuilt, input.notes);
  const at = (found: ReturnType<typeof share>, where: Item | null): { figures: ReadonlyMap<Thing, Figures>; because: readonly Cause[] } => {
    if ('unbuilt' in found) return { figures: new Map(), because: [because(found.unbuilt, (where ?? input.legs[0]?.item)?.at as never)] };
    if ('reason' in found) return { figures: new Map(), because: [unsolved(input, built, { error: 'two-hooks', name: null, reason: found.reason })] };
    if (found.depth < 0) return { figures: new Map(), because: [unstable(input, built, -found.depth)] };
    const pulls = pullsOfShare(built, found);
    const figures = read(pulls);
    judge(input, built, pulls, figures, null, where);
    return { figures, because: [] };
  };
  const drawn = at(first, null);
  const done = stages.map((stage) => {
    const value = stage.clauses.get('incline')?.[0]?.value;
    if (stage.clauses.has('without') || stage.opens.length || (value && value.kind !== 'tilt')) {
      const cause = input.notes.add('not-judged', stage.at, { thing: `Stage ${stage.names[0] ?? ''}`.trim(), result: 'what each item takes in it' }, 'This version does not work this stage out.');
      return { name: stage.names[0] ?? '', figures: new Map<Thing, Figures>(), because: [cause] };
    }
    const tilt = value?.kind === 'tilt' ? value : null;
    return { name: stage.names[0] ?? '', ...at(tilt ? worstStep(built, tilt) : first, stage) };
  });
  return { drawn: drawn.figures, stages: done, because: drawn.because, built, solved: null, unjudged: words };
}

const step = Math.PI / 36; // 5 deg

/** The shares of an incline; of a sweep the largest of each line over its steps, with the largest tilt. */
function worstStep(built: Built, tilt: { readonly axis: string; readonly from: { readonly value: number }; readonly to: { readonly value: number } | null }): ReturnType<typeof share> {
  const end = tilt.to?.value ?? tilt.from.value;
  const n = Math.max(1, Math.ceil(Math.abs(end - tilt.from.value) / step - 1e-9));
  const angles = tilt.to ? Array.from({ length: n + 1 }, (_, i) => tilt.from.value + ((end - tilt.from.value) * i) / n) : [tilt.from.value];
  const found = angles.map((angle) => share(built, { axis: tilt.axis, angle }));
  const bad = found.find((one) => !('pulls' in one));
  if (bad) return bad;
  const fine = found as Extract<(typeof found)[number], { readonly pulls: unknown }>[];
  const most = (pick: (one: (typeof fine)[number]) => number) => Math.max(...fine.map(pick));
  const [first] = fine as [(typeof fine)[number]];
  return { ...first, pulls: [most((one) => one.pulls[0]), most((one) => one.pulls[1])], worst: [most((one) => one.worst[0]), most((one) => one.worst[1])], least: [Math.min(...fine.map((one) => one.least[0])), Math.min(...fine.map((one) => one.least[1]))], tilt: most((one) => one.tilt), depth: Math.min(...fine.map((one) => one.depth)) };
}
