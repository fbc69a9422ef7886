// A hanging model as flat arrays: checked, datums moved to the middle of each body, sling weights shared out.
import { columnOf, cross, dot, identity, type Mat3, multiply, transpose, type Vec3 } from '../vector.ts';
import type { HangError, HangModel, NodeRef, Sling } from './model.ts';

/** What the solver works on. Movers are the bodies, then the particles; an entry is one node of one sling's path. */
export interface Rig {
  readonly model: HangModel;
  readonly bodies: number;
  readonly movers: number;
  readonly slings: number;
  /** Entries of sling s: start[s] up to start[s + 1]. */
  readonly start: Int32Array;
  /** Mover of each entry, -1 for an anchor. */
  readonly mover: Int32Array;
  /** Place of each entry: from the mover's datum in its axes, or in the world for an anchor. */
  readonly local: Float64Array;
  /** Weight of sling that hangs on each entry, N. */
  readonly share: Float64Array;
  readonly rest: Float64Array;
  readonly ea: Float64Array;
  /** All weight on each mover, and its first moment about the datum in body axes. */
  readonly weight: Float64Array;
  readonly moment: Float64Array;
  readonly forceBody: Int32Array;
  readonly forceLocal: Float64Array;
  readonly forceWorld: Float64Array;
  /** Author's datum to ours, body axes; and the world place that we count as zero. */
  readonly datum: Float64Array;
  readonly origin: Vec3;
  /** Length scale of each mover, of the bodies, and of the whole; all weight. */
  readonly size: Float64Array;
  readonly bodySize: number;
  readonly reach: number;
  readonly totalWeight: number;
}

/** Stiffness against all weight beyond which a sling is as good as inextensible (shares move by 1e-5). */
const stiffest = 1e5;

/** Checks a model and lays it out, or says what is wrong with it and with which item. */
export function layOut(model: HangModel): Rig | HangError {
  const problem = checkNumbers(model) ?? checkPaths(model) ?? checkSupport(model);
  if (problem) return problem;
  const bodies = model.bodies.length;
  const movers = bodies + model.particles.length;
  const slings = model.slings.length;
  const totalWeight = sum(model.bodies) + sum(model.particles) + sum(model.slings);
  if (!(totalWeight > 0)) return { error: 'no-weight', name: null };
  const start = new Int32Array(slings + 1);
  model.slings.forEach((sling, s) => {
    start[s + 1] = start[s]! + sling.path.length;
  });
  const entries = start[slings]!;
  const forces = model.forces ?? [];
  const rig = {
    model,
    bodies,
    movers,
    slings,
    start,
    mover: new Int32Array(entries),
    local: new Float64Array(3 * entries),
    share: new Float64Array(entries),
    rest: Float64Array.from(model.slings, (sling) => sling.length),
    ea: Float64Array.from(model.slings, (sling) => Math.min(sling.stiffness, stiffest * totalWeight)),
    weight: new Float64Array(movers),
    moment: new Float64Array(3 * movers),
    forceBody: Int32Array.from(forces, (f) => f.body),
    forceLocal: new Float64Array(3 * forces.length),
    forceWorld: new Float64Array(3 * forces.length),
    datum: new Float64Array(3 * bodies),
    origin: middle(model.anchors.map((anchor) => anchor.at)),
    size: new Float64Array(movers).fill(1),
    bodySize: 0,
    reach: 0,
    totalWeight,
  };
  placeEntries(rig);
  shareWeights(rig);
  forces.forEach((force, f) => {
    for (let d = 0; d < 3; d++) {
      rig.forceLocal[3 * f + d] = force.point[d]! - rig.datum[3 * force.body + d]!;
      rig.forceWorld[3 * f + d] = force.force[d]!;
    }
  });
  for (let i = 0; i < bodies; i++) rig.bodySize = Math.max(rig.bodySize, rig.size[i]!);
  rig.reach = Math.max(rig.bodySize, ...rig.rest);
  if (bodies === 0) rig.bodySize = rig.reach;
  return rig;
}

/** The mover a node sits on: bodies first, then particles; -1 for an anchor. */
export function moverOf(model: HangModel, node: NodeRef): number {
  if ('anchor' in node) return -1;
  return 'body' in node ? node.body : model.bodies.length + node.particle;
}

function sum(items: readonly { readonly weight: number }[]): number {
  return items.reduce((total, item) => total + item.weight, 0);
}

function middle(places: readonly Vec3[]): Vec3 {
  const n = Math.max(1, places.length);
  const mean = (d: 0 | 1 | 2) => places.reduce((total, place) => total + place[d] / n, 0);
  return [mean(0), mean(1), mean(2)];
}

