// Whether what is to be cut out is there: in the material of the part and clear of the other cut-outs.
//
// Where cut-out and part are carried along parallel lines the answer is exact and touching is allowed. For the rest, space is
// halved again and again until each cell is settled; what stays unsettled does not fit, so that nothing is taken which may not
// be there and the part never comes out too light.
import { bodiesOf } from './bodies.ts';
import type { Bodies } from './body.ts';
import { depth, depthAcross, endsOf } from './depth.ts';
import { type Box, boxOf, reach, spanOf } from './extent.ts';
import { extrusionsOf, type Section, seenFrom } from './extrusions.ts';
import { apply, compose, inverse, type Placement, still } from './placement.ts';
import { apart, type Planar, within } from './planar.ts';
import type { Shape } from './shapes.ts';
import type { PipeworkShape } from './shapes-of-pipework.ts';
import { wholeStraights } from './swept-body.ts';
import { columnOf, cross, dot, identity, norm, rotate, scale, subtract, transpose, type Vec3 } from './vector.ts';

/** A shape and how it stands; a cut-out stands in its part's own axes, measured from the part's datum point. */
export interface PlacedShape {
  readonly shape: Shape;
  readonly place: Placement;
}

/** larger: in no place as it is turned; outside: partly out of the part's material; taken: partly in an earlier cut-out. */
export type Misfit = 'larger' | 'outside' | 'taken';

/** How far, against the size, things may reach over each other and still count as touching. */
const touching = 1e-9;

/**
 * Whether a cut-out takes only material of the part that no earlier one took. Of a rolled section, sheet, mesh, weld, coil or bought-in
 * part of pipework the material's place is not known to the last hole, so that nothing can be cut from one. Both shapes can be made.
 */
export function fits(cut: PlacedShape, part: Shape, earlier: readonly PlacedShape[] = []): true | Misfit {
  if (placeless.has(part.kind === 'swept' ? part.of.kind : part.kind)) return 'outside';
  const [cutBox, partBox] = [boxOf(cut.shape, cut.place.R), boxOf(part, identity)];
  const slack = touching * spanOf(partBox);
  if ([0, 1, 2].some((axis) => sideOf(cutBox, axis) > sideOf(partBox, axis) + slack)) return 'larger';
  if (!holds(part, cut, slack)) return 'outside';
  return earlier.some((other) => overlap(cut, other)) ? 'taken' : true;
}

const boughtIn = [
  'flange',
  'nozzle',
  'manway',
  'tee',
  'reducer',
  'bolt',
  'bolt set',
  'nut',
  'washer',
] as const satisfies readonly PipeworkShape['kind'][];
/** Kinds of which it is not known where their material lies. */
const placeless: ReadonlySet<Shape['kind']> = new Set(['section', 'sheet', 'mesh', 'weld', 'coil', ...boughtIn]);

/** Of what is led along a line, in one of its straights; of anything else, in its material. */
const holds = (part: Shape, cut: PlacedShape, slack: number): boolean =>
  part.kind === 'swept'
    ? wholeStraights(part).some(({ shape, place }) =>
        holds(shape, { shape: cut.shape, place: compose(inverse(place), cut.place) }, slack),
      )
    : (inLine(cut, part) ?? inMaterial(cut, part, slack));

const sideOf = (box: Box, axis: number): number => box.max[axis]! - box.min[axis]!;

/** Whether two placed shapes share space; touching is not sharing. Where that cannot be settled they count as sharing. */
export function overlap(a: PlacedShape, b: PlacedShape): boolean {
  const exact = sharedInLine(a, b);
  if (exact !== undefined) return exact;
  const slack = touching * Math.max(spanOf(boxOf(a.shape, identity)), spanOf(boxOf(b.shape, identity)));
  const [bodyA, bodyB] = [bodiesOf(a.shape), bodiesOf(b.shape)];
  const [fromA, fromB] = [compose(a.place, bodyA.frame), compose(b.place, bodyB.frame)];
  if (separated([bodyA, fromA], [bodyB, fromB], slack)) return false;
  const toB = compose(inverse(b.place), a.place);
  return !settled(boxOf(a.shape, identity), (point, radius) => {
    const both = Math.min(materialDepth(bodyA, point), materialDepth(bodyB, apply(toB, point)));
    return both <= slack - radius ? 'clear' : both > slack ? 'broken' : 'halve';
  });
}

/**
 * The depth a hole or opening turned by R needs to run right through a part along the part's own z: that of a block, plate or
 * cylinder. Nothing where it does not run along own z, or the part is of another kind.
 */
export function throughDepth(part: Shape, R: Placement['R']): number | undefined {
  if (norm(cross(columnOf(R, 2), [0, 0, 1])) > touching) return undefined;
  if (part.kind === 'box' || part.kind === 'plate' || part.kind === 'envelope') return part.z;
  return part.kind === 'cylinder' ? part.length : undefined;
}

/** The exact answer for a cut-out carried along a line parallel to the part's. */
function inLine(cut: PlacedShape, part: Shape): boolean | undefined {
  for (const whole of extrusionsOf(part)) {
    for (const one of extrusionsOf(cut.shape)) {
      const seen = seenFrom(whole.axes, one, cut.place);
      if (!seen) continue;
      const slack = touching * Math.max(whole.half, one.half);
      const between = seen.low >= -whole.half - slack && seen.high <= whole.half + slack;
      return between && within(seen.outer, whole.outer) && whole.holes.every((hole) => clearOf(seen, hole));
    }
  }
  return undefined;
}

