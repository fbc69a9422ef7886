// How deep a point lies in a body, and whether a shape contains it.
//
// A depth is above zero inside, below zero outside, and never changes faster than the point moves. So a ball whose radius is
// below the depth at its middle lies wholly inside, and one whose radius is below minus the depth wholly outside: that is all
// the sampling of cut-outs relies on. It need not be the distance to the surface, only never more.
import { bodiesOf } from './bodies.ts';
import type { Bend, Body, Dome, Knuckled, Parabolic, Polytope, Spheroid } from './body.ts';
import { depthIn, edgesOf, type Outline, sizeOf } from './outline.ts';
import { apply, inverse } from './placement.ts';
import type { Shape } from './shapes.ts';
import { depthAlong, mitredDepth } from './swept-body.ts';
import { columnOf, cross, dot, identity, norm, rotate, scale, subtract, transpose, type Vec3 } from './vector.ts';

/** Whether a point (from the datum point, own axes) lies in the outer body of a shape, or at most `slack` (m) out of it. */
export function contains(shape: Shape, point: Vec3, slack: number): boolean {
  const { outer, frame } = bodiesOf(shape);
  return depth(outer, rotate(transpose(frame.R), subtract(point, frame.t))) >= -slack;
}

/** Whether a point lies in the material of a shape: in its outer body and not in the space inside. */
export function containsMaterial(shape: Shape, point: Vec3, slack: number): boolean {
  const { outer, inner, frame } = bodiesOf(shape);
  const own = rotate(transpose(frame.R), subtract(point, frame.t));
  return depth(outer, own) >= -slack && (inner === null || depth(inner, own) <= slack);
}

/** Depth of a point in a body, m, in the body's axes. */
export function depth(body: Body, point: Vec3): number {
  return Math.min(depthBetweenEnds(body, point), depthAcross(body, point));
}

/** Depth below the flat faces that close a body: the ends of what is drawn out, turned or bent. */
function depthBetweenEnds(body: Body, point: Vec3): number {
  return Math.min(...endsOf(body).map(({ normal, offset }) => offset - dot(normal, point)));
}

/** A flat face: points of the body have normal . r <= offset; the normal has length 1. */
export interface Face {
  readonly normal: Vec3;
  readonly offset: number;
}

/** The flat faces that bound a body on all its width; a polytope has no others. */
export function endsOf(body: Body): readonly Face[] {
  switch (body.form) {
    case 'polytope':
      return facesOf(body);
    case 'extruded':
      return level(-body.half, body.half);
    case 'turned':
      return level(body.low, body.high);
    case 'ball':
      return [
        ...(body.low > body.centre - body.radius ? level(body.low) : []),
        ...(body.high < body.centre + body.radius ? [{ normal: [0, 0, 1], offset: body.high } as const] : []),
      ];
    case 'dome':
      return level(body.low);
    case 'bend':
      return bendEnds(body.angle);
    case 'ellipsoid':
    case 'revolved':
    case 'crossed':
    case 'united':
    case 'led':
    case 'joined':
    case 'mitred':
      return [];
    case 'paraboloid':
      return level(body.low);
    case 'sector': {
      const [sin, cos] = [Math.sin(body.angle / 2), Math.cos(body.angle / 2)];
      return [
        ...level(-body.half, body.half),
        { normal: [-sin, cos, 0], offset: 0 },
        { normal: [-sin, -cos, 0], offset: 0 },
      ];
    }
    case 'ridge':
      return level(-body.height / 2);
    case 'cored':
      return [0, 1, 2].flatMap((axis) =>
        [-1, 1].map((way) => ({ normal: scale(columnOf(identity, axis), way), offset: body.halves[axis]! })),
      );
    case 'segment':
      return [...level(-body.half, body.half), { normal: [0, -1, 0], offset: -body.low }];
  }
}

