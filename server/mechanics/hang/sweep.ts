// Worst tensions over tolerances: centres anywhere in their boxes, slings a little longer or shorter than stated.

import type { Vec3 } from '../vector.ts';
import { zeroBand } from './classify.ts';
import { descend, type Room, roomFor } from './descent.ts';
import { placedAt } from './describe.ts';
import { measure } from './energy.ts';
import { cholesky } from './linear.ts';
import type { HangError, HangModel, Placed } from './model.ts';
import { copyPose, type Pose, turnBetween, unknowns } from './pose.ts';
import type { Rig } from './rig.ts';
import { lengthRates, type Rates } from './sensitivity.ts';
import { type Hung, solve } from './solve.ts';
import { scaledHessian } from './stiffness.ts';

export interface Tolerances {
  /** Half widths of the box a body's centre lies in, body axes, m. */
  readonly centres: readonly { readonly body: number; readonly half: Vec3 }[];
  /** Of each sling, ± m; 0 for none. */
  readonly lengths: readonly number[];
  /**
   * While typing: over so many dimensions lengths are taken as the nominal sensitivities ask, once for each sling and corner of
   * the centres. Missed 7e-5 of the weight in one of twelve rigs tried, so a thousandth is to be added to what it finds.
   */
  readonly quickOver?: number;
}

export interface Range {
  readonly low: number;
  readonly high: number;
}

export interface Swept {
  readonly tensions: readonly Range[];
  /** Of each number watched; null where it was never there. */
  readonly watched: readonly (Range | null)[];
  /** Corner with the largest tension of each sling: the sign of every dimension in order; null is as drawn. */
  readonly at: readonly (readonly number[] | null)[];
  readonly corners: number;
  /** Corners where the load falls or turns far over, each of them a finding. */
  readonly unstable: number;
}

/** Up to so many dimensions every corner is solved; above, lengths are chosen by sensitivity at each centre corner. */
const everyCorner = 8;
/** A corner that turns more than this against the drawn pose, when the nominal rig does not, has gone over. */
const farTurn = Math.PI / 6;

interface Dimension {
  readonly apply: (rig: Rig, sign: number) => void;
  readonly sling: number | null;
}

interface Corner {
  readonly pose: Pose;
  readonly rig: Rig;
  readonly signs: readonly number[];
  readonly unstable: boolean;
  rates?: readonly Pick<Rates, 'tension'>[];
}

/**
 * Solves every corner of the tolerances, warm from the nominal pose, and gives the range of each tension and of each
 * number that `watch` reads from a pose. An error when the nominal rig has none to start from, turns over, or a corner
 * finds no rest.
 */
export function sweep(
  model: HangModel,
  tolerances: Tolerances,
  watch?: (placed: Placed) => readonly (number | null)[],
): Swept | HangError {
  const nominal = solve(model, { quick: true });
  if ('error' in nominal) return nominal;
  if (nominal.kind.status === 'unstable') {
    return { error: 'does-not-hang-as-drawn', name: null, turned: nominal.turned };
  }
  const dimensions = dimensionsOf(model, tolerances);
  const corners = new Map<string, Corner>();
  const room = roomFor(nominal.unknowns);
  const at = (signs: readonly number[]): Corner | HangError => {
    const key = signs.join();
    const known = corners.get(key);
    if (known) return known;
    const corner = solveCorner(nominal, model, dimensions, signs, room);
    if (!('error' in corner)) corners.set(key, corner);
    return corner;
  };
  const problem =
    dimensions.length <= (tolerances.quickOver ?? everyCorner)
      ? visitAll(dimensions.length, at)
      : tolerances.quickOver !== undefined
        ? visitAsked(dimensions, nominal, at)
        : visitWorst(dimensions, nominal, at);
  if (problem) return problem;
  return summary(nominal, [...corners.values()], watch);
}

function dimensionsOf(model: HangModel, { centres, lengths }: Tolerances): Dimension[] {
  const list: Dimension[] = [];
  for (const { body, half } of centres) {
    half.forEach((width, d) => {
      if (!(width > 0)) return;
      const weight = model.bodies[body]!.weight;
      const apply = (rig: Rig, sign: number) => {
        rig.moment[3 * body + d] = rig.moment[3 * body + d]! + sign * width * weight;
      };
      list.push({ apply, sling: null });
    });
  }
  lengths.forEach((width, sling) => {
    if (!(width > 0)) return;
    const apply = (rig: Rig, sign: number) => {
      rig.rest[sling] = rig.rest[sling]! + sign * width;
    };
    list.push({ apply, sling });
  });
  return list;
}

/** Warm from the nominal pose; cold through the changed model when that finds no rest. */
function solveCorner(
  nominal: Hung,
  model: HangModel,
  dimensions: readonly Dimension[],
  signs: readonly number[],
  room: Room,
): Corner | HangError {
  const rig: Rig = { ...nominal.rig, rest: nominal.rig.rest.slice(), moment: nominal.rig.moment.slice() };
  dimensions.forEach((dimension, i) => {
    dimension.apply(rig, signs[i]!);
  });
  const tooShort = rig.rest.findIndex((rest) => !(rest > 0));
  if (tooShort >= 0) return { error: 'bad-number', name: model.slings[tooShort]!.name };
  const u = nominal.unknowns;
  const start = copyPose(nominal.pose);
  measure(rig, start);
  const warm = descend(rig, start, u, 1e-12, 300, room);
  const pose = warm.residual < 1e-8 ? warm.pose : coldPose(rig, nominal);
  if (!pose) return { error: 'no-convergence', name: null };
  scaledHessian(rig, pose, u, room.h);
  const minimum = cholesky(room.h, u.n, zeroBand(rig), room.lower);
  const over = nominal.turned <= farTurn && turnBetween(rig, nominal.drawn, pose) > farTurn;
  return { pose, rig, signs, unstable: !minimum || over };
}

