// Discs and outlines in one plane: does one lie within another, are two clear of each other. Touching is allowed.
import { depthIn, distanceTo, edgesOf, innerPoint, type Outline, sizeOf } from './outline.ts';
import type { Vec2 } from './vector.ts';

export type Planar = Disc | Corners;

export interface Disc {
  readonly centre: Vec2;
  readonly radius: number;
}

export interface Corners {
  readonly corners: Outline;
}

/** How far, against the larger size, two figures may reach over each other and still count as touching. */
const touching = 1e-9;

/** Whether all of `a` lies in `b`. */
export function within(a: Planar, b: Planar): boolean {
  const slack = slackOf(a, b);
  if ('radius' in a) {
    if ('radius' in b) return gap(a.centre, b.centre) + a.radius <= b.radius + slack;
    return depthIn(b.corners, a.centre) >= a.radius - slack;
  }
  if ('radius' in b) return a.corners.every((corner) => gap(corner, b.centre) <= b.radius + slack);
  // An outline has no holes, so that what it holds the sides of it holds whole.
  return samplesOf(a.corners, b.corners, slack).every((point) => depthIn(b.corners, point) >= -slack);
}

/** Whether no area is common to both. */
export function apart(a: Planar, b: Planar): boolean {
  const slack = slackOf(a, b);
  if ('radius' in a) {
    if ('radius' in b) return gap(a.centre, b.centre) >= a.radius + b.radius - slack;
    return depthIn(b.corners, a.centre) <= slack - a.radius;
  }
  if ('radius' in b) return apart(b, a);
  return clearOf(a.corners, b.corners, slack) && clearOf(b.corners, a.corners, slack);
}

/** No corner, side or inner point of `a` lies inside `b`. */
const clearOf = (a: Outline, b: Outline, slack: number): boolean =>
  [...samplesOf(a, b, slack), innerPoint(a)].every((point) => depthIn(b, point) <= slack);

/**
 * The corners of `a` and the middles of its sides cut wherever they meet `b`: between two cuts a side is all on one side of
 * `b`, so that these points speak for the whole outline.
 */
function samplesOf(a: Outline, b: Outline, slack: number): readonly Vec2[] {
  const samples: Vec2[] = [...a];
  for (const edge of edgesOf(a)) {
    const cuts = [0, 1, ...edgesOf(b).flatMap((other) => meetings(edge, other, slack))].sort((p, q) => p - q);
    for (let i = 1; i < cuts.length; i++) samples.push(along(edge, (cuts[i - 1]! + cuts[i]!) / 2));
  }
  return samples;
}

/** Where along a side (0 to 1) another crosses it or ends on it. */
function meetings(edge: readonly [Vec2, Vec2], other: readonly [Vec2, Vec2], slack: number): readonly number[] {
  const [[ax, ay], [bx, by]] = edge;
  const [[cx, cy], [dx, dy]] = other;
  const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy];
  const found = other
    .filter((end) => distanceTo(edge, end) <= 2 * slack)
    .map((end) => ((end[0] - ax) * ux + (end[1] - ay) * uy) / (ux * ux + uy * uy));
  const turn = ux * vy - uy * vx;
  if (turn !== 0) {
    const onEdge = ((cx - ax) * vy - (cy - ay) * vx) / turn;
    const onOther = ((cx - ax) * uy - (cy - ay) * ux) / turn;
    if (onOther >= 0 && onOther <= 1) found.push(onEdge);
  }
  return found.filter((at) => at > 0 && at < 1);
}

const along = ([a, b]: readonly [Vec2, Vec2], at: number): Vec2 => [
  a[0] + (b[0] - a[0]) * at,
  a[1] + (b[1] - a[1]) * at,
];

const gap = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const slackOf = (a: Planar, b: Planar): number => touching * Math.max(breadth(a), breadth(b));
const breadth = (figure: Planar): number => ('radius' in figure ? 2 * figure.radius : sizeOf(figure.corners));
