// What of the space in a tee lies below a plane: slices square to both of its axes, each two rectangles cut by a line.
import type { Crossed } from '../body.ts';
import { cutsBetween, sweep } from '../quadrature.ts';
import type { Vec2, Vec3 } from '../vector.ts';
import { type Below, count, counted, tally } from './half-space.ts';

/**
 * At the height radius * sin(at) both bores are 2 c wide, c = radius * cos(at): the run fills x to both ends and y from -c to
 * c, the branch x from -c to c and y from c to its end.
 */
export function belowInCrossed({ radius, run, branch }: Crossed, up: Vec3, level: number): Below {
  const sum = tally();
  sweep(cutsBetween(-Math.PI / 2, Math.PI / 2, touches({ radius, run, branch }, up, level)), (at, weight) => {
    const [c, z] = [radius * Math.cos(at), radius * Math.sin(at)];
    for (const [low, high] of [
      [
        [-run, -c],
        [run, c],
      ],
      [
        [-c, c],
        [c, branch],
      ],
    ] as const) {
      const { area, x, y } = cutRectangle(low, high, [up[0], up[1]], level - up[2] * z);
      count(sum, weight * c * area, weight * c * x, weight * c * y, weight * c * area * z);
    }
  });
  return counted(sum);
}

/** Where the plane passes a corner of the slice: up . corner = level is A cos + B sin = D of the angle. */
function touches({ radius, run, branch }: Omit<Crossed, 'form'>, up: Vec3, level: number): readonly number[] {
  const corners = [1, -1].flatMap((x) => [
    ...[1, -1].map((y) => ({ at: [x * run, 0], byC: [0, y] }) as const),
    { at: [0, branch], byC: [x, 0] } as const,
    { at: [0, 0], byC: [x, 1] } as const,
  ]);
  return corners.flatMap(({ at, byC }) => {
    const [a, b] = [radius * (up[0] * byC[0] + up[1] * byC[1]), radius * up[2]];
    const size = Math.hypot(a, b);
    const share = (level - up[0] * at[0] - up[1] * at[1]) / size;
    if (!(Math.abs(share) <= 1)) return [];
    const heading = Math.atan2(b, a);
    return [heading + Math.acos(share), heading - Math.acos(share)].map((angle) =>
      Math.atan2(Math.sin(angle), Math.cos(angle)),
    );
  });
}

/** Area (m2) and first moments (m3) of what lies at normal . r <= rest in a rectangle by two opposite corners. */
function cutRectangle(
  [x0, y0]: Vec2,
  [x1, y1]: Vec2,
  normal: Vec2,
  rest: number,
): { area: number; x: number; y: number } {
  const corners: readonly Vec2[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const depth = ([x, y]: Vec2): number => rest - normal[0] * x - normal[1] * y;
  const kept = corners.flatMap((from, i): readonly Vec2[] => {
    const to = corners[(i + 1) % 4] as Vec2;
    const [a, b] = [depth(from), depth(to)];
    const crossing: readonly Vec2[] =
      a < 0 !== b < 0
        ? [[from[0] + ((to[0] - from[0]) * a) / (a - b), from[1] + ((to[1] - from[1]) * a) / (a - b)]]
        : [];
    return a < 0 ? crossing : [from, ...crossing];
  });
  let [area, x, y] = [0, 0, 0];
  kept.forEach((a, i) => {
    const b = kept[(i + 1) % kept.length] as Vec2;
    const twice = a[0] * b[1] - b[0] * a[1];
    area += twice / 2;
    x += (twice * (a[0] + b[0])) / 6;
    y += (twice * (a[1] + b[1])) / 6;
  });
  return { area, x, y };
}
