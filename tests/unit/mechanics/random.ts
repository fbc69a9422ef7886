// Repeatable random numbers, points, directions and rotations for the tests of mechanics.
import { type Mat3, multiply, type Placement, scale, turn, type Vec3 } from '../../../server/mechanics/index.ts';

/** Numbers in [0, 1) from a seed (the mulberry32 generator, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export function directionFrom(random: () => number): Vec3 {
  const [z, at] = [2 * random() - 1, 2 * Math.PI * random()];
  return [Math.sqrt(1 - z * z) * Math.cos(at), Math.sqrt(1 - z * z) * Math.sin(at), z];
}

export const rotationFrom = (random: () => number): Mat3 =>
  multiply(turn(7 * random(), 'x'), multiply(turn(7 * random(), 'y'), turn(7 * random(), 'z')));

export const placementFrom = (random: () => number): Placement => ({
  R: rotationFrom(random),
  t: scale(directionFrom(random), 3 * random()),
});

export function pointIn(box: { readonly min: Vec3; readonly max: Vec3 }, random: () => number): Vec3 {
  const between = (axis: 0 | 1 | 2): number => box.min[axis] + (box.max[axis] - box.min[axis]) * random();
  return [between(0), between(1), between(2)];
}