function coldPose(rig: Rig, nominal: Hung): Pose | null {
  const start = copyPose(nominal.drawn);
  measure(rig, start);
  const cold = descend(rig, start, nominal.unknowns, 1e-12, 2000);
  return cold.residual < 1e-8 ? cold.pose : null;
}

type Visit = (signs: readonly number[]) => Corner | HangError;

function visitAll(dimensions: number, at: Visit): HangError | null {
  for (const signs of allSigns(dimensions)) {
    const corner = at(signs);
    if ('error' in corner) return corner;
  }
  return null;
}

function allSigns(dimensions: number): number[][] {
  const corners = Array.from({ length: 2 ** dimensions }, (_, k) => k);
  return corners.map((k) => Array.from({ length: dimensions }, (_, i) => ((k >> i) & 1 ? 1 : -1)));
}

/**
 * At every corner of the centres: for each sling the length signs its own sensitivity asks for, then every single flip
 * until none helps. Leaving out the flips that sensitivity thinks useless missed up to 4e-4 of the weight on frames.
 */
function visitWorst(dimensions: readonly Dimension[], nominal: Hung, at: Visit): HangError | null {
  const centres = dimensions.filter((dimension) => dimension.sling === null).length;
  const lengths = dimensions.slice(centres);
  for (const centre of allSigns(centres)) {
    for (const direction of [1, -1]) {
      for (let sling = 0; sling < nominal.rig.slings; sling++) {
        const problem = climb(centre, lengths, sling, direction, at);
        if (problem) return problem;
      }
    }
  }
  return null;
}

/** At every corner of the centres and for each sling, the length signs that the nominal sensitivity of its tension asks for. */
function visitAsked(dimensions: readonly Dimension[], nominal: Hung, at: Visit): HangError | null {
  const centres = dimensions.filter((dimension) => dimension.sling === null).length;
  const lengths = dimensions.slice(centres);
  const rates = lengthRates(nominal.rig, nominal.pose, nominal.unknowns);
  for (const centre of allSigns(centres)) {
    for (let sling = 0; sling < nominal.rig.slings; sling++) {
      for (const direction of [1, -1]) {
        const asked = lengths.map((length) => {
          const rate = rates?.[length.sling!]?.tension[sling] ?? 0;
          return direction * (rate === 0 ? (length.sling === sling ? -1 : 1) : Math.sign(rate));
        });
        const corner = at([...centre, ...asked]);
        if ('error' in corner) return corner;
      }
    }
  }
  return null;
}

/** Climbs over length signs to the largest (direction 1) or least (-1) tension of one sling. */
function climb(
  centre: readonly number[],
  lengths: readonly Dimension[],
  sling: number,
  direction: number,
  at: Visit,
): HangError | null {
  let best = at([...centre, ...lengths.map((length) => (length.sling === sling ? -direction : direction))]);
  if ('error' in best) return best;
  const pull = (corner: Corner) => direction * corner.pose.tension[sling]!;
  // A slack sling cannot pull less; whether one can pull more, its flips tell.
  const done = (corner: Corner) => direction < 0 && !(corner.pose.tension[sling]! > 0);
  for (let round = 0; round < 8 && !done(best); round++) {
    const asked = askedSigns(best, lengths, sling, direction);
    const next = at([...centre, ...asked]);
    if ('error' in next) return next;
    if (!(pull(next) > pull(best))) break;
    best = next;
  }
  for (let round = 0, better = !done(best); better && round < 2 * lengths.length; round++) {
    better = false;
    for (let i = 0; i < lengths.length; i++) {
      const signs = best.signs.map((sign, k) => (k === centre.length + i ? -sign : sign));
      const next = at(signs);
      if ('error' in next) return next;
      if (!(pull(next) > pull(best))) continue;
      best = next;
      better = true;
    }
  }
  return null;
}

function askedSigns(corner: Corner, lengths: readonly Dimension[], sling: number, direction: number): number[] {
  return lengths.map((length, i) => {
    const old = corner.signs[corner.signs.length - lengths.length + i]!;
    const rate = ratesAt(corner)[length.sling!]!.tension[sling]!;
    return rate === 0 ? old : direction * Math.sign(rate);
  });
}

/** How all tensions at a corner answer to each length; nothing is known of a corner that is no minimum. */
function ratesAt(corner: Corner): readonly Pick<Rates, 'tension'>[] {
  const { rig, pose } = corner;
  corner.rates ??=
    lengthRates(rig, pose, unknowns(rig, true)) ??
    rig.model.slings.map(() => ({ tension: new Float64Array(rig.slings) }));
  return corner.rates;
}

function summary(
  nominal: Hung,
  corners: readonly Corner[],
  watch?: (placed: Placed) => readonly (number | null)[],
): Swept {
  const poses = [nominal.pose, ...corners.map((corner) => corner.pose)];
  const tensions = Array.from({ length: nominal.rig.slings }, (_, s) => range(poses.map((pose) => pose.tension[s]!))!);
  const seen = watch ? poses.map((pose) => watch(placedAt(nominal.rig, pose))) : [];
  const watched = (seen[0] ?? []).map((_, i) => range(seen.flatMap((values) => values[i] ?? [])));
  const at = tensions.map(({ high }, s) => corners.find((corner) => corner.pose.tension[s] === high)?.signs ?? null);
  return {
    tensions,
    watched,
    at,
    corners: corners.length,
    unstable: corners.filter((corner) => corner.unstable).length,
  };
}

function range(values: readonly number[]): Range | null {
  return values.length === 0 ? null : { low: Math.min(...values), high: Math.max(...values) };
}
