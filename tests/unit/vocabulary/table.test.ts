// The tables of the language held against themselves: each row explains itself, its example reads, and every clause is read by somebody.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { language } from '../../../server/plan/index.ts';
import { readLine } from '../../../server/syntax/index.ts';
import type { ClauseRow } from '../../../server/vocabulary/index.ts';
import { clausesOf, everywhere, gearKinds, resultsOf, shapes, statements } from '../../../server/vocabulary/index.ts';
import { clauseExample, ownFindings, planFor, shapeExample, traceOf } from './plans.ts';

const server = join(import.meta.dirname, '../../../server');

/** Words that nothing is worked out from yet: the sheet shows most of them as written. */
const shownOnly: readonly string[] = [
  'bearing',
  'boom',
  'boom angle',
  'chart wind',
  'deflection',
  'distance',
  'effective area',
  'ends',
  'exclusion',
  'grade',
  'interpolation',
  'line pull',
  'mat',
  'mat weight',
  'parts of line',
  'release',
  'shape coefficient',
  'slope',
  'stands on',
  'when',
];
/** What a cut-out is made of makes no difference: it takes away what it is cut out of. */
const withoutEffect = new Set(['less: of', 'less: density', 'less: moisture', 'less: reinforcement']);

const all = Object.entries(statements);
const sentence = /^[\w`].*\.$/;

/** Every clause of every statement and shape, once a statement. */
const clauses = all.flatMap(([name, row]) =>
  Object.entries(row.clauses).map(([word, clause]) => [name, word, clause] as const),
);

describe('each row explains itself', () => {
  test.each(all)('%s', (_, row) => {
    expect(row.help).toMatch(sentence);
    expect(row.example).not.toBe('');
    if (row.value) expect(row.value.help).toMatch(sentence);
  });
  test.each(Object.entries(shapes))('shape %s', (_, shape) => {
    expect(shape.help).toMatch(sentence);
    expect(shape.example).not.toBe('');
    for (const row of Object.values(shape.clauses)) expect(row.help).toMatch(sentence);
  });
  test('clauses', () => {
    const without = [
      ...clauses,
      ...Object.entries(everywhere).map(([word, row]) => ['everywhere', word, row as ClauseRow] as const),
    ].filter(([, , row]) => !sentence.test(row.help) && row.help !== '');
    expect(without.map(([name, word]) => `${name}: ${word}`)).toEqual([]);
  });
  test('results', () => {
    for (const rows of Object.values(resultsOf))
      for (const row of Object.values(rows)) expect(row.help).toMatch(sentence);
  });
});

test('what several shapes call alike is bound no tighter under a part than in any of them', () => {
  const low = ({ least, above }: ClauseRow) => least ?? above ?? Number.NEGATIVE_INFINITY;
  for (const [name, shape] of Object.entries(shapes))
    for (const under of shape.under as readonly ('part' | 'less')[])
      for (const [word, own] of Object.entries(shape.clauses as Readonly<Record<string, ClauseRow>>)) {
        const shared = clausesOf(under)[word] as ClauseRow;
        expect(low(shared), `${name}: ${word}`).toBeLessThanOrEqual(low(own));
        expect(shared.most ?? Number.POSITIVE_INFINITY, `${name}: ${word}`).toBeGreaterThanOrEqual(
          own.most ?? Number.NEGATIVE_INFINITY,
        );
        if (own.most === undefined) expect(shared.most, `${name}: ${word}`).toBeUndefined();
        if (own.least !== undefined && low(shared) === own.least)
          expect(shared.above, `${name}: ${word}`).toBeUndefined();
        if (own.words) expect(shared.words).toEqual(expect.arrayContaining([...own.words]));
      }
});

describe('each example reads without a finding of its own', () => {
  test.each(all)('%s', (name, row) => expect(ownFindings(planFor(name, row.example))).toEqual([]));
  test.each(Object.entries(shapes))('shape %s', (name, shape) =>
    expect(ownFindings(shapeExample(name, shape))).toEqual([]),
  );
});

test('each example of a clause reads as that clause', () => {
  for (const [name, word, clause] of clauses) {
    const line = readLine(`  ${clauseExample(word, clause)}`, language.under(name), language);
    expect(line.problems, `${name}: ${clauseExample(word, clause)}`).toEqual([]);
    expect(line.clauses[0]?.keyword.word).toBe(word);
  }
});

test('an example begins with its own keyword', () => {
  for (const [name, row] of all) expect(row.example.startsWith(name), row.example).toBe(true);
  for (const [name, shape] of Object.entries(shapes)) expect(shape.example.startsWith(name), shape.example).toBe(true);
});

test('blocks named by rows are there', () => {
  for (const [, row] of all)
    for (const block of row.under) expect(['file', ...Object.keys(statements)]).toContain(block);
  expect(Object.keys(statements)).toEqual(expect.arrayContaining([...gearKinds]));
});

test('what may be left out never looks like something else: no clause is called like a statement of the same block', () => {
  const both = ['file', ...Object.keys(statements)].flatMap((block) =>
    Object.keys(clausesOf(block))
      .filter((word) => statements[word]?.under.includes(block))
      .map((word) => `${block}: ${word}`),
  );
  expect(both).toEqual([]);
});

// A clause that nobody reads would be a word without effect.
describe('every clause is read by somebody', () => {
  const readers = ['plan', 'results', 'checks', 'report', 'editor']
    .flatMap((room) =>
      readdirSync(join(server, room), { recursive: true, encoding: 'utf8' })
        .filter((path) => path.endsWith('.ts'))
        .map((path) => readFileSync(join(server, room, path), 'utf8')),
    )
    .join('\n');

  /** Sizes of shapes are read row by row, whatever they are called. */
  const sizes = new Set(
    Object.values(shapes).flatMap((shape) =>
      Object.entries(shape.clauses as Readonly<Record<string, ClauseRow>>)
        .filter(([, { takes }]) => takes === 'amount' || takes === 'size or amount')
        .map(([word]) => word),
    ),
  );
  test('by its word', () => {
    const words = clauses.filter(([name, word]) => !((name === 'part' || name === 'less') && sizes.has(word)));
    const unread = new Set(words.map(([, word]) => word).filter((word) => !readers.includes(`'${word}'`)));
    expect([...unread].sort()).toEqual(shownOnly);
  });

  const ofShapes = new Set([
    ...Object.keys(shapes),
    ...Object.values(shapes).flatMap((shape) => Object.keys(shape.clauses)),
  ]);
  const placed = clauses.filter(([name, word]) => ['assembly', 'part', 'less'].includes(name) && !ofShapes.has(word));
  test.each(placed.map(([name, word, clause]) => [`${name}: ${word}`, name, word, clause] as const))(
    '%s changes what is worked out',
    (key, name, word, clause) => {
      const [without, with_] = traceOf(name, word, clause);
      if (withoutEffect.has(key)) expect(with_).toBe(without);
      else expect(with_).not.toBe(without);
    },
  );
});
