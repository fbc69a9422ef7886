// How far shapes reach and the boxes of turned ones: bounds no point passes, and each of them reached.
import { describe, expect, test } from 'vitest';
import {
  add,
  boxOf,
  contains,
  dot,
  extent,
  identity,
  rotate,
  type Shape,
  scale,
  turn,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { directionFrom, pointIn, randomFrom, rotationFrom } from './random.ts';
import { named, specimens } from './specimens.ts';

const all: readonly Shape[] = [
  ...specimens,
  { kind: 'section', length: 2, depth: 0.3, width: 0.2, massPerLength: 40 },
  { kind: 'elbow', outside: 0.3, bendRadius: 0.5, angle: 0.4 },
  { kind: 'sheet', x: 2, y: 1, massPerArea: 30 },
];

describe.each(named(all))('%s', (_, shape) => {
  test('no point of it lies farther out than its extent', () => {
    const random = randomFrom(3);
    const box = boxOf(shape, identity);
    const directions = Array.from({ length: 40 }, () => directionFrom(random));
    const reaches = directions.map((direction) => extent(shape, direction));
    let [inside, worst] = [0, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < 3000; i++) {
      const point = pointIn(box, random);
      if (!contains(shape, point, 0)) continue;
      inside++;
      for (const [k, direction] of directions.entries()) worst = Math.max(worst, dot(point, direction) - reaches[k]!);
    }
    expect(worst).toBeLessThan(1e-12);
    expect(inside).toBeGreaterThan(50);
  });

  test('the point that the extent stands for lies in it', () => {
    const random = randomFrom(4);
    for (let i = 0; i < 40; i++) {
      const direction = directionFrom(random);
      const point = touching(shape, direction);
      expect(dot(point, direction)).toBeCloseTo(extent(shape, direction), 6);
      expect(contains(shape, point, 2e-6)).toBe(true);
    }
  });

  test('the box of it turned is its extents along the axes', () => {
    const R = rotationFrom(randomFrom(5));
    const box = boxOf(shape, R);
    for (const [axis, own] of (
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as const
    ).entries()) {
      const direction = rotate([R[0], R[3], R[6], R[1], R[4], R[7], R[2], R[5], R[8]], own);
      expect(box.max[axis]).toBeCloseTo(extent(shape, direction), 12);
      expect(box.min[axis]).toBeCloseTo(-extent(shape, scale(direction, -1)), 12);
    }
  });
});

/** The extent's rate of change with the direction is the point it is reached at. */
function touching(shape: Shape, direction: Vec3): Vec3 {
  const step = 1e-6;
  const rate = (axis: Vec3): number =>
    (extent(shape, add(direction, scale(axis, step))) - extent(shape, add(direction, scale(axis, -step)))) / (2 * step);
  return [rate([1, 0, 0]), rate([0, 1, 0]), rate([0, 0, 1])];
}

test('a box turned by 30 deg about z', () => {
  const box = boxOf({ kind: 'box', x: 2, y: 1, z: 0.5 }, turn(Math.PI / 6, 'z'));
  expect(box.max[0]).toBeCloseTo(Math.cos(Math.PI / 6) + 0.25, 14);
  expect(box.max[1]).toBeCloseTo(0.5 + 0.5 * Math.cos(Math.PI / 6), 14);
  expect(box.max[2]).toBe(0.25);
});

test('the box about the datum point: heads and caps in the middle, elbows where the centre lines cross', () => {
  const cap = boxOf({ kind: 'spherical cap', base: 0.8, height: 1 }, identity);
  expect(cap.max[0]).toBeCloseTo(0.58, 14);
  expect([cap.min[2], cap.max[2]].map((z) => Number(z.toFixed(12)))).toEqual([-0.5, 0.5]);
  const elbow = boxOf({ kind: 'elbow', outside: 0.2, bendRadius: 0.6, angle: Math.PI / 2 }, identity);
  expect(elbow.min.map((z) => Number(z.toFixed(12)))).toEqual([-0.6, -0.1, -0.1]);
  expect(elbow.max.map((z) => Number(z.toFixed(12)))).toEqual([0.1, 0.6, 0.1]);
});

test('beyond the edges of a sheet, in its plane, there is nothing of it', () => {
  const sheet: Shape = { kind: 'sheet', x: 2, y: 1, massPerArea: 30 };
  expect(contains(sheet, [0.9, 0.4, 0], 0)).toBe(true);
  expect(contains(sheet, [1.1, 0, 0], 1e-9)).toBe(false);
  expect(contains(sheet, [0, 0, 0.01], 1e-9)).toBe(false);
});
