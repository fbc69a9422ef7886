// A section led along a line with corners: the straights and bends it is made of, or why the line cannot be followed.
//
// The section's own x lies to the left of the line and its y as far up as it goes; at a corner it turns with the line by the
// least turn. A mitred corner is cut through the middle of its angle, where both straights meet in the same figure.
import { axisRotation, type Placement } from './placement.ts';
import { momentsOf, type Profile, reachIn } from './profile.ts';
import { exceeds, type Impossible, impossible } from './solids/row.ts';
import {
  add,
  columnOf,
  cross,
  dot,
  type Mat3,
  multiply,
  norm,
  rotate,
  scale,
  subtract,
  transpose,
  type Vec2,
  type Vec3,
  zero,
} from './vector.ts';

/** Where a straight ends: `at` along it (m), and `slope` . r further in a point r of the section. */
export interface Cut {
  readonly at: number;
  readonly slope: Vec2;
}

/** Its own x and y are the section's, its own z runs along the line from the corner it begins at. */
export interface Straight {
  readonly piece: 'straight';
  readonly profile: Profile;
  readonly frame: Placement;
  readonly low: Cut;
  readonly high: Cut;
}

/** About its own z, from own x towards own y; the profile's x points outwards from the line, its y along own z. */
export interface Arc {
  readonly piece: 'arc';
  readonly profile: Profile;
  readonly frame: Placement;
  readonly radius: number;
  readonly angle: number;
}

export type Piece = Straight | Arc;

/** A section, the corners of the line it is led along, and the radius its corners are bent to; without one they are mitred. */
export interface Sweep {
  readonly profile: Profile;
  readonly corners: readonly Vec3[];
  readonly bendRadius?: number;
}

/** A corner as seen from the straight before it and the one behind it: its angle, and the direction out of the bend in each. */
interface Turn {
  readonly angle: number;
  readonly before: Vec3;
  readonly behind: Vec3;
}

/** Straights this much alike in direction make no corner (rad), and turned back this nearly there is no bend. */
const hardly = 1e-9;

/** The pieces of a sweep in turn, or why there are none. */
export function piecesOf(sweep: Sweep): readonly Piece[] | Impossible {
  const { corners } = sweep;
  if (corners.length < 2) return impossible('line-too-short', [corners.length], ['along']);
  const sides = corners.slice(1).map((corner, i) => subtract(corner, corners[i]!));
  const stopped = sides.findIndex((side) => !(norm(side) > 0));
  if (stopped >= 0) return impossible('line-stands-still', [stopped], ['along']);
  const along = sides.map((side) => scale(side, 1 / norm(side)));
  const ring = isRing(corners);
  const turns = along.map((one, i) =>
    i + 1 < along.length || ring ? turnOf(one, along[(i + 1) % along.length]!) : null,
  );
  const back = turns.findIndex((turn) => turn && turn.angle > Math.PI - 1e-3);
  if (back >= 0) return impossible('line-doubles-back', [(back + 1) % along.length], ['along']);
  const frames = framesOf(along);
  if (ring && !meets(sweep.profile, frames, along)) return impossible('line-twists', [], ['along']);
  return bendFault(sweep, turns, frames) ?? joined(sweep, sides.map(norm), turns, frames);
}

/** Whether a line ends where it began, so that what is led along it has no ends. */
export function isRing(corners: readonly Vec3[]): boolean {
  const longest = Math.max(...corners.slice(1).map((corner, i) => norm(subtract(corner, corners[i]!))));
  return corners.length > 2 && norm(subtract(corners[0]!, corners.at(-1)!)) <= hardly * longest;
}

function turnOf(from: Vec3, to: Vec3): Turn {
  const axis = cross(from, to);
  const [sin, cos] = [norm(axis), dot(from, to)];
  if (sin <= hardly && cos > 0) return { angle: 0, before: zero, behind: zero };
  const out = (a: Vec3, b: Vec3): Vec3 => scale(subtract(scale(a, cos), b), 1 / sin);
  return { angle: Math.atan2(sin, cos), before: out(from, to), behind: scale(out(to, from), -1) };
}

