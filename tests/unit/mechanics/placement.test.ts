// Laying along axes, turning, copying and boxes of several.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Axis,
  apply,
  axisRotation,
  axisVector,
  boxOf,
  compose,
  cross,
  dot,
  identity,
  inCircle,
  inSteps,
  inverse,
  type Mat3,
  norm,
  rotate,
  shifted,
  still,
  subtract,
  turn,
  unionOf,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { placementFrom, randomFrom } from './random.ts';

const axes: readonly Axis[] = ['x', 'y', 'z', '+x', '+y', '+z', '-x', '-y', '-z'];
const near = (a: Vec3, b: Vec3): void => expect(norm(subtract(a, b))).toBeLessThan(1e-12);
const determinant = (m: Mat3): number => dot(cross([m[0], m[3], m[6]], [m[1], m[4], m[7]]), [m[2], m[5], m[8]]);

describe('axis', () => {
  test.each(axes)('%s lays own z along it and mirrors nothing', (axis) => {
    const R = axisRotation(axis);
    near(rotate(R, [0, 0, 1]), axisVector(axis));
    expect(determinant(R)).toBe(1);
  });

  test('x: own x, y, z become y, z, x; y: they become z, x, y', () => {
    const own: Vec3 = [1, 2, 3];
    near(rotate(axisRotation('x'), own), [3, 1, 2]);
    near(rotate(axisRotation('y'), own), [2, 3, 1]);
    near(rotate(axisRotation('z'), own), own);
  });

  test('a minus reverses own z first, by a half turn about own x', () => {
    near(rotate(axisRotation('-z'), [1, 2, 3]), [1, -2, -3]);
    near(rotate(axisRotation('-x'), [1, 2, 3]), [-3, 1, -2]);
  });
});

describe('turn', () => {
  test('counter-clockwise seen with the axis pointing at you', () => {
    near(rotate(turn(Math.PI / 2, 'z'), [1, 0, 0]), [0, 1, 0]);
    near(rotate(turn(Math.PI / 2, 'x'), [0, 1, 0]), [0, 0, 1]);
    near(rotate(turn(Math.PI / 2, 'y'), [0, 0, 1]), [1, 0, 0]);
    near(rotate(turn(Math.PI / 2, '-z'), [1, 0, 0]), [0, -1, 0]);
  });

  test('quarter turns are exact, so that a turned plate has no crooked box', () => {
    expect(turn((5 * Math.PI) / 2, 'z')).toEqual([0, -1, 0, 1, 0, 0, 0, 0, 1]);
    const { max } = boxOf({ kind: 'plate', x: 4, y: 2, z: 0.01 }, turn(-Math.PI / 2, 'z'));
    expect(max).toEqual([1, 2, 0.005]);
  });

  test('any turn is a proper rotation that keeps its axis', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), fc.constantFrom(...axes), (angle, axis) => {
        const R = turn(angle, axis);
        expect(determinant(R)).toBeCloseTo(1, 12);
        near(rotate(R, axisVector(axis)), axisVector(axis));
        near(rotate(turn(-angle, axis), rotate(R, [1, 2, 3])), [1, 2, 3]);
      }),
      { seed: 1 },
    );
  });
});

test('in a thing in a thing: compose is one after the other, inverse the way back', () => {
  const random = randomFrom(2);
  for (let round = 0; round < 20; round++) {
    const [outer, inner] = [placementFrom(random), placementFrom(random)];
    const point: Vec3 = [random(), random(), random()];
    near(apply(compose(outer, inner), point), apply(outer, apply(inner, point)));
    near(apply(inverse(outer), apply(outer, point)), point);
  }
});

describe('copies', () => {
  test('in steps: the first stands where the place is', () => {
    const places = inSteps({ R: identity, t: [1, 0, 0] }, [0, 2, 0.5], 3);
    expect(places.map(({ t }) => t)).toEqual([
      [1, 0, 0],
      [1, 2, 0.5],
      [1, 4, 1],
    ]);
  });

  test('in a circle: from the next axis on, counter-clockwise, each turned along', () => {
    const places = inCircle({ R: identity, t: [10, 0, 0] }, 4, 'z', 4);
    for (const [k, t] of (
      [
        [12, 0, 0],
        [10, 2, 0],
        [8, 0, 0],
        [10, -2, 0],
      ] as const
    ).entries())
      near(places[k]!.t, t);
    near(rotate(places[1]!.R, [1, 0, 0]), [0, 1, 0]);
    near(inCircle(still, 4, 'x', 4)[0]!.t, [0, 2, 0]);
    near(inCircle(still, 4, 'x', 4)[1]!.t, [0, 0, 2]);
    near(inCircle(still, 4, 'y', 4)[0]!.t, [0, 0, 2]);
    near(inCircle(still, 4, 'y', 4)[1]!.t, [2, 0, 0]);
    near(inCircle(still, 4, '-z', 4)[1]!.t, [0, -2, 0]);
  });

  test('round a circle they balance about its middle', () => {
    const places = inCircle({ R: identity, t: [1, 2, 3] }, 0.8, 'y', 7);
    const sum = places.reduce<Vec3>((total, { t }) => [total[0] + t[0], total[1] + t[1], total[2] + t[2]], [0, 0, 0]);
    near(sum, [7, 14, 21]);
  });
});

test('the box of several holds each; of none there is no box', () => {
  const box = boxOf({ kind: 'box', x: 2, y: 2, z: 2 }, identity);
  expect(unionOf([box, shifted(box, [3, 0, -1])])).toEqual({ min: [-1, -1, -2], max: [4, 1, 1] });
  expect(unionOf([])).toBeUndefined();
});
