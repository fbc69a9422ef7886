// Weight and centre from weighings on supports.
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
