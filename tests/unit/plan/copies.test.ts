// How many there are, where that is not known, and what is counted once for each copy.
import { describe, expect, test } from 'vitest';
import { loadOf, slugs, value } from '../../support/lift.ts';

const why = (s: ReturnType<typeof loadOf>, kind: string, name: string, result = 'weight') =>
  s.results.find(kind, name, result)?.value.because.map(({ what, deliberate }) => [what, deliberate === true]);

describe('`?` is not known yet, in plain words, and no finding', () => {
  test.each([
    ['item 5 kg, by drawing, count ?', 'How many of A there are is not known yet (?).'],
    ['box ?, of carbon steel', 'The sizes of A are not known yet (?).'],
    ['box 1 x 1 x 1 m, of ?', 'What A is made of is not known yet (?).'],
    ['section ?, length 1 m', 'The sizes of A are not known yet (?).'],
    ['pipe NPS 8, schedule ?, length 1 m', 'schedule of A is not known yet (?).'],
    ['prism, outline ?, length 1 m, of carbon steel', 'outline of A is not known yet (?).'],
    ['liquid 10 L, of water, count ?', 'How many of A there are is not known yet (?).'],
  ])('%s', (shape, words) => {
    const s = loadOf(`  part "A": ${shape}, at (0, 0, 0)`);
    expect(why(s, 'part', 'A')).toEqual([[words, true]]);
    expect(why(s, 'load', 'L', 'calculated weight')).toEqual([[words, true]]);
    expect(slugs(s)).toEqual([]);
  });

  test('beside a stated weight that is heavier than what is known, the stated weight holds', () => {
    const s = loadOf(
      '  stated 3 t, by marking, from "plate"\n  cog (0, 0, 0), by drawing, from "D-1"\n  part "A": item 5 kg, by drawing, count ?, at (0, 0, 0)',
    );
    expect(value(s, 'load', 'L', 'weight')).toBe(3000);
  });
});

describe('an assembly of which nobody knows how many there are', () => {
  const s = loadOf(
    '  assembly "N": at (0, 0, 0), count ?\n    part "O": item 5 kg, by drawing, at (0, 0, 0)\n    assembly "P": at (0, 0, 0)\n      part "Q": liquid 10 L, of water, at (0, 0, 0)',
  );
  const words = [['How many of N there are is not known yet (?).', true]];

  test('leaves all in it open, and the load with it', () => {
    for (const [kind, name] of [
      ['part', 'O'],
      ['part', 'Q'],
      ['assembly', 'P'],
      ['assembly', 'N'],
      ['load', 'L'],
    ] as const)
      expect(why(s, kind, name)).toEqual(words);
  });
});

describe('an assembly of which nothing says how its copies stand', () => {
  const inside =
    '\n    part "O": item 5 kg, by drawing, at (0, 0, 0)\n    part "R": liquid 10 L, of water, at (0, 0, 0)\n    assembly "P": at (0, 0, 0), count 2\n      part "Q": item 1 kg, by drawing, at (0, 0, 0), count 4';

  test.each(['count 3', 'count 3, every (?, 0, 0)'])(
    '%s: counts with all their weight, and leaves the centre open',
    (count) => {
      const s = loadOf(`  assembly "N": at (0, 0, 0), ${count}${inside}`);
      expect(value(s, 'part', 'O', 'weight')).toBe(15);
      expect(value(s, 'part', 'R', 'weight')).toBeCloseTo(30, 9);
      expect(value(s, 'part', 'Q', 'weight')).toBe(24);
      expect(value(s, 'load', 'L', 'weight')).toBeCloseTo(69, 9);
      expect(value(s, 'load', 'L', 'cog x')).toBeNull();
      expect(slugs(s).filter((slug) => slug === 'part-unplaced')).toHaveLength(3); // N, P and Q
    },
  );
});

test('copies of copies beyond what can be placed are said and left open, at once', () => {
  const part = 'part "O": item 5 kg, by drawing, at (0, 0, 0)';
  for (const [outer, inner] of [
    [1000, 101],
    [101, 1000],
  ]) {
    const s = loadOf(
      `  assembly "N": at (0, 0, 0), count ${outer}, every (1 m, 0, 0)\n    ${part}, count ${inner}, every (0, 1 m, 0)`,
    );
    expect(slugs(s)).toEqual(['value-outside']);
    expect(value(s, 'load', 'L', 'calculated weight')).toBeNull();
  }
  const most = loadOf(
    `  assembly "N": at (0, 0, 0), count 10, every (1 m, 0, 0)\n    ${part}, count 10000, every (0, 1 m, 0)`,
  );
  expect(value(most, 'load', 'L', 'calculated weight')).toBe(500_000);
});

test('a liquid from outside, in what is there nobody knows how often, is not known', () => {
  const s = loadOf(
    '  assembly "N": at (0, 0, 0), count ?\n    part "T": tube, outside 1 m, wall 10 mm, length 1 m, of carbon steel, at (0, 0, 0)\n  part "W": liquid, fill 50 %, of water, inside "T"',
  );
  expect(why(s, 'part', 'W')).toEqual([['How many of N there are is not known yet (?).', true]]);
});

describe('a liquid in an assembly is there once for each copy of it (by hand: 100 L of water are 100 kg)', () => {
  const of = (liquid: string, count = 'count 3, every (2 m, 0, 0)') =>
    loadOf(
      `  assembly "N": at (0, 0, 0), ${count}\n    part "T": tube, outside 1 m, wall 10 mm, length 1 m, of carbon steel, at (0, 0, 0)\n    part "W": ${liquid}`,
    );

  test.each(['liquid 100 L, of water, inside "T"', 'liquid 100 L, of water, at (0, 0, 1 m)'])('%s', (liquid) => {
    const s = of(liquid);
    expect(value(s, 'part', 'W', 'weight')).toBeCloseTo(300, 9);
    expect(value(s, 'part', 'W', 'cog x')).toBeCloseTo(2, 9);
    expect(value(of(liquid, 'count 1'), 'part', 'W', 'weight')).toBeCloseTo(100, 9);
  });

  test('its own count too', () => {
    expect(
      value(of('liquid 20 L, of water, count 2, every (0, 1 m, 0), at (0, 0, 0)'), 'part', 'W', 'weight'),
    ).toBeCloseTo(120, 9);
  });

  test('a fill or level is of all the insides together, as before', () => {
    const inside = (Math.PI / 4) * 0.98 ** 2; // m3 of one
    expect(value(of('liquid, fill 50 %, of water, inside "T"'), 'part', 'W', 'weight')).toBeCloseTo(1500 * inside, 6);
  });

  test('one that stands outside of the assembly is all there is', () => {
    const s = loadOf(
      '  assembly "N": at (0, 0, 0), count 3, every (2 m, 0, 0)\n    part "T": tube, outside 1 m, wall 10 mm, length 1 m, of carbon steel, at (0, 0, 0)\n  part "W": liquid 100 L, of water, inside "N"',
    );
    expect(value(s, 'part', 'W', 'weight')).toBeCloseTo(100, 9);
  });

  test('more in each than it holds is said', () => {
    expect(slugs(of('liquid 800 L, of water, inside "T"'))).toContain('geometry-impossible');
    expect(slugs(of('liquid 700 L, of water, inside "T"'))).not.toContain('geometry-impossible');
  });
});
