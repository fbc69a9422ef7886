// What can be done with a plan: ways out of findings, all certain ones at once, holding a result, copying it.
import { expect, test } from 'vitest';
import { difference } from '../../../server/editor/changes.ts';
import { fixAll, fixes } from '../../../server/editor/fixes.ts';
import { copyResult, hold } from '../../../server/editor/hold.ts';
import { check } from '../../../server/workspace/memory.ts';
import type { Snapshot } from '../../../server/workspace/types.ts';
import { afterEdits, goodSamples, opened, sample, sampleFiles } from '../../support/draw.ts';
import { column, instead, tank, withCursor } from './plans.ts';

const again = (file: string) => (text: string) => check({ [file]: text }, file);
const textOf = ({ tree }: Snapshot) => tree.rows.map(({ text }) => text).join(tree.newline);

/** The text after all certain fixes. */
function allFixed(text: string, slug: string | null = null): string {
  const s = check({ 'a.liftplan': text }, 'a.liftplan');
  const change = fixAll(s, again('a.liftplan'), slug);
  if (!change) return text;
  const lines = text.split('\n');
  const { first, from, last, to } = change.at;
  return [
    ...lines.slice(0, first),
    (lines[first] ?? '').slice(0, from) + change.text + (lines[last] ?? '').slice(to),
    ...lines.slice(last + 1),
  ].join('\n');
}

test('the fixes of a line stand with their finding, a preferred one first', () => {
  const { s, files } = opened('\nload "L"\n  part "A": item 5, by marking');
  const found = fixes(s, 1, 1).filter(({ slug }) => slug === 'unit-missing');
  expect(found.map(({ title }) => title)).toContain('Write 5 kg');
  expect(found.some(({ preferred }) => preferred)).toBe(false);
  const [kg] = found.filter(({ title }) => title === 'Write 5 kg');
  expect(afterEdits(s, files, kg?.edits ?? [])['plan.liftplan']).toBe('load "L"\n  part "A": item 5 kg, by marking');
  expect(fixes(s, 0, 0).filter(({ slug }) => slug === 'unit-missing')).toEqual([]);
});

test('fix-all puts right what has one reading, and nothing else', () => {
  const wrong =
    'load "L"\n  part "A": item 5 kgs, by marking, at (0, 0, 0)\n  part "B": item 5, by marking, at (0, 0, 0)\n  part "C": item 6 kgs, by marking, at (0, 0, 0)';
  expect(allFixed(wrong)).toBe(
    'load "L"\n  part "A": item 5 kg, by marking, at (0, 0, 0)\n  part "B": item 5, by marking, at (0, 0, 0)\n  part "C": item 6 kg, by marking, at (0, 0, 0)',
  );
  expect(allFixed(wrong, 'place-wrong')).toBe(wrong);
});

test('a second run of fix-all finds nothing, over every sample broken in every line', () => {
  let changed = 0;
  const slips: readonly (readonly [RegExp, string])[] = [
    [/ kg\b/, ' kgs'],
    [/ lb\b/, ' lbs'],
    [/ mm\b/, ' MM'],
    [/, /, ','],
    [/: /, ' : '],
    [/"([^"]*)"/, '"$1'],
    [/^( *)/, '$1\t'],
    [/\bx\b/, 'X'],
    [/ m\b/, ' M'],
  ];
  for (const path of goodSamples()) {
    const text = sampleFiles()[path] ?? '';
    const lines = text.split('\n');
    lines.forEach((line, n) => {
      const [pattern, slip] = slips[n % slips.length] as (typeof slips)[number];
      const other = line.replace(pattern, slip);
      if (other === line || line.trim().startsWith('#')) return;
      const broken = lines.map((one, i) => (i === n ? other : one)).join('\n');
      const once = allFixed(broken);
      expect(allFixed(once), `${path}:${n + 1} ${other}`).toBe(once);
      if (once !== broken) changed++;
    });
  }
  expect(changed).toBeGreaterThan(20);
}, 90_000);

