// Where everything of a rig stands once it hangs, in metres from its first hook: for drawings and the table beside them.
import type { HangResult, NodeRef } from '../../mechanics/hang/index.ts';
import {
  add,
  type Box,
  cross,
  dot,
  type Mat3,
  norm,
  rotate,
  scale,
  subtract,
  turn,
  type Vec3,
} from '../../mechanics/index.ts';
import type { Thing } from '../../plan/index.ts';
import { Notes } from '../notes.ts';
import { Layout } from '../place.ts';
import type { Results } from '../types.ts';
import { type Built, pickPlace } from './model.ts';
import type { Edge } from './network.ts';
import type { Share } from './tandem.ts';

/** Places in m. z points up, x across the page along the first load's own x; without hooks, from where the loads' axes begin. */
export interface Stand {
  /** Hooks, rings and other shared gear, beam points and picks. */
  readonly nodes: readonly {
    readonly thing: Thing;
    readonly kind: 'hook' | 'gear' | 'point' | 'pick';
    readonly at: Vec3;
  }[];
  readonly runs: readonly { readonly edge: Edge; readonly path: readonly Vec3[]; readonly slack: boolean }[];
  /** A beam's two ends, or the points of a frame in their order round it. */
  readonly beams: readonly { readonly thing: Thing; readonly outline: readonly Vec3[] }[];
  readonly loads: readonly LoadStand[];
}

export interface LoadStand {
  readonly thing: Thing;
  /** Of its box: x runs fastest low to high, then y, then z. Null where the box is not known. */
  readonly corners: readonly Vec3[] | null;
  readonly centre: Vec3 | null;
  readonly axes: readonly [Vec3, Vec3, Vec3]; // directions of its own x, y and z
}

type Boxes = (load: Thing) => Box | null;
interface Pose {
  readonly rotation: Mat3;
  readonly position: Vec3;
}

/** A rig at rest. Under one hook, or hooks that pull straight up, its heading means nothing, and is chosen. */
export function standing(built: Built, rest: HangResult, boxOf: Boxes): Stand {
  const lines = built.model.particles.length - built.hooks.length;
  const at = (node: NodeRef): Vec3 => {
    if ('particle' in node) return (rest.particles[node.particle] as { readonly position: Vec3 }).position;
    if ('body' in node) return inBody(built, rest.bodies[node.body] as Pose, node);
    const line = built.onLines ? rest.particles[lines + node.anchor] : null; // the hook hangs below its plumb line
    return line?.position ?? (built.model.anchors[node.anchor]?.at as Vec3);
  };
  const slack = (sling: number): boolean => rest.slings[sling]?.slack ?? false;
  const free = built.hooks.length < 2 || built.onLines === true;
  return headed(standAt(built, rest.bodies, at, slack, boxOf), free);
}

/** A load on two plumb lines, one on each hook: each hook stands over its pick as high as its line is long. */
export function standingOnLines(built: Built, found: Share, boxOf: Boxes): Stand {
  const pose: Pose = { rotation: rotationFrom(found.up), position: [0, 0, 0] };
  const at = (node: NodeRef): Vec3 => {
    if ('body' in node) return inBody(built, pose, node);
    const sling = 'anchor' in node ? built.model.slings[found.edges[node.anchor] as number] : undefined;
    const pick = sling?.path.find((one) => 'body' in one);
    return add(pick && 'body' in pick ? inBody(built, pose, pick) : [0, 0, 0], [0, 0, sling?.length ?? 0]);
  };
  return headed(
    standAt(built, [pose], at, () => false, boxOf),
    true,
  );
}

/** What is known of the loads of a plan whose rig is not worked out: as drawn, level, set side by side. */
export function unhung(results: Results): Stand {
  let from = 0;
  const parts = results.loads.map((load) => {
    const { box } = load.body;
    const layout = new Layout(results.plan, load.thing, new Notes());
    const shift: Vec3 = [from - (box ? box.min[0] : 0), 0, 0];
    if (box) from += (box.max[0] - box.min[0]) * 1.25;
    const cog = load.cog.map(({ value }) => value);
    const centre = cog.includes(null) ? null : add(cog as unknown as Vec3, shift);
    const picks = results.plan.names.things.flatMap((thing) => {
      const at = thing.kind === 'pick' && thing.load === load.thing ? pickPlace(thing, layout) : null;
      return at ? [{ thing, kind: 'pick' as const, at: add(at, shift) }] : [];
    });
    const corners = box && cornersOf(box).map((corner) => add(corner, shift));
    return { picks, load: { thing: load.thing, corners, centre, axes: axesOf({ rotation: level, position: shift }) } };
  });
  return { nodes: parts.flatMap(({ picks }) => picks), runs: [], beams: [], loads: parts.map(({ load }) => load) };
}

const level: Mat3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