/** Own x along a direction, own z as far up as it goes; of an upright one own y along the parent's x. */
export function directed(along: Vec3): Mat3 {
  const up: Vec3 = Math.hypot(along[0], along[1]) < 1e-9 ? [0, Math.sign(along[2]), 0] : [0, 0, 1];
  const square = subtract(up, scale(along, dot(up, along)));
  const z = scale(square, 1 / norm(square));
  const y = cross(z, along);
  return [along[0], y[0], z[0], along[1], y[1], z[1], along[2], y[2], z[2]];
}

/** How the section stands on each straight: own z along it. */
function framesOf(along: readonly Vec3[]): readonly Mat3[] {
  const frames = [multiply(directed(along[0]!), axisRotation('x'))];
  for (let i = 1; i < along.length; i++) frames.push(carried(frames[i - 1]!, along[i - 1]!, along[i]!));
  return frames;
}

/** A frame turned by the least turn that takes one direction to another (Rodrigues). */
function carried(frame: Mat3, from: Vec3, to: Vec3): Mat3 {
  const [axis, cos] = [cross(from, to), dot(from, to)];
  const turned = (v: Vec3): Vec3 => {
    const once = cross(axis, v);
    return add(add(v, once), scale(cross(axis, once), 1 / (1 + cos)));
  };
  const [x, y, z] = [0, 1, 2].map((i) => turned(columnOf(frame, i))) as [Vec3, Vec3, Vec3];
  return [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]];
}

/** Whether a section led round a ring comes back as it started; a round one always does. */
function meets({ outer, holes }: Profile, frames: readonly Mat3[], along: readonly Vec3[]): boolean {
  const round = [outer, ...holes].every((figure) => 'radius' in figure && Math.hypot(...figure.centre) === 0);
  const back = carried(frames.at(-1)!, along.at(-1)!, along[0]!);
  return round || norm(subtract(columnOf(back, 0), columnOf(frames[0]!, 0))) < 1e-6;
}

const inFrame = (frame: Mat3, direction: Vec3): Vec2 => {
  const [x, y] = rotate(transpose(frame), direction);
  return [x, y];
};

function bendFault({ profile, bendRadius }: Sweep, turns: readonly (Turn | null)[], frames: readonly Mat3[]) {
  if (bendRadius === undefined) return undefined;
  for (const [i, turn] of turns.entries()) {
    if (!turn?.angle) continue;
    const reach = reachIn(profile.outer, inFrame(frames[i]!, scale(turn.before, -1)));
    if (exceeds(reach, bendRadius)) return impossible('bend-too-tight', [bendRadius, reach], ['bendRadius', 'along']);
  }
  return undefined;
}

/** Straights and bends in turn; none where the corners take more of a straight than there is. */
function joined(sweep: Sweep, lengths: readonly number[], turns: readonly (Turn | null)[], frames: readonly Mat3[]) {
  const { profile, corners, bendRadius: radius } = sweep;
  const pieces: Piece[] = [];
  for (const [i, length] of lengths.entries()) {
    const [from, to] = [turns.at(i - 1) ?? null, turns[i] ?? null];
    const low = cutAt(from, 'behind', frames[i]!, radius);
    const end = cutAt(to, 'before', frames[i]!, radius);
    const high = { at: length - end.at, slope: end.slope };
    const slopes: Vec2 = [low.slope[0] - high.slope[0], low.slope[1] - high.slope[1]];
    const due = low.at + end.at + Math.max(0, reachIn(profile.outer, slopes));
    if (exceeds(due, length)) return impossible('corner-too-tight', [length, due], ['along', 'bendRadius']);
    if (high.at > low.at)
      pieces.push({ piece: 'straight', profile, frame: { R: frames[i]!, t: corners[i]! }, low, high });
    if (radius !== undefined && to?.angle) pieces.push(arcOf(profile, frames[i]!, corners[i + 1]!, to, radius));
  }
  return pieces;
}

