// Solves the model and finds the worst of every pull: over how the legs may share, and over every tolerance that is stated.
import {
  describe,
  type Envelope,
  envelope,
  envelopeOverBox,
  extremeSharings,
  type HangError,
  type HangModel,
  type HangResult,
  type Hung,
  type Placed,
  sectionForces,
  solve,
  sweep,
  withTensions,
} from '../../mechanics/hang/index.ts';
import type { Vec3 } from '../../mechanics/index.ts';
import { flattest } from './flattest.ts';
import type { Built } from './model.ts';

export interface Solved {
  readonly rest: HangResult;
  /** Worst pull at the upper end of each run, N; null: nothing bounds it. */
  readonly worst: readonly (number | null)[];
  readonly least: readonly number[]; // smallest pull, N
  readonly redundancy: number;
  readonly governs: readonly ('elastic' | 'friction' | 'sharing' | 'tolerance')[]; // what makes it the worst
  /** Worst pull on each point: bodies, then points, N. */
  readonly points: readonly (readonly number[])[];
  readonly anchors: readonly number[]; // worst size of the force on each, N
  /** Of each body with an axis, N: as it hangs, and the worst over every way the legs can share. */
  readonly compression: readonly ({ readonly value: number; readonly worst: number } | null)[];
  /** The runs whose pull the sharing decides; of the ways to share the one that pulls any of them hardest: which, and those slack in it; null: none, or too many ways to tell. */
  readonly sharing: {
    readonly shared: readonly number[];
    readonly hardest: number;
    readonly slack: readonly number[];
  } | null;
  /** Flattest angle of each run over the tolerances, and with slings that do not stretch where stretch is assumed, rad; null: slack. */
  readonly angles: readonly (number | null)[];
  /** Largest tilt of each body over the tolerances, rad. */
  readonly tilts: readonly number[];
  readonly unstableCorners: number;
  readonly failedCorner: HangError | null;
  /** Of the tolerances: every corner was solved, or with many lengths only those that sensitivity asks for, with a margin for it. */
  readonly swept: 'nothing' | 'every corner' | 'corners by sensitivity';
}

/** Added to pulls found by sensitivity, of all weight: it missed a fourteenth of this at most. */
const quickMargin = 1e-3;
/** Dimensions up to which every corner of the tolerances is solved: of one attitude, and of each of the many of a sweep. */
const everyCorner = { one: 8, many: 4 };

const kept = new Map<string, Solved | HangError>();
const most = 160;

/** The same numbers give the same answer, whatever was typed before; kept by the model's numbers. `many`: one of the attitudes of a sweep. */
export function solveRig(built: Built, many = false): Solved | HangError {
  const key = JSON.stringify([
    many,
    built.model,
    built.edges.map((one) => [one.run.tolerance, one.run.assumed, one.edge.friction]),
    built.bodies.map((one) => one.half),
  ]);
  const known = kept.get(key);
  if (known) return known;
  const solved = work(built, many);
  kept.set(key, solved);
  if (kept.size > most) kept.delete(kept.keys().next().value as string);
  return solved;
}

/** Of a load that does not hang at rest. */
const nothing: Omit<Solved, 'rest'> = {
  redundancy: 0,
  worst: [],
  least: [],
  governs: [],
  points: [],
  anchors: [],
  compression: [],
  sharing: null,
  unstableCorners: 0,
  failedCorner: null,
  swept: 'nothing',
  tilts: [],
  angles: [],
};

function work(built: Built, many: boolean): Solved | HangError {
  const hung = solve(built.model);
  if ('error' in hung) return hung;
  const rest = describe(hung);
  if (rest.status === 'unstable') return { ...nothing, rest };
  const n = built.model.slings.length;
  const elastic = rest.slings.map((sling) => sling.upperTension);
  const rub = (s: number): number => built.edges[s]?.edge.friction ?? 1;
  const worst: (number | null)[] = elastic.map((pull, s) => pull * rub(s));
  const least = rest.slings.map((sling) => sling.tension);
  const governs: Solved['governs'][number][] = elastic.map((_, s) => (rub(s) > 1 ? 'friction' : 'elastic'));
  const raise = (s: number, free: number | null, by: Solved['governs'][number]): void => {
    const now = worst[s] as number | null;
    const value = free === null ? null : free * rub(s);
    if (now !== null && (value === null || value > now * (1 + 1e-12))) {
      worst[s] = value;
      governs[s] = by;
    }
  };
  const over = (s: number): number => (elastic[s] as number) - (rest.slings[s]?.tension ?? 0); // what the sling's own weight adds at its top
  const shares = envelope(hung);
  for (let s = 0; s < n; s++) {
    const share = shares.slings[s] as { least: number; most: number | null };
    raise(s, share.most === null ? null : share.most + over(s), 'sharing');
    least[s] = Math.min(least[s] as number, share.least);
  }
  const stiff = built.assumedStiffness ? unstretched(built) : null;
  stiff?.rest.slings.forEach((sling, s) => {
    raise(s, sling.upperTension, 'tolerance');
  });
  const { hooks, ...loose } = tolerances(built, many, rest, shares.redundancy, raise, least, over);
  const most = peaks(built.model, hung, rest, worst, elastic, shares);
  return {
    rest,
    worst,
    least,
    redundancy: shares.redundancy,
    governs,
    ...most,
    ...loose,
    angles: loose.angles.map((angle, s) => flatter(angle, stiff && flattest(built, stiff.rest, s))),
    compression: most.compression.map((one, b) =>
      one && stiff ? { ...one, worst: Math.max(one.worst, stiff.compression[b] ?? 0) } : one,
    ),
    anchors: most.anchors.map((force, a) => Math.max(force, hooks[a] ?? 0)),
  };
}

