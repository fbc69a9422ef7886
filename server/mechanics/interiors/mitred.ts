// What of the space in a round pipe with mitred ends lies below a plane: strips along the pipe, each a quadrilateral cut by a line.
import type { Mitred } from '../body.ts';
import { cutsBetween, sweep } from '../quadrature.ts';
import type { Vec2, Vec3 } from '../vector.ts';
import { type Below, count, counted, tally } from './half-space.ts';

/** At u across the pipe a strip lies between the chord's ends along v, and along the pipe between both mitres. */
export function belowInMitred({ radius, low, high }: Mitred, up: Vec3, level: number): Below {
  const sum = tally();
  const meets = [low, high].flatMap(({ at, slope }) =>
    crossings(radius, [up[0] + up[2] * slope[0], up[1] + up[2] * slope[1]], level - up[2] * at),
  );
  sweep(cutsBetween(-radius, radius, meets), (u, weight) => {
    const chord = Math.sqrt(Math.max(0, radius * radius - u * u));
    const end = ({ at, slope }: Mitred['low'], v: number): Vec2 => [v, at + slope[0] * u + slope[1] * v];
    const strip = [end(low, -chord), end(low, chord), end(high, chord), end(high, -chord)];
    const { area, v, z } = momentsOf(kept(strip, [up[1], up[2]], level - up[0] * u));
    count(sum, weight * area, weight * u * area, weight * v, weight * z);
  });
  return counted(sum);
}

/** Where along u the line p . (u, v) = w meets the circle; where it passes by, its nearest point. */
function crossings(radius: number, [p, q]: Vec2, w: number): readonly number[] {
  const square = p * p + q * q;
  if (square === 0) return [];
  const beside = q * Math.sqrt(Math.max(0, radius * radius * square - w * w));
  return [(p * w + beside) / square, (p * w - beside) / square];
}

/** What of a convex outline lies at normal . r <= most. */
function kept(corners: readonly Vec2[], [a, b]: Vec2, most: number): readonly Vec2[] {
  const over = corners.map(([v, z]) => a * v + b * z - most);
  return corners.flatMap((from, i) => {
    const next = (i + 1) % corners.length;
    const [here, there, to] = [over[i]!, over[next]!, corners[next]!];
    const own = here <= 0 ? [from] : [];
    if (here < 0 === there < 0 || here === there) return own;
    const share = here / (here - there);
    return [...own, [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])] as const];
  });
}

/** Area and first moments of a convex outline, in triangles from its first corner. */
function momentsOf(corners: readonly Vec2[]): { readonly area: number; readonly v: number; readonly z: number } {
  let [area, v, z] = [0, 0, 0];
  const [first] = corners;
  for (let i = 2; first && i < corners.length; i++) {
    const [b, c] = [corners[i - 1]!, corners[i]!];
    const one = ((b[0] - first[0]) * (c[1] - first[1]) - (c[0] - first[0]) * (b[1] - first[1])) / 2;
    area += one;
    v += (one * (first[0] + b[0] + c[0])) / 3;
    z += (one * (first[1] + b[1] + c[1])) / 3;
  }
  return { area, v, z };
}
