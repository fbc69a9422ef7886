// How far a shape reaches in a direction, and its box however it is turned. Exact for every shape.
import { bodiesOf } from './bodies.ts';
import type { Ball, Body, Dome, Parabolic, Sector } from './body.ts';
import type { Placement } from './placement.ts';
import type { Shape } from './shapes.ts';
import { mitredReach, reachAlong } from './swept-body.ts';
import { columnOf, dot, type Mat3, norm, rotate, scale, transpose, type Vec3 } from './vector.ts';

/** The two far corners of an axis-aligned box, m. */
export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/**
 * The largest r . direction over the outer body of a shape, r from its datum point in its own axes. For a unit direction
 * that is the reach along it, m; it scales with the direction's length.
 */
export function extent(shape: Shape, direction: Vec3): number {
  const { outer: body, frame } = bodiesOf(shape);
  return framedReach({ body, frame }, direction);
}

/** The same of a body that stands in a frame. */
const framedReach = (one: { readonly body: Body; readonly frame: Placement }, direction: Vec3): number =>
  dot(one.frame.t, direction) + reach(one.body, rotate(transpose(one.frame.R), direction));

/** The axis-aligned box of a shape turned by R, from its datum point, in the parent's axes. */
export function boxOf(shape: Shape, R: Mat3): Box {
  const { outer, frame } = bodiesOf(shape);
  const ends = [0, 1, 2].map((axis) => {
    const along = columnOf(transpose(R), axis);
    const own = rotate(transpose(frame.R), along);
    const middle = dot(frame.t, along);
    return [middle - reach(outer, scale(own, -1)), middle + reach(outer, own)] as const;
  });
  return { min: ends.map(([low]) => low) as unknown as Vec3, max: ends.map(([, high]) => high) as unknown as Vec3 };
}

/** The largest r . direction over a body, in the body's axes. */
export function reach(body: Body, direction: Vec3): number {
  const [x, y, z] = direction;
  const level = Math.hypot(x, y);
  switch (body.form) {
    case 'polytope':
      return Math.max(...body.points.map((point) => dot(point, direction)));
    case 'extruded':
      return Math.max(...body.outline.map((point) => point[0] * x + point[1] * y)) + body.half * Math.abs(z);
    case 'turned':
      return Math.max(
        body.lowRadius * level + body.low * z,
        body.highRadius * level + body.high * z + (body.lean ?? 0) * (body.high - body.low) * y,
      );
    case 'crossed': {
      const { radius, run, branch } = body;
      return Math.max(
        run * Math.abs(x) + radius * Math.hypot(y, z),
        Math.max(0, branch * y) + radius * Math.hypot(x, z),
      );
    }
    case 'united':
      return Math.max(...body.pieces.map((one) => framedReach(one, direction)));
    case 'ball':
      return ballReach(body, level, z);
    case 'dome':
      return domeReach(body, level, z);
    case 'bend':
      return bendReach(body.bend, body.radius, body.angle, direction);
    case 'ellipsoid':
      return Math.hypot(body.halves[0] * x, body.halves[1] * y, body.halves[2] * z);
    case 'paraboloid':
      return paraboloidReach(body, level, z);
    case 'revolved':
      return Math.max(...body.outline.map(([radius, at]) => radius * level + at * z));
    case 'mitred':
      return mitredReach(body, direction);
    case 'joined':
      return Math.max(...body.parts.map((one) => framedReach(one, direction)));
    case 'led':
      return reachAlong(body.pieces, direction);
    case 'ridge': {
      const cone = Math.max(body.radius * level - (body.height / 2) * z, (body.height / 2) * z);
      return cone + body.half * Math.abs(x);
    }
    case 'cored':
      return body.halves[0] * Math.abs(x) + body.halves[1] * Math.abs(y) + body.halves[2] * Math.abs(z);
    case 'sector':
      return sectorReach(body, x, y) + body.half * Math.abs(z);
    case 'segment':
      return (
        ballReach({ centre: 0, radius: body.radius, low: body.low, high: body.radius }, Math.abs(x), y) +
        body.half * Math.abs(z)
      );
  }
}

/** Of the sphere where the touching point lies on it, else of the rim of the flat face beyond which it would lie. */
function ballReach({ centre, radius, low, high }: Omit<Ball, 'form'>, level: number, z: number): number {
  const length = Math.hypot(level, z);
  if (length === 0) return 0;
  const touches = centre + (radius * z) / length;
  if (touches >= low && touches <= high) return centre * z + radius * length;
  const face = touches < low ? low : high;
  return Math.sqrt(Math.max(0, radius ** 2 - (face - centre) ** 2)) * level + face * z;
}

/** Upwards the parabola where its slope is square to the direction, if that lies above the rim; else the rim. */
function paraboloidReach({ low, height, radius }: Parabolic, level: number, z: number): number {
  const touches = z > 0 ? (level * radius * radius) / (2 * z * height) : radius;
  const at = Math.min(touches, radius);
  return at * level + (low + height * (1 - (at / radius) ** 2)) * z;
}

/** The outer face where it looks that way, else the farther corner at the ends of the arc. */
function sectorReach({ outer, inner, angle }: Sector, x: number, y: number): number {
  const heading = Math.abs(Math.atan2(y, x));
  if (heading <= angle / 2) return outer * Math.hypot(x, y);
  const along = Math.cos(angle / 2) * x + Math.sin(angle / 2) * Math.abs(y);
  return Math.max(outer * along, inner * along);
}

/** Downwards the rim of the opening reaches farthest; upwards the curved end. */
function domeReach({ low, tangent, end }: Dome, level: number, z: number): number {
  if (z <= 0) return rimOf(end) * level + low * z;
  const length = Math.hypot(level, z);
  if (end.curve === 'spheroid') {
    return tangent * z + Math.hypot(end.across * level, end.up * z) + end.grown * length;
  }
  const onCrown = Math.atan2(z, level) >= end.turn;
  return onCrown
    ? (tangent + end.crownCentre) * z + (end.crown + end.grown) * length
    : tangent * z + end.ring * level + (end.knuckle + end.grown) * length;
}

/** Radius at the tangent line, m. */
export const rimOf = (end: Dome['end']): number =>
  (end.curve === 'spheroid' ? end.across : end.ring + end.knuckle) + end.grown;

/**
 * Each section of the bend is a disc across it. Its reach grows with the share of the direction that points outwards there,
 * as the bend radius is not below the disc's; so the farthest section is the one nearest to the direction.
 */
function bendReach(bend: number, radius: number, angle: number | 'ring', [x, y, z]: Vec3): number {
  const level = Math.hypot(x, y);
  const sectionReach = (outwards: number): number => bend * outwards + radius * Math.hypot(outwards, z);
  if (angle === 'ring') return sectionReach(level);
  const heading = Math.atan2(x, -y);
  if (heading >= 0 && heading <= angle) return sectionReach(level);
  return Math.max(sectionReach(-y), sectionReach(Math.sin(angle) * x - Math.cos(angle) * y));
}

/** How large a shape is across, for slacks: its longest reach from its datum point, doubled, is no less. */
export const spanOf = (box: Box): number =>
  norm([box.max[0] - box.min[0], box.max[1] - box.min[1], box.max[2] - box.min[2]]);
