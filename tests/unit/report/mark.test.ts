// The content mark: a change of meaning changes it, a change of layout does not.
import { describe, expect, test } from 'vitest';
import { contentMark } from '../../../server/report/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import { changed, library, plan, snapshot } from './plans.ts';

const mark = contentMark(snapshot().plan);
const of = (from: string, to: string, library_ = library) => contentMark(changed(from, to, library_).plan);

test('twelve digits in groups of four', () => expect(mark).toMatch(/^[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}$/));

describe('is the same after', () => {
  test.each([
    ['a comment', 'load "Filter"', '# the vessel\nload "Filter"  # as drawn'],
    ['blank lines', 'gear\n', '\n\ngear\n'],
    ['another unit for the same length', 'outside 1 m, wall 10 mm', 'outside 1,000 mm, wall 1 cm'],
    ['clauses in another order', 'outside 1 m, wall 10 mm, length 2 m', 'length 2 m, wall 10 mm, outside 1 m'],
    [
      'clauses on lines of their own',
      'shackle K3: weight 2 kg, capacity 4.75 t, spare',
      'shackle K3: weight 2 kg\n    capacity 4.75 t\n    spare',
    ],
    [
      'statements in another order',
      '  sling A: like "Sling 9"\n  sling B: like "Sling 9"\n',
      '  sling B: like "Sling 9"\n  sling A: like "Sling 9"\n',
    ],
    ['a name written another way', 'sling A: like "Sling 9"', 'sling A: like "sling  9"'],
    ['a figure in the place of its name', 'plate side x side x 20 mm', 'plate 1.2 m x 1.2 m x 20 mm'],
    ['another note', 'Road closed from six to eight.', 'Road open.'],
    ['an approval signed', 'mark "0000-0000-0000"', `mark "${mark}", date 2026-09-01`],
    [
      'a record of the day',
      'assumption "The plinth',
      'record "Trial": reads 1,300 kg, dated 2026-09-02\nassumption "The plinth',
    ],
  ])('%s', (_, from, to) => expect(of(from, to)).toBe(mark));

  test('the library in another folder', () => {
    const moved = { 'filter.liftplan': plan.replace('library/yard', '../yard'), 'yard.liftplan': library };
    const texts = { 'a/filter.liftplan': moved['filter.liftplan'], 'yard.liftplan': library };
    expect(contentMark(check(texts, 'a/filter.liftplan').plan)).toBe(mark);
  });
});

describe('is another one after', () => {
  test.each([
    ['one figure', 'wall 10 mm', 'wall 11 mm'],
    ['one tolerance', '± 20 kg', '± 21 kg'],
    ['a material', 'wall 10 mm, length 2 m, of carbon steel', 'wall 10 mm, length 2 m, of cast iron'],
    ['the value of a name', 'let side = 1.2 m', 'let side = 1.3 m'],
    ['evidence', '1,240 kg, by drawing', '1,240 kg, by marking'],
    ['a spare that is none any more', ', spare', ''],
    ['not known for a figure', 'item 500 kg ± 20 kg', 'item ?'],
    ['a leg', '> K2 > W', '> K2 > E'],
    [
      'steps in another order',
      '  step "Raise 100 mm, check level and reading", hold\n  step "Set down on the plinth", who "crew"\n',
      '  step "Set down on the plinth", who "crew"\n  step "Raise 100 mm, check level and reading", hold\n',
    ],
    ['an expectation that is dropped', 'expect gross load <= 2,500 kg\n', ''],
    ['another bound', 'gross load <= 2,500 kg', 'gross load <= 2,600 kg'],
    ['a waiver', 'reason "new vessel on timber"', 'reason "seen"'],
    ['the revision', 'revision B', 'revision C'],
    ['a line that cannot be read', 'less hole, diameter 100 mm', 'less hole, diameter 100 mmm'],
  ])('%s', (_, from, to) => expect(of(from, to)).not.toBe(mark));

  test.each([
    ['a sling of the library', 'weight 12 kg', 'weight 13 kg'],
    ['a cell of the chart', '9,000 kg', '9,500 kg'],
    ['a rule', '<= 80 %', '<= 85 %'],
  ])('%s', (_, from, to) => expect(of('revision B', 'revision B', library.replace(from, to))).not.toBe(mark));
});

test('assemblies nested as deep as the language allows cost no more than their lines', () => {
  const depth = 28;
  const nested = Array.from({ length: depth }, (_, i) => `${'  '.repeat(i + 1)}assembly "A${i}"`).join('\n');
  const text = `plan "Deep": date 2026-09-02\nload "L"\n${nested}\n${'  '.repeat(depth + 1)}part "P": item 5 kg, by drawing\n`;
  const of = (words: string) => contentMark(check({ 'deep.liftplan': words }, 'deep.liftplan').plan);
  expect(of(text)).not.toBe(of(text.replace('5 kg', '6 kg')));
});
