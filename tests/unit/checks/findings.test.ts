// Findings as a whole: their order, that one cause counts once, that words are worked out once, and what a waiver can set aside.
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { checks, findings } from '../../../server/checks/index.ts';
import { check } from '../../../server/workspace/memory.ts';

const plan = (...lines: readonly string[]): string => ['plan "Lift": date 2026-05-18', ...lines].join('\n');
const found = (text: string) => check({ 'plan.liftplan': text }, 'plan.liftplan').findings;
const tank = ['load "Tank"', '  stated 3,200 kg, by marking'];

test('each file of a finding is in the table, under its own slug', () => {
  const folder = join(import.meta.dirname, '../../../server/checks');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.includes('/') && file.endsWith('.ts'),
  );
  expect(files.map((file) => basename(file, '.ts')).sort()).toEqual(Object.keys(checks).sort());
  for (const [slug, made] of Object.entries(checks)) expect(made.slug).toBe(slug);
});

test('findings come in the order of files, lines and columns', () => {
  const texts = {
    'plan.liftplan': [
      'use "yard.liftplan"',
      'load "Tank"',
      '  stated 3,5 kg, by marking',
      '  part "Top": plate 1 x 1 x 1, of steeel',
    ].join('\n'),
    'yard.liftplan': ['gear', '  shackle K1: weight 3, capacity 4.75 t'].join('\n'),
  };
  const places = check(texts, 'plan.liftplan').findings.map(
    ({ at }) => [at.row.file, /^ *([a-z]+)/.exec(at.row.text)?.[1] ?? '', at.from] as const,
  );
  const files = places.map(([file]) => file);
  expect(files).toEqual([...files].sort()); // plan before yard, by chance of their names as well
  const words = places.filter(([file]) => file === 'plan.liftplan').map(([, word]) => word);
  expect([...new Set(words)]).toEqual(['load', 'stated', 'part']);
  for (const [k, [file, word, from]] of places.entries()) {
    const next = places[k + 1];
    if (next && next[0] === file && next[1] === word) expect(next[2]).toBeGreaterThanOrEqual(from);
  }
  expect(files).toContain('yard.liftplan');
});

test('what a range of gear lacks is said once, with the range as written', () => {
  const text = plan(
    ...tank,
    '  pick A: at (0, 0, 2 m), capacity 5 t',
    'gear',
    '  block "Block": weight 200 kg, capacity 20 t',
    '  shackle K1..K3: capacity 4.75 t',
  );
  const missing = found(`${text}\nrig\n  leg "Block" > K1 > A`).filter(
    (finding) => finding.slug === 'gear-weight-missing',
  );
  expect(missing.map((finding) => finding.message)).toEqual(['K1..K3 has no weight, so the gross load stays open.']);
});

test('the same facts give the same words, and another list of findings gives the same findings', () => {
  const { results } = check({ 'plan.liftplan': plan(...tank) }, 'plan.liftplan');
  const [first, second] = [findings(results), findings(results)];
  expect(first.length).toBeGreaterThan(0);
  expect(second).toEqual(first);
  expect(second.every((finding, i) => finding.related === first[i]?.related)).toBe(true);
});

test('a warning is set aside by a named person with a reason, and says so', () => {
  const [finding] = found(
    plan(...tank, 'waive holding-unstated, on "Tank", reason "craned in yesterday", approved by "lift supervisor"'),
  ).filter((one) => one.slug === 'holding-unstated');
  expect(finding?.waived).toEqual({ reason: 'craned in yesterday', approvedBy: 'lift supervisor' });
});

test('a waiver counts only for what it names', () => {
  const [finding] = found(
    plan(...tank, 'waive holding-unstated, on "Pump", reason "loose", approved by "lift supervisor"'),
  ).filter((one) => one.slug === 'holding-unstated');
  expect(finding?.waived).toBeNull();
});

test.each([
  [
    'no person named',
    'holding-unstated',
    'waive holding-unstated, reason "loose", approved by ""',
    'no person or no reason is named',
  ],
  [
    'ended before the lift',
    'holding-unstated',
    'waive holding-unstated, reason "loose", approved by "lift supervisor", until 2026-05-17',
    'it ended on 2026-05-17',
  ],
])('a waiver that lacks something sets nothing aside: %s', (_, slug, line, why) => {
  const [finding] = found(plan(...tank, line)).filter((one) => one.slug === slug);
  expect(finding?.waived).toBeNull();
  expect(finding?.related.map(({ message }) => message)).toContain(`This does not set it aside: ${why}.`);
});

test('what is not known cannot be set aside', () => {
  const [finding] = found(
    plan('load "Tank"', 'waive weight-unknown, reason "light enough", approved by "lift supervisor"'),
  ).filter((one) => one.slug === 'weight-unknown');
  expect(finding?.waived).toBeNull();
  expect(finding?.related.at(-1)?.message).toBe('This does not set it aside: it is not known.');
});

test('a waiver in a library sets nothing aside in the plans that use it', () => {
  const texts = {
    'plan.liftplan': `use "rules.liftplan"\n${plan(...tank)}`,
    'rules.liftplan': 'waive holding-unstated, reason "always", approved by "office"',
  };
  const [finding] = check(texts, 'plan.liftplan').findings.filter((one) => one.slug === 'holding-unstated');
  expect(finding?.waived).toBeNull();
});

test('figures stand in the units of the plan', () => {
  const text = (units: string) =>
    `plan "Lift": date 2026-05-18, units ${units}\nload "Tank"\n  contingency 5 %\n  stated 3,200 kg, by marking\n  stated 4,100 kg, by drawing`;
  const message = (units: string) => found(text(units)).find((one) => one.slug === 'evidence-disagrees')?.message;
  expect(message('metric')).toContain('is 4,100 kg');
  expect(message('US')).toContain('is 9,039 lb'); // 4,100 kg is 9,038.95 lb: a load is rounded up
});
