// Weight and centre from weighings on supports.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadOf, slugs, value } from '../../support/lift.ts';

const weighed = (name: string, more: string, first: string, second: string) =>
  `  weighed "${name}": by load cell, dated 2026-02-20, tare 0 kg, accuracy 1 %, state "as lifted"${more}\n    support A: at (0, 0, 0), reads ${first}\n    support B: at (4 m, 0, 0), reads ${second}`;

// Two scales 4.0 m apart read 6,200 and 3,800 kg; with end 2 raised by 10 deg it reads 3,600 kg. Balance of moments (elementary statics):
// x = 3,800 · 4 / 10,000 = 1.520 m; z = (3,800 − 3,600) · 4 / (10,000 · tan 10 deg) = 0.4537 m over the supports.
test('two scales give the weight and where it sits; raising one end gives the height', () => {
  const level = loadOf(weighed('Level', '', '6,200 kg', '3,800 kg'));
  expect(value(level, 'load', 'L', 'measured weight')).toBe(10000);
  expect(value(level, 'load', 'L', 'cog x')).toBeCloseTo(1.52, 12);
  expect(value(level, 'load', 'L', 'cog z')).toBeNull();
  const both = loadOf(
    `${weighed('Level', '', '6,200 kg', '3,800 kg')}\n${weighed('Raised', ', incline x 10 deg', '6,400 kg', '3,600 kg')}`,
  );
  expect(value(both, 'load', 'L', 'cog z')).toBeCloseTo((200 * 4) / (10000 * Math.tan(Math.PI / 18)), 9);
  expect(value(both, 'load', 'L', 'cog z')).toBeCloseTo(0.4537, 4);
});

test('two supports of one name leave the weighing open: neither counts, as the finding says', () => {
  const s = loadOf(weighed('Level', '', '6,200 kg', '3,800 kg').replace('support B', 'support a'));
  expect(slugs(s)).toContain('stated-twice');
  for (const result of ['measured weight', 'weight', 'cog x']) expect(value(s, 'load', 'L', result)).toBeNull();
});

test('a second weighing that is hardly inclined shows no height', () => {
  const s = loadOf(
    `${weighed('Level', '', '6,200 kg', '3,800 kg')}\n${weighed('Raised', ', incline x 0.01 deg', '6,200 kg', '3,800 kg')}`,
  );
  expect(value(s, 'load', 'L', 'cog z')).toBeNull();
});

test('a figure said to be dry is not lighter for the oil that the plan names', () => {
  const s = loadOf(
    '  stated 3 t, by marking, state "dry", from "plate"\n  cog (0, 0, 0), by drawing\n  part "Sump": tube, outside 1 m, wall 10 mm, length 1 m, of carbon steel, at (0, 0, 0)\n  part "Oil": liquid 0.2 m3, of water, inside "Sump"',
  );
  expect(slugs(s)).toContain('addition-unclear');
  expect(value(s, 'load', 'L', 'stated weight')).toBe(3200);
});

test('a stated centre far from the sum of the parts widens what the legs are judged with', () => {
  const s = loadOf(
    '  cog (0.6 m, 0, 0), by drawing\n  part "P": box 2 x 1 x 1 m, of carbon steel, at (0, 0, 0)\n  pick A: at (-1, 0, 1) m, capacity 20 t\n  pick B: at (1, 0, 1) m, capacity 20 t',
  );
  expect(slugs(s)).toContain('cog-disagrees');
  const x = s.results.find('load', 'L', 'cog x')?.value;
  expect([x?.value, x?.low, x?.high]).toEqual([0.6, 0, 1.2]);
});

const ends = (s: ReturnType<typeof loadOf>, result: string) => {
  const found = s.results.find('load', 'L', result)?.value;
  return [found?.low, found?.value, found?.high];
};
const three = (accuracy: string, readings: readonly string[], more = '') =>
  `  weighed: by jack reading, dated 2026-02-20, state "as lifted", tare 0 kg${accuracy}${more}\n${readings
    .map((reads, i) => `    support J${i}: at (${[0, 4, 0][i]} m, ${[0, 0, 3][i]} m, 0), reads ${reads}`)
    .join('\n')}`;

// One end reads 2 % more and the other 2 % less than it carries: 3,800 · 1.02 / (3,800 · 1.02 + 6,200 · 0.98) of 4 m, and the other way.
test('the accuracy of each reading by itself reaches the centre, and much more so its height', () => {
  const s = loadOf(weighed('Level', '', '6,200 kg', '3,800 kg').replace('accuracy 1 %', 'accuracy 2 %'));
  const [low, , high] = ends(s, 'cog x');
  expect(high).toBeCloseTo((4 * 3800 * 1.02) / (3800 * 1.02 + 6200 * 0.98), 9);
  expect(low).toBeCloseTo((4 * 3800 * 0.98) / (3800 * 0.98 + 6200 * 1.02), 9);
  const both = loadOf(
    `${weighed('Level', '', '6,200 kg', '3,800 kg')}\n${weighed('Raised', ', incline x 10 deg', '6,400 kg', '3,600 kg')}`,
  );
  const [least, , most] = ends(both, 'cog z');
  // Each of the two means may be off by 1 % · 2 · 0.38 · 0.62 · 4 m = 19 mm (and 18 mm): over tan and sin of 10 deg some 0.21 m either way.
  expect(most as number).toBeCloseTo(0.4537 + 0.213, 2);
  expect(least as number).toBeCloseTo(0.4537 - 0.213, 2);
});

