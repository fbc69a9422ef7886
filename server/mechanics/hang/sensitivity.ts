// How tensions and tilts answer to small changes of a length or a centre, from one factorisation of the stiffness.
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

export interface Linearised {
  /** Per metre of unstretched length of a sling. */
  readonly byLength: (sling: number) => Rates;
  /** Per metre of the centre of a body along one of its axes. */
  readonly byCentre: (body: number, axis: 0 | 1 | 2) => Rates;
}

/** The linear answer of a rig about a pose of rest; null where the pose is not a minimum. */
export function linearise(rig: Rig, pose: Pose, u: Unknowns): Linearised | null {
  const { n } = u;
  const h = new Float64Array(n * n);
  const lower = new Float64Array(n * n);
  scaledHessian(rig, pose, u, h);
  let stiffest = 0;
  for (let i = 0; i < n; i++) stiffest = Math.max(stiffest, h[i * n + i]!);
  // So much only that free spin about the vertical does not stop the factorisation.
  if (!cholesky(h, n, 1e-11 * stiffest, lower)) return null;
  const lengths = Array.from({ length: rig.slings }, (_, s) => {
    const d = new Float64Array(n);
    pullOfSling(rig, pose, u, s, 1, d);
    return d;
  });
  const rates = (push: Float64Array, direct: number, directRate: number): Rates => {
    const move = push.map((value, i) => -value * u.scale[i]!);
    choleskySolve(lower, n, move);
    for (let i = 0; i < n; i++) move[i] = move[i]! * u.scale[i]!;
    const tension = Float64Array.from(lengths, (d, s) => {
      if (!(pose.tension[s]! > 0)) return 0;
      const along = d.reduce((sum, value, i) => sum + value * move[i]!, 0);
      return (rig.ea[s]! / rig.rest[s]!) * along + (s === direct ? directRate : 0);
    });
    const turn = new Float64Array(3 * rig.bodies);
    for (let i = 0; i < rig.bodies; i++) turn.set(move.subarray(u.at[i]! + 3, u.at[i]! + 6), 3 * i);
    return { tension, turn };
  };
  return {
    byLength: (s) => {
      const taut = pose.tension[s]! > 0;
      const rate = taut ? (-rig.ea[s]! * pose.length[s]!) / rig.rest[s]! ** 2 : 0;
      return rates(
        lengths[s]!.map((value) => rate * value),
        s,
        rate,
      );
    },
    byCentre: (body, axis) => {
      const push = new Float64Array(n);
      const weight = rig.model.bodies[body]!.weight;
      // Moment row (R e) × (0, 0, W).
      push[u.at[body]! + 3] = pose.rotation[9 * body + 3 + axis]! * weight;
      push[u.at[body]! + 4] = -pose.rotation[9 * body + axis]! * weight;
      return rates(push, -1, 0);
    },
  };
}
