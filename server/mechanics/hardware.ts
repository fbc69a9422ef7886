// What bends and angles do to gear: strength left in a bent rope, the angle between two pulls, and whether a taut line meets a box.
import { dot, norm, subtract, type Vec3 } from './vector.ts';

/**
 * Share of a wire rope's strength left where it bends over a diameter D = ratio × rope diameter: 1 − 0.5/√(D/d)
 * (IMCA M 179, printed in 0027/ND Guidelines for Marine Lifting, rev 11.2, 7.8). Null below a ratio of 1: a body is not bent so tight.
 */
export function bendEfficiency(ratio: number): number | null {
  return ratio >= 1 ? 1 - 0.5 / Math.sqrt(ratio) : null;
}

/** The larger of the two parts of a doubled sling, as a share of what both carry: 45 to 55 (0027/ND rev 11.2, 5.8). */
export const doubledShare = 0.55;

/** Angle between two directions, rad, 0 to π; null where one has no length. */
export function angleBetween(a: Vec3, b: Vec3): number | null {
  const size = norm(a) * norm(b);
  return size > 0 ? Math.acos(Math.min(1, Math.max(-1, dot(a, b) / size))) : null;
}

/**
 * Length of the straight line from one place to another that lies within a box, m; 0 where it only touches or passes by. The box is
 * the nth of many that stand one behind the other in `corners`, least corner before greatest: thousands are gone through with no
 * object made or read.
 */
export function lengthWithin(from: Vec3, to: Vec3, corners: Float64Array, n: number): number {
  let enter = 0;
  let leave = 1;
  for (let axis = 0 as 0 | 1 | 2; axis < 3; axis++) {
    const step = to[axis] - from[axis];
    const low = (corners[n * 6 + axis] as number) - from[axis];
    const high = (corners[n * 6 + 3 + axis] as number) - from[axis];
    if (step === 0) {
      if (low >= 0 || high <= 0) return 0;
      continue;
    }
    const [near, far] = step > 0 ? [low / step, high / step] : [high / step, low / step];
    if (near > enter) enter = near;
    if (far < leave) leave = far;
    if (!(leave > enter)) return 0;
  }
  return (leave - enter) * norm(subtract(to, from));
}
