// What of a space with flat faces lies below a plane.
import type { Polytope } from '../body.ts';
import { add, cross, dot, scale, subtract, type Vec3 } from '../vector.ts';
import { type Below, count, counted, tally } from './half-space.ts';

/**
 * Exact: each face is cut at the plane and joined to a point of the plane; these pyramids make up the whole, as the cut face
 * itself, in which their tip lies, adds none. The tip is taken over the lowest corner, so that small puddles keep their digits.
 */
export function belowInPolytope({ points, faces }: Polytope, up: Vec3, level: number): Below {
  const lowest = points.reduce((best, point) => (dot(point, up) < dot(best, up) ? point : best));
  const tip = add(lowest, scale(up, level - dot(lowest, up)));
  const sum = tally();
  for (const face of faces) {
    const corners = clipped(
      face.map((index) => subtract(points[index]!, tip)),
      up,
    );
    for (let i = 2; i < corners.length; i++) {
      const [a, b, c] = [corners[0]!, corners[i - 1]!, corners[i]!];
      const volume = dot(a, cross(b, c)) / 6;
      const [x, y, z] = add(scale(add(a, add(b, c)), 1 / 4), tip);
      count(sum, volume, volume * x, volume * y, volume * z);
    }
  }
  return counted(sum);
}

/** The corners of a face at up . r <= 0 and where its sides pass that plane, in turn. */
function clipped(face: readonly Vec3[], up: Vec3): readonly Vec3[] {
  return face.flatMap((from, i) => {
    const to = face[(i + 1) % face.length]!;
    const [a, b] = [dot(from, up), dot(to, up)];
    const kept = a <= 0 ? [from] : [];
    return a < 0 !== b < 0 && a !== b ? [...kept, add(from, scale(subtract(to, from), a / (a - b)))] : kept;
  });
}