/** Legs that stretch hang steeper; where nobody states how much they stretch, the same rig without any counts as well. */
function unstretched(
  built: Built,
): { readonly rest: HangResult; readonly compression: readonly (number | null)[] } | null {
  const model: HangModel = {
    ...built.model,
    slings: built.model.slings.map((sling, s) =>
      built.edges.some((edge) => edge.sling === s && edge.run.assumed)
        ? { ...sling, stiffness: sling.stiffness * 1000 }
        : sling,
    ),
  };
  const hung = solve(model, { quick: true });
  if ('error' in hung || hung.kind.status === 'unstable') return null;
  const rest = describe(hung);
  return {
    rest,
    compression: model.bodies.map((_, b) => sectionForces(model, rest, b)?.compression.value ?? null),
  };
}

const flatter = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b);

/** What tolerances add: to tilts and hooks by themselves, to runs through `raise`. */
interface Loose extends Pick<Solved, 'unstableCorners' | 'failedCorner' | 'swept' | 'angles'> {
  readonly tilts: readonly number[];
  readonly hooks: readonly number[];
}

/** Every stated tolerance of centre and length; where the legs share freely, sharing at every corner of the centre as well. */
function tolerances(
  built: Built,
  many: boolean,
  rest: HangResult,
  redundancy: number,
  raise: (s: number, value: number | null, by: 'sharing' | 'tolerance') => void,
  least: number[],
  over: (s: number) => number,
): Loose {
  const centres = built.bodies.flatMap(({ half }, body) => (half ? [{ body, half }] : []));
  const lengths = built.edges.map((one) => one.run.tolerance);
  const watch = (placed: Placed): readonly number[] => [
    ...placed.bodies.map((body) => body.tilt),
    ...placed.anchors.map((anchor) => size(anchor.force)),
    ...placed.slings.map((_, s) => flattest(built, placed, s) ?? Math.PI / 2),
  ];
  const nominal = rest.slings.map((_, s) => flattest(built, rest, s));
  const seen = watch(rest);
  const loose = (most: readonly number[]): Pick<Loose, 'tilts' | 'hooks'> => ({
    tilts: most.slice(0, rest.bodies.length),
    hooks: most.slice(rest.bodies.length, rest.bodies.length + rest.anchors.length),
  });
  const dimensions =
    centres.flatMap(({ half }) => half.filter((width) => width > 0)).length +
    lengths.filter((width) => width > 0).length;
  if (!dimensions) return { unstableCorners: 0, failedCorner: null, swept: 'nothing', angles: nominal, ...loose(seen) };
  const quickOver = many ? everyCorner.many : everyCorner.one;
  const how = dimensions > quickOver ? 'corners by sensitivity' : 'every corner';
  const swept = sweep(built.model, { centres, lengths, quickOver }, watch);
  if ('error' in swept) return { unstableCorners: 1, failedCorner: swept, swept: how, angles: nominal, ...loose(seen) };
  const first = rest.bodies.length + rest.anchors.length;
  const angles = nominal.map((angle, s) => flatter(angle, swept.watched[first + s]?.low ?? null));
  const most = { angles, ...loose(seen.map((value, i) => swept.watched[i]?.high ?? value)) };
  const margin =
    how === 'every corner' ? 0 : quickMargin * built.model.bodies.reduce((sum, body) => sum + body.weight, 0);
  swept.tensions.forEach((range, s) => {
    raise(s, range.high + over(s) + margin, 'tolerance');
    least[s] = Math.min(least[s] as number, range.low);
  });
  if (redundancy > 0)
    for (const { body, half } of centres) {
      const shares = envelopeOverBox(built.model, body, half);
      if ('error' in shares) return { unstableCorners: swept.unstable + 1, failedCorner: shares, swept: how, ...most };
      shares.slings.forEach((one, s) => raise(s, one.most === null ? null : one.most + over(s), 'tolerance'));
    }
  return { unstableCorners: swept.unstable, failedCorner: null, swept: how, ...most };
}

