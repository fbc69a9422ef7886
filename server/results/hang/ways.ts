// One attitude of what hangs, in the one or two ways its baskets can lie: the rig built, solved, read out and held against limits.
import { solve } from '../../mechanics/hang/index.ts';
import type { Item, Thing } from '../../plan/index.ts';
import type { Cause } from '../../quantities/derived.ts';
import { because, Notes } from '../notes.ts';
import { limitOn } from '../rules.ts';
import type { LegUse, ResultProblem } from '../types.ts';
import { type Figures, figuresOf, type Pulls, pullsOf, pullsOfShare } from './figures.ts';
import type { HangInput } from './hang.ts';
import { awayFrom, type HungLoad, hungLoads, hungOnLines } from './hung.ts';
import { hungGear } from './hung-gear.ts';
import { judge, unsolved, unstable } from './judge.ts';
import { type Built, build } from './model.ts';
import { network } from './network.ts';
import { plumb } from './plumb.ts';
import { ratingsOf } from './ratings.ts';
import { type Solved, solveRig } from './solve.ts';
import { levelled, type Step } from './stages.ts';
import { linesOf, pullsStraightUp, share } from './tandem.ts';
import { type Stand, standing, standingOnLines } from './where.ts';

export interface Way {
  /** What tells it from the other way: `baskets held`, `baskets running free`; '' where there is one. */
  readonly words: string;
  readonly figures: ReadonlyMap<Thing, Figures>;
  readonly because: readonly Cause[]; // not empty: nothing is known of this way
  readonly falls: boolean; // it would turn over
  readonly built: Built | null;
  readonly solved: Solved | null;
  readonly pulls: Pulls | null;
  readonly loads: readonly HungLoad[];
  readonly stand: Stand | null; // where everything stands
  readonly found: readonly ResultProblem[];
  readonly unjudged: readonly string[];
}

/** How far a load may hang otherwise when its baskets slip, before friction is said to hold it: 3 deg. Chosen here; no source. */
const slips = Math.PI / 60;

/** What hangs in one attitude: one way, or two where a basket says neither `runs free` nor `runs held`. A load that only friction keeps upright is told of. */
export function hangWays(input: HangInput, step: Step, where: Item | null): readonly Way[] {
  const held = way(input, true, step, where);
  const undecided = network(input.legs, true).undecided;
  const [leg] = undecided;
  if (!leg) return [held];
  const free = way(input, false, step, where);
  if (held.because.length) return [held];
  const moved = free.because.length
    ? 0
    : Math.max(...free.loads.map((load, i) => Math.abs(load.tilt - (held.loads[i]?.tilt ?? 0))), 0);
  if (!free.falls && moved <= slips)
    return [
      { ...held, words: 'baskets held' },
      { ...free, words: 'baskets running free' },
    ];
  const notes = new Notes();
  const slings = undecided.flatMap(({ steps }) =>
    steps.flatMap(({ thing }) => (thing.item.keyword === 'sling' ? [thing.name] : [])),
  );
  notes.add(
    'friction-holds',
    leg.item.at,
    { load: input.loads[0]?.thing.name ?? 'the load', slings, over: free.falls, angle: moved },
    '',
    undecided.slice(1).map((one) => ({ at: one.item.at, says: 'leg' })),
  );
  const kept = { ...held, words: 'baskets held', found: [...held.found, ...notes.problems] };
  return free.falls
    ? [kept]
    : [
        kept,
        {
          ...free,
          words: 'baskets running free',
          found: free.found.filter((problem) => problem.slug !== 'hang-tilted'),
        },
      ];
}

