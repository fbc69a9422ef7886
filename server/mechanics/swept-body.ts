// What is led along a line, from outside: its pieces, how far it reaches, and how deep a point lies in it.

import type { Hollow, Joined } from './bodies.ts';
import { extrusionsOf } from './extrusions.ts';
import { apply, compose, inverse, turn } from './placement.ts';
import { rectangle } from './polytopes.ts';
import { depthInProfile, type Profile, reachIn } from './profile.ts';
import type { Member, Swept } from './shapes.ts';
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
 * The space in a tube or pipe that is led along a line. Nothing where its corners leave one of a form that has no level yet:
 * a round one mitred, a rectangular one bent.
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
    if (Math.hypot(...low.slope, ...high.slope) > 0) return null;
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

/** A straight is what lies between the figures at its ends. */
const straightReach = ({ profile, low, high }: Straight, [x, y, z]: Vec3): number =>
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

function straightDepth({ profile, low, high }: Straight, [x, y, z]: Vec3): number {
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
