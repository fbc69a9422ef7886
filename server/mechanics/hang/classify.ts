// What kind of rest a pose is: stable, neutral or unstable, what may roll free, and how far from falling over.
import { type Eigen, eigenSymmetric } from './linear.ts';
import type { Pose, Unknowns } from './pose.ts';
import type { Rig } from './rig.ts';
import { scaledHessian } from './stiffness.ts';

export interface Kind {
  readonly status: 'stable' | 'neutral' | 'unstable';
  readonly mode: 'topples' | 'spins' | null;
  readonly zeroModes: number;
  /** Of each body. */
  readonly free: readonly boolean[];
  readonly lever: readonly (number | null)[];
  readonly eigen: Eigen;
}

/** Eigenvalues of the scaled Hessian up to this far from zero count as zero, N/m. */
export function zeroBand(rig: Rig): number {
  return (1e-6 * rig.totalWeight) / rig.bodySize;
}

export function eigenAt(rig: Rig, pose: Pose, u: Unknowns): Eigen {
  const h = new Float64Array(u.n * u.n);
  scaledHessian(rig, pose, u, h);
  return eigenSymmetric(h, u.n);
}

/** Judges a pose of rest by the eigenvalues of its scaled stiffness; `u` must include turning. */
export function classify(rig: Rig, pose: Pose, u: Unknowns): Kind {
  const eigen = eigenAt(rig, pose, u);
  const { n } = u;
  const zero = zeroBand(rig);
  const free = new Array<boolean>(rig.bodies).fill(false);
  let zeroModes = 0;
  for (let k = 0; k < n; k++) {
    if (Math.abs(eigen.values[k]!) > zero) continue;
    zeroModes++;
    for (let i = 0; i < rig.bodies; i++) {
      const at = k * n + u.at[i]! + 3;
      // A mode of spin alone has only a vertical part; anything else is a body that rolls without resistance.
      if (Math.hypot(eigen.vectors[at]!, eigen.vectors[at + 1]!) > 1e-5) free[i] = true;
    }
  }
  const unstable = (eigen.values[0] ?? 0) < -zero;
  const status = unstable ? 'unstable' : free.includes(true) ? 'neutral' : 'stable';
  const mode = unstable ? fallMode(rig, pose, u, eigen, zero) : null;
  const lever = free.map((rolls, i) => (unstable || rolls ? null : rightingLever(rig, u, eigen, zero, i)));
  return { status, mode, zeroModes, free, lever, eigen };
}

/**
 * Lever h (m) with which a body rights itself: 1/(λ W), λ the larger eigenvalue of the compliance against turning about
 * the two horizontal axes, spin left out. One pick: its height over the centre. Null for a body that weighs nothing.
 */
function rightingLever(rig: Rig, u: Unknowns, eigen: Eigen, zero: number, body: number): number | null {
  const weight = rig.model.bodies[body]!.weight;
  const at = u.at[body]! + 3;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let k = 0; k < u.n; k++) {
    const w = eigen.values[k]!;
    if (Math.abs(w) <= zero) continue;
    const x = eigen.vectors[k * u.n + at]! * u.scale[at]!;
    const y = eigen.vectors[k * u.n + at + 1]! * u.scale[at]!;
    xx += (x * x) / w;
    xy += (x * y) / w;
    yy += (y * y) / w;
  }
  const largest = 0.5 * (xx + yy) + Math.hypot(0.5 * (xx - yy), xy);
  const lever = 1 / (largest * weight);
  return Number.isFinite(lever) ? lever : null;
}

/**
 * `spins` when every falling mode only turns the whole rig about the hook line of a single hook, as a load does that
 * the wind turns; else `topples`. A quarter as the bound is our choice: common practice, no source.
 */
function fallMode(rig: Rig, pose: Pose, u: Unknowns, eigen: Eigen, zero: number): 'topples' | 'spins' {
  if (rig.model.anchors.length !== 1) return 'topples';
  const line = [0, 0, 0];
  for (let s = 0; s < rig.slings; s++) {
    for (const [j, sign] of [
      [rig.start[s]!, 1],
      [rig.start[s + 1]! - 1, -1],
    ] as const) {
      if (rig.mover[j]! >= 0) continue;
      const part = sign > 0 ? j : j - 1;
      for (let d = 0; d < 3; d++) line[d] = line[d]! + sign * pose.tension[s]! * pose.along[3 * part + d]!;
    }
  }
  const pull = Math.hypot(...line);
  if (!(pull > 0)) return 'topples';
  for (let k = 0; k < u.n && eigen.values[k]! < -zero; k++) {
    for (let i = 0; i < rig.bodies; i++) {
      const at = k * u.n + u.at[i]! + 3;
      const turn = [eigen.vectors[at]!, eigen.vectors[at + 1]!, eigen.vectors[at + 2]!];
      const about = turn.reduce((total, t, d) => total + (t * line[d]!) / pull, 0);
      const aside = Math.hypot(...turn.map((t, d) => t - (about * line[d]!) / pull));
      if (aside > 0.25 * Math.abs(about)) return 'topples';
    }
  }
  return 'spins';
}
