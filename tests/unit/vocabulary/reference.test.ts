// The language reference: its tables are those of the vocabulary, and every plan in it reads as it says.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checks } from '../../../server/checks/index.ts';
import { language } from '../../../server/plan/index.ts';
import { formatText } from '../../../server/syntax/index.ts';
import { statements } from '../../../server/vocabulary/index.ts';
import { check } from '../../../server/workspace/memory.ts';

const text = readFileSync(join(import.meta.dirname, '../../../grammar/README.md'), 'utf8');
const fences = [...text.matchAll(/^```liftplan([^\n]*)\n(.*?)^```$/gms)].map(([, info = '', plan = ''], i) => ({
  name: `example ${i + 1}${info}`,
  info: info.trim(),
  plan,
}));

test('the tables are those of the vocabulary (else: npm run generate)', async () => {
  const { referenceText } = await import(new URL('../../../.build/reference.mjs', import.meta.url).href);
  expect(await referenceText(text)).toBe(text);
});

describe.each(fences)('$name', ({ info, plan }) => {
  const { findings, results } = check({ 'plan.liftplan': plan }, 'plan.liftplan');
  const errors = findings.filter(({ severity }) => severity === 'error').map(({ slug }) => slug);

  test('reads as it says', () => expect(errors).toEqual(info ? [info.replace(/^wrong, /, '')] : []));
  if (!info)
    test('holds what it expects', () => expect(results.expects.every(({ state }) => state === 'met')).toBe(true));
  test('is set in order', () => expect(formatText(plan, language)).toBe(plan));
});

test('examples are there, one of them wrong', () => {
  expect(fences.length).toBeGreaterThanOrEqual(9);
  expect(fences.filter(({ info }) => info).map(({ info }) => info)).toEqual(['wrong, expect-failed']);
});

test('every statement and every finding stands in it', () => {
  const missing = [...Object.keys(statements), ...Object.keys(checks)].filter((word) => !text.includes(`\`${word}\``));
  expect(missing).toEqual([]);
});

test('no heading and no table stands twice', () => {
  for (const pattern of [/^##+ .+$/gm, /^<!-- table: .+ -->$/gm]) {
    const found = [...text.matchAll(pattern)].map(([line]) => line);
    expect(found.filter((line, i) => found.indexOf(line) !== i && !line.startsWith('####'))).toEqual([]);
  }
});

test('links within it lead somewhere', () => {
  const anchors = new Set(
    [...text.matchAll(/^#+ (.+)$/gm)].map(([, title = '']) =>
      title
        .toLowerCase()
        .replace(/[^a-z0-9 -]/g, '')
        .replace(/ /g, '-'),
    ),
  );
  const targets = [...text.matchAll(/\]\(#([a-z0-9-]+)\)/g)].map(([, target = '']) => target);
  expect(targets.length).toBeGreaterThan(20);
  expect(targets.filter((target) => !anchors.has(target))).toEqual([]);
});
