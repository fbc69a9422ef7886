// Dimensions and the arithmetic of quantities with tolerances.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type DimensionName,
  dimensions,
  divided,
  multiplied,
  named,
  nameOf,
  none,
  same,
} from '../../../server/quantities/dimension.ts';
import {
  add,
  divide,
  multiply,
  negate,
  plain,
  type Quantity,
  quantity,
  withTolerance,
} from '../../../server/quantities/quantity.ts';

const length = (value: number, half = 0): Quantity => quantity(value, dimensions.length, value - half, value + half);
const percent = (value: number): Quantity => ({ ...plain(value / 100), percent: true, bare: false });
const known = (sum: ReturnType<typeof add>): Quantity => {
  if ('clash' in sum) throw new Error('These do not add.');
  return sum;
};

test('dimensions multiply and divide to those of the quantities (ISO 80000-3 and -4)', () => {
  const product = (...names: DimensionName[]) => named(names.map((name) => dimensions[name]).reduce(multiplied));
  const ratio = (over: DimensionName, under: DimensionName) => named(divided(dimensions[over], dimensions[under]));
  expect(product('length', 'length', 'length')).toBe('volume');
  expect(product('pressure', 'area')).toBe('force');
  expect(product('mass', 'acceleration')).toBe('force');
  expect(product('force', 'length')).toBe('moment');
  expect(product('mass density', 'acceleration')).toBe('force density');
  expect(product('mass per area', 'acceleration')).toBe('pressure');
  expect(ratio('length', 'length')).toBe('number');
  expect(ratio('mass', 'length')).toBe('mass per length');
  expect(ratio('force', 'length')).toBe('force per length');
  expect(ratio('speed', 'time')).toBe('acceleration');
  expect(new Set(Object.values(dimensions).map(String)).size).toBe(Object.keys(dimensions).length);
});

test('a dimension is named in plain words', () => {
  expect(nameOf(dimensions.mass)).toBe('a weight');
  expect(nameOf(none)).toBe('a plain number');
  expect(nameOf(multiplied(dimensions.volume, dimensions.force))).toBe('a volume × a force');
  expect(nameOf(divided(dimensions.mass, dimensions.time))).toBe('a weight ÷ a time');
  expect(nameOf([3, 1, 0, 0, 0, 5])).toBe('a weight to the power 3 × a length × an angle to the power 5');
  for (const name of Object.keys(dimensions) as DimensionName[])
    expect(nameOf(dimensions[name])).toMatch(/^an? [a-z ]+$/);
});

test('unlike ones never add; a bare zero fits any', () => {
  expect(add(length(1), quantity(1, dimensions.mass))).toEqual({ clash: [dimensions.length, dimensions.mass] });
  expect(add(length(1), plain(1))).toHaveProperty('clash');
  expect(add(percent(5), plain(1))).toHaveProperty('clash');
  expect(known(add(plain(0), length(2)))).toMatchObject({ value: 2, dimension: dimensions.length, bare: false });
  expect(known(add(length(2), plain(0), -1)).value).toBe(2);
});

test('a tolerance is in the unit or a share; a bare zero takes that of its tolerance', () => {
  expect(known(withTolerance(length(4), length(1)))).toMatchObject({ value: 4, low: 3, high: 5 });
  expect(known(withTolerance(length(-4), percent(5)))).toMatchObject({ low: -4.2, high: -3.8 });
  expect(known(withTolerance(percent(75), percent(2))).low).toBeCloseTo(0.73, 12);
  expect(known(withTolerance(plain(0), length(0.5)))).toMatchObject({
    value: 0,
    low: -0.5,
    high: 0.5,
    dimension: dimensions.length,
    bare: false,
  });
  expect(withTolerance(length(4), plain(1))).toHaveProperty('clash');
});

test('nothing divides by zero or by a tolerance across it', () => {
  expect(divide(length(1), plain(0))).toBeNull();
  expect(divide(length(1), length(1, 2))).toBeNull();
  expect(divide(length(1), length(5e-324))).toBeNull();
  expect(divide(length(12), length(3))).toMatchObject({ value: 4, dimension: none });
});

test('every value within the tolerances comes out within those of the result', () => {
  const ranged = fc.tuple(
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.double({ min: 0, max: 20, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
  );
  fc.assert(
    fc.property(ranged, ranged, ([a, da, ta], [b, db, tb]) => {
      const [p, q, x, y] = [length(a, da), length(b, db), a + ta * da, b + tb * db];
      const within = (value: number, of: Quantity | null) => {
        if (!of) return;
        const noise = 1e-9 * Math.max(1, Math.abs(of.low), Math.abs(of.high));
        expect(value).toBeGreaterThanOrEqual(of.low - noise);
        expect(value).toBeLessThanOrEqual(of.high + noise);
      };
      within(x + y, known(add(p, q)));
      within(x - y, known(add(p, q, -1)));
      within(x * y, multiply(p, q));
      within(x / y, divide(p, q));
      within(-x, negate(p));
      expect(same(multiply(p, q).dimension, dimensions.area)).toBe(true);
    }),
  );
});

test('minus zero does not arise', () => {
  expect(Object.is(negate(plain(0)).value, 0)).toBe(true);
});
