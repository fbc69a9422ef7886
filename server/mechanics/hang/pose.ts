// Where everything is: places and rotations of the movers, the sling nodes that follow from them, and small steps.
import type { Rig } from './rig.ts';

/** A place for every mover and all that follows from it. Written in place by `measure`. */
export interface Pose {
  /** Datum of each mover in the world, 3 numbers each. */
  readonly p: Float64Array;
  /** Unit quaternion of each body: w, x, y, z. */
  readonly q: Float64Array;
  /** Rotation of each body, body axes to world, row after row. */
  readonly rotation: Float64Array;
  /** Of each entry: arm from its mover's datum in world axes (0 at particles), and its world place. */
  readonly arm: Float64Array;
  readonly place: Float64Array;
  /** Unit vector and length of the part from each entry to the next one of its path. */
  readonly along: Float64Array;
  readonly part: Float64Array;
  /** Of each sling: path length and tension. */
  readonly length: Float64Array;
  readonly tension: Float64Array;
  /** First moment of each mover's weight about its datum, world axes. */
  readonly moment: Float64Array;
  energy: number;
}

/** Which unknowns a step has: places alone, or rotations as well (three more for each body). */
export interface Unknowns {
  readonly turning: boolean;
  readonly n: number;
  /** First unknown of each mover. */
  readonly at: Int32Array;
  /** S of the scaled system: 1 for places, 1/size for rotations. */
  readonly scale: Float64Array;
}

export function unknowns(rig: Rig, turning: boolean): Unknowns {
  const at = new Int32Array(rig.movers);
  let n = 0;
  for (let i = 0; i < rig.movers; i++) {
    at[i] = n;
    n += turning && i < rig.bodies ? 6 : 3;
  }
  const scale = new Float64Array(n).fill(1);
  if (turning) for (let i = 0; i < rig.bodies; i++) scale.fill(1 / rig.size[i]!, at[i]! + 3, at[i]! + 6);
  return { turning, n, at, scale };
}

/** All bodies as drawn, everything at the origin. */
export function drawnPose(rig: Rig): Pose {
  const entries = rig.mover.length;
  const pose: Pose = {
    p: new Float64Array(3 * rig.movers),
    q: new Float64Array(4 * rig.bodies),
    rotation: new Float64Array(9 * rig.bodies),
    arm: new Float64Array(3 * entries),
    place: new Float64Array(3 * entries),
    along: new Float64Array(3 * entries),
    part: new Float64Array(entries),
    length: new Float64Array(rig.slings),
    tension: new Float64Array(rig.slings),
    moment: new Float64Array(3 * rig.movers),
    energy: 0,
  };
  rig.model.bodies.forEach((body, i) => {
    pose.q.set(body.orientation ? quaternion(body.orientation) : [1, 0, 0, 0], 4 * i);
  });
  return pose;
}

export function copyPose(pose: Pose): Pose {
  return {
    p: pose.p.slice(),
    q: pose.q.slice(),
    rotation: pose.rotation.slice(),
    arm: pose.arm.slice(),
    place: pose.place.slice(),
    along: pose.along.slice(),
    part: pose.part.slice(),
    length: pose.length.slice(),
    tension: pose.tension.slice(),
    moment: pose.moment.slice(),
    energy: pose.energy,
  };
}

/** Writes into `to` the places and rotations of `from` after a step: p + δ, exp([ω]) R with ω in world axes. */
export function take(rig: Rig, from: Pose, u: Unknowns, step: Float64Array, to: Pose): void {
  for (let i = 0; i < rig.movers; i++) {
    const a = u.at[i]!;
    for (let d = 0; d < 3; d++) to.p[3 * i + d] = from.p[3 * i + d]! + step[a + d]!;
  }
  if (!u.turning) {
    to.q.set(from.q);
    return;
  }
  for (let i = 0; i < rig.bodies; i++) {
    const a = u.at[i]! + 3;
    turn(from.q, step[a]!, step[a + 1]!, step[a + 2]!, to.q, 4 * i);
  }
}

function turn(q: Float64Array, wx: number, wy: number, wz: number, out: Float64Array, at: number): void {
  const angle = Math.sqrt(wx * wx + wy * wy + wz * wz);
  const half = angle < 1e-5 ? 0.5 - (angle * angle) / 48 : Math.sin(angle / 2) / angle;
  const s = Math.cos(angle / 2);
  const x = half * wx;
  const y = half * wy;
  const z = half * wz;
  const qw = q[at]!;
  const qx = q[at + 1]!;
  const qy = q[at + 2]!;
  const qz = q[at + 3]!;
  const w = s * qw - x * qx - y * qy - z * qz;
  const i = s * qx + x * qw + y * qz - z * qy;
  const j = s * qy + y * qw + z * qx - x * qz;
  const k = s * qz + z * qw + x * qy - y * qx;
  const norm = 1 / Math.sqrt(w * w + i * i + j * j + k * k);
  out[at] = w * norm;
  out[at + 1] = i * norm;
  out[at + 2] = j * norm;
  out[at + 3] = k * norm;
}

/** Rotation matrices of all bodies from their quaternions. */
export function rotations(rig: Rig, pose: Pose): void {
  const { q, rotation: r } = pose;
  for (let i = 0; i < rig.bodies; i++) {
    const w = q[4 * i]!;
    const x = q[4 * i + 1]!;
    const y = q[4 * i + 2]!;
    const z = q[4 * i + 3]!;
    const a = 9 * i;
    r[a] = 1 - 2 * (y * y + z * z);
    r[a + 1] = 2 * (x * y - w * z);
    r[a + 2] = 2 * (x * z + w * y);
    r[a + 3] = 2 * (x * y + w * z);
    r[a + 4] = 1 - 2 * (x * x + z * z);
    r[a + 5] = 2 * (y * z - w * x);
    r[a + 6] = 2 * (x * z - w * y);
    r[a + 7] = 2 * (y * z + w * x);
    r[a + 8] = 1 - 2 * (x * x + y * y);
  }
}

/** Largest turn of a body's up direction, seen from the body, between two poses, rad: free of spin about the vertical. */
export function turnBetween(rig: Rig, a: Pose, b: Pose): number {
  let largest = 0;
  for (let i = 0; i < rig.bodies; i++) {
    const o = 9 * i + 6;
    const ax = a.rotation[o]!;
    const ay = a.rotation[o + 1]!;
    const az = a.rotation[o + 2]!;
    const bx = b.rotation[o]!;
    const by = b.rotation[o + 1]!;
    const bz = b.rotation[o + 2]!;
    const sine = Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
    largest = Math.max(largest, Math.atan2(sine, ax * bx + ay * by + az * bz));
  }
  return largest;
}

/** Unit quaternion of a rotation matrix (Shepperd 1978: the largest of the four squares is the divisor). */
function quaternion(m: readonly number[]): [number, number, number, number] {
  const [a, b, c, d, e, f, g, h, i] = m as [number, number, number, number, number, number, number, number, number];
  const squares = [1 + a + e + i, 1 + a - e - i, 1 - a + e - i, 1 - a - e + i];
  const largest = squares.indexOf(Math.max(...squares));
  const rows = [
    [squares[0]!, h - f, c - g, d - b],
    [h - f, squares[1]!, b + d, c + g],
    [c - g, b + d, squares[2]!, f + h],
    [d - b, c + g, f + h, squares[3]!],
  ] as [number, number, number, number][];
  const q = rows[largest]!;
  const norm = Math.hypot(...q) || 1;
  return [q[0] / norm, q[1] / norm, q[2] / norm, q[3] / norm];
}
