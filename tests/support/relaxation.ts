// A second way to rest: explicit dynamic relaxation. Shares no formula with the solver but Newton's laws and Hooke's.
import type { HangModel, NodeRef } from '../../server/mechanics/hang/index.ts';
import {
  add,
  cross,
  identity,
  type Mat3,
  multiply,
  norm,
  rotate,
  scale,
  subtract,
  type Vec3,
} from '../../server/mechanics/vector.ts';
import { rotation } from './rigs.ts';

export interface Relaxed {
  readonly tensions: readonly number[];
  /** World up in body axes. */
  readonly ups: readonly Vec3[];
  readonly residual: number;
}

interface Mover {
  at: Vec3;
  turn: Mat3;
  speed: Vec3;
  spin: Vec3;
  mass: number;
  inertia: number;
  size: number;
  force: Vec3;
  moment: Vec3;
}

/**
 * Every mover falls and swings with a made-up mass that a full step of force/mass keeps steady (2.2 times the stiffness
 * about it), and is stopped dead whenever the kinetic energy falls. Null when it does not come to rest.
 */
export function relax(model: HangModel, goal = 1e-9, limit = 400_000): Relaxed | null {
  const movers = start(model);
  const weight = [...model.bodies, ...model.particles, ...model.slings].reduce((sum, one) => sum + one.weight, 0);
  let energy = 0;
  for (let step = 0; step < limit; step++) {
    const tensions = pull(model, movers);
    const residual = Math.max(...movers.map((m) => Math.max(norm(m.force), norm(m.moment) / m.size))) / weight;
    if (residual < goal) return { tensions, residual, ups: model.bodies.map((_, i) => up(movers[i]!.turn)) };
    let next = 0;
    for (const m of movers) {
      m.speed = add(m.speed, scale(m.force, 1 / m.mass));
      m.spin = add(m.spin, scale(m.moment, 1 / m.inertia));
      next += m.mass * norm(m.speed) ** 2 + m.inertia * norm(m.spin) ** 2;
    }
    if (next < energy) {
      for (const m of movers) {
        m.speed = [0, 0, 0];
        m.spin = [0, 0, 0];
      }
      next = 0;
    }
    energy = next;
    for (const m of movers) {
      m.at = add(m.at, m.speed);
      m.turn = multiply(rotation(m.spin), m.turn);
    }
  }
  return null;
}

const up = (m: Mat3): Vec3 => [m[6], m[7], m[8]];

function index(model: HangModel, node: NodeRef): number {
  if ('anchor' in node) return -1;
  return 'body' in node ? node.body : model.bodies.length + node.particle;
}

/** Bodies turn about their own centre of gravity here. */
function arm(model: HangModel, node: NodeRef, movers: readonly Mover[]): Vec3 {
  if (!('body' in node)) return [0, 0, 0];
  const body = model.bodies[node.body]!;
  return rotate(movers[node.body]!.turn, subtract(body.points[node.point]!.at, body.cog));
}

function place(model: HangModel, node: NodeRef, movers: readonly Mover[]): Vec3 {
  if ('anchor' in node) return model.anchors[node.anchor]!.at;
  return add(movers[index(model, node)]!.at, arm(model, node, movers));
}

function start(model: HangModel): Mover[] {
  const count = model.bodies.length + model.particles.length;
  const depth = new Array<number>(count).fill(Number.POSITIVE_INFINITY);
  for (let round = 0; round <= count; round++) {
    for (const sling of model.slings) {
      const on = sling.path.map((node) => index(model, node));
      const from = Math.min(...on.map((i) => (i < 0 ? 0 : depth[i]!)));
      for (const i of on) if (i >= 0) depth[i] = Math.min(depth[i]!, from + sling.length);
    }
  }
  const hook = model.anchors.reduce<Vec3>((sum, one) => add(sum, scale(one.at, 1 / model.anchors.length)), [0, 0, 0]);
  const movers = depth.map((below, i): Mover => {
    const body = model.bodies[i];
    return {
      at: add(hook, [0, 0, -below]),
      turn: body?.orientation ?? identity,
      speed: [0, 0, 0],
      spin: [0, 0, 0],
      mass: 0,
      inertia: 1e-9,
      size: 1,
      force: [0, 0, 0],
      moment: [0, 0, 0],
    };
  });
  model.bodies.forEach((body, i) => {
    const size = Math.max(1e-3, ...body.points.map((point) => norm(subtract(point.at, body.cog))));
    movers[i]!.size = size;
    movers[i]!.inertia = 2 * body.weight * size;
  });
  for (const sling of model.slings) {
    const k = sling.stiffness / sling.length;
    sling.path.forEach((node, j) => {
      const i = index(model, node);
      if (i < 0) return;
      // A running sling pulls a middle node from both sides.
      const both = j > 0 && j < sling.path.length - 1 ? 4 : 1;
      movers[i]!.mass += 2.2 * k * both;
      movers[i]!.inertia += 2.2 * k * both * norm(arm(model, node, movers)) ** 2;
    });
  }
  return movers;
}

/** Forces and moments on all movers; gives the tensions. */
function pull(model: HangModel, movers: readonly Mover[]): number[] {
  movers.forEach((m, i) => {
    m.force = [0, 0, -(model.bodies[i] ?? model.particles[i - model.bodies.length]!).weight];
    m.moment = [0, 0, 0];
  });
  const push = (node: NodeRef, force: Vec3) => {
    const m = movers[index(model, node)];
    if (!m) return;
    m.force = add(m.force, force);
    m.moment = add(m.moment, cross(arm(model, node, movers), force));
  };
  for (const dead of model.forces ?? []) {
    const m = movers[dead.body]!;
    m.force = add(m.force, dead.force);
    const at = rotate(m.turn, subtract(dead.point, model.bodies[dead.body]!.cog));
    m.moment = add(m.moment, cross(at, dead.force));
  }
  return model.slings.map((sling) => {
    const places = sling.path.map((node) => place(model, node, movers));
    const parts = places.slice(1).map((at, j) => subtract(at, places[j]!));
    const length = parts.reduce((sum, part) => sum + norm(part), 0);
    const tension = Math.max(0, (sling.stiffness * (length - sling.length)) / sling.length);
    parts.forEach((part, j) => {
      const long = norm(part);
      const force = long > 0 ? scale(part, tension / long) : ([0, 0, 0] as const);
      const half: Vec3 = [0, 0, -sling.weight / (2 * parts.length)];
      push(sling.path[j]!, add(force, half));
      push(sling.path[j + 1]!, add(scale(force, -1), half));
    });
    return tension;
  });
}