function standAt(
  built: Built,
  poses: readonly Pose[],
  at: (node: NodeRef) => Vec3,
  slack: (sling: number) => boolean,
  boxOf: Boxes,
): Stand {
  const nodes = [...built.places].map(([thing, place]) => ({ thing, kind: kindOf(thing, built), at: at(place) }));
  const runs = built.edges.map(({ edge, sling }) => ({
    edge,
    path: (built.model.slings[sling]?.path ?? []).map((_, i, path) => at(anchored(built, path[i] as NodeRef))),
    slack: slack(sling),
  }));
  const bodies = built.bodies.map(({ thing }, b) => ({ thing, body: built.model.bodies[b], pose: poses[b] as Pose }));
  const beams = bodies.flatMap(({ thing, body, pose }) =>
    thing.kind === 'load' || !body ? [] : [{ thing, outline: outlineOf(body).map((point) => placed(pose, point)) }],
  );
  const loads = bodies.flatMap(({ thing, body, pose }): readonly LoadStand[] => {
    if (thing.kind !== 'load' || !body) return [];
    const box = boxOf(thing);
    const corners = box && cornersOf(box).map((corner) => placed(pose, corner));
    return [{ thing, corners, centre: placed(pose, body.cog), axes: axesOf(pose) }];
  });
  return { nodes, runs, beams, loads };
}

const kindOf = (thing: Thing, built: Built): Stand['nodes'][number]['kind'] =>
  thing.kind === 'pick' || thing.kind === 'point' ? thing.kind : built.hooks.includes(thing) ? 'hook' : 'gear';

/** The hook itself, where the model has it as the lower end of a plumb line. */
function anchored(built: Built, node: NodeRef): NodeRef {
  const first = built.model.particles.length - built.hooks.length;
  return built.onLines && 'particle' in node && node.particle >= first ? { anchor: node.particle - first } : node;
}

const inBody = (built: Built, pose: Pose, { body, point }: { readonly body: number; readonly point: number }): Vec3 =>
  placed(pose, built.model.bodies[body]?.points[point]?.at as Vec3);

const placed = ({ rotation, position }: Pose, point: Vec3): Vec3 => add(rotate(rotation, point), position);

const axesOf = ({ rotation: R }: Pose): readonly [Vec3, Vec3, Vec3] => [
  [R[0], R[3], R[6]],
  [R[1], R[4], R[7]],
  [R[2], R[5], R[8]],
];

const cornersOf = ({ min, max }: Box): readonly Vec3[] =>
  [min[2], max[2]].flatMap((z) => [min[1], max[1]].flatMap((y) => [min[0], max[0]].map((x): Vec3 => [x, y, z])));

/** The ends of a beam along its axis; of a frame, whose points lie to its sides too, those points in their order round the middle. */
function outlineOf({ axis, points }: Built['model']['bodies'][number]): readonly Vec3[] {
  const aside = points.map(({ at }) => at[1]);
  if (axis && Math.max(...aside) - Math.min(...aside) < 1e-6) return axis.map((x): Vec3 => [x, 0, 0]);
  const n = Math.max(1, points.length);
  const middle = [0, 1].map((d) => points.reduce((sum, { at }) => sum + (at[d] as number), 0) / n) as [number, number];
  const round = ({ at }: { readonly at: Vec3 }) => Math.atan2(at[1] - middle[1], at[0] - middle[0]);
  return [...points].sort((a, b) => round(a) - round(b)).map(({ at }) => at);
}

/** A rotation that points this direction of the body up, and its x axis, or what is left of it, along the world's x. */
function rotationFrom(up: Vec3): Mat3 {
  const along = (axis: Vec3): Vec3 => subtract(axis, scale(up, dot(axis, up)));
  const x = along([1, 0, 0]);
  const upright = norm(x) < 1e-6; // its x axis is plumb: its z axis stands against the world's x then
  const out = upright ? scale(along([0, 0, 1]), -Math.sign(up[0])) : x;
  const first = scale(out, 1 / norm(out));
  const second = cross(up, first);
  return [...first, ...second, ...up];
}

/** Measured from the first hook, and turned, where its heading is free, until the first load's x axis lies along x. */
function headed(stand: Stand, free: boolean): Stand {
  const hook = stand.nodes.find(({ kind }) => kind === 'hook')?.at ?? ([0, 0, 0] as Vec3);
  const axes = stand.loads[0]?.axes;
  const [x, , z] = axes ?? [null, null, null];
  const upright = x !== null && Math.hypot(x[0], x[1]) < 1e-6;
  const ahead = upright && z ? scale(z, -Math.sign(x[2])) : x;
  const R = free && ahead ? turn(-Math.atan2(ahead[1], ahead[0]), 'z') : level;
  const to = (point: Vec3): Vec3 => rotate(R, subtract(point, hook));
  return {
    nodes: stand.nodes.map((node) => ({ ...node, at: to(node.at) })),
    runs: stand.runs.map((run) => ({ ...run, path: run.path.map(to) })),
    beams: stand.beams.map((beam) => ({ ...beam, outline: beam.outline.map(to) })),
    loads: stand.loads.map((load) => ({
      ...load,
      corners: load.corners?.map(to) ?? null,
      centre: load.centre && to(load.centre),
      axes: load.axes.map((axis) => rotate(R, axis)) as unknown as LoadStand['axes'],
    })),
  };
}
