// Hints at the ends of lines: what stands there, that it is complete and short, and that nothing stands where the text says it already.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitted, hints, longest } from '../../../server/editor/hints.ts';
import { check } from '../../../server/workspace/memory.ts';
import { allHints, goodSamples, opened, sample, sampleFiles, withHints } from '../../support/draw.ts';
import { column, instead, tank } from './plans.ts';

test('weights stand behind what is worked out, not behind what is stated', () => {
  // 2 × 1.2 × 0.01 m³ × 7850; π × 0.992 × 0.008 × 1.5 m³ × 8000; π ÷ 4 × 0.008 m³ × 8000; 4 × 6; densities: the catalog's.
  // With 5 % on all but the estimate, which takes 25 %: 684 kg; rigging 20 + 2 × 3 + 2 × 0.5 kg.
  expect(
    withHints(tank, { ...allHints, legs: false, crane: false })
      .split('\n')
      .slice(0, 19)
      .join('\n'),
  ).toBe(`\
plan "Set tank 4": date 2026-04-14, revision B, site "Dairy, cold store" ‹= 711 kg gross load›
  units metric
use "gear.liftplan"
let wide = 1.2 m
# Drained last week.
# Manhole shut.
load "Tank" ‹= 684 kg · calculated + 5.8 %›
  datum "middle of the base plate, underside"
  contingency 5 %
  free "stands on rollers, seen by the foreman"
  part "Base": plate 2 m x wide x 10 mm, of carbon steel, at (0, 0, 5 mm) ‹= 188.4 kg›
  assembly "Body": at (0, 0, 10 mm) ‹= 434.5 kg›
    part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m), empty "drained" ‹= 299.2 kg›
    part "Cover": cylinder, diameter 1 m, length 8 mm, of stainless steel, on "Shell" ‹= 50.27 kg›
    part "Pump": item 85 kg, by maker data, from "data sheet 7", size 0.4 x 0.4 x 0.3 m, on "Cover"
  part "Feet": item 6 kg, by estimate, size 0.1 x 0.1 x 0.1 m, count 4, at (-0.9 m, -0.5 m, -50 mm), every (0.6 m, 0, 0) ‹= 24 kg · 4 x 6 kg›
  pick W: at (-0.6 m, 0, 1.6 m), capacity 1 t, kind lug
  pick E: at (0.6 m, 0, 1.6 m), capacity 1 t, kind lug
rig: crane "Yard"`);
});

test('a leg shows its greatest load, its weakest item and its flattest angle', () => {
  // Straight down the sling carries the block, the shackle and itself: 1,005 of its 1,600 kg, 62.8125 %.
  expect(withHints(column).split('\n').at(-2)).toBe(
    '  leg "Hook" > S1 > K1 > TOP ‹= 1,005 kg · 62.9 % of S1 · 90 deg›',
  );
});

test('what is not known begins with ?, and the reason stands in the tooltip', () => {
  const { s } = opened(
    instead(
      column,
      '  sling S1: wire rope, diameter 12 mm, length 2 m, weight 4 kg',
      '  sling S1: wire rope, diameter 12 mm, length 2 m',
    ),
  );
  const said = hints(s, 0, s.tree.rows.length, allHints);
  expect(said.map(({ label }) => label)).toContain('? gross load not known');
  expect(said.find(({ label }) => label === '? gross load not known')?.tooltip).toContain('S1 has no weight.');
});

test('a line that cannot be read makes its load open, never lighter', () => {
  const broken = instead(tank, '    part "Pump": item 85 kg', '    part "Pump": itm 85 kg');
  expect(withHints(broken)).toContain('load "Tank" ‹? weight not known›');
  expect(withHints(broken)).toContain('assembly "Body": at (0, 0, 10 mm) ‹? weight not known›');
});

test('each setting hides its kind, and the tooltip names it', () => {
  const { s } = opened(tank);
  const all = hints(s, 0, s.tree.rows.length, allHints);
  for (const setting of ['totals', 'parts', 'legs', 'crane'] as const) {
    const left = hints(s, 0, s.tree.rows.length, { ...allHints, [setting]: false });
    const gone = all.filter((hint) => !left.some(({ at }) => at.row === hint.at.row));
    expect(gone.length, setting).toBeGreaterThan(0);
    for (const { tooltip } of gone) expect(tooltip).toContain(`becket.hints.${setting}`);
  }
});

