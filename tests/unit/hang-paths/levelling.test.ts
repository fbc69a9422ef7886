// Help with levelling: settings, other slings of the stock and new lengths, each put into the text and hung again.
import { describe, expect, test } from 'vitest';
import { edited } from '../../../server/editor/changes.ts';
import { level } from '../../../server/editor/level.ts';
import type { Snapshot } from '../../../server/workspace/types.ts';
import { figure, hang, hook, type Rigged, rigText } from '../../support/hanging.ts';
import { lift, slugs } from '../../support/lift.ts';

const limit = (5 * Math.PI) / 180;
const ropes = (names: string, length: string, more = '') =>
  `sling ${names}: wire rope, diameter 20 mm, length ${length}, weight 12 kg, capacity 4 t${more ? `, ${more}` : ''}`;
const tank: Rigged = {
  weight: 3200,
  cog: '(0.4, 0, 1) m',
  picks: { A: '(-1, 0, 2) m', B: '(1, 0, 2) m' },
  gear: [hook(), ropes('S1', '3 m'), ropes('S2', '3 m')],
  legs: ['Hook > S1 > A', 'Hook > S2 > B'],
};

const tilted = (s: Snapshot) => s.findings.find((finding) => finding.slug === 'hang-tilted');
/** The plan's own text after the fix whose title holds those words. */
function fixed(s: Snapshot, words: string, others: Readonly<Record<string, string>> = {}): Snapshot {
  const fix = tilted(s)?.fixes.find(({ title }) => title.includes(words));
  if (!fix)
    throw new Error(
      `No fix with "${words}": ${tilted(s)
        ?.fixes.map(({ title }) => title)
        .join('; ')}`,
    );
  return lift(edited(s.tree, fix.edits).join('\n'), others);
}

/** What a title promises, as an angle in rad. */
const promised = (s: Snapshot, words: string): number => {
  const degrees = /then ([\d.]+) deg/.exec(
    tilted(s)?.fixes.find(({ title }) => title.includes(words))?.title ?? '',
  )?.[1];
  return (Number(degrees) * Math.PI) / 180;
};

test('lengths that are written in lines of their own: rounded to 5 mm, and level within what is promised', () => {
  const s = hang(tank);
  expect(tilted(s)).toBeDefined();
  const after = fixed(s, 'S1 length');
  expect(slugs(after)).not.toContain('hang-tilted');
  expect(figure(after, 'load', 'Load', 'tilt')).toBeLessThanOrEqual(promised(s, 'S1 length') + 1e-9);
  const written = after.tree.rows.flatMap(({ text }) => /length ([\d,]+) mm/.exec(text)?.[1]?.replace(',', '') ?? []);
  expect(written.length).toBeGreaterThan(0);
  for (const length of written) expect(Number(length) % 5).toBe(0);
});

describe('turnbuckles', () => {
  const rig: Rigged = {
    ...tank,
    gear: [
      hook(),
      ropes('S1..S2', '3 m'),
      'turnbuckle T1: weight 8 kg, capacity 5 t, length 600 mm, take-up 900 mm, set 100 mm',
      'turnbuckle T2: weight 8 kg, capacity 5 t, length 600 mm, take-up 900 mm, set 100 mm',
    ],
    legs: ['Hook > S1 > T1 > A', 'Hook > S2 > T2 > B'],
    cog: '(0.6, 0, 1) m',
  };

  test('are set within their take-up, and the load hangs within the limit', () => {
    const s = hang(rig);
    expect(tilted(s)).toBeDefined();
    const after = fixed(s, 'T1 set');
    expect(slugs(after)).not.toContain('hang-tilted');
    for (const row of after.tree.rows) {
      const set = /set (\d+) mm/.exec(row.text)?.[1];
      if (set) {
        expect(Number(set) % 5).toBe(0);
        expect(Number(set)).toBeLessThanOrEqual(900);
      }
    }
  });

  test('that do not reach are not offered', () => {
    const s = hang({
      ...rig,
      cog: '(0.8, 0, 1) m',
      gear: rig.gear.map((line) => line.replace('take-up 900 mm', 'take-up 120 mm')),
    });
    expect(tilted(s)?.fixes.filter(({ title }) => title.includes(' set '))).toEqual([]);
  });

  test('in one line for both, unlike settings cannot be said: not offered', () => {
    const s = hang({
      ...rig,
      gear: [
        hook(),
        ropes('S1..S2', '3 m'),
        'turnbuckle T1..T2: weight 8 kg, capacity 5 t, length 600 mm, take-up 900 mm, set 100 mm',
      ],
    });
    expect(tilted(s)).toBeDefined();
    expect(tilted(s)?.fixes.filter(({ title }) => title.includes(' set '))).toEqual([]);
  });
});

describe('slings of the stock', () => {
  const yard = [
    'gear',
    `  ${ropes('Long1..Long2', '4.2 m')}`,
    `  ${ropes('Weak', '3.25 m').replace('capacity 4 t', 'capacity 2 t')}`,
    '  sling Web: web, length 3.25 m, weight 4 kg, capacity 6 t',
    `  ${ropes('Mid', '3.2 m')}`,
    '',
  ].join('\n');
  const text = rigText({ ...tank, gear: [hook(), ropes('S1..S2', '3 m')] }).replace(
    'load "Load"',
    'use "yard.liftplan"\nload "Load"',
  );
  const others = { 'yard.liftplan': yard };

  test('of the same make and at least the capacity; the legs name the other one afterwards', () => {
    const s = lift(text, others);
    const titles = tilted(s)?.fixes.map(({ title }) => title) ?? [];
    expect(titles.some((title) => /(Mid|Long\d) for S/.test(title))).toBe(true);
    expect(titles.some((title) => /Weak|Web/.test(title))).toBe(false);
    const after = fixed(s, ' for S', others);
    expect(slugs(after)).not.toContain('hang-tilted');
    expect(slugs(after)).not.toContain('name-unknown');
    expect(figure(after, 'load', 'Load', 'tilt')).toBeLessThanOrEqual(limit);
    expect(figure(after, 'load', 'Load', 'tilt')).toBeLessThanOrEqual(promised(s, ' for S') + 1e-3);
  });
});

test('on its legs too, and where it hangs within the limit; never twice where the finding stands', () => {
  const little = hang({ ...tank, cog: '(0.05, 0, 1) m' });
  expect(slugs(little)).not.toContain('hang-tilted');
  const row = (s: Snapshot, words: string) => s.tree.rows.findIndex((one) => one.text.includes(words));
  expect(level(little, row(little, 'leg Hook > S1'), row(little, 'leg Hook > S1')).length).toBeGreaterThan(0);
  expect(level(little, row(little, 'pick A'), row(little, 'pick A'))).toEqual([]);
  const much = hang(tank);
  expect(level(much, row(much, 'load "Load"'), row(much, 'load "Load"'))).toEqual([]);
});
