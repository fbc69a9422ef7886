// How tensions and tilts answer to small changes of a length, from one factorisation of the stiffness.
import { pullOfSling } from './energy.ts';
import { cholesky, choleskySolve } from './linear.ts';
import type { Pose, Unknowns } from './pose.ts';
import type { Rig } from './rig.ts';
import { scaledHessian } from './stiffness.ts';

export interface Rates {
  /** Change of each sling's tension, N per m. */
  readonly tension: Float64Array;
  /** Small turn of each body about world axes, rad per m, 3 numbers each. */
  readonly turn: Float64Array;
}

/**
 * Rates per metre of unstretched length of each sling about a pose of rest; null where the pose is not a minimum.
 * dx = −H⁻¹ (dT/dL0) ∇l with dT/dL0 = −EA l/L0², and dT = k ∇l·dx with the direct part for the sling itself.
 */
export function lengthRates(rig: Rig, pose: Pose, u: Unknowns): readonly Rates[] | null {
  const { n } = u;
  const h = new Float64Array(n * n);
  const lower = new Float64Array(n * n);
  scaledHessian(rig, pose, u, h);
  let stiffest = 0;
  for (let i = 0; i < n; i++) stiffest = Math.max(stiffest, h[i * n + i]!);
  // So much only that free spin about the vertical does not stop the factorisation.
  if (!cholesky(h, n, 1e-11 * stiffest, lower)) return null;
  const slopes = Array.from({ length: rig.slings }, (_, s) => {
    const slope = new Float64Array(n);
    pullOfSling(rig, pose, u, s, 1, slope);
    return slope;
  });
  return slopes.map((slope, s) => {
    const rate = pose.tension[s]! > 0 ? (-rig.ea[s]! * pose.length[s]!) / rig.rest[s]! ** 2 : 0;
    const move = slope.map((value, i) => -rate * value * u.scale[i]!);
    choleskySolve(lower, n, move);
    for (let i = 0; i < n; i++) move[i] = move[i]! * u.scale[i]!;
    const tension = Float64Array.from(slopes, (other, k) => {
      if (!(pose.tension[k]! > 0)) return 0;
      const longer = other.reduce((sum, value, i) => sum + value * move[i]!, 0);
      return (rig.ea[k]! / rig.rest[k]!) * longer + (k === s ? rate : 0);
    });
    const turn = new Float64Array(3 * rig.bodies);
    for (let i = 0; i < rig.bodies; i++) turn.set(move.subarray(u.at[i]! + 3, u.at[i]! + 6), 3 * i);
    return { tension, turn };
  });
}
