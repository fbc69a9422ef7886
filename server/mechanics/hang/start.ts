// Where the search starts: drawn orientations, places by force densities, every sling about one part in a hundred long.
import { measure } from './energy.ts';
import { cholesky, choleskySolve } from './linear.ts';
import { drawnPose, type Pose } from './pose.ts';
import type { Rig } from './rig.ts';

const rounds = 6;
/** Stretch all slings should start near: taut, hence no smoothing of the slack corner is needed. */
const startStretch = 1.01;

/** The drawn pose with places such that every sling is about 1 % longer than its length. */
export function startPose(rig: Rig): Pose {
  const pose = drawnPose(rig);
  const density = Float64Array.from(rig.rest, (rest) => rig.totalWeight / rest);
  const n = rig.movers;
  const matrix = new Float64Array(n * n);
  const lower = new Float64Array(n * n);
  const sides = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  // The arms are needed before the places are: bodies stand at the origin, as drawn.
  measure(rig, pose);
  for (let round = 0; round < rounds; round++) {
    fill(rig, pose, density, matrix, sides);
    if (!cholesky(matrix, n, 0, lower)) return pose;
    sides.forEach((side, d) => {
      choleskySolve(lower, n, side);
      for (let i = 0; i < n; i++) pose.p[3 * i + d] = side[i]!;
    });
    measure(rig, pose);
    for (let s = 0; s < rig.slings; s++) {
      const ratio = pose.length[s]! / (startStretch * rig.rest[s]!);
      density[s] = density[s]! * Math.min(3, Math.max(1 / 3, ratio));
    }
  }
  return pose;
}

/** Σ density (far − near) + loads = 0 for the place of every mover, the three coordinates at once. */
function fill(rig: Rig, pose: Pose, density: Float64Array, matrix: Float64Array, sides: Float64Array[]): void {
  const n = rig.movers;
  matrix.fill(0);
  sides.forEach((side, d) => {
    side.fill(0);
    if (d === 2) for (let i = 0; i < n; i++) side[i] = -rig.weight[i]!;
    for (let f = 0; f < rig.forceBody.length; f++) {
      const i = rig.forceBody[f]!;
      side[i] = side[i]! + rig.forceWorld[3 * f + d]!;
    }
  });
  for (let s = 0; s < rig.slings; s++) {
    for (let j = rig.start[s]!; j < rig.start[s + 1]! - 1; j++) {
      addEnd(rig, pose, density[s]!, j, j + 1, matrix, sides);
      addEnd(rig, pose, density[s]!, j + 1, j, matrix, sides);
    }
  }
}

function addEnd(
  rig: Rig,
  pose: Pose,
  density: number,
  near: number,
  far: number,
  matrix: Float64Array,
  sides: Float64Array[],
): void {
  const i = rig.mover[near]!;
  const k = rig.mover[far]!;
  if (i < 0 || i === k) return;
  const n = rig.movers;
  matrix[i * n + i] = matrix[i * n + i]! + density;
  if (k >= 0) matrix[i * n + k] = matrix[i * n + k]! - density;
  const farArm = k < 0 ? pose.place : pose.arm;
  sides.forEach((side, d) => {
    side[i] = side[i]! + density * (farArm[3 * far + d]! - pose.arm[3 * near + d]!);
  });
}
