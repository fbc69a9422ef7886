// What is led along a line, from outside: its pieces, how far it reaches, and how deep a point lies in it.

import type { Hollow, Joined, Mitred } from './body.ts';
import { extrusionsOf } from './extrusions.ts';
import { apply, compose, inverse, type Placement, still, turn } from './placement.ts';
import { rectangle } from './polytopes.ts';
import { depthInProfile, type Profile, reachIn } from './profile.ts';
import type { Member, Shape, Swept } from './shapes.ts';
import type { Impossible } from './solids/row.ts';
import { weldSides } from './solids/shop.ts';
import { type Arc, type Piece, piecesOf, type Straight } from './sweep.ts';
import { dot, rotate, transpose, type Vec2, type Vec3 } from './vector.ts';

const kept = new WeakMap<Swept, readonly Piece[] | Impossible>();

/** The pieces of a shape led along a line, worked out once; or why it cannot be. */
export function sweptPieces(shape: Swept): readonly Piece[] | Impossible {
  const known = kept.get(shape);
  if (known) return known;
  const { corners, bendRadius } = shape;
  const pieces = piecesOf({ profile: profileOf(shape.of), corners, ...(bendRadius !== undefined && { bendRadius }) });
  kept.set(shape, pieces);
  return pieces;
}

/** The section of a member; that of a rolled one or a weld counts as its box. */
function profileOf(member: Member): Profile {
  if (member.kind === 'section') return { outer: { corners: rectangle(member.width, member.depth) }, holes: [] };
  if (member.kind === 'weld') return { outer: { corners: rectangle(...weldSides(member)) }, holes: [] };
  const [one] = extrusionsOf(member);
  if (!one) throw new Error(`${member.kind} has no section`);
  return one;
}

/**
 * The space in a tube or pipe that is led along a line. Nothing where a rectangular one is bent: that has no level here.
 */
export function ledSpace(member: Member, pieces: readonly Piece[]): Joined | null {
  if (member.kind !== 'tube' && member.kind !== 'pipe' && member.kind !== 'rectangular tube') return null;
  const parts = pieces.map((piece) => (piece.piece === 'straight' ? straightSpace(piece) : arcSpace(piece)));
  return parts.includes(null) ? null : { form: 'joined', parts: parts as Joined['parts'] };
}

/** A piece with its bore filled: what it is from outside. */
export const filled = (piece: Piece): Piece => ({ ...piece, profile: { outer: piece.profile.outer, holes: [] } });

type Part = Joined['parts'][number] | null;

function straightSpace({ profile: { holes }, frame, low, high }: Straight): Part {
  const [hole] = holes;
  if (!hole) return null;
  if ('radius' in hole) {
    if (Math.hypot(...low.slope, ...high.slope) > 0)
      return { body: { form: 'mitred', radius: hole.radius, low, high }, frame };
    const radii = { lowRadius: hole.radius, highRadius: hole.radius };
    return { body: { form: 'turned', low: low.at, high: high.at, ...radii }, frame };
  }
  const ring = ({ at, slope }: Straight['low']): readonly Vec3[] =>
    hole.corners.map(([x, y]) => [x, y, at + slope[0] * x + slope[1] * y]);
  const sides = [0, 1, 2, 3].map((i) => [i, (i + 1) % 4, 4 + ((i + 1) % 4), 4 + i]);
  const body: Hollow = {
    form: 'polytope',
    points: [...ring(low), ...ring(high)],
    faces: [[3, 2, 1, 0], [4, 5, 6, 7], ...sides],
  };
  return { body, frame };
}

/** A bend of the body kind begins at its own -y. */
function arcSpace({ profile: { holes }, frame, radius, angle }: Arc): Part {
  const [hole] = holes;
  if (!hole || !('radius' in hole)) return null;
  const started = compose(frame, { R: turn(Math.PI / 2, 'z'), t: [0, 0, 0] });
  return { body: { form: 'bend', bend: radius, radius: hole.radius, angle }, frame: started };
}

/** The straights of a sweep as plain blocks and prisms, each as far as it is whole between its corners, placed in the shape's axes. */
export function wholeStraights(shape: Swept): readonly { readonly shape: Shape; readonly place: Placement }[] {
  const pieces = sweptPieces(shape);
  if ('impossible' in pieces) return [];
  return pieces.flatMap((piece) => {
    if (piece.piece === 'arc') return [];
    const { profile, frame, low, high } = piece;
    const from = low.at + reachIn(profile.outer, low.slope);
    const to = high.at - reachIn(profile.outer, [-high.slope[0], -high.slope[1]]);
    if (!(to > from)) return [];
    const { shape: whole, at } = straightOf(profile, to - from);
    return [{ shape: whole, place: compose(frame, { R: still.R, t: [at[0], at[1], (from + to) / 2] }) }];
  });
}

