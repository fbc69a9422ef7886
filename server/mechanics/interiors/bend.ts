// What of the space in a pipe bend lies below a plane: discs across the bend, each cut by a line.
import type { Bend } from '../body.ts';
import { cutsBetween, sweep } from '../quadrature.ts';
import type { Vec3 } from '../vector.ts';
import { type Below, count, counted, reachOf, segment, tally } from './half-space.ts';

/**
 * A disc at `at` along the bend stands in the outward direction e and z; a point (bend + u) e + v z of it sweeps (bend + u)
 * times the change of `at`. The plane leaves of it what lies on one side of a line, square to (up . e, up z).
 */
export function belowInBend({ bend, radius, angle }: Bend, up: Vec3, level: number): Below {
  const sum = tally();
  const to = angle === 'ring' ? 2 * Math.PI : angle;
  sweep(cutsBetween(0, to, touches(bend, radius, up, level)), (at, weight) => {
    const [ex, ey] = [Math.sin(at), -Math.cos(at)];
    const outwards = up[0] * ex + up[1] * ey;
    const square = Math.hypot(outwards, up[2]);
    const [wu, wv] = square > 0 ? [outwards / square, up[2] / square] : [0, 0];
    const { area, first, acrossCut, alongCut } = segment(radius, reachOf(level - bend * outwards, square));
    const u2 = wu * wu * acrossCut + wv * wv * alongCut;
    const uv = wu * wv * (acrossCut - alongCut);
    const u = wu * first;
    const fromCentre = bend * bend * area + 2 * bend * u + u2;
    const height = bend * wv * first + uv;
    count(sum, weight * (bend * area + u), weight * ex * fromCentre, weight * ey * fromCentre, weight * height);
  });
  return counted(sum);
}

/**
 * Where along the bend the line touches the disc: (level - bend q)2 = radius2 (q2 + up z2) for the outward share q, which is
 * the level part of `up` times the cosine of the angle from its heading. Where it only comes near, halfway between both roots
 * or in the heading, the integrand bends sharply; a cut there keeps the digits.
 */
function touches(bend: number, radius: number, up: Vec3, level: number): readonly number[] {
  const across = Math.hypot(up[0], up[1]);
  if (across === 0) return [];
  const heading = Math.atan2(up[0], -up[1]);
  const [a, b, c] = [bend ** 2 - radius ** 2, -2 * bend * level, level ** 2 - (radius * up[2]) ** 2];
  return [...rootsOf(a, b, c), -b / (2 * a), across, -across]
    .filter((q) => Math.abs(q) <= across)
    .flatMap((q) => [heading + Math.acos(q / across), heading - Math.acos(q / across)])
    .flatMap((at) => [at, at + 2 * Math.PI, at - 2 * Math.PI]);
}

/** Real roots of a x2 + b x + c, by the form that keeps its digits. */
function rootsOf(a: number, b: number, c: number): readonly number[] {
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  const half = (-b - (b < 0 ? -1 : 1) * Math.sqrt(under)) / 2;
  return [half / a, c / half].filter(Number.isFinite);
}