const level = (low: number, high?: number): readonly Face[] => [
  { normal: [0, 0, -1], offset: -low },
  ...(high === undefined ? [] : [{ normal: [0, 0, 1], offset: high } as const]),
];

/** Outward faces of a polytope; those shrunk to a line or point are left out. */
function facesOf({ points, faces }: Polytope): readonly Face[] {
  return faces.flatMap((face) => {
    const [a, b, c, d = a] = face.map((index) => points[index]!) as [Vec3, Vec3, Vec3, Vec3?];
    const outwards = cross(subtract(c, a), subtract(d, b));
    const length = norm(outwards);
    if (length === 0) return [];
    const unit = scale(outwards, 1 / length);
    return [{ normal: unit, offset: dot(unit, a) }];
  });
}

/** An elbow begins at -y and turns by less than or just a half turn: it lies before the one end and behind the other. */
function bendEnds(angle: Bend['angle']): readonly Face[] {
  if (angle === 'ring') return [];
  return [
    { normal: [-1, 0, 0], offset: 0 },
    { normal: [Math.cos(angle), Math.sin(angle), 0], offset: 0 },
  ];
}

/** Depth inside the curved or cornered sides of a body, its ends left aside. */
export function depthAcross(body: Body, [x, y, z]: Vec3): number {
  const radius = Math.hypot(x, y);
  switch (body.form) {
    case 'polytope':
      return Number.POSITIVE_INFINITY;
    case 'extruded':
      return Math.min(depthIn(body.outline, [x, y]), ...body.holes.map((hole) => -depthIn(hole, [x, y])));
    case 'turned': {
      const slope = (body.highRadius - body.lowRadius) / (body.high - body.low);
      const lean = body.lean ?? 0; // the face moves by no more than slope and lean together
      const fromAxis = lean ? Math.hypot(x, y - lean * (z - body.low)) : radius;
      return (body.lowRadius + slope * (z - body.low) - fromAxis) / Math.hypot(1, Math.abs(slope) + Math.abs(lean));
    }
    case 'crossed': {
      const { radius: bore, run, branch } = body;
      const inRun = Math.min(bore - Math.hypot(y, z), run - Math.abs(x));
      return Math.max(inRun, Math.min(bore - Math.hypot(x, z), branch - y, y));
    }
    case 'united':
      return Math.max(
        ...body.pieces.map((one) => depth(one.body, rotate(transpose(one.frame.R), subtract([x, y, z], one.frame.t)))),
      );
    case 'ball':
      return body.radius - Math.hypot(radius, z - body.centre);
    case 'dome':
      return depthInEnd(body.end, radius, Math.max(0, z - body.tangent));
    case 'bend':
      return body.radius - Math.hypot(radius - body.bend, z);
    case 'ellipsoid': {
      const [a, b, c] = body.halves; // how far out a point is, 1 on the face, changes by no more than 1 / the least half axis
      return Math.min(a, b, c) * (1 - Math.hypot(x / a, y / b, z / c));
    }
    case 'paraboloid':
      return depthInParaboloid(body, radius, z);
    case 'revolved':
      return depthIn(acrossAxis(body.outline), [radius, z]);
    case 'mitred':
      return mitredDepth(body, [x, y, z]);
    case 'joined':
      return Math.max(...body.parts.map(({ body: one, frame }) => depth(one, apply(inverse(frame), [x, y, z]))));
    case 'led':
      return depthAlong(body.pieces, [x, y, z]);
    case 'ridge': {
      const out = Math.hypot(Math.max(0, Math.abs(x) - body.half), y);
      const slope = body.height / body.radius;
      return (slope * (body.radius - out) - body.height / 2 - z) / Math.hypot(1, slope);
    }
    case 'cored': {
      const { across, up, middles } = body; // how far out of an ellipse a point is, as in an ellipsoid
      return Math.min(...middles.map((at) => Math.min(across, up) * (Math.hypot((y - at) / across, z / up) - 1)));
    }
    case 'sector':
      return Math.min(body.outer - radius, radius - body.inner);
    case 'segment':
      return body.radius - radius;
  }
}