/** A section drawn out, about the middle of its length: a block where it is a plain rectangle, so that it may be cut from any side. */
function straightOf({ outer, holes }: Profile, length: number): { readonly shape: Shape; readonly at: Vec2 } {
  if ('radius' in outer) {
    const [bore] = holes;
    const round: Shape =
      bore && 'radius' in bore
        ? { kind: 'tube', outside: 2 * outer.radius, bore: 2 * bore.radius, length }
        : { kind: 'cylinder', diameter: 2 * outer.radius, length };
    return { shape: round, at: outer.centre };
  }
  const { corners } = outer;
  const [xs, ys] = [0, 1].map((axis) => corners.map((corner) => corner[axis as 0 | 1])) as [number[], number[]];
  const [x, y] = [xs, ys].map((list) => [Math.min(...list), Math.max(...list)] as const) as [Vec2, Vec2];
  const boxed = corners.length === 4 && corners.every((corner) => x.includes(corner[0]) && y.includes(corner[1]));
  if (boxed && !holes.length)
    return {
      shape: { kind: 'box', x: x[1] - x[0], y: y[1] - y[0], z: length },
      at: [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2],
    };
  const inner = holes.flatMap((hole) => ('corners' in hole ? [hole.corners] : []));
  return { shape: { kind: 'prism', outline: corners, holes: inner, length }, at: [0, 0] };
}

/** The largest r . direction over the pieces of a sweep. */
export const reachAlong = (pieces: readonly Piece[], direction: Vec3): number =>
  Math.max(
    ...pieces.map((piece) => {
      const own = rotate(transpose(piece.frame.R), direction);
      return (
        dot(piece.frame.t, direction) + (piece.piece === 'straight' ? straightReach(piece, own) : arcReach(piece, own))
      );
    }),
  );

/** The same of the space in a round straight. */
export const mitredReach = ({ radius, low, high }: Mitred, direction: Vec3): number =>
  straightReach({ ...round(radius), low, high }, direction);

const round = (radius: number) => ({ profile: { outer: { centre: [0, 0] as const, radius }, holes: [] } });

/** How deep a point lies in it. */
export const mitredDepth = ({ radius, low, high }: Mitred, point: Vec3): number =>
  straightDepth({ ...round(radius), low, high }, point);

/** A straight is what lies between the figures at its ends. */
const straightReach = ({ profile, low, high }: Omit<Straight, 'piece' | 'frame'>, [x, y, z]: Vec3): number =>
  Math.max(
    ...[low, high].map(({ at, slope }) => at * z + reachIn(profile.outer, [x + slope[0] * z, y + slope[1] * z])),
  );

/** No point of the section lies beyond the axis of the bend, so that the farthest section is the one nearest to the direction. */
function arcReach({ profile, radius, angle }: Arc, [x, y, z]: Vec3): number {
  const heading = Math.atan2(y, x);
  const outwards =
    heading >= 0 && heading <= angle ? Math.hypot(x, y) : Math.max(x, Math.cos(angle) * x + Math.sin(angle) * y);
  return radius * outwards + reachIn(profile.outer, [outwards, z]);
}

/** How deep a point lies in the material of the pieces, m: as deep as in the one that holds it best; below zero outside. */
export const depthAlong = (pieces: readonly Piece[], point: Vec3): number =>
  Math.max(
    ...pieces.map((piece) => {
      const own = apply(inverse(piece.frame), point);
      return piece.piece === 'straight' ? straightDepth(piece, own) : arcDepth(piece, own);
    }),
  );

function straightDepth({ profile, low, high }: Omit<Straight, 'piece' | 'frame'>, [x, y, z]: Vec3): number {
  const level = (slope: Vec2): number => slope[0] * x + slope[1] * y;
  const lean = (slope: Vec2): number => Math.hypot(1, slope[0], slope[1]);
  return Math.min(
    depthInProfile(profile, [x, y]),
    (z - low.at - level(low.slope)) / lean(low.slope),
    (high.at + level(high.slope) - z) / lean(high.slope),
  );
}

function arcDepth({ profile, radius, angle }: Arc, [x, y, z]: Vec3): number {
  return Math.min(
    depthInProfile(profile, [Math.hypot(x, y) - radius, z]),
    y,
    Math.sin(angle) * x - Math.cos(angle) * y,
  );
}
