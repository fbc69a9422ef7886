// Closed outlines in a plane: area, centre, and whether the corners make one.
import type { Vec2 } from './vector.ts';

/** A closed run of corners; the last is joined to the first, either way round. */
export type Outline = readonly Vec2[];

/** Area, m2, above zero either way round (shoelace formula). */
export const areaOf = (points: Outline): number => Math.abs(signedMoments(points).area);

/** Centre of an outline less its holes, m; the holes lie in the outline and clear of each other. */
export function regionCentre(outline: Outline, holes: readonly Outline[]): Vec2 {
  let [area, x, y] = [0, 0, 0];
  for (const points of [outline, ...holes]) {
    const one = signedMoments(points);
    const sign = Math.sign(one.area) * (points === outline ? 1 : -1);
    area += sign * one.area;
    x += sign * one.x;
    y += sign * one.y;
  }
  return [x / area, y / area];
}

/** Area and first moments by Green's theorem, measured from the first corner so that a far-off zero costs no digits. */
function signedMoments(points: Outline): { area: number; x: number; y: number } {
  const [ox, oy] = points[0] ?? [0, 0];
  let [area, x, y] = [0, 0, 0];
  for (const [a, b] of edgesOf(points)) {
    const [ax, ay, bx, by] = [a[0] - ox, a[1] - oy, b[0] - ox, b[1] - oy];
    const twice = ax * by - bx * ay;
    area += twice / 2;
    x += (twice * (ax + bx)) / 6;
    y += (twice * (ay + by)) / 6;
  }
  return { area, x: x + area * ox, y: y + area * oy };
}

export const edgesOf = (points: Outline): readonly (readonly [Vec2, Vec2])[] =>
  points.map((point, i) => [point, points[(i + 1) % points.length]!]);

/** Why corners make no outline: fewer than three, or its sides cross, touch or double back. */
export function outlineFault(points: Outline): 'too-few-corners' | 'crosses-itself' | undefined {
  if (points.length < 3) return 'too-few-corners';
  const edges = edgesOf(points);
  const near = sizeOf(points) * 1e-12;
  for (let i = 0; i < edges.length; i++) {
    if (foldsBack(edges[i]!, edges[(i + 1) % edges.length]!, near)) return 'crosses-itself';
    for (let j = i + 2; j < edges.length; j++) {
      if (i === 0 && j === edges.length - 1) continue;
      if (edgeGap(edges[i]!, edges[j]!) <= near) return 'crosses-itself';
    }
  }
  return undefined;
}

type Edge = readonly [Vec2, Vec2];

/** A side of no length, or a next side that runs back over it. */
function foldsBack([a, b]: Edge, [, c]: Edge, near: number): boolean {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  const [u, v] = [Math.hypot(ux, uy), Math.hypot(vx, vy)];
  if (!(u > near && v > near)) return true;
  return ux * vx + uy * vy < 0 && Math.abs(ux * vy - uy * vx) <= near * Math.max(u, v);
}

/** Shortest way between two sides; 0 where they cross. */
function edgeGap(p: Edge, q: Edge): number {
  if (side(q, p[0]) * side(q, p[1]) < 0 && side(p, q[0]) * side(p, q[1]) < 0) return 0;
  return Math.min(distanceTo(p, q[0]), distanceTo(p, q[1]), distanceTo(q, p[0]), distanceTo(q, p[1]));
}

const side = ([a, b]: Edge, p: Vec2): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** Distance from a point to a side, m. */
export function distanceTo([a, b]: Edge, p: Vec2): number {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = ux * ux + uy * uy;
  const along = length2 === 0 ? 0 : ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / length2;
  const at = Math.min(1, Math.max(0, along));
  return Math.hypot(p[0] - a[0] - at * ux, p[1] - a[1] - at * uy);
}

/** How deep a point lies in an outline: distance to the nearest side, below zero outside. Exact. */
export function depthIn(points: Outline, p: Vec2): number {
  let nearest = Number.POSITIVE_INFINITY;
  let inside = false;
  for (const edge of edgesOf(points)) {
    const [a, b] = edge;
    nearest = Math.min(nearest, distanceTo(edge, p));
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) {
      inside = !inside;
    }
  }
  return inside ? nearest : -nearest;
}

/** Largest coordinate spread, m: the scale that slacks are measured by. */
export function sizeOf(points: Outline): number {
  const spread = (k: 0 | 1): number => Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k]));
  return Math.max(spread(0), spread(1));
}

/** A point well inside an outline: the middle of the widest stretch on a line between two heights of corners. */
export function innerPoint(points: Outline): Vec2 {
  const heights = [...new Set(points.map((p) => p[1]))].sort((a, b) => a - b);
  let best: Vec2 = points[0]!;
  let widest = 0;
  for (let i = 1; i < heights.length; i++) {
    const y = (heights[i - 1]! + heights[i]!) / 2;
    const crossings = edgesOf(points)
      .filter(([a, b]) => a[1] > y !== b[1] > y)
      .map(([a, b]) => a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
      .sort((a, b) => a - b);
    for (let k = 1; k < crossings.length; k += 2) {
      const width = Math.min(crossings[k]! - crossings[k - 1]!, heights[i]! - heights[i - 1]!);
      if (width > widest) [widest, best] = [width, [(crossings[k]! + crossings[k - 1]!) / 2, y]];
    }
  }
  return best;
}
