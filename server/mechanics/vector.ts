// Points, directions and rotations in space, as plain immutable tuples.

/** A point (m) or a direction, in some right-handed frame. */
export type Vec3 = readonly [number, number, number];

/** A rotation or other linear map, row by row. */
export type Mat3 = readonly [number, number, number, number, number, number, number, number, number];

/** A point or direction in a plane. */
export type Vec2 = readonly [number, number];

export const zero: Vec3 = [0, 0, 0];
export const identity: Mat3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
/** The middle of points, at least one. */
export const mean = (points: readonly Vec3[]): Vec3 => scale(points.reduce(add, zero), 1 / points.length);
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const norm = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The map applied to a point or direction. */
export const rotate = (m: Mat3, v: Vec3): Vec3 => [
  m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
  m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
  m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
];

/** The map with rows and columns exchanged; of a rotation, the way back. */
export const transpose = (m: Mat3): Mat3 => [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];

/** First b, then a. */
export function multiply(a: Mat3, b: Mat3): Mat3 {
  const [x, y, z] = [0, 1, 2].map((column) => rotate(a, columnOf(b, column))) as [Vec3, Vec3, Vec3];
  return [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]];
}

/** Where the map sends own x (0), y (1) or z (2). */
export const columnOf = (m: Mat3, column: number): Vec3 => [m[column]!, m[column + 3]!, m[column + 6]!];
