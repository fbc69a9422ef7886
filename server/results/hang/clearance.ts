// What a load that hangs comes near: taut runs and beams against its own parts, the hook against the crane's tip, and the hook off its centre at lift-off.

import type { HangResult, NodeRef } from '../../mechanics/hang/index.ts';
import {
  apply,
  boxOf,
  compose,
  contains,
  identity,
  inverse,
  lengthWithin,
  rotate,
  type Shape,
  subtract,
  transpose,
  type Vec3,
} from '../../mechanics/index.ts';
import type { Thing } from '../../plan/index.ts';
import type { Place } from '../../syntax/types.ts';
import type { Batch } from '../batch.ts';
import { batchesOf } from '../bodies.ts';
import { limitOn } from '../rules.ts';
import type { Solid } from '../solid.ts';
import type { LegUse } from '../types.ts';
import type { HangInput } from './hang.ts';
import { type Built, pointAt } from './model.ts';

/** A run goes through a part where this much of it (m) lies deeper in the part than that. */
const deep = 0.005;
/** A part that a run ends at or within this of (m) is what it takes hold of. */
const held = 0.02;
const samples = 100;

/** Notes taut runs and beams that go through a part of the load, as it hangs; a beam counts as the lines between its points. Liquids, and parts whose place is not known, are left aside. */
export function runsThrough(input: HangInput, built: Built, rest: HangResult): void {
  built.bodies.forEach(({ thing }, b) => {
    const load = input.loads.find((one) => one.thing === thing);
    const place = rest.bodies[b];
    if (!load || !place) return;
    const own = (p: Vec3): Vec3 => rotate(transpose(place.rotation), subtract(p, place.position));
    const batches = batchesOf(load.body);
    for (const { edge, sling } of built.edges) {
      if (rest.slings[sling]?.slack) continue;
      const path = built.model.slings[sling]?.path ?? [];
      const runs = path.slice(1).flatMap((node, i) => {
        const above = path[i] as NodeRef;
        if (onBody(node, b) && onBody(above, b)) return [];
        const [from, to] = [own(worldOf(above, built, rest)), own(worldOf(node, built, rest))];
        return [{ from, to, ends: [...(onBody(above, b) ? [from] : []), ...(onBody(node, b) ? [to] : [])] }];
      });
      const leg = edge.legs[0] as LegUse;
      noteHits(input, batches, runs, `the leg to ${edge.bottom.thing.name}`, leg.item.at);
    }
    built.bodies.forEach(({ thing: beam }, i) => {
      if (beam.kind !== 'load') noteHits(input, batches, linesOf(built, rest, i, own), beam.name, beam.item.nameAt);
    });
  });
}

/** A line of what hangs, in the load's own axes; `ends`: those of it that take hold of the load. */
interface Line {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly ends: readonly Vec3[];
}

/** From each point of a beam to each other. */
function linesOf(built: Built, rest: HangResult, body: number, own: (p: Vec3) => Vec3): readonly Line[] {
  const points = (built.model.bodies[body]?.points ?? []).map((_, point) => own(worldOf({ body, point }, built, rest)));
  return points.flatMap((from, i) => points.slice(i + 1).map((to) => ({ from, to, ends: [] })));
}

function noteHits(
  { notes }: HangInput,
  batches: readonly Batch[],
  lines: readonly Line[],
  what: string,
  at: Place,
): void {
  for (const batch of batches) {
    const { solids } = batch;
    const corners = cornersOf(batch);
    const near = lines.filter(({ from, to }) => lengthWithin(from, to, corners, solids.length) > deep);
    if (!near.length) continue;
    solids.forEach((solid, i) => {
      const hit = near.some((line) => lengthWithin(line.from, line.to, corners, i) > deep && through(solid, line));
      if (hit)
        notes.add('clearance-short', at, { a: what, b: solid.name }, '', [{ at: solid.item.nameAt, says: solid.name }]);
    });
  }
}

const kept = new WeakMap<Batch, Float64Array>();
const beyond = Array(3).fill(Number.POSITIVE_INFINITY);
const before = Array(3).fill(Number.NEGATIVE_INFINITY);

/** The boxes of the parts of a batch, one behind the other, and last the one round them all; kept by the batch. */
function cornersOf(batch: Batch): Float64Array {
  const known = kept.get(batch);
  if (known) return known;
  const { solids, around } = batch;
  const boxes = [...solids.map(({ figures }) => figures.box), around];
  const corners = new Float64Array(boxes.length * 6);
  boxes.forEach((box, i) => {
    corners.set(box?.min ?? beyond, i * 6); // no line is within a box that is not known
    corners.set(box?.max ?? before, i * 6 + 3);
  });
  kept.set(batch, corners);
  return corners;
}