function way(input: HangInput, gripped: boolean, step: Step, where: Item | null): Way {
  const notes = new Notes();
  const own: HangInput = { ...input, notes, loads: input.loads.map((load) => levelled(load, step.R)) };
  const at = (where ?? own.legs[0]?.item)?.at as never;
  const none = { ...nothing, found: notes.problems };
  const open: Opens = (causes, more = {}) => ({
    ...none,
    because: causes.length ? causes : [because('How it hangs is not known.', at)],
    ...more,
  });
  const unjudged = (leg: LegUse, why: string): Way =>
    open([notJudged(leg, why, notes)], { unjudged: [`the pull in ${why}`] });
  const net = network(own.legs, gripped);
  const [first] = net.unbuilt;
  if (first) return unjudged(first.leg, first.why);
  if (!net.nodes.some((node) => node.kind === 'hook')) return open([because('The legs hang from nothing.', at)]);
  const { gear, table } = own;
  const uses = new Map(gear.map((one) => [one.thing, one]));
  const ratings = ratingsOf(own); // says what hitches lack, whether or not the rig can be built
  const built = build(net, {
    loads: own.loads,
    beams: (thing) => table.points(thing.item),
    uses,
    table,
    hung: hungGear(gear, own.plan),
  });
  if ('because' in built) return open(built.short ? [tooShort(own, built.short)] : built.because);
  const why = hooksUnjudged(built);
  if (why) return unjudged(own.legs[0] as LegUse, why);
  const boxOf = (load: Thing) => own.loads.find((one) => one.thing === load)?.body.box ?? null;
  const read: Reads = (rig, pulls, solved, loads, stand) => {
    const figures = figuresOf(built, pulls, uses, ratings);
    judge(own, rig, pulls, figures, solved, where);
    return { ...none, figures, built: rig, solved, pulls, loads, stand, unjudged: ratings.words };
  };
  if (!pullsStraightUp(built)) return freely(own, built, step, where, open, boxOf, read);
  const lines = linesOf(built);
  return lines ? onTwoLines(own, built, lines, step, open, boxOf, read) : onLines(own, built, step, open, boxOf, read);
}

const nothing: Omit<Way, 'found'> = {
  words: '',
  figures: new Map(),
  because: [],
  falls: false,
  built: null,
  solved: null,
  pulls: null,
  loads: [],
  stand: null,
  unjudged: [],
};

const tooShort = (
  { notes, loads }: HangInput,
  { leg, reason }: { readonly leg: LegUse; readonly reason: string },
): Cause => notes.add('hang-unsolved', leg.item.at, { load: loads[0]?.thing.name ?? 'the load', reason }, `${reason}.`);

type Opens = (causes: readonly Cause[], more?: Partial<Way>) => Way;
type Boxes = Parameters<typeof hungLoads>[2];
type Reads = (rig: Built, pulls: Pulls, solved: Solved | null, loads: readonly HungLoad[], stand: Stand) => Way;

/** Two hooks with one line each. */
function onTwoLines(
  input: HangInput,
  built: Built,
  lines: readonly [number, number],
  step: Step,
  open: Opens,
  boxOf: Boxes,
  read: Reads,
): Way {
  const found = share(built, lines, step.R);
  if ('reason' in found)
    return open([unsolved(input, built, { error: 'two-hooks', name: null, reason: found.reason })], { built });
  if (found.depth < 0) return open([unstable(input, built, -found.depth)], { built, falls: true });
  const loads = hungOnLines(built, found, boxOf(built.bodies[0]?.thing as Thing));
  return read(built, pullsOfShare(built, found), null, loads, standingOnLines(built, found, boxOf));
}

/** Two hooks with several legs, rings or beams under them. */
function onLines(input: HangInput, built: Built, step: Step, open: Opens, boxOf: Boxes, read: Reads): Way {
  const rig = plumb(built, step.R);
  if ('reason' in rig)
    return open([unsolved(input, built, { error: 'two-hooks', name: null, reason: rig.reason })], { built });
  if ('error' in rig)
    return rig.error === 'does-not-hang-as-drawn'
      ? open([unstable(input, built)], { built, falls: true })
      : open([unsolved(input, built, rig)], { built });
  const solved = solveRig(rig, step.many);
  if ('error' in solved) return open([unsolved(input, built, solved)], { built });
  if (overturns(solved.rest)) return open([unstable(input, built)], { built, solved, falls: true });
  const ends = loses(solved);
  if (ends) return open([unsolved(input, built, ends)], { built, solved });
  return read(rig, pullsOf(rig, solved), solved, hungLoads(rig, solved.rest, boxOf), standing(rig, solved.rest, boxOf));
}