/** Shifts each body's datum to the mean of its used points and centre, and measures its size from there. */
function placeEntries(rig: Rig): void {
  const { model } = rig;
  const used: Vec3[][] = model.bodies.map((body) => [body.cog]);
  for (const sling of model.slings) {
    for (const node of sling.path) if ('body' in node) used[node.body]!.push(pointOf(model, node));
  }
  used.forEach((places, i) => {
    const mean = middle(places);
    rig.datum.set(mean, 3 * i);
    const far = (place: Vec3) => Math.hypot(place[0] - mean[0], place[1] - mean[1], place[2] - mean[2]);
    rig.size[i] = Math.max(1e-3, ...places.map(far));
  });
  let entry = 0;
  for (const sling of model.slings) {
    for (const node of sling.path) {
      const mover = moverOf(model, node);
      rig.mover[entry] = mover;
      if (mover < rig.bodies) {
        const at = pointOf(model, node);
        for (let d = 0; d < 3; d++) {
          rig.local[3 * entry + d] = at[d]! - (mover < 0 ? rig.origin[d]! : rig.datum[3 * mover + d]!);
        }
      }
      entry++;
    }
  }
}

function pointOf(model: HangModel, node: NodeRef): Vec3 {
  if ('anchor' in node) return model.anchors[node.anchor]!.at;
  return 'body' in node ? model.bodies[node.body]!.points[node.point]!.at : [0, 0, 0];
}

/** Half the weight of each part of a sling hangs on each of its ends; all weight of a mover is gathered there. */
function shareWeights(rig: Rig): void {
  const { model, moment } = rig;
  model.slings.forEach((sling, s) => {
    const first = rig.start[s]!;
    const last = rig.start[s + 1]! - 1;
    for (let j = first; j <= last; j++) {
      const ends = j === first || j === last ? 1 : 2;
      const share = (ends * sling.weight) / (2 * (last - first));
      rig.share[j] = share;
      const i = rig.mover[j]!;
      if (i < 0) continue;
      rig.weight[i] = rig.weight[i]! + share;
      for (let d = 0; d < 3; d++) moment[3 * i + d] = moment[3 * i + d]! + share * rig.local[3 * j + d]!;
    }
  });
  model.bodies.forEach((body, i) => {
    rig.weight[i] = rig.weight[i]! + body.weight;
    for (let d = 0; d < 3; d++) {
      moment[3 * i + d] = moment[3 * i + d]! + body.weight * (body.cog[d]! - rig.datum[3 * i + d]!);
    }
  });
  model.particles.forEach((particle, i) => {
    rig.weight[rig.bodies + i] = rig.weight[rig.bodies + i]! + particle.weight;
  });
}

function checkNumbers(model: HangModel): HangError | null {
  const bad = (name: string): HangError => ({ error: 'bad-number', name });
  const finite = (numbers: readonly number[]) => numbers.every(Number.isFinite);
  const weighs = (weight: number) => Number.isFinite(weight) && weight >= 0;
  for (const anchor of model.anchors) if (!finite(anchor.at)) return bad(anchor.name);
  for (const body of model.bodies) {
    const numbers = [...body.cog, ...body.points.flatMap((point) => point.at), ...(body.orientation ?? [])];
    if (!weighs(body.weight) || !finite(numbers)) return bad(body.name);
    if (body.orientation && !isRotation(body.orientation)) return bad(body.name);
    if (body.axis && !(finite(body.axis) && body.axis[1] > body.axis[0])) return bad(body.name);
  }
  for (const particle of model.particles) if (!weighs(particle.weight)) return bad(particle.name);
  for (const sling of model.slings) {
    const positive = (value: number) => Number.isFinite(value) && value > 0;
    if (!positive(sling.length) || !positive(sling.stiffness) || !weighs(sling.weight)) return bad(sling.name);
  }
  for (const force of model.forces ?? []) {
    if (!finite([...force.point, ...force.force])) return bad(model.bodies[force.body]?.name ?? '');
  }
  return null;
}

function isRotation(m: Mat3): boolean {
  const product = multiply(m, transpose(m));
  const handed = dot(columnOf(m, 2), cross(columnOf(m, 0), columnOf(m, 1)));
  return handed > 0 && product.every((value, i) => Math.abs(value - identity[i]!) < 1e-6);
}

/** A path needs two nodes that exist, and must be able to move: not all on one body, not all fixed. */
function checkPaths(model: HangModel): HangError | null {
  const exists = (node: NodeRef) => {
    if ('anchor' in node) return node.anchor in model.anchors;
    if ('particle' in node) return node.particle in model.particles;
    return node.point in (model.bodies[node.body]?.points ?? []);
  };
  const moves = (sling: Sling) => new Set(sling.path.map((node) => moverOf(model, node))).size > 1;
  for (const sling of model.slings) {
    if (!sling.path.every(exists) || !moves(sling)) return { error: 'bad-path', name: sling.name };
  }
  for (const force of model.forces ?? []) {
    if (!(force.body in model.bodies)) return { error: 'bad-path', name: null };
  }
  return null;
}

/** Every body and particle must reach an anchor through slings. */
function checkSupport(model: HangModel): HangError | null {
  const movers = [...model.bodies, ...model.particles];
  const held = new Set([-1]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const sling of model.slings) {
      const on = sling.path.map((node) => moverOf(model, node));
      if (!on.some((i) => held.has(i))) continue;
      for (const i of on) {
        if (held.has(i)) continue;
        held.add(i);
        grew = true;
      }
    }
  }
  const loose = movers.findIndex((_, i) => !held.has(i));
  return loose < 0 ? null : { error: 'unsupported-body', name: movers[loose]!.name };
}