/** Worst pulls on points and hooks and worst compression of beams: over every sharing that is possible, and raised by what tolerances add to the runs there. */
function peaks(
  model: HangModel,
  hung: Hung,
  rest: HangResult,
  worst: readonly (number | null)[],
  elastic: readonly number[],
  shares: Envelope,
): Pick<Solved, 'points' | 'anchors' | 'compression' | 'sharing'> {
  const states = extremeSharings(hung);
  if (!states) return bounds(model, hung, rest, worst, shares);
  const all: readonly Placed[] = [rest, ...states.map((state) => withTensions(hung, state))];
  const rise = (s: number): number =>
    worst[s] === null ? Number.POSITIVE_INFINITY : (worst[s] as number) - (elastic[s] as number);
  const points = model.bodies.map((body, b) =>
    body.points.map((_, p) => {
      const touching = touchingAt(model, b, p);
      const pull = (placed: Placed): number =>
        size(
          [0, 1, 2].map((axis) =>
            touching.reduce((total, { s, i }) => total + forceAt(placed, s, i, axis), 0),
          ) as unknown as Vec3,
        );
      return Math.max(...all.map(pull), pull(rest) + touching.reduce((sum, { s }) => sum + rise(s), 0));
    }),
  );
  const anchors = model.anchors.map((_, a) => Math.max(...all.map((placed) => size(placed.anchors[a]?.force as Vec3))));
  const compression = model.bodies.map((body, b) => {
    const along = (placed: Placed): number => sectionForces(model, placed, b)?.compression.value ?? 0;
    return body.axis ? { value: along(rest), worst: Math.max(...all.map(along)) } : null;
  });
  return { points, anchors, compression, sharing: sharingIn(states) };
}

/** Too many ways to share to try each: every run at its own most at once, which none of them exceeds. */
function bounds(
  model: HangModel,
  hung: Hung,
  rest: HangResult,
  worst: readonly (number | null)[],
  shares: Envelope,
): ReturnType<typeof peaks> {
  const full = withTensions(
    hung,
    Float64Array.from(shares.slings, ({ most: top }, s) =>
      worst[s] === null || top === null ? Number.POSITIVE_INFINITY : Math.max(top, worst[s] as number),
    ),
  );
  const at = (s: number, i: number): number => sizeOr(full.slings[s]?.forces[i] as Vec3);
  const points = model.bodies.map((body, b) =>
    body.points.map((_, p) => touchingAt(model, b, p).reduce((sum, { s, i }) => sum + at(s, i), 0)),
  );
  const anchors = model.anchors.map((_, a) =>
    model.slings.reduce(
      (sum, sling, s) =>
        sling.path.reduce((total, node, i) => total + ('anchor' in node && node.anchor === a ? at(s, i) : 0), sum),
      0,
    ),
  );
  // What presses one side of a section stands against as much on the other, so at most half of all there is.
  const compression = model.bodies.map((body, b) =>
    body.axis
      ? {
          value: sectionForces(model, rest, b)?.compression.value ?? 0,
          worst:
            body.points.reduce(
              (sum, _, p) => sum + touchingAt(model, b, p).reduce((total, { s, i }) => total + at(s, i), 0),
              0,
            ) / 2,
        }
      : null,
  );
  return { points, anchors, compression, sharing: null };
}

const forceAt = (placed: Placed, s: number, i: number, axis: number): number =>
  placed.slings[s]?.forces[i]?.[axis] as number;

const touchingAt = (model: HangModel, b: number, p: number) =>
  model.slings.flatMap((sling, s) =>
    sling.path.flatMap((node, i) => ('body' in node && node.body === b && node.point === p ? [{ s, i }] : [])),
  );

/** Which runs share, and the worst of the ways: the one with the hardest pull on any of them. The first state is the elastic one. */
function sharingIn(states: readonly Float64Array[]): Solved['sharing'] {
  const [elastic] = states as readonly [Float64Array];
  const peak = Math.max(...states.map((state) => Math.max(...state)));
  const shared = [...elastic.keys()].filter((s) =>
    states.some((state) => Math.abs((state[s] as number) - (elastic[s] as number)) > 1e-6 * peak),
  );
  let [worst, hardest] = [elastic, shared[0]];
  for (const state of states)
    for (const s of shared)
      if ((state[s] as number) > (worst[hardest as number] as number) * (1 + 1e-9)) [worst, hardest] = [state, s];
  if (hardest === undefined) return null;
  return { shared, hardest, slack: shared.filter((s) => !((worst[s] as number) > 1e-6 * peak)) };
}

const size = (v: Vec3): number => Math.hypot(v[0], v[1], v[2]);
const sizeOr = (v: Vec3): number => (v.every(Number.isFinite) ? size(v) : Number.POSITIVE_INFINITY);
