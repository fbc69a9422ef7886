// Downhill to rest: Newton's method with a Levenberg shift on the energy, to a residual at rounding level.
import { gradient, measure, residualOf } from './energy.ts';
import { cholesky, choleskySolve } from './linear.ts';
import { copyPose, type Pose, take, type Unknowns } from './pose.ts';
import type { Rig } from './rig.ts';
import { scaledHessian } from './stiffness.ts';

export interface Rest {
  readonly pose: Pose;
  readonly residual: number;
  readonly steps: number;
}

/** Room to work in, for callers that descend many times over the same unknowns. */
export interface Room {
  readonly h: Float64Array;
  readonly lower: Float64Array;
  readonly step: Float64Array;
}

export function roomFor({ n }: Unknowns): Room {
  return { h: new Float64Array(n * n), lower: new Float64Array(n * n), step: new Float64Array(n) };
}

/** Largest turn of a body and largest move, as a part of the rig's reach, in one step. */
const stepTurn = 0.15;
const stepMove = 0.5;

/**
 * Descends from a measured pose, which is not changed, until the residual is at most `goal` or nothing more is
 * gained; at most `limit` steps. A pose of rest that is not a minimum, met exactly, is kept: no noise is added.
 */
export function descend(rig: Rig, from: Pose, u: Unknowns, goal: number, limit: number, room = roomFor(u)): Rest {
  const { n } = u;
  const { h, lower, step } = room;
  let pose = copyPose(from);
  let trial = copyPose(from);
  let g = new Float64Array(n);
  let next = new Float64Array(n);
  const softest = rig.totalWeight / rig.reach;
  const firstShift = 1e-3 * softest;
  // Spin about one hook has no stiffness at all: this much, far below any real mode, keeps its step from wandering.
  const least = u.turning ? 1e-9 * softest : 0;
  let shift = 0;
  let stale = true;
  let idle = 0;
  gradient(rig, pose, u, g);
  let residual = residualOf(rig, u, g);
  let steps = 0;
  while (steps < limit && residual > goal) {
    if (stale) scaledHessian(rig, pose, u, h);
    stale = false;
    while (!cholesky(h, n, shift + least, lower)) {
      shift = Math.max(4 * shift, firstShift);
      if (!(shift < 1e12 * softest)) return { pose, residual, steps };
    }
    steps++;
    const expected = newtonStep(rig, u, h, lower, g, step);
    take(rig, pose, u, step, trial);
    measure(rig, trial);
    gradient(rig, trial, u, next);
    const nextResidual = residualOf(rig, u, next);
    const size = Math.max(1, Math.abs(pose.energy), rig.totalWeight * rig.reach);
    // Below this the energy is rounding noise: then the residual decides.
    const tiny = Math.abs(expected) < 1e-10 * size;
    const ratio = (pose.energy - trial.energy) / expected;
    if (tiny ? nextResidual < residual : expected > 0 && ratio > 0.05) {
      if (tiny && residual < 1e-10 && nextResidual > 0.5 * residual) idle++;
      [pose, trial] = [trial, pose];
      [g, next] = [next, g];
      residual = nextResidual;
      stale = true;
      if (idle >= 3) break;
      if (tiny || ratio > 0.5) shift = shift < 8e-3 * firstShift ? 0 : shift / 8;
      else if (ratio < 0.2) shift = Math.max(2 * shift, firstShift);
    } else {
      if (tiny && residual < 1e-9) break;
      shift = Math.max(4 * shift, firstShift);
      if (!(shift < 1e12 * softest)) break;
    }
  }
  return { pose, residual, steps };
}

/** The step of the factored system, shortened as a whole to the largest allowed; gives the drop of energy it promises. */
function newtonStep(
  rig: Rig,
  u: Unknowns,
  h: Float64Array,
  lower: Float64Array,
  g: Float64Array,
  step: Float64Array,
): number {
  const { n, scale } = u;
  for (let i = 0; i < n; i++) step[i] = -g[i]! * scale[i]!;
  choleskySolve(lower, n, step);
  const part = stepLimit(rig, u, step, stepTurn, stepMove);
  let linear = 0;
  let bent = 0;
  for (let i = 0; i < n; i++) {
    const y = part * step[i]!;
    step[i] = y;
    linear += g[i]! * scale[i]! * y;
    let row = 0;
    for (let j = 0; j < i; j++) row += h[i * n + j]! * step[j]!;
    bent += y * (row + 0.5 * h[i * n + i]! * y);
  }
  for (let i = 0; i < n; i++) step[i] = step[i]! * scale[i]!;
  return -(linear + bent);
}

/** The factor in (0, 1] that keeps a scaled step within `turn` rad for every body and `move` reaches for every mover. */
export function stepLimit(rig: Rig, u: Unknowns, y: Float64Array, turn: number, move: number): number {
  let part = 1;
  for (let i = 0; i < rig.movers; i++) {
    const a = u.at[i]!;
    const moved = Math.sqrt(y[a]! ** 2 + y[a + 1]! ** 2 + y[a + 2]! ** 2);
    if (moved * part > move * rig.reach) part = (move * rig.reach) / moved;
    if (!u.turning || i >= rig.bodies) continue;
    const turned = Math.sqrt(y[a + 3]! ** 2 + y[a + 4]! ** 2 + y[a + 5]! ** 2) / rig.size[i]!;
    if (turned * part > turn) part = turn / turned;
  }
  return part;
}
