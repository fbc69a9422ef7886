// The exact Hessian of the energy: stretch, turning of taut slings, paths over sheaves, and how forces act on turning.
import { pullOfSling } from './energy.ts';
import type { Pose, Unknowns } from './pose.ts';
import type { Rig } from './rig.ts';

/** Hessian of the energy at a measured pose into h (n × n, both triangles). */
export function hessian(rig: Rig, pose: Pose, u: Unknowns, h: Float64Array): void {
  h.fill(0, 0, u.n * u.n);
  for (let s = 0; s < rig.slings; s++) if (pose.tension[s]! > 0) addSling(rig, pose, u, s, h);
  if (!u.turning) return;
  for (let i = 0; i < rig.bodies; i++) {
    const m = 3 * i;
    // Weight: the gradient holds +W along z, so its arm may be gathered in the first moment.
    addTurning(h, u.n, u.at[i]! + 3, 0, 0, 1, pose.moment[m]!, pose.moment[m + 1]!, pose.moment[m + 2]!);
  }
  for (let f = 0; f < rig.forceBody.length; f++) addDeadForce(rig, pose, u, f, h);
}

/** The Hessian scaled by S on both sides. */
export function scaledHessian(rig: Rig, pose: Pose, u: Unknowns, h: Float64Array): void {
  hessian(rig, pose, u, h);
  const { n, scale } = u;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) h[i * n + j] = h[i * n + j]! * scale[i]! * scale[j]!;
  }
}

function addSling(rig: Rig, pose: Pose, u: Unknowns, s: number, h: Float64Array): void {
  const first = rig.start[s]!;
  const last = rig.start[s + 1]! - 1;
  const pull = pose.tension[s]!;
  const k = rig.ea[s]! / rig.rest[s]!;
  const ordinary = last - first === 1;
  for (let j = first; j < last; j++) {
    const l = pose.part[j]!;
    if (l > 0) addPart(rig, pose, u, j, ordinary ? k : 0, pull / l, h);
  }
  if (!ordinary) addPathStretch(rig, pose, u, s, k, h);
  if (!u.turning) return;
  for (let j = first; j <= last; j++) {
    const i = rig.mover[j]!;
    if (i < 0 || i >= rig.bodies) continue;
    const a = 3 * j;
    const back = j > first ? pull : 0;
    const on = j < last ? pull : 0;
    const { along, arm } = pose;
    const x = (back && back * along[a - 3]!) - (on && on * along[a]!);
    const y = (back && back * along[a - 2]!) - (on && on * along[a + 1]!);
    const z = (back && back * along[a - 1]!) - (on && on * along[a + 2]!);
    addTurning(h, u.n, u.at[i]! + 3, x, y, z, arm[a]!, arm[a + 1]!, arm[a + 2]!);
  }
}

/** One straight part: K = kAlong u⊗u + kAcross (I − u⊗u), between its two nodes. */
function addPart(rig: Rig, pose: Pose, u: Unknowns, j: number, kAlong: number, kAcross: number, h: Float64Array): void {
  const x = pose.along[3 * j]!;
  const y = pose.along[3 * j + 1]!;
  const z = pose.along[3 * j + 2]!;
  const more = kAlong - kAcross;
  const a = more * x * x + kAcross;
  const b = more * x * y;
  const c = more * x * z;
  const d = more * y * y + kAcross;
  const e = more * y * z;
  const f = more * z * z + kAcross;
  block(rig, pose, u, h, j, j, 1, a, b, c, d, e, f);
  block(rig, pose, u, h, j + 1, j + 1, 1, a, b, c, d, e, f);
  block(rig, pose, u, h, j, j + 1, -1, a, b, c, d, e, f);
}

const product = new Float64Array(18);

