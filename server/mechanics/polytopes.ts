// The flat-faced bodies: blocks, pyramids and wedges as corners and faces.
import type { Polytope } from './body.ts';
import type { Pyramid } from './shapes.ts';
import type { Vec2, Vec3 } from './vector.ts';

/** A block about zero; no side may be zero. */
export const block = (x: number, y: number, z: number): Polytope => tiered([x, y], [x, y], z);

/** Base at low z; without a top it ends in a point. */
export const pyramid = ({ base, top = [0, 0], height }: Pyramid): Polytope => tiered(base, top, height);

/** Corners of a rectangle about zero, counter-clockwise. */
export const rectangle = (x: number, y: number): readonly Vec2[] => [
  [-x / 2, -y / 2],
  [x / 2, -y / 2],
  [x / 2, y / 2],
  [-x / 2, y / 2],
];

/** A rectangle below and one above, both about the z axis; the upper one may have shrunk to a point. */
function tiered(base: Vec2, top: Vec2, height: number): Polytope {
  const ring = ([x, y]: Vec2, z: number): readonly Vec3[] => rectangle(x, y).map((corner) => [...corner, z]);
  const sides = [0, 1, 2, 3].map((i) => [i, (i + 1) % 4, 4 + ((i + 1) % 4), 4 + i]);
  return {
    form: 'polytope',
    points: [...ring(base, -height / 2), ...ring(top, height / 2)],
    faces: [[3, 2, 1, 0], [4, 5, 6, 7], ...sides],
  };
}

/** Right triangle section in x, z, full height at low x. */
export function wedge(x: number, y: number, z: number): Polytope {
  const triangle = (at: number): readonly Vec3[] => [
    [-x / 2, at, -z / 2],
    [x / 2, at, -z / 2],
    [-x / 2, at, z / 2],
  ];
  return {
    form: 'polytope',
    points: [...triangle(-y / 2), ...triangle(y / 2)],
    faces: [
      [0, 1, 2],
      [5, 4, 3],
      [0, 3, 4, 1],
      [1, 4, 5, 2],
      [2, 5, 3, 0],
    ],
  };
}
