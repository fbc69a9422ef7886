// Renaming: every file, quotes where they are needed, refusals in a sentence, and there and back without a trace.
import { expect, test } from 'vitest';
import { prepareRename, rename } from '../../../server/editor/rename.ts';
import { usesIn } from '../../../server/editor/uses.ts';
import { check } from '../../../server/workspace/memory.ts';
import { afterReplacing, goodSamples, opened, sample, sampleFiles } from '../../support/draw.ts';
import { column, instead, tank, withCursor } from './plans.ts';

/** The texts after a rename at the cursor, or why there is none. */
function renamed(text: string, name: string): Readonly<Record<string, string>> | string {
  const { s, files, row, offset } = opened(text);
  const users = Object.keys(files).map((file) => check({ ...files }, file));
  const made = rename(s, row, offset, name, users);
  return 'refused' in made ? made.refused : afterReplacing([s, ...users], files, made.edits);
}

const lines = (texts: ReturnType<typeof renamed>, word: string, file = 'plan.liftplan') =>
  typeof texts === 'string'
    ? texts
    : (texts[file] ?? '')
        .split('\n')
        .filter((line) => line.includes(word))
        .map((line) => line.trim());

test('every use changes with the declaration, in the library too', () => {
  const texts = renamed(withCursor(tank, 'Main hook'), 'Yard hook');
  expect(lines(texts, 'Yard hook')).toEqual(['leg "Yard hook" > S1 > K1 > W', 'leg "Yard hook" > S2 > K2 > E']);
  expect(lines(texts, 'Yard hook', 'gear.liftplan')).toEqual(['hook "Yard hook": weight 20 kg, capacity 5 t']);
  expect(lines(texts, 'Main hook')).toEqual([]);
});

test('a name is quoted where it needs quotes, and where its author had them', () => {
  expect(lines(renamed(withCursor(column, 'K1: weight'), 'Bow 2'), 'Bow 2')).toEqual([
    'shackle "Bow 2": weight 1 kg, capacity 2 t, length 60 mm',
    'leg "Hook" > S1 > "Bow 2" > TOP',
  ]);
  expect(lines(renamed(withCursor(column, '"Hook"'), 'Upper'), 'Upper')).toEqual([
    'hook "Upper": weight 30 kg, capacity 5 t',
    'leg "Upper" > S1 > K1 > TOP',
  ]);
  expect(lines(renamed(withCursor(column, 'K1: weight'), 'say "so"'), 'so')).toEqual([
    'shackle "say ""so""": weight 1 kg, capacity 2 t, length 60 mm',
    'leg "Hook" > S1 > "say ""so""" > TOP',
  ]);
});

test('a word of the language takes quotes where it would be read as one', () => {
  const text = `${column}expect shackle K1 load < 2 t\n`;
  expect(lines(renamed(withCursor(text, 'K1: weight'), 'angle'), 'angle')).toEqual([
    'shackle angle: weight 1 kg, capacity 2 t, length 60 mm',
    'leg "Hook" > S1 > angle > TOP',
    'expect shackle "angle" load < 2 t',
  ]);
});

test('the result of every line is the same afterwards', () => {
  const { s, files, row, offset } = opened(withCursor(column, 'S1: wire'));
  const made = rename(s, row, offset, 'Long rope');
  const after = check({ ...('edits' in made ? afterReplacing([s], files, made.edits) : {}) }, 'plan.liftplan');
  expect(after.findings.map(({ slug }) => slug)).toEqual(s.findings.map(({ slug }) => slug));
  expect(after.results.list.map(({ value }) => value.value)).toEqual(s.results.list.map(({ value }) => value.value));
});