test('the one change is the least that leads from text to text', () => {
  const pairs: readonly (readonly [readonly string[], readonly string[]])[] = [
    [
      ['a', 'b', 'c'],
      ['a', 'x', 'c'],
    ],
    [
      ['a', 'b'],
      ['a', 'b', 'c'],
    ],
    [
      ['a', 'b', 'c'],
      ['b', 'c'],
    ],
    [['a'], ['x', 'y']],
    [
      ['a', 'b', 'c'],
      ['a', 'c'],
    ],
    [['a', 'b'], ['a']],
    [['', ''], ['']],
    [
      ['a', 'a'],
      ['a', 'a', 'a'],
    ],
  ];
  for (const [before, after] of pairs) {
    const change = difference(before, after, '\n');
    const { first, from, last, to } = change?.at ?? { first: 0, from: 0, last: 0, to: 0 };
    const put = [
      ...before.slice(0, first),
      (before[first] ?? '').slice(0, from) + (change?.text ?? '') + (before[last] ?? '').slice(to),
      ...before.slice(last + 1),
    ].join('\n');
    expect(put, JSON.stringify([before, after])).toBe(after.join('\n'));
  }
  expect(difference(['a'], ['a'], '\n')).toBeNull();
});

const held = (text: string): string => {
  const { s, row } = opened(text);
  const made = hold(s, row);
  return made === null ? 'nothing' : 'refused' in made ? made.refused : made.line;
};

test('a result is held on its worse side, a weight on both', () => {
  expect(held(withCursor(column, 'load "Block"'))).toBe('expect load Block weight between 990 kg and 1,010 kg');
  expect(held(withCursor(column, 'sling S1'))).toMatch(/^expect sling S1 capacity used <= 62\.\d+ %$/);
  expect(held(withCursor(column, 'leg'))).toMatch(/^expect sling S1 capacity used <= 62\.\d+ %$/);
  expect(held(withCursor(column, 'plan'))).toBe('expect gross load between 1,024 kg and 1,046 kg');
  expect(held(withCursor(tank, 'part "Shell"'))).toBe('expect part Shell weight between 296.1 kg and 302.2 kg');
});

test('nothing is held that is not known, has no result, or is held already', () => {
  expect(held(withCursor(instead(column, 'weight 4 kg', 'weight ?'), 'plan'))).toBe(
    'It is not known: weight is not known yet (?).',
  );
  expect(held(withCursor(column, 'free'))).toBe('nothing');
  expect(held(withCursor(`${column}expect gross load between 1,024 kg and 1,046 kg\n`, 'plan'))).toBe(
    'An expect line holds this already.',
  );
  expect(held(withCursor('gear\n  hook H: weight 5 kg, capacity 1 t', 'hook'))).toBe(
    'Only a plan holds results; this is a library.',
  );
});

test('every result held in the samples is met as soon as it is written, behind the last expect line', () => {
  const seen = new Set<string>();
  for (const path of goodSamples()) {
    const s = sample(path);
    if (!s.plan.head) continue;
    s.tree.rows.forEach((_, row) => {
      const made = hold(s, row);
      if (!made || 'refused' in made || seen.has(`${path} ${made.line}`)) return;
      seen.add(`${path} ${made.line}`);
      const files = { ...sampleFiles(), ...afterEdits(s, { [path]: textOf(s) }, made.edits) };
      const after = check(files, path);
      const found = after.results.expects.find(({ item }) => item.node.row.text === made.line);
      expect(found?.state, `${path}: ${made.line}`).toBe('met');
      expect(after.results.expects.at(-1)).toBe(found);
    });
  }
  expect(seen.size).toBeGreaterThan(40);
}, 90_000);

test('a copied result reads back to the same value', () => {
  let copies = 0;
  for (const path of goodSamples()) {
    const s = sample(path);
    s.tree.rows.forEach((_, row) => {
      const text = copyResult(s, row);
      if (text === null) return;
      const read = check({ 'a.liftplan': `let copied = ${text}` }, 'a.liftplan').plan.items[0]?.value?.value;
      expect(read?.kind, text).toBe('quantity');
      copies++;
    });
  }
  expect(copies).toBeGreaterThan(40);
  const { s, row } = opened(withCursor(column, 'load "Block"'));
  expect(copyResult(s, row)).toBe('1000 kg');
  expect(copyResult(s, 3)).toBeNull();
});