test('the ends of the centre are never passed by readings within their accuracy, and are reached (tried at random)', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 500, max: 9000 }), { minLength: 3, maxLength: 3 }),
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
      (kg, off) => {
        const s = loadOf(
          three(
            ', accuracy 3 %',
            kg.map((one) => `${one} kg`),
          ),
        );
        const mean = (weights: readonly number[]) =>
          (4 * (weights[1] as number)) / weights.reduce((sum, one) => sum + one, 0);
        const [low, , high] = ends(s, 'cog x') as [number, number, number];
        const at = (shares: readonly number[]) => mean(kg.map((one, i) => one * (1 + 0.03 * (shares[i] as number))));
        expect(at(off)).toBeLessThanOrEqual(high + 1e-9);
        expect(at(off)).toBeGreaterThanOrEqual(low - 1e-9);
        expect(at([-1, 1, -1])).toBeCloseTo(high, 9);
        expect(at([1, -1, 1])).toBeCloseTo(low, 9);
      },
    ),
    { numRuns: 40, seed: 11 },
  );
});

test('where a support stands, what it reads and the angle may have tolerances of their own', () => {
  const loose = loadOf(
    three('', ['5 t ± 100 kg', '4 t', '3 t']).replace('at (4 m, 0 m, 0)', 'at (4 m ± 50 mm, 0 m, 0)'),
  );
  const [low, middle, high] = ends(loose, 'cog x') as [number, number, number];
  expect(middle).toBeCloseTo(16 / 12, 9);
  expect(high).toBeCloseTo((4.05 * 4) / 11.9, 9);
  expect(low).toBeCloseTo((3.95 * 4) / 12.1, 9);
});

test('one support shows the weight and no centre: a platform carries it wherever it stands', () => {
  const s = loadOf(
    '  weighed: by weighbridge, dated 2026-02-20, state "as lifted", tare 0 kg, accuracy 1 %\n    support Platform: at (0, 0, 0), reads 18,940 kg\n  cog (1.2 m, 0, 0.8 m), by drawing, from "D-1"',
  );
  expect(value(s, 'load', 'L', 'measured weight')).toBe(18940);
  expect(value(s, 'load', 'L', 'cog x')).toBe(1.2);
});

// 149 bar on 71 cm2 are 14.9 MPa · 0.0071 m2 = 105.79 kN.
test('a jack reads its pressure times the area of its ram', () => {
  const s = loadOf(three(', accuracy 2 %', ['149 bar * 71 cm2', '2 * 80 bar * 71 cm2', '14.9 MPa * 7,100 mm2']));
  expect(value(s, 'load', 'L', 'measured weight')).toBeCloseTo((105_790 * 2 + 113_600) / 9.80665, 6);
});

test('a weighing or a stated centre that cannot be read is not replaced by what may be lighter on a leg', () => {
  const parts = '\n  part "A": item 12 t, by drawing, from "D", at (1 m, 1 m, 0)';
  const sound = three(', accuracy 1 %', ['5 t', '4 t', '3 t']);
  expect(value(loadOf(sound + parts), 'load', 'L', 'cog x')).toBeCloseTo(16 / 12, 9);
  for (const [from, to] of [
    ['at (4 m, 0 m, 0)', 'at (4, 0 m, 0)'],
    ['reads 4 t', 'reads 4 tt'],
    ['accuracy 1 %', 'accuracy 1'],
    ['tare 0 kg', 'tare 5'],
  ] as const)
    expect(value(loadOf(sound.replace(from, to) + parts), 'load', 'L', 'cog x'), to).toBeNull();
  expect(value(loadOf(`  cog (0.4 m, 0, 1), by drawing, from "D"${parts}`), 'load', 'L', 'cog x')).toBeNull();
  // What is left open on purpose, or shows no centre, leaves it to the next.
  expect(value(loadOf(`  cog (?, 0, 1 m), by drawing, from "D"${parts}`), 'load', 'L', 'cog x')).toBe(1);
  expect(value(loadOf(sound.replace('reads 4 t', 'reads ?') + parts), 'load', 'L', 'cog x')).toBe(1);
  expect(value(loadOf(sound.replace('2026-02-20', '2026-02-30') + parts), 'load', 'L', 'cog x')).toBeCloseTo(
    16 / 12,
    9,
  );
});
