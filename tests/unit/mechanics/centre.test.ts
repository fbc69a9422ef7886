// Common centres, with and without ranges of mass and place.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { centreOf, centreRange, type MassRange, type Vec3 } from '../../../server/mechanics/index.ts';

// Worked by hand, sum of m x over sum of m: five parts of a skid.
test('five parts', () => {
  const found = centreOf([
    { mass: 4200, at: [1.2, 0.9, 0.8] },
    { mass: 1850, at: [3.6, 0.7, 0.9] },
    { mass: 950, at: [5.1, 1.4, 1.1] },
    { mass: 620, at: [2.4, 1.6, 1.5] },
    { mass: 1400, at: [3, 1, 0.15] },
  ]);
  expect(found.mass).toBe(9020);
  expect(found.centre!.map((part) => Number(part.toFixed(4)))).toEqual([2.4649, 0.9753, 0.7993]);
});

test('no centre of nothing', () => {
  expect(centreOf([])).toEqual({ mass: 0, centre: undefined });
  expect(
    centreOf([
      { mass: 1, at: [0, 0, 0] },
      { mass: -1, at: [1, 0, 0] },
    ]).centre,
  ).toBeUndefined();
  expect(centreOf([{ mass: Number.NaN, at: [0, 0, 0] }]).centre).toBeUndefined();
  expect(centreRange([])).toBeUndefined();
  const even: MassRange = { low: 0, high: 1, atLow: [0, 0, 0], atHigh: [0, 0, 0] };
  expect(centreRange([even])).toBeUndefined();
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ranges = fc
  .array(fc.record({ mass: number(0.1, 10), more: number(0, 5), at: number(-5, 5), wide: number(0, 1) }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((rows) =>
    rows.map(({ mass, more, at, wide }, i): MassRange => {
      const taken = i > 0 && i % 3 === 0;
      const [low, high] = taken ? [-mass / 200, -mass / 400] : [mass, mass + more];
      return { low, high, atLow: [at - wide, 0, 1], atHigh: [at + wide, 0, 1] };
    }),
  );

test('the ends of the centre are the worst of all corners of the ranges', () => {
  fc.assert(
    fc.property(ranges, (masses) => {
      let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (let corner = 0; corner < 4 ** masses.length; corner++) {
        const { centre } = centreOf(
          masses.map((one, i) => {
            const choice = Math.floor(corner / 4 ** i) % 4;
            return { mass: choice & 1 ? one.high : one.low, at: choice & 2 ? one.atHigh : one.atLow };
          }),
        );
        [lowest, highest] = [Math.min(lowest, centre![0]), Math.max(highest, centre![0])];
      }
      const found = centreRange(masses)!;
      expect(found.low[0]).toBeCloseTo(lowest, 9);
      expect(found.high[0]).toBeCloseTo(highest, 9);
      expect(found.low[2]).toBeCloseTo(1, 12);
    }),
    { numRuns: 150, seed: 1 },
  );
});

test('without ranges both ends are the centre', () => {
  const at: Vec3 = [1, 2, 3];
  const found = centreRange([
    { low: 5, high: 5, atLow: at, atHigh: at },
    { low: 5, high: 5, atLow: [3, 2, 1], atHigh: [3, 2, 1] },
  ]);
  expect(found).toEqual({ low: [2, 2, 2], high: [2, 2, 2] });
});
