// Energy of a pose, its gradient and its exact Hessian, for increments at that pose (rotations about world axes).
import { type Pose, rotations, type Unknowns } from './pose.ts';
import type { Rig } from './rig.ts';

/**
 * Fills in all that follows from a pose's p and q: node places, part lengths, tensions and the energy
 * E = Σ ½ k s² over slings stretched by s > 0, less Σ F·x over all weights and forces (J).
 */
export function measure(rig: Rig, pose: Pose): void {
  rotations(rig, pose);
  placeEntries(rig, pose);
  pose.energy = stretch(rig, pose) + fall(rig, pose);
}

function placeEntries(rig: Rig, pose: Pose): void {
  const { mover, local, bodies } = rig;
  const { arm, place, p, rotation: r } = pose;
  for (let j = 0; j < mover.length; j++) {
    const i = mover[j]!;
    const a = 3 * j;
    const x = local[a]!;
    const y = local[a + 1]!;
    const z = local[a + 2]!;
    if (i < 0) {
      place[a] = x;
      place[a + 1] = y;
      place[a + 2] = z;
      continue;
    }
    if (i < bodies) {
      const m = 9 * i;
      arm[a] = r[m]! * x + r[m + 1]! * y + r[m + 2]! * z;
      arm[a + 1] = r[m + 3]! * x + r[m + 4]! * y + r[m + 5]! * z;
      arm[a + 2] = r[m + 6]! * x + r[m + 7]! * y + r[m + 8]! * z;
    }
    place[a] = p[3 * i]! + arm[a]!;
    place[a + 1] = p[3 * i + 1]! + arm[a + 1]!;
    place[a + 2] = p[3 * i + 2]! + arm[a + 2]!;
  }
}

function stretch(rig: Rig, pose: Pose): number {
  const { start, rest, ea } = rig;
  const { place, along, part, length, tension } = pose;
  let energy = 0;
  for (let s = 0; s < rig.slings; s++) {
    let total = 0;
    for (let j = start[s]!; j < start[s + 1]! - 1; j++) {
      const a = 3 * j;
      const x = place[a + 3]! - place[a]!;
      const y = place[a + 4]! - place[a + 1]!;
      const z = place[a + 5]! - place[a + 2]!;
      const l = Math.sqrt(x * x + y * y + z * z);
      const inverse = l > 0 ? 1 / l : 0;
      part[j] = l;
      along[a] = x * inverse;
      along[a + 1] = y * inverse;
      along[a + 2] = z * inverse;
      total += l;
    }
    length[s] = total;
    const longer = total - rest[s]!;
    const pull = longer > 0 ? (ea[s]! / rest[s]!) * longer : 0;
    tension[s] = pull;
    if (longer > 0) energy += 0.5 * pull * longer;
  }
  return energy;
}

function fall(rig: Rig, pose: Pose): number {
  const { weight, moment: local, bodies, movers } = rig;
  const { p, rotation: r, moment } = pose;
  let energy = 0;
  for (let i = 0; i < movers; i++) energy += weight[i]! * p[3 * i + 2]!;
  for (let i = 0; i < bodies; i++) {
    const m = 9 * i;
    const x = local[3 * i]!;
    const y = local[3 * i + 1]!;
    const z = local[3 * i + 2]!;
    moment[3 * i] = r[m]! * x + r[m + 1]! * y + r[m + 2]! * z;
    moment[3 * i + 1] = r[m + 3]! * x + r[m + 4]! * y + r[m + 5]! * z;
    moment[3 * i + 2] = r[m + 6]! * x + r[m + 7]! * y + r[m + 8]! * z;
    energy += moment[3 * i + 2]!;
  }
  for (let f = 0; f < rig.forceBody.length; f++) {
    const i = rig.forceBody[f]!;
    const arm = forceArm(rig, pose, f);
    for (let d = 0; d < 3; d++) energy -= rig.forceWorld[3 * f + d]! * (p[3 * i + d]! + arm[d]!);
  }
  return energy;
}

