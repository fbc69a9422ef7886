// What parts rest on and what moves the weight: sums by hand; root-sum-square after JCGM 100:2008 (GUM), 5.1.2, for independent inputs.
import { describe, expect, test } from 'vitest';
import { sheetOf } from '../../../server/report/index.ts';
import type { Block, Table } from '../../../server/report/sheet/types.ts';
import { check } from '../../../server/workspace/memory.ts';

const blocks = (parts: readonly string[]): readonly Block[] => {
  const text = [
    'plan "Machine": date 2026-10-02, units metric',
    'load "Machine"',
    '  contingency 5 %',
    '  free "stands, seen"',
    ...parts.map((part) => `  ${part}${part.startsWith('stated') ? '' : ', at (0, 0, 0)'}`),
    '',
  ].join('\n');
  const sheet = sheetOf(check({ 'a.liftplan': text }, 'a.liftplan'), { pathOf: (file) => file });
  return sheet.sections.find(({ id }) => id === 'weight')?.blocks ?? [];
};
const tables = (parts: readonly string[]): readonly Table[] => blocks(parts).filter((block) => block.kind === 'table');
const rowsOf = (all: readonly Table[], caption: string) =>
  all.find((table) => table.caption.endsWith(caption))?.rows.map(({ cells }) => cells.map(({ text }) => text));
const rests = 'what the weight of its parts rests on';
const moves = 'parts whose tolerance moves the weight most';

const item = (name: string, weight: string, by = 'drawing') => `part "${name}": item ${weight}, by ${by}, from "D"`;
const box = 'part "Block": box 1 x 1 x 1 m, density 7,850 kg/m3';

const envelope = 'part "Casing": envelope 1 x 1 x 1 m, density 3,000 kg/m3';
const bare = 'part "Bits": item 50 kg';

describe('what the parts rest on', () => {
  const mixed = [
    box,
    item('Motor', '300 kg'),
    item('Pump', '900 kg', 'maker data'),
    item('Cable', '100 kg', 'estimate'),
    envelope,
    bare,
  ];

  test('the least reliable first, and what is stated by its evidence', () => {
    expect(rowsOf(tables(mixed), rests)).toEqual([
      ['Nothing named', '50 kg', '0.4 %'],
      ['Estimates', '100 kg', '0.8 %'],
      ['Upper bounds (envelopes)', '3,000 kg', '24.6 %'],
      ['Stated with evidence', '1,200 kg', '9.8 %'],
      ['by maker data', '900 kg', '7.4 %'],
      ['by drawing', '300 kg', '2.5 %'],
      ['Worked out from shape and material', '7,850 kg', '64.3 %'],
    ]);
  });

  test('as one bar whose pieces make up the whole, and in words for those who do not see it', () => {
    const stack = blocks(mixed).find((block) => block.kind === 'stack');
    expect(stack?.pieces.map(({ look }) => look)).toEqual(['unnamed', 'estimate', 'bound', 'stated', 'calculated']);
    expect(stack?.pieces.map(({ from, to }) => Math.round((to - from) * 12_200))).toEqual([50, 100, 3000, 1200, 7850]);
    expect([stack?.pieces[0]?.from, stack?.pieces.at(-1)?.to]).toEqual([0, 1]);
    expect(stack?.description).toContain('Upper bounds (envelopes) 3,000 kg, 24.6 %');
    expect(stack?.note).toBe('What the weight of all parts, 12,200 kg, rests on.');
  });

  test('a stated weight that governs is named below the bar', () => {
    const stack = blocks([...mixed, 'stated 20 t, by drawing, from "D"']).find((block) => block.kind === 'stack');
    expect(stack?.note).toContain('The stated weight governs.');
  });

  test('is shown where all is a bound, left out where all is stated, and where a part is not known', () => {
    expect(rowsOf(tables([envelope]), rests)).toEqual([['Upper bounds (envelopes)', '3,000 kg', '100 %']]);
    expect(rowsOf(tables([item('Motor', '900 kg'), item('Pump', '300 kg')]), rests)).toBeUndefined();
    expect(rowsOf(tables([item('Motor', '?'), box]), rests)).toBeUndefined();
    expect(blocks([item('Motor', '?'), envelope]).some((block) => block.kind === 'stack')).toBe(false);
  });
});

describe('what moves the weight', () => {
  test('the worst case is the sum, root-sum-square its own row', () => {
    const all = tables([item('Motor', '900 kg ± 40 kg'), item('Pump', '300 kg ± 10 %'), item('Base', '500 kg')]);
    expect(rowsOf(all, moves)).toEqual([
      ['Motor', '900 kg', '40 kg', '40 kg'],
      ['Pump', '300 kg', '30 kg', '30 kg'],
      ['All at the same end at once (worst case)', '', '70 kg', '70 kg'],
      ['Root-sum-square (if they err independently; nothing is judged by it)', '', '50 kg', '50 kg'], // 3, 4, 5
    ]);
  });

  test('names five and counts the others', () => {
    const parts = [1, 2, 3, 4, 5, 6, 7].map((n) => item(`P${n}`, `1,000 kg ± ${n} kg`));
    const rows = rowsOf(tables(parts), moves) ?? [];
    expect(rows.map(([name]) => name).slice(0, 6)).toEqual(['P7', 'P6', 'P5', 'P4', 'P3', '2 more']);
    expect(rows[5]).toEqual(['2 more', '', '3 kg', '3 kg']);
    expect(rows[6]?.[2]).toBe('28 kg');
  });

  test('is left out without tolerances, and where one part is not known', () => {
    expect(rowsOf(tables([box]), moves)).toBeUndefined();
    expect(rowsOf(tables([item('Motor', '900 kg ± 40 kg'), item('Pump', '?')]), moves)).toBeUndefined();
  });
});