/** One hook, or hooks with places of their own: the load finds its attitude; a stage that asks for another is not worked out. */
function freely(
  input: HangInput,
  drawn: Built,
  step: Step,
  where: Item | null,
  open: Opens,
  boxOf: Boxes,
  read: Reads,
): Way {
  const inclined = step.angle !== null;
  const built: Built = inclined
    ? {
        ...drawn,
        model: {
          ...drawn.model,
          bodies: drawn.model.bodies.map((body, b) =>
            drawn.bodies[b]?.thing.kind === 'load' ? { ...body, orientation: step.R } : body,
          ),
        },
      }
    : drawn;
  const limit = limitOn(input.plan, ['load'], 'tilt', Math.PI / 36, 'most').value;
  const asked = (): Way => {
    if (built.hooks.length > 1)
      return open(
        [
          unsolved(input, built, {
            error: 'two-hooks',
            name: null,
            reason: 'hooks at these places do not hold it as the stage says',
          }),
        ],
        { built },
      );
    const name = where?.names[0] ?? '';
    return open(
      [
        input.notes.add(
          'not-judged',
          where?.at as never,
          { thing: `Stage ${name}`.trim(), result: 'what each item takes in it' },
          'On one hook a load does not stay inclined by itself: what sets it so is not in the plan.',
        ),
      ],
      { built, unjudged: ['stages that incline a load on one hook'] },
    );
  };
  // Whether it stays as the stage says, before more is worked out of it.
  const first = inclined ? solve(built.model, { quick: true }) : null;
  if (first && ('error' in first || first.turned > limit)) return asked();
  const solved = solveRig(built, step.many);
  if ('error' in solved) return inclined ? asked() : open([unsolved(input, built, solved)], { built });
  if (overturns(solved.rest))
    return inclined ? asked() : open([unstable(input, built)], { built, solved, falls: true });
  const ends = loses(solved);
  if (ends) return open([unsolved(input, built, ends)], { built, solved });
  const loads = hungLoads(built, solved.rest, boxOf);
  if (inclined && loads.some((load) => awayFrom(load.up, step.R) > limit)) return asked();
  return read(built, pullsOf(built, solved), solved, loads, standing(built, solved.rest, boxOf));
}

/** It lets go of the pose drawn: no rest there, or one that is found only upside down. What merely turns far is tilted. */
const overturns = (rest: Solved['rest']): boolean =>
  rest.status === 'unstable' || (rest.turnsOver && rest.turned > Math.PI / 2);

/** It rests as stated, but not everywhere within what is stated: at some ends of its tolerances it falls or finds no rest. */
function loses({
  unstableCorners,
  failedCorner,
}: Solved): { readonly error: string; readonly name: string | null; readonly reason: string } | null {
  if (!unstableCorners && !failedCorner) return null;
  const falls = unstableCorners > 0 && (!failedCorner || failedCorner.error === 'does-not-hang-as-drawn');
  return {
    error: 'tolerances',
    name: null,
    reason: falls
      ? 'at an end of its tolerances it turns over, or far from how it is drawn'
      : 'at an end of its tolerances there is no position at rest',
  };
}

/** Hooks whose pull is not worked out, in words. */
function hooksUnjudged({ hooks }: Built): string | null {
  const placed = hooks.filter((hook) => hook.item.clauses.has('at')).length;
  if (placed > 0 && placed < hooks.length) return 'hooks of which only some have a place';
  return hooks.length > 2 && !placed ? 'more than two hooks that pull straight up' : null;
}

const notJudged = (leg: LegUse, why: string, notes: Notes): Cause =>
  notes.add(
    'not-judged',
    leg.item.at,
    { thing: `How ${why} shares its pull`, result: 'the tension in every leg' },
    `This version does not work out ${why}.`,
  );
