// A plane figure less its holes: area, centre and second moments, and how far it reaches, for what is led along a line.
import { depthIn, edgesOf, type Outline } from './outline.ts';
import type { Planar } from './planar.ts';
import type { Vec2 } from './vector.ts';

export interface Profile {
  readonly outer: Planar;
  readonly holes: readonly Planar[];
}

/** Area, m2; centre, m; second moments about the centre divided by the area, m2. */
export interface ProfileMoments {
  readonly area: number;
  readonly centre: Vec2;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

type Sums = readonly [area: number, x: number, y: number, xx: number, yy: number, xy: number];

/** Moments of a figure less its holes (Green's theorem; a disc's are pi r4 / 4). */
export function momentsOf({ outer, holes }: Profile): ProfileMoments {
  const sums = holes
    .map(sumsOf)
    .reduce<number[]>((rest, hole) => rest.map((one, i) => one - hole[i]!), [...sumsOf(outer)]);
  const [area, x, y, xx, yy, xy] = sums as unknown as Sums;
  const centre: Vec2 = [x / area, y / area];
  return {
    area,
    centre,
    xx: xx / area - centre[0] ** 2,
    yy: yy / area - centre[1] ** 2,
    xy: xy / area - centre[0] * centre[1],
  };
}

function sumsOf(figure: Planar): Sums {
  if ('corners' in figure) return ofOutline(figure.corners);
  const {
    radius,
    centre: [x, y],
  } = figure;
  const area = Math.PI * radius ** 2;
  const own = (area * radius ** 2) / 4;
  return [area, area * x, area * y, own + area * x * x, own + area * y * y, area * x * y];
}

function ofOutline(points: Outline): Sums {
  const sums = [0, 0, 0, 0, 0, 0];
  for (const [[ax, ay], [bx, by]] of edgesOf(points)) {
    const twice = ax * by - bx * ay;
    const terms = [
      twice / 2,
      (twice * (ax + bx)) / 6,
      (twice * (ay + by)) / 6,
      (twice * (ax * ax + ax * bx + bx * bx)) / 12,
      (twice * (ay * ay + ay * by + by * by)) / 12,
      (twice * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by)) / 24,
    ];
    for (const [i, term] of terms.entries()) sums[i]! += term;
  }
  const sign = Math.sign(sums[0]!);
  return sums.map((sum) => sum * sign) as unknown as Sums;
}

/** The largest r . direction over a figure; it scales with the direction's length. */
export function reachIn(figure: Planar, [x, y]: Vec2): number {
  if ('corners' in figure) return Math.max(...figure.corners.map((corner) => corner[0] * x + corner[1] * y));
  return figure.centre[0] * x + figure.centre[1] * y + figure.radius * Math.hypot(x, y);
}

/** How deep a point lies in a figure less its holes, m; below zero outside. */
export function depthInProfile({ outer, holes }: Profile, point: Vec2): number {
  const within = (figure: Planar): number =>
    'corners' in figure
      ? depthIn(figure.corners, point)
      : figure.radius - Math.hypot(point[0] - figure.centre[0], point[1] - figure.centre[1]);
  return Math.min(within(outer), ...holes.map((hole) => -within(hole)));
}