test('what cannot be is refused in a sentence', () => {
  expect(renamed(withCursor(column, 'S1: wire'), 'K1')).toBe('K1 is taken: shackle K1 has it.');
  expect(renamed(withCursor(column, 'S1: wire'), 'top')).toBe('top is taken: pick TOP has it.');
  expect(renamed(withCursor(column, 'S1: wire'), '  ')).toBe('A name needs at least one character.');
  expect(renamed(withCursor(column, 'S1: wire'), 'a\u200bb')).toBe(
    'A name stands on one line and holds no hidden character.',
  );
  expect(renamed(withCursor(tank, 'wide ='), 'ft')).toBe('ft is a unit; a name of a value must be another word.');
  expect(renamed(withCursor(tank, 'wide ='), 'two words')).toBe(
    'A name of a value is one word of letters, digits, _ and -, beginning with a letter; "two words" is not.',
  );
  expect(renamed(withCursor(tank, 'wide ='), 'sin')).toBe('sin is a function; a name of a value must be another word.');
  expect(renamed(withCursor(instead(column, 'shackle K1', 'shackle S1'), 'S1: wire'), 'X')).toBe(
    'S1 is stated twice; which one is meant is not known.',
  );
  expect(renamed(withCursor(tank, 'date'), 'X')).toBe('There is no name here.');
});

test('another spelling of the same name is no clash', () => {
  expect(lines(renamed(withCursor(column, 'S1: wire'), 's1'), 's1')).toEqual([
    'sling s1: wire rope, diameter 12 mm, length 2 m, weight 4 kg, capacity 1,600 kg',
    'leg "Hook" > s1 > K1 > TOP',
  ]);
});

test('one item of a range is refused; the whole range takes a range as long', () => {
  expect(renamed(withCursor(tank, 'S1 > K1'), 'X1')).toBe(
    'S1 is declared in the range S1..S4; rename the range where it is declared, or write its items one by one first.',
  );
  const range = withCursor(tank, 'S1..S4');
  expect(renamed(range, 'T1')).toBe('S1..S4 stands for 4 items; the new name is a range as long, such as T1..T4.');
  expect(renamed(range, 'T1..T3')).toBe('The range declares 4 items, T1..T3 has 3.');
  const texts = renamed(range, 'T1..T4');
  expect(lines(texts, 'T1')).toEqual(['leg "Main hook" > T1 > K1 > W']);
  expect(lines(texts, 'S1')).toEqual([]);
  expect(lines(texts, 'T1', 'gear.liftplan')).toEqual([
    'sling T1..T4: wire rope, diameter 12 mm, length 2 m, weight 3 kg, capacity 1.3 t',
  ]);
});

test('what is renamed is shown first, with the words to change', () => {
  const { s, row, offset } = opened(withCursor(tank, '"Main hook"'));
  expect(prepareRename(s, row, offset)).toMatchObject({ name: 'Main hook' });
  const { s: other, row: there, offset: within } = opened(withCursor(tank, 'S1 > K1'));
  expect(prepareRename(other, there, within)).toHaveProperty('refused');
  expect(prepareRename(s, 0, 25)).toBeNull();
});

test('there and back leaves every byte of every file as it was', () => {
  const files = sampleFiles();
  let turns = 0;
  for (const path of goodSamples()) {
    const s = sample(path);
    const own = s.plan.files[0] as NonNullable<(typeof s.plan.files)[0]>;
    for (const use of usesIn(own, s.plan)) {
      const row = s.tree.rowNumber(use.at.row);
      const ready = prepareRename(s, row, use.at.from);
      if (!ready || 'refused' in ready) continue;
      const other = use.until
        ? `Q${use.things.length > 0 ? 1 : 0}..Q${use.things.length}`
        : /^[A-Za-z][\w-]*$/.test(ready.name)
          ? 'Quince'
          : 'Quince tree';
      const there = rename(s, row, use.at.from, other);
      if ('refused' in there) throw new Error(`${path}: ${there.refused}`);
      const texts = afterReplacing([s], files, there.edits);
      const after = check({ ...texts }, path);
      const back = rename(after, row, use.at.from, ready.name);
      if ('refused' in back) throw new Error(`${path}: ${back.refused}`);
      expect(there.edits.length).toBe(back.edits.length);
      expect(afterReplacing([after], texts, back.edits)).toEqual(files);
      turns++;
      if (turns % 3 === 0) expect(after.findings.length, `${path}: ${ready.name}`).toBe(s.findings.length);
    }
  }
  expect(turns).toBeGreaterThan(150);
}, 90_000);