/** Clear of a figure that is not there: beside it, or with a hole of its own round it. */
const clearOf = (seen: Pick<Section, 'outer' | 'holes'>, figure: Planar): boolean =>
  apart(seen.outer, figure) || seen.holes.some((hole) => within(figure, hole));

/** The exact answer whether two shapes carried along parallel lines share space. */
function sharedInLine(a: PlacedShape, b: PlacedShape): boolean | undefined {
  for (const first of extrusionsOf(a.shape)) {
    const base = compose(a.place, first.axes);
    for (const second of extrusionsOf(b.shape)) {
      const seen = seenFrom(base, second, b.place);
      if (!seen) continue;
      const slack = touching * Math.max(first.half, second.half);
      if (seen.low >= first.half - slack || seen.high <= slack - first.half) return false;
      return !(clearOf(seen, first.outer) || clearOf(first, seen.outer));
    }
  }
  return undefined;
}

/** In the material of any part: below its flat ends by the exact reach of the cut-out, for the rest by halving cells. */
function inMaterial(cut: PlacedShape, part: Shape, slack: number): boolean {
  const bodies = bodiesOf(part);
  const cutBodies = bodiesOf(cut.shape);
  const toPart = compose(inverse(bodies.frame), cut.place);
  const standing = compose(toPart, cutBodies.frame);
  const below = endsOf(bodies.outer).every(
    ({ normal, offset }) => reachOf([cutBodies, standing], normal) <= offset + slack,
  );
  if (!below) return false;
  const beside = bodies.inner && separated([cutBodies, standing], [{ outer: bodies.inner }, still], slack);
  const inner = beside ? null : bodies.inner;
  if (bodies.outer.form === 'polytope' && !inner) return true;
  return settled(boxOf(cut.shape, identity), (point, radius) => {
    const ofCut = materialDepth(cutBodies, point);
    if (ofCut <= slack - radius) return 'clear';
    const at = apply(toPart, point);
    const outer = depthAcross(bodies.outer, at);
    const ofPart = inner ? Math.min(outer, -depth(inner, at)) : outer;
    if (ofPart >= radius - slack) return 'clear';
    return ofCut > slack && ofPart < -slack ? 'broken' : 'halve';
  });
}

/** Depth of a point of a shape's own axes in its material. */
function materialDepth({ outer, inner, frame }: Bodies, point: Vec3): number {
  const own = rotate(transpose(frame.R), subtract(point, frame.t));
  return inner ? Math.min(depth(outer, own), -depth(inner, own)) : depth(outer, own);
}

/** An outer body and how it stands. */
type Standing = readonly [Pick<Bodies, 'outer'>, Placement];

const reachOf = ([{ outer }, { R, t }]: Standing, direction: Vec3): number =>
  dot(t, direction) + reach(outer, rotate(transpose(R), direction));

/** Whether a plane square to one of a few likely directions parts the two: their own axes and those square to both. */
function separated(a: Standing, b: Standing, slack: number): boolean {
  const axesOf = ([, { R }]: Standing): readonly Vec3[] => [0, 1, 2].map((axis) => columnOf(R, axis));
  const [ofA, ofB] = [axesOf(a), axesOf(b)];
  const likely = [...ofA, ...ofB, ...ofA.flatMap((p) => ofB.map((q) => cross(p, q))), subtract(b[1].t, a[1].t)];
  return likely.some((direction) => {
    const length = norm(direction);
    if (length < touching) return false;
    const [along, back] = [scale(direction, 1 / length), scale(direction, -1 / length)];
    return reachOf(a, along) + reachOf(b, back) <= slack || reachOf(a, back) + reachOf(b, along) <= slack;
  });
}

/** Cells are halved at most this often in each direction, and at most so many are looked at. */
const halvings = 9;
const most = 60_000;

/** Whether every cell of a box turns out clear; a broken one or one that stays unsettled ends it. */
function settled(box: Box, judge: (middle: Vec3, radius: number) => 'clear' | 'broken' | 'halve'): boolean {
  const half = scale(subtract(box.max, box.min), 1 / 2);
  let cells: readonly Vec3[] = [
    scale([box.min[0] + box.max[0], box.min[1] + box.max[1], box.min[2] + box.max[2]], 1 / 2),
  ];
  let looked = 0;
  for (let level = 0; level <= halvings; level++) {
    const part = scale(half, 1 / 2 ** level);
    const radius = norm(part);
    const open: Vec3[] = [];
    for (const middle of cells) {
      const verdict = judge(middle, radius);
      if (verdict === 'broken' || ++looked > most) return false;
      if (verdict === 'halve') open.push(middle);
    }
    if (open.length === 0) return true;
    cells = open.flatMap((middle) => octants(middle, scale(part, 1 / 2)));
  }
  return false;
}

const octants = ([x, y, z]: Vec3, [dx, dy, dz]: Vec3): readonly Vec3[] =>
  [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vec3 => [x + i * dx, y + j * dy, z + k * dz])));
