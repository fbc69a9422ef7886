// The centre of a load's parts and its ends: against every corner of the ranges, whichever way the parts are put together.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { known } from '../../../server/quantities/derived.ts';
import { centreOf, gathered, type Mass } from '../../../server/results/centre.ts';

const row = fc.record({
  weight: fc.integer({ min: 0, max: 900 }),
  more: fc.integer({ min: 0, max: 200 }),
  less: fc.integer({ min: 0, max: 900 }),
  x: fc.integer({ min: -50, max: 50 }),
  slack: fc.integer({ min: 0, max: 9 }),
});
type Row = typeof row extends fc.Arbitrary<infer R> ? R : never;

const massOf = ({ weight, more, less, x, slack }: Row): Mass => ({
  weight: known(weight, 'kg', {}, Math.max(0, weight - less), weight + more),
  centre: [x, 2, -x],
  slack: [slack, 0, slack],
  open: [[], [], []],
  because: [],
});

/** Least and greatest centre over all choices of ends. */
function corners(rows: readonly Row[]): readonly [number, number] {
  const means = Array.from({ length: 4 ** rows.length }, (_, corner) => {
    let [mass, moment] = [0, 0];
    rows.forEach(({ weight, more, less, x, slack }, i) => {
      const choice = Math.floor(corner / 4 ** i) % 4;
      const m = choice & 1 ? weight + more : Math.max(0, weight - less);
      mass += m;
      moment += m * (choice & 2 ? x + slack : x - slack);
    });
    return mass > 0 ? moment / mass : Number.NaN;
  }).filter((mean) => !Number.isNaN(mean));
  return [Math.min(...means), Math.max(...means)];
}

test('the ends are the worst of all corners, in one heap or in several', () => {
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), fc.nat(5), (rows, cut) => {
      const counted = rows.filter(({ weight }) => weight > 0); // what weighs nothing has no say
      fc.pre(counted.length > 0);
      const heaps = [rows.slice(0, cut), rows.slice(cut)].map((some) => gathered(some.map(massOf)));
      const [x, y, z] = centreOf(heaps, null, [], () => []);
      const [least, most] = corners(counted);
      const total = counted.reduce((sum, { weight }) => sum + weight, 0);
      const mean = counted.reduce((sum, one) => sum + one.weight * one.x, 0) / total;
      expect(x.value).toBeCloseTo(mean, 9);
      expect(x.low).toBeCloseTo(least, 9);
      expect(x.high).toBeCloseTo(most, 9);
      expect([z.low, z.high]).toEqual([expect.closeTo(-most, 9), expect.closeTo(-least, 9)]);
      expect([y.low, y.value, y.high]).toEqual([2, 2, 2].map((two) => expect.closeTo(two, 9)));
    }),
    { numRuns: 300, seed: 1 },
  );
});

test('an unknown weight or place opens its axes, with the reasons of all heaps', () => {
  const fine = massOf({ weight: 5, more: 0, less: 0, x: 1, slack: 0 });
  const lost: Mass = { ...fine, open: [[{ what: 'x is not known', at: null }], [], []] };
  const [x, y] = centreOf([gathered([fine]), gathered([lost])], null, [], () => []);
  expect(x).toMatchObject({ value: null, because: [{ what: 'x is not known' }] });
  expect(y.value).toBe(2);
  expect(centreOf([gathered([])], null, [], () => [])[0].value).toBeNull();
});