/** Adds sign · JᵀKJ of two entries, K = [a b c; b d e; c e f]; of two different entries the transposed block too. */
function block(
  rig: Rig,
  pose: Pose,
  u: Unknowns,
  h: Float64Array,
  one: number,
  two: number,
  sign: number,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
): void {
  const i = rig.mover[one]!;
  const k = rig.mover[two]!;
  if (i < 0 || k < 0) return;
  const m = product;
  const { arm } = pose;
  const rx = arm[3 * two]!;
  const ry = arm[3 * two + 1]!;
  const rz = arm[3 * two + 2]!;
  // Rows of K [I, −[r]]: each row v gives v, and v × r turned: −v[r] = r × v.
  writeRow(m, 0, a, b, c, rx, ry, rz);
  writeRow(m, 6, b, d, e, rx, ry, rz);
  writeRow(m, 12, c, e, f, rx, ry, rz);
  const rows = u.turning && i < rig.bodies ? 6 : 3;
  const columns = u.turning && k < rig.bodies ? 6 : 3;
  const n = u.n;
  const top = u.at[i]!;
  const left = u.at[k]!;
  const px = arm[3 * one]!;
  const py = arm[3 * one + 1]!;
  const pz = arm[3 * one + 2]!;
  const mirror = one !== two;
  for (let column = 0; column < columns; column++) {
    const v0 = sign * m[column]!;
    const v1 = sign * m[6 + column]!;
    const v2 = sign * m[12 + column]!;
    const at = left + column;
    put(h, n, top, at, v0, mirror);
    put(h, n, top + 1, at, v1, mirror);
    put(h, n, top + 2, at, v2, mirror);
    if (rows === 3) continue;
    put(h, n, top + 3, at, py * v2 - pz * v1, mirror);
    put(h, n, top + 4, at, pz * v0 - px * v2, mirror);
    put(h, n, top + 5, at, px * v1 - py * v0, mirror);
  }
}

function writeRow(m: Float64Array, at: number, x: number, y: number, z: number, rx: number, ry: number, rz: number) {
  m[at] = x;
  m[at + 1] = y;
  m[at + 2] = z;
  m[at + 3] = ry * z - rz * y;
  m[at + 4] = rz * x - rx * z;
  m[at + 5] = rx * y - ry * x;
}

function put(h: Float64Array, n: number, row: number, column: number, value: number, mirror: boolean): void {
  h[row * n + column] = h[row * n + column]! + value;
  if (mirror) h[column * n + row] = h[column * n + row]! + value;
}

/** k d⊗d of a running sling, d the gradient of its length over all movers it touches. */
function addPathStretch(rig: Rig, pose: Pose, u: Unknowns, s: number, k: number, h: Float64Array): void {
  const d = new Float64Array(u.n);
  pullOfSling(rig, pose, u, s, 1, d);
  const n = u.n;
  for (let i = 0; i < n; i++) {
    if (d[i] === 0) continue;
    const v = k * d[i]!;
    for (let j = 0; j < n; j++) h[i * n + j] = h[i * n + j]! + v * d[j]!;
  }
}

/** Second-order turning of a body under a force f of the gradient at arm r: ½(f⊗r + r⊗f) − (f·r) I. */
function addTurning(
  h: Float64Array,
  n: number,
  at: number,
  fx: number,
  fy: number,
  fz: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  const o = at * n + at;
  h[o] = h[o]! - fy * ry - fz * rz;
  h[o + n + 1] = h[o + n + 1]! - fx * rx - fz * rz;
  h[o + 2 * n + 2] = h[o + 2 * n + 2]! - fx * rx - fy * ry;
  const xy = 0.5 * (fx * ry + fy * rx);
  const xz = 0.5 * (fx * rz + fz * rx);
  const yz = 0.5 * (fy * rz + fz * ry);
  h[o + 1] = h[o + 1]! + xy;
  h[o + n] = h[o + n]! + xy;
  h[o + 2] = h[o + 2]! + xz;
  h[o + 2 * n] = h[o + 2 * n]! + xz;
  h[o + n + 2] = h[o + n + 2]! + yz;
  h[o + 2 * n + 1] = h[o + 2 * n + 1]! + yz;
}

function addDeadForce(rig: Rig, pose: Pose, u: Unknowns, f: number, h: Float64Array): void {
  const i = rig.forceBody[f]!;
  const r = pose.rotation;
  const x = rig.forceLocal[3 * f]!;
  const y = rig.forceLocal[3 * f + 1]!;
  const z = rig.forceLocal[3 * f + 2]!;
  const m = 9 * i;
  const w = rig.forceWorld;
  addTurning(
    h,
    u.n,
    u.at[i]! + 3,
    -w[3 * f]!,
    -w[3 * f + 1]!,
    -w[3 * f + 2]!,
    r[m]! * x + r[m + 1]! * y + r[m + 2]! * z,
    r[m + 3]! * x + r[m + 4]! * y + r[m + 5]! * z,
    r[m + 6]! * x + r[m + 7]! * y + r[m + 8]! * z,
  );
}