test('a hint leads to what governs', () => {
  const { s } = opened(column);
  const leg = hints(s, 0, s.tree.rows.length, allHints).find(({ label }) => label.includes('S1'));
  expect(leg?.leadsTo?.row.text.trim().split(' ').slice(0, 2).join(' ')).toBe('sling S1:');
});

test('only the rows asked for are answered', () => {
  const { s } = opened(tank);
  const whole = hints(s, 0, s.tree.rows.length, allHints);
  for (let row = 0; row < s.tree.rows.length; row++) {
    expect(hints(s, row, row, allHints).map(({ label }) => label)).toEqual(
      whole.filter(({ at }) => s.tree.rowNumber(at.row) === row).map(({ label }) => label),
    );
  }
});

test('the fullest label that fits stands, and none is ever cut', () => {
  expect(fitted(['= 3.9 t · 62 % of S2 · 57 deg', '= 3.9 t'])).toBe('= 3.9 t · 62 % of S2 · 57 deg');
  expect(fitted(['= 3.9 t · 62 % of a sling with a very long name', '= 3.9 t · 62 %', '= 3.9 t'])).toBe(
    '= 3.9 t · 62 %',
  );
  expect(fitted(['= 123,456,789,012,345,678,901,234,567,890 kg'])).toBe('= see hover');
});

test('a long name gives way before the share that is used, and over is said', () => {
  const long = column.replaceAll('S1', '"Rope with a red tag, from the far end of bay 2"');
  expect(withHints(long)).toContain('‹= 1,005 kg · 62.9 % · 90 deg›');
  expect(withHints(long.replace('capacity 1,600 kg', 'capacity 900 kg'))).toContain(
    '‹= 1,005 kg · 111.7 % over · 90 deg›',
  );
});

test('a weight written ? says so itself; one that cannot be read is not known', () => {
  expect(withHints(instead(column, 'item 1 t,', 'item ?,'))).toMatch(/part "Block": item \?[^‹]*\n/);
  expect(withHints(instead(column, 'item 1 t,', 'item 1 tn,'))).toMatch(
    /part "Block": item 1 tn.*‹\? weight not known›/,
  );
});

test('every hint of every sample is complete: at most 40 characters, one a line, at its end, with a sign first', () => {
  let seen = 0;
  for (const path of Object.keys(sampleFiles())) {
    const s = sample(path);
    const rows = new Set();
    for (const { at, label } of hints(s, 0, s.tree.rows.length, allHints)) {
      seen++;
      expect([...label].length, label).toBeLessThanOrEqual(longest);
      expect(label).toMatch(/^[=→?] \S/);
      expect(at.from).toBe(at.row.text.length);
      expect(rows.has(at.row), label).toBe(false);
      rows.add(at.row);
    }
  }
  expect(seen).toBeGreaterThan(goodSamples().length * 3);
});

const names = fc
  .string({ unit: fc.constantFrom(...'abcdefghij KLMNOP-'), minLength: 1, maxLength: 60 })
  .map((name) => name.trim() || 'A');
const weights = fc
  .tuple(
    fc.double({ min: 1e-3, max: 1e9, noNaN: true }),
    fc.constantFrom('kg', 't', 'lb', 'short ton', 'kip', 'kN', 'lbf'),
  )
  .map(
    ([value, unit]) =>
      `${Number(value.toPrecision(6)).toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 6 })} ${unit}`,
  );

test('no weight, unit or name makes a hint longer than 40 characters', () => {
  fc.assert(
    fc.property(
      weights,
      fc.constantFrom('US', 'metric'),
      names,
      names,
      fc.integer({ min: 1, max: 40 }),
      (weight, units, load, sling, count) => {
        const text = column
          .replace('units metric', `units ${units}`)
          .replace(
            'part "Block": item 1 t, by weighbridge,',
            `part "${load}": item ${weight}, by weighbridge, count ${count}, every (1 m, 0, 0),`,
          )
          .replaceAll('S1', `"${sling} 1"`);
        const s = check({ 'plan.liftplan': text }, 'plan.liftplan');
        for (const { label } of hints(s, 0, s.tree.rows.length, allHints)) {
          expect([...label].length, label).toBeLessThanOrEqual(longest);
          expect(label).toMatch(/^[=→?] \S/);
        }
      },
    ),
    { numRuns: 40 },
  );
}, 30_000);
