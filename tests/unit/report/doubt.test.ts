// What parts rest on and what moves the weight: sums by hand; root-sum-square after JCGM 100:2008 (GUM), 5.1.2, for independent inputs.
import { describe, expect, test } from 'vitest';
import { sheetOf } from '../../../server/report/index.ts';
import type { Table } from '../../../server/report/sheet/types.ts';
import { check } from '../../../server/workspace/memory.ts';

const tables = (parts: readonly string[]): readonly Table[] => {
  const text = [
    'plan "Machine": date 2026-10-02, units metric',
    'load "Machine"',
    '  contingency 5 %',
    '  free "stands, seen"',
    ...parts.map((part) => `  ${part}, at (0, 0, 0)`),
    '',
  ].join('\n');
  const sheet = sheetOf(check({ 'a.liftplan': text }, 'a.liftplan'), { pathOf: (file) => file });
  const blocks = sheet.sections.find(({ id }) => id === 'weight')?.blocks ?? [];
  return blocks.filter((block) => block.kind === 'table');
};
const rowsOf = (all: readonly Table[], caption: string) =>
  all.find((table) => table.caption.endsWith(caption))?.rows.map(({ cells }) => cells.map(({ text }) => text));
const rests = 'what its parts rest on';
const moves = 'parts whose tolerance moves the weight most';

const item = (name: string, weight: string, by = 'drawing') => `part "${name}": item ${weight}, by ${by}, from "D"`;
const box = 'part "Block": box 1 x 1 x 1 m, density 7,850 kg/m3';

describe('what the parts rest on', () => {
  test('adds up by evidence, the heaviest first', () => {
    const all = tables([item('Motor', '900 kg'), item('Pump', '300 kg'), item('Cable', '100 kg', 'estimate'), box]);
    expect(rowsOf(all, rests)?.map(([words, weight]) => [words, weight])).toEqual([
      ['worked out from shape and material', '7,850 kg'],
      ['stated by drawing', '1,200 kg'],
      ['stated by estimate', '100 kg'],
    ]);
  });

  test('is left out where all rests on the same, and where a part is not known', () => {
    expect(rowsOf(tables([item('Motor', '900 kg'), item('Pump', '300 kg')]), rests)).toBeUndefined();
    expect(rowsOf(tables([item('Motor', '?'), box]), rests)).toBeUndefined();
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