/** What a corner cuts off a straight: the way to the tangent point of a bend, or the slope of a mitre. */
function cutAt(turn: Turn | null, side: 'before' | 'behind', frame: Mat3, radius: number | undefined): Cut {
  if (!turn?.angle) return { at: 0, slope: [0, 0] };
  const tan = Math.tan(turn.angle / 2);
  if (radius !== undefined) return { at: radius * tan, slope: [0, 0] };
  const [x, y] = inFrame(frame, scale(turn[side], side === 'before' ? tan : -tan));
  return { at: 0, slope: [x, y] };
}

function arcOf(profile: Profile, frame: Mat3, corner: Vec3, { angle, before }: Turn, radius: number): Arc {
  const along = columnOf(frame, 2);
  const axis = cross(before, along);
  const start = add(corner, scale(along, -radius * Math.tan(angle / 2)));
  const R: Mat3 = [before[0], along[0], axis[0], before[1], along[1], axis[1], before[2], along[2], axis[2]];
  const [out, up] = [inFrame(frame, before), inFrame(frame, axis)];
  const placed = ([x, y]: Vec2): Vec2 => [x * out[0] + y * out[1], x * up[0] + y * up[1]];
  const seen = (figure: Profile['outer']) =>
    'corners' in figure ? { corners: figure.corners.map(placed) } : { ...figure, centre: placed(figure.centre) };
  return {
    piece: 'arc',
    profile: { outer: seen(profile.outer), holes: profile.holes.map(seen) },
    frame: { R, t: add(start, scale(before, -radius)) },
    radius,
    angle,
  };
}

/**
 * Length of the line that the section's centre runs along, m, and the centre of the whole. Area times that length is the
 * volume, for each straight however it is cut (its mean length is that at the centre) and for each bend (Pappus).
 */
export function lineOf(pieces: readonly Piece[], uneven = true): { readonly length: number; readonly centre: Vec3 } {
  const each = pieces.map((piece) =>
    piece.piece === 'straight' ? straightLine(piece, uneven) : arcLine(piece, uneven),
  );
  const length = each.reduce((sum, one) => sum + one.length, 0);
  const moment = each.reduce<Vec3>((sum, one) => add(sum, one.moment), zero);
  return { length, centre: scale(moment, 1 / length) };
}

const dot2 = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];

/** Moment of a piece divided by the section's area; `uneven` false: all of it is taken to lie on the centre's line. */
function straightLine({ profile, frame, low, high }: Straight, uneven: boolean) {
  const { centre, xx, yy, xy } = momentsOf(profile);
  const spread = (slope: Vec2): Vec2 =>
    uneven ? [xx * slope[0] + xy * slope[1], xy * slope[0] + yy * slope[1]] : [0, 0];
  const [from, to] = [low.at + dot2(low.slope, centre), high.at + dot2(high.slope, centre)];
  const [below, above] = [spread(low.slope), spread(high.slope)];
  const length = to - from;
  const own: Vec3 = [
    centre[0] * length + above[0] - below[0],
    centre[1] * length + above[1] - below[1],
    (to * to - from * from + dot2(high.slope, above) - dot2(low.slope, below)) / 2,
  ];
  return { length, moment: add(rotate(frame.R, own), scale(frame.t, length)) };
}

function arcLine({ profile, frame, radius, angle }: Arc, uneven: boolean) {
  const { centre, xx, xy } = momentsOf(profile);
  const mean = radius + centre[0];
  const length = mean * angle;
  const outwards = mean * mean + (uneven ? xx : 0);
  const height = (mean * centre[1] + (uneven ? xy : 0)) * angle;
  const own: Vec3 = [outwards * Math.sin(angle), outwards * (1 - Math.cos(angle)), height];
  return { length, moment: add(rotate(frame.R, own), scale(frame.t, length)) };
}
