// Loads that let go of the drawn pose: the pose of rest nearest to it, and where a load ends that falls.
import { eigenAt, zeroBand } from './classify.ts';
import { descend, type Rest, stepLimit } from './descent.ts';
import { gradient, measure, residualOf } from './energy.ts';
import type { Eigen } from './linear.ts';
import { copyPose, type Pose, take, type Unknowns } from './pose.ts';
import type { Rig } from './rig.ts';

const searchSteps = 400;
const forcedSteps = 40;
const halvings = 10;

/**
 * The pose of rest, minimum or saddle, that Newton's method finds from a pose; null when it finds none.
 * Steps are judged by the residual weighted with the present compliance (natural monotonicity test: Deuflhard, Newton
 * Methods for Nonlinear Problems, 2004, ch. 3), or stiff slings would force tiny steps.
 */
export function nearestRest(rig: Rig, from: Pose, u: Unknowns): Rest | null {
  const { n } = u;
  const zero = zeroBand(rig);
  const g = new Float64Array(n);
  const y = new Float64Array(n);
  const step = new Float64Array(n);
  let pose = copyPose(from);
  let trial = copyPose(from);
  let forced = 0;
  for (let steps = 0; steps <= searchSteps; steps++) {
    gradient(rig, pose, u, g);
    const residual = residualOf(rig, u, g);
    if (residual <= 1e-11) return { pose, residual, steps };
    const eigen = eigenAt(rig, pose, u);
    const goal = weighted(u, eigen, zero, g);
    newtonDirection(u, eigen, zero, g, y);
    let part = stepLimit(rig, u, y, 0.1, 0.2);
    const full = part;
    let better = false;
    for (let half = 0; half <= halvings && !better; half++) {
      if (half > 0) part /= 2;
      tryStep(rig, pose, u, y, part, step, trial);
      gradient(rig, trial, u, g);
      better = weighted(u, eigen, zero, g) < goal;
    }
    if (!better) {
      // A leg is going slack: go on across the corner.
      if (++forced > forcedSteps) return null;
      tryStep(rig, pose, u, y, residual < 1e-5 ? full : 0.3 * full, step, trial);
    }
    [pose, trial] = [trial, pose];
  }
  return null;
}

function tryStep(
  rig: Rig,
  pose: Pose,
  u: Unknowns,
  y: Float64Array,
  part: number,
  step: Float64Array,
  trial: Pose,
): void {
  for (let i = 0; i < u.n; i++) step[i] = part * y[i]! * u.scale[i]!;
  take(rig, pose, u, step, trial);
  measure(rig, trial);
}

function newtonDirection(u: Unknowns, eigen: Eigen, zero: number, g: Float64Array, y: Float64Array): void {
  const { n } = u;
  y.fill(0);
  for (let k = 0; k < n; k++) {
    const w = eigen.values[k]!;
    if (Math.abs(w) < 0.1 * zero) continue;
    const amount = -onMode(u, eigen, k, g) / w;
    for (let i = 0; i < n; i++) y[i] = y[i]! + amount * eigen.vectors[k * n + i]!;
  }
}

function weighted(u: Unknowns, eigen: Eigen, zero: number, g: Float64Array): number {
  let total = 0;
  for (let k = 0; k < u.n; k++) {
    const w = eigen.values[k]!;
    if (Math.abs(w) >= 0.1 * zero) total += (onMode(u, eigen, k, g) / w) ** 2;
  }
  return total;
}

function onMode(u: Unknowns, eigen: Eigen, k: number, g: Float64Array): number {
  let total = 0;
  for (let i = 0; i < u.n; i++) total += eigen.vectors[k * u.n + i]! * g[i]! * u.scale[i]!;
  return total;
}

/** Falls both ways along the softest mode of an unstable pose and keeps the end of lower energy; null if neither rests. */
export function fallFrom(rig: Rig, pose: Pose, u: Unknowns, eigen: Eigen): Rest | null {
  const push = 0.05 * rig.bodySize;
  const ends = [push, -push].map((distance) => {
    const start = copyPose(pose);
    const step = Float64Array.from(u.scale, (scale, i) => distance * scale * eigen.vectors[i]!);
    take(rig, pose, u, step, start);
    measure(rig, start);
    return descend(rig, start, u, 1e-12, 2000);
  });
  const rests = ends.filter((end) => end.residual < 1e-8);
  return rests.reduce<Rest | null>((low, end) => (low && low.pose.energy <= end.pose.energy ? low : end), null);
}
