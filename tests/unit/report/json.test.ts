// The JSON report against its contract: keys in their order, SI figures, open results, places from 1, the same bytes again.
import { describe, expect, test } from 'vitest';
import { cautions } from '../../../server/checks/index.ts';
import { json, report } from '../../../server/report/index.ts';
import { resultsOf } from '../../../server/vocabulary/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import { changed, library, plan, snapshot } from './plans.ts';

type Entry = Record<string, unknown>;
const made = (of = snapshot()) =>
  JSON.parse(json(report(of, (file) => file.replace(/^quarry\//, '')) ?? [])) as Record<string, Entry[]> & {
    plan: Entry;
    files: string[];
  };
const line = (words: string) => plan.split('\n').findIndex((text) => text.includes(words)) + 1;
const result = (of: ReturnType<typeof made>, kind: string, name: string | null, what: string) =>
  of.results?.find(
    ({ subject, result }) => (subject as Entry).kind === kind && (subject as Entry).name === name && result === what,
  ) as Entry;

describe('keys in their order', () => {
  const all = made();
  test('of the report and its plan', () => {
    expect(Object.keys(all)).toEqual([
      'format',
      'version',
      'caution',
      'mark',
      'files',
      'plan',
      'results',
      'expects',
      'findings',
    ]);
    expect(all).toMatchObject({
      format: 'liftplan report',
      version: 1,
      caution: cautions.sheetHead,
      files: ['filter.liftplan', 'library/yard.liftplan'],
    });
    expect(Object.entries(all.plan)).toEqual([
      ['name', 'Set the filter vessel'],
      ['site', 'Upper quarry'],
      ['date', '2026-09-02'],
      ['revision', 'B'],
      ['units', 'metric'],
    ]);
  });

  test('of every result', () => {
    expect(all.results?.length).toBeGreaterThan(60);
    for (const entry of all.results ?? []) {
      expect(Object.keys(entry)).toEqual([
        'subject',
        'result',
        'stage',
        'value',
        'unit',
        'low',
        'high',
        'open',
        'because',
        'working',
        'file',
        'line',
      ]);
      expect(Object.keys(entry.subject as Entry)).toEqual(['kind', 'name', 'path']);
    }
  });

  test('of expectations and findings', () => {
    expect(all.expects?.map((entry) => Object.keys(entry))).toEqual([
      ['file', 'line', 'text', 'state', 'worst'],
      ['file', 'line', 'text', 'state', 'worst'],
    ]);
    for (const entry of all.findings ?? [])
      expect(Object.keys(entry)).toEqual([
        'slug',
        'severity',
        'message',
        'file',
        'line',
        'column',
        'endLine',
        'endColumn',
        'related',
        'fixes',
        'waived',
      ]);
  });
});

test('figures are SI and unrounded, with both ends, in the units of the table of results', () => {
  const all = made();
  const sand = result(all, 'part', 'Sand', 'weight');
  expect([sand.value, sand.low, sand.high, sand.unit, sand.open, sand.because]).toEqual([
    500,
    480,
    520,
    'kg',
    false,
    [],
  ]);
  expect(sand.subject).toEqual({ kind: 'part', name: 'Sand', path: ['Filter', 'Sand'] });
  // Closed form: a plate less its hole, 7850 kg/m3 (EN 1991-1-1:2002, annex A, gives 77.0 to 78.5 kN/m3 for steel).
  expect(result(all, 'part', 'Base', 'weight').value).toBeCloseTo(
    (1.2 * 1.2 - (Math.PI * 0.1 ** 2) / 4) * 0.02 * 7850,
    6,
  );
  for (const { subject, result: what, unit } of all.results ?? [])
    expect(unit).toBe(resultsOf[(subject as Entry).kind as string]?.[what as string]?.unit);
});

test('every subject has every result of its table, once a stage', () => {
  const counts = new Map<string, number>();
  for (const { subject, result: what, stage } of made().results ?? []) {
    const key = JSON.stringify([subject, what, stage]);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  expect(new Set(counts.values())).toEqual(new Set([1]));
  const kinds = new Map<string, Set<string>>();
  for (const { subject, result: what } of made().results ?? []) {
    const key = JSON.stringify(subject);
    kinds.set(key, (kinds.get(key) ?? new Set()).add(what as string));
  }
  for (const [subject, results] of kinds)
    expect([...results], subject).toEqual(Object.keys(resultsOf[JSON.parse(subject).kind] ?? {}));
});

test('what is not known is null three times and says why; what is known says nothing', () => {
  const all = made(changed('item 500 kg ± 20 kg', 'item ?'));
  for (const { value, low, high, open, because } of all.results ?? []) {
    expect([value === null, low === null, high === null]).toEqual([open, open, open]);
    expect((because as string[]).length > 0).toBe(open);
  }
  expect(result(all, 'part', 'Sand', 'weight')).toMatchObject({ open: true, value: null });
  expect(result(all, 'load', 'Filter', 'calculated weight').open).toBe(true);
});

test('places count from 1, ends are exclusive, files are as the caller names them', () => {
  const all = made(changed('capacity 4.75 t, spare', 'capacity 4.75 ton, spare'));
  const finding = all.findings?.find(({ slug }) => slug === 'unit-ambiguous') as Entry;
  const text = plan.split('\n')[line('shackle K3') - 1]?.replace('4.75 t', '4.75 ton') ?? '';
  expect(finding).toMatchObject({ file: 'filter.liftplan', line: line('shackle K3'), endLine: line('shackle K3') });
  expect(text.slice((finding.column as number) - 1, (finding.endColumn as number) - 1)).toBe('ton');
  expect((finding.fixes as string[]).length).toBeGreaterThan(1);
  expect(result(all, 'load', 'Filter', 'weight')).toMatchObject({
    file: 'filter.liftplan',
    line: line('load "Filter"'),
  });
});

test('a finding set aside says why and by whom', () =>
  expect(made().findings?.find(({ slug }) => slug === 'holding-unstated')?.waived).toEqual({
    reason: 'new vessel on timber',
    approvedBy: 'the works engineer',
  }));

test('an expectation names what decided', () => {
  const [gross] = made().expects ?? [];
  expect(gross).toMatchObject({
    line: line('expect gross load'),
    text: 'gross load <= 2,500 kg',
    state: 'met',
    worst: { subject: { kind: 'plan', name: null, path: [] }, result: 'gross load', unit: 'kg', open: false },
  });
});

test('the working of a figure ends where another result begins', () => {
  const all = made();
  const labels = (result(all, 'part', 'Base', 'weight').working as Entry[]).map(({ label, formula }) => [
    label,
    formula,
  ]);
  expect(labels[0]).toEqual(['weight', 'volume * density']);
  expect((result(all, 'plan', null, 'gross load').working as Entry[]).map(({ label }) => label)).toEqual([
    'gross load',
    'load weight',
    'rigging weight',
    'deductions',
  ]);
});

test('a library has no report, and the same plan gives the same bytes', () => {
  expect(report(check({ 'yard.liftplan': library }, 'yard.liftplan'), (file) => file)).toBeNull();
  const text = () => json(report(snapshot(), (file) => file) ?? []);
  expect(text()).toBe(text());
});

test('no figure is NaN or without end', () =>
  expect(json(report(changed('wall 10 mm', 'wall 600 mm'), (file) => file) ?? [])).not.toMatch(/NaN|Infinity/));