/** Does the line run through the material's outline of a copy that it does not end at? */
function through({ part: { shape }, rests }: Solid, { from, to, ends }: Line): boolean {
  if (!shape || !rests) return false;
  return rests.frames
    .flatMap((frame) => rests.placed.copies.map((copy) => inverse(compose(frame, copy))))
    .some((back) => {
      if (ends.some((end) => contains(shape, apply(back, end), held))) return false;
      return runsThroughShape(shape, apply(back, from), apply(back, to));
    });
}

function runsThroughShape(shape: Shape, [ax, ay, az]: Vec3, [bx, by, bz]: Vec3): boolean {
  const { min, max } = boxOf(shape, identity);
  const outside = (x: number, axis: 0 | 1 | 2): boolean => x < min[axis] || x > max[axis];
  for (let i = 0; i <= samples; i++) {
    const t = i / samples;
    const [x, y, z] = [ax + t * (bx - ax), ay + t * (by - ay), az + t * (bz - az)];
    if (outside(x, 0) || outside(y, 1) || outside(z, 2)) continue; // most of a line is: nothing of the shape is there
    if (contains(shape, [x, y, z], -deep)) return true;
  }
  return false;
}

const onBody = (node: NodeRef, b: number): boolean => 'body' in node && node.body === b;

function worldOf(node: NodeRef, { model }: Built, rest: HangResult): Vec3 {
  if ('anchor' in node) return model.anchors[node.anchor]?.at as Vec3;
  if ('particle' in node) return rest.particles[node.particle]?.position as Vec3;
  const place = rest.bodies[node.body] as HangResult['bodies'][number];
  const [x, y, z] = rotate(place.rotation, model.bodies[node.body]?.points[node.point]?.at as Vec3);
  return [x + place.position[0], y + place.position[1], z + place.position[2]];
}

/** At lift-off the hook may stand this share of the span of the picks off the centre (built in). */
const swingShare = 0.05;

/** Notes a hook that does not stand over the centre of the load as drawn: at its place, or where the legs hold it once it hangs. A load told of as tilted hangs so for the same cause. */
export function swings(input: HangInput, built: Built, rest: HangResult): void {
  const [hook, second] = built.hooks;
  const b = built.bodies.findIndex(({ thing }) => thing.kind === 'load');
  const body = built.model.bodies[b];
  if (!hook || second || !body || built.bodies.filter(({ thing }) => thing.kind === 'load').length > 1) return;
  const at = pointAt(hook.item);
  const off = at ? subtract(at, body.cog) : (rest.bodies[b]?.hookOverCentre ?? null);
  const tilt = limitOn(input.plan, ['load'], 'tilt', Math.PI / 36, 'most').value;
  if (!off || (rest.bodies[b]?.tilt ?? 0) > tilt * (1 + 1e-9)) return;
  const distance = Math.hypot(off[0], off[1]);
  const apart = body.points.flatMap((one, i) =>
    body.points.slice(i + 1).map((other) => Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1])),
  );
  const limit = swingShare * Math.max(0, ...apart);
  if (!(limit > 0) || distance <= limit * (1 + 1e-9)) return;
  input.notes.add(
    'lift-off-swing',
    (input.legs[0] as LegUse).item.at,
    { distance, side: sideOf(off, built, b), limit },
    '',
    [{ at: hook.item.nameAt, says: hook.name }],
  );
}

/** The pick that lies furthest that way, where one alone does; else the axis. */
function sideOf(off: Vec3, built: Built, b: number): string {
  const picks = [...built.places].flatMap(([thing, place]) =>
    thing.kind === 'pick' && 'body' in place && place.body === b
      ? [{ thing, at: built.model.bodies[b]?.points[place.point]?.at as Vec3 }]
      : [],
  );
  const [first, next] = picks
    .map(({ thing, at }): { thing: Thing; along: number } => ({ thing, along: at[0] * off[0] + at[1] * off[1] }))
    .sort((x, y) => y.along - x.along);
  if (first && (!next || first.along > next.along + 1e-9)) return first.thing.name;
  const axis = Math.abs(off[0]) >= Math.abs(off[1]) ? 0 : 1;
  return `${(off[axis] as number) > 0 ? '+' : '-'}${'xy'[axis]}`;
}