/** Depth in the meridian plane of a dome, `up` from its tangent line; the flange below carries on the rim. */
function depthInEnd(end: Dome['end'], radius: number, up: number): number {
  return end.curve === 'spheroid' ? depthInSpheroid(end, radius, up) : depthInKnuckled(end, radius, up);
}

/**
 * Crown and knuckle meet where a line from the crown's centre passes the knuckle's: on each side its own circle counts. Above
 * the tangent line, what is not on the crown's side lies outside the ring of the knuckle's centres.
 */
function depthInKnuckled(
  { ring, knuckle, crown, crownCentre, turn, grown }: Knuckled,
  radius: number,
  up: number,
): number {
  const aboveCentre = up - crownCentre;
  const onCrown = Math.atan2(aboveCentre, radius) >= turn;
  if (onCrown) return crown + grown - Math.hypot(radius, aboveCentre);
  return knuckle + grown - Math.hypot(radius - ring, up);
}

/** Signed distance to an ellipse, less the face's moving out; the nearest point is found by halving an interval. */
function depthInSpheroid({ across, up: height, grown }: Spheroid, radius: number, up: number): number {
  const flat = across >= height;
  const [a, b] = flat ? [across, height] : [height, across];
  const [p, q] = flat ? [radius, up] : [up, radius];
  const distance = distanceToEllipse(a, b, p, q);
  const inside = (p / a) ** 2 + (q / b) ** 2 < 1;
  return grown + (inside ? distance : -distance);
}

/** Distance from (p, q), both not below zero, to the ellipse with half axes a >= b along p and q. Lagrange's condition. */
function distanceToEllipse(a: number, b: number, p: number, q: number): number {
  if (q === 0) {
    const at = a * p < a * a - b * b ? (a * a * p) / (a * a - b * b) : a;
    return Math.hypot(p - at, b * Math.sqrt(Math.max(0, 1 - (at / a) ** 2)));
  }
  const ratio = (a / b) ** 2;
  const [u, v] = [p / a, q / b];
  let [low, high] = [v - 1, Math.hypot(ratio * u, v) - 1];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    const miss = ((ratio * u) / (middle + ratio)) ** 2 + (v / (middle + 1)) ** 2 - 1;
    if (miss > 0) low = middle;
    else high = middle;
  }
  const s = (low + high) / 2;
  return Math.hypot(p - (ratio * p) / (s + ratio), q - q / (s + 1));
}

/** Distance to the parabola in the meridian plane; the nearest point solves a cubic that has one root beyond `from`. */
function depthInParaboloid({ low, height, radius }: Parabolic, r: number, z: number): number {
  const bend = height / radius ** 2; // the parabola is up = height - bend * s * s
  const up = z - low;
  const slope = 1 - 2 * bend * (height - up);
  const miss = (s: number): number => 2 * bend * bend * s ** 3 + slope * s - r;
  let from = Math.sqrt(Math.max(0, -slope / 6)) / bend;
  let to = Math.max(from, radius, r);
  while (miss(to) < 0) to *= 2;
  for (let step = 0; step < 80; step++) {
    const middle = (from + to) / 2;
    if (miss(middle) < 0) from = middle;
    else to = middle;
  }
  const distance = Math.hypot(to - r, height - bend * to * to - up);
  return up < height - bend * r * r ? distance : -distance;
}

/** The outline carried on across the axis where it runs along it: the axis is no face. */
function acrossAxis(outline: Outline): Outline {
  const beyond = -2 * sizeOf(outline);
  return edgesOf(outline).flatMap(([a, b]) =>
    a[0] === 0 && b[0] === 0 ? [a, [beyond, a[1]] as const, [beyond, b[1]] as const] : [a],
  );
}
