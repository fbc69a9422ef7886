// A pose of rest read out: tensions, angles, forces on each node, tilts, and what the anchors carry.
import { columnOf, type Mat3, rotate, subtract, transpose, type Vec3 } from '../vector.ts';
import type { AfterTopple, BodyPlace, BodyResult, HangResult, Placed, SlingPart, SlingResult } from './model.ts';
import { type Pose, turnBetween } from './pose.ts';
import type { Rig } from './rig.ts';
import type { Hung } from './solve.ts';

export function describe(hung: Hung): HangResult {
  const { rig, pose, kind } = hung;
  const placed = placedAt(rig, pose);
  return {
    ...placed,
    status: kind.status,
    mode: kind.mode,
    turnsOver: hung.turnsOver,
    residual: hung.residual,
    iterations: hung.steps,
    turned: hung.turned,
    zeroModes: kind.zeroModes,
    totalWeight: rig.totalWeight,
    bodies: placed.bodies.map((place, i) => bodyResult(hung, place, i)),
    afterTopple: hung.after ? afterTopple(rig, hung.drawn, hung.after) : null,
  };
}

/** Places, forces and angles of a pose, with its own tensions or with others that hold it too. */
export function placedAt(rig: Rig, pose: Pose, tensions: ArrayLike<number> = pose.tension): Placed {
  return {
    slings: rig.model.slings.map((_, s) => slingResult(rig, pose, tensions[s]!, s)),
    bodies: rig.model.bodies.map((_, i) => bodyPlace(rig, pose, i)),
    particles: rig.model.particles.map((_, i) => ({ position: placeOf(rig, pose, rig.bodies + i) })),
    anchors: anchorForces(rig, pose, tensions),
  };
}

/** Rotation of a body, body axes to world. */
function rotationOf(pose: Pose, body: number): Mat3 {
  return [...pose.rotation.subarray(9 * body, 9 * body + 9)] as unknown as Mat3;
}

/** Force of a sling with its share of weight on one node of its path, world axes, N. */
function forceAt(rig: Rig, pose: Pose, pull: number, s: number, entry: number): Vec3 {
  const force: [number, number, number] = [0, 0, -rig.share[entry]!];
  for (let d = 0; d < 3; d++) {
    if (entry < rig.start[s + 1]! - 1) force[d] = force[d]! + pull * pose.along[3 * entry + d]!;
    if (entry > rig.start[s]!) force[d] = force[d]! - pull * pose.along[3 * entry - 3 + d]!;
  }
  return force;
}

function slingResult(rig: Rig, pose: Pose, tension: number, s: number): SlingResult {
  const first = rig.start[s]!;
  const last = rig.start[s + 1]! - 1;
  const slack = !(tension > 0);
  const partWeight = rig.model.slings[s]!.weight / (last - first);
  const parts: SlingPart[] = [];
  const forces: Vec3[] = [];
  for (let j = first; j <= last; j++) {
    const mover = rig.mover[j]!;
    const force = forceAt(rig, pose, tension, s, j);
    forces.push(mover >= 0 && mover < rig.bodies ? rotate(transpose(rotationOf(pose, mover)), force) : force);
    if (slack || j === last) continue;
    const along = pose.along;
    const rise = Math.abs(along[3 * j + 2]!);
    const angle = Math.atan2(rise, Math.hypot(along[3 * j]!, along[3 * j + 1]!));
    parts.push({ length: pose.part[j]!, angle, upperTension: tension + 0.5 * partWeight * rise });
  }
  return {
    tension,
    slack,
    lengthNow: pose.length[s]!,
    angleFromHorizontal: slack ? null : Math.min(...parts.map((part) => part.angle)),
    upperTension: slack ? 0.5 * partWeight : Math.max(...parts.map((part) => part.upperTension)),
    parts,
    forces,
  };
}

function bodyPlace(rig: Rig, pose: Pose, i: number): BodyPlace {
  const rotation = rotationOf(pose, i);
  const datum: Vec3 = [rig.datum[3 * i]!, rig.datum[3 * i + 1]!, rig.datum[3 * i + 2]!];
  const position = subtract(placeOf(rig, pose, i), rotate(rotation, datum));
  return {
    rotation,
    position,
    tilt: tiltOf(rotation),
    up: [rotation[6], rotation[7], rotation[8]],
    cogHeight: position[2] + rotate(rotation, rig.model.bodies[i]!.cog)[2],
  };
}

function bodyResult(hung: Hung, place: BodyPlace, i: number): BodyResult {
  const rolls = hung.kind.free[i]!;
  return {
    ...place,
    rightingLever: hung.kind.lever[i]!,
    orientationUnique: !rolls,
    freeToRoll: rolls,
    size: hung.rig.size[i]!,
    hookOverCentre: rolls ? null : hookOverCentre(hung.rig, place, i),
  };
}

function hookOverCentre(rig: Rig, { rotation, position }: BodyPlace, i: number): Vec3 | null {
  const [hook, ...others] = rig.model.anchors;
  if (!hook || others.length > 0) return null;
  return subtract(rotate(transpose(rotation), subtract(hook.at, position)), rig.model.bodies[i]!.cog);
}

/** Angle of body z to world z, rad, exact for small tilts too. */
function tiltOf(rotation: Mat3): number {
  const z = columnOf(rotation, 2);
  return Math.atan2(Math.hypot(z[0], z[1]), z[2]);
}

function placeOf(rig: Rig, pose: Pose, mover: number): Vec3 {
  const at = 3 * mover;
  return [pose.p[at]! + rig.origin[0], pose.p[at + 1]! + rig.origin[1], pose.p[at + 2]! + rig.origin[2]];
}

function anchorForces(rig: Rig, pose: Pose, tensions: ArrayLike<number>): { force: Vec3 }[] {
  const sums = rig.model.anchors.map(() => [0, 0, 0] as [number, number, number]);
  rig.model.slings.forEach((sling, s) => {
    sling.path.forEach((node, k) => {
      if (!('anchor' in node)) return;
      const force = forceAt(rig, pose, tensions[s]!, s, rig.start[s]! + k);
      const sum = sums[node.anchor]!;
      for (let d = 0; d < 3; d++) sum[d] = sum[d]! + force[d]!;
    });
  });
  return sums.map((force) => ({ force }));
}

function afterTopple(rig: Rig, drawn: Pose, after: Pose): AfterTopple {
  return {
    tensions: [...after.tension],
    tilts: rig.model.bodies.map((_, i) => tiltOf(rotationOf(after, i))),
    turned: turnBetween(rig, drawn, after),
  };
}