function forceArm(rig: Rig, pose: Pose, f: number): [number, number, number] {
  const r = pose.rotation;
  const m = 9 * rig.forceBody[f]!;
  const x = rig.forceLocal[3 * f]!;
  const y = rig.forceLocal[3 * f + 1]!;
  const z = rig.forceLocal[3 * f + 2]!;
  return [
    r[m]! * x + r[m + 1]! * y + r[m + 2]! * z,
    r[m + 3]! * x + r[m + 4]! * y + r[m + 5]! * z,
    r[m + 6]! * x + r[m + 7]! * y + r[m + 8]! * z,
  ];
}

/** Gradient of the energy at a measured pose: force rows (N), and moment rows about each body's datum (N m). */
export function gradient(rig: Rig, pose: Pose, u: Unknowns, g: Float64Array): void {
  g.fill(0, 0, u.n);
  for (let i = 0; i < rig.movers; i++) g[u.at[i]! + 2] = rig.weight[i]!;
  for (let s = 0; s < rig.slings; s++) {
    const pull = pose.tension[s]!;
    if (pull > 0) pullOfSling(rig, pose, u, s, pull, g);
  }
  if (u.turning) {
    for (let i = 0; i < rig.bodies; i++) {
      const a = u.at[i]!;
      g[a + 3] = g[a + 3]! + pose.moment[3 * i + 1]!;
      g[a + 4] = g[a + 4]! - pose.moment[3 * i]!;
    }
  }
  for (let f = 0; f < rig.forceBody.length; f++) {
    const w = rig.forceWorld;
    const arm = forceArm(rig, pose, f);
    addForce(u, g, u.at[rig.forceBody[f]!]!, true, -w[3 * f]!, -w[3 * f + 1]!, -w[3 * f + 2]!, arm[0], arm[1], arm[2]);
  }
}

/** Adds `pull` times the gradient of a sling's length. */
export function pullOfSling(rig: Rig, pose: Pose, u: Unknowns, s: number, pull: number, g: Float64Array): void {
  const { along, arm } = pose;
  const first = rig.start[s]!;
  const last = rig.start[s + 1]! - 1;
  for (let j = first; j <= last; j++) {
    const i = rig.mover[j]!;
    if (i < 0) continue;
    const a = 3 * j;
    let x = 0;
    let y = 0;
    let z = 0;
    if (j > first) {
      x = along[a - 3]!;
      y = along[a - 2]!;
      z = along[a - 1]!;
    }
    if (j < last) {
      x -= along[a]!;
      y -= along[a + 1]!;
      z -= along[a + 2]!;
    }
    const body = i < rig.bodies;
    addForce(u, g, u.at[i]!, body, pull * x, pull * y, pull * z, arm[a]!, arm[a + 1]!, arm[a + 2]!);
  }
}

function addForce(
  u: Unknowns,
  g: Float64Array,
  at: number,
  body: boolean,
  x: number,
  y: number,
  z: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  g[at] = g[at]! + x;
  g[at + 1] = g[at + 1]! + y;
  g[at + 2] = g[at + 2]! + z;
  if (!body || !u.turning) return;
  g[at + 3] = g[at + 3]! + ry * z - rz * y;
  g[at + 4] = g[at + 4]! + rz * x - rx * z;
  g[at + 5] = g[at + 5]! + rx * y - ry * x;
}

/** Residual: the largest force or moment/size that is left over on any mover, as a part of all weight. */
export function residualOf(rig: Rig, u: Unknowns, g: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < rig.movers; i++) {
    const a = u.at[i]!;
    largest = Math.max(largest, Math.sqrt(g[a]! ** 2 + g[a + 1]! ** 2 + g[a + 2]! ** 2));
    if (!u.turning || i >= rig.bodies) continue;
    largest = Math.max(largest, Math.sqrt(g[a + 3]! ** 2 + g[a + 4]! ** 2 + g[a + 5]! ** 2) / rig.size[i]!);
  }
  return largest / rig.totalWeight;
}
