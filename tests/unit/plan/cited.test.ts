// Papers that a `from` names: which texts are paths, when a paper is the one that was seen, and what is said where it is not.
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { pathIn } from '../../../server/plan/index.ts';
import { contentMark } from '../../../server/report/mark.ts';
import { check } from '../../../server/workspace/memory.ts';

describe('what is a path', () => {
  test.each([
    ['papers/rating-plate.pdf', 'papers/rating-plate.pdf'],
    ['../papers/D-104.PDF', '../papers/D-104.PDF'],
    ['D-104.pdf, sheet 2', 'D-104.pdf'],
    ['papers/Rating plate 3.jpg; read by two', 'papers/Rating plate 3.jpg'],
    ['papers/slip.v2.pdf page 3', 'papers/slip.v2.pdf'],
  ])('%s', (text, path) => expect(pathIn(text)).toBe(path));

  test.each([
    'plate on the north rail',
    'D-104',
    'and/or the yard book',
    'https://example.org/plate.pdf',
    'letter, plate.pdf', // the remark stands behind the path
    'plate.pdfs',
    'letter no. 5',
    '',
  ])('no path: %s', (text) => expect(pathIn(text)).toBeNull());
});

const paper = 'Gross 4,850 lb\n';
const print = createHash('sha256').update(paper).digest('hex'); // Node's own, FIPS 180-4
const mark = `${print.slice(0, 4)}-${print.slice(4, 8)}-${print.slice(8, 12)}`;
const plan = (clauses: string, more = '') => `plan "Lift": date 2026-05-18
load "Skid"
  contingency 5 %
  free "stands on timber"
  stated 4,850 lb, by marking, ${clauses}
${more}`;
const found = (clauses: string, files: Readonly<Record<string, string>> = { 'papers/plate.txt': paper }, more = '') =>
  check({ 'plan.liftplan': plan(clauses, more), ...files }, 'plan.liftplan').findings.filter(
    ({ slug }) => slug === 'evidence-changed',
  );

test.each([
  ['the mark itself', `seen "${mark}"`],
  ['capitals and spaces', `seen "${mark.toUpperCase().replaceAll('-', ' ')}"`],
  ['all of the print', `seen "${print}"`],
])('as seen: %s', (_, seen) => expect(found(`from "papers/plate.txt, lower line", ${seen}`)).toEqual([]));

test.each([
  ['another mark', `seen "0000-0000-0000"`],
  ['fewer digits', `seen "${mark.slice(0, 9)}"`],
  ['no mark at all', 'seen ""'],
])('changed: %s', (_, seen) => expect(found(`from "papers/plate.txt", ${seen}`)).toHaveLength(1));

test('`seen ?` marks nothing yet, and what is no mark is not said to have changed', () => {
  expect(found('from "papers/plate.txt", seen ?')).toEqual([]);
  expect(found(`from "papers/plate.txt", seen "${mark.slice(0, 9)}"`)[0]?.message).toContain('is no mark of a file');
});

test('a text that is no path, or a file that is not there, is no finding by itself', () => {
  for (const from of ['plate on the rail', 'papers/none.pdf', '../outside.pdf', 'C:\\plate.pdf'])
    expect(found(`from "${from}"`)).toEqual([]);
});

test('what is said: changed, gone, and a mark of nothing', () => {
  const says = (clauses: string, files?: Readonly<Record<string, string>>) => found(clauses, files)[0]?.message;
  expect(says('from "papers/plate.txt", seen "0000-0000-0000"')).toBe(
    `papers/plate.txt, on which 4,850 lb rests, has changed since it was cited: seen as 0000-0000-0000, now ${mark}. Look again.`,
  );
  expect(says(`from "papers/plate.txt", seen "${mark}"`, {})).toContain('is not there or cannot be read');
  expect(says(`from "plate on the rail", seen "${mark}"`)).toContain('held against nothing');
  expect(says(`seen "${mark}"`)).toContain('held against nothing');
});

test('all figures that rest on the paper are named: of the statement, of those under it, of others that cite it', () => {
  const [one] = found(
    'from "papers/plate.txt", seen "0000-0000-0000"',
    { 'papers/plate.txt': paper },
    '  cog (0, 0, 1 m), by drawing, from "papers/plate.txt"\n  weighed: by jack reading, from "other"\n    support J1: at (0, 0, 0), reads 3 kN\n',
  );
  expect(one?.related.map(({ at }) => at.row.text.slice(at.from, at.to))).toEqual(['4,850 lb', '(0, 0, 1 m)']);
  const [block] = check(
    {
      'plan.liftplan':
        'plan "L": date 2026-05-18\nload "A"\n  weighed: by jack reading, from "slip.txt", seen "0"\n    support J1: at (0, 0, 0), reads 3 kN\n    support J2: at (1 m, 0, 0), reads 4 kN\n',
      'slip.txt': paper,
    },
    'plan.liftplan',
  ).findings.filter(({ slug }) => slug === 'evidence-changed');
  expect(block?.related.map(({ at }) => at.row.text.slice(at.from, at.to))).toEqual([
    '(0, 0, 0)',
    '3 kN',
    '(1 m, 0, 0)',
    '4 kN',
  ]);
  expect(block?.message).toContain('on which at (0, 0, 0), reads 3 kN and 2 more figures rest,');
});

test('confirming writes the present mark, is one way out, and never the one that fix-all takes', () => {
  const [one] = found('from "papers/plate.txt", seen "0000-0000-0000"');
  expect(
    one?.fixes.map(({ preferred, edits }) => [preferred, edits.map((edit) => 'text' in edit && edit.text)]),
  ).toEqual([[false, [`"${mark}"`]]]);
});

test('the content mark changes with a paper that is cited, and with its going', () => {
  const of = (files: Readonly<Record<string, string>>) =>
    contentMark(check({ 'plan.liftplan': plan('from "papers/plate.txt"'), ...files }, 'plan.liftplan').plan);
  const marks = [of({ 'papers/plate.txt': paper }), of({ 'papers/plate.txt': `${paper}x` }), of({})];
  expect(new Set(marks).size).toBe(3);
  expect(of({ 'papers/plate.txt': paper, 'papers/other.txt': 'x' })).toBe(marks[0]);
});

test('papers of a library are held to their marks as well', () => {
  const s = check(
    {
      'plan.liftplan': 'plan "L": date 2026-05-18\nuse "yard/gear.liftplan"\nload "A"\n  stated 1 t, by marking\n',
      'yard/gear.liftplan': 'gear\n  hook "H": weight 20 kg, capacity 5 t, from "tags/h.txt", seen "0"\n',
      'yard/tags/h.txt': 'tag',
    },
    'plan.liftplan',
  );
  const one = s.findings.find(({ slug }) => slug === 'evidence-changed');
  expect(one?.at.row.file).toBe('yard/gear.liftplan');
  expect(one?.message).toContain('on which weight 20 kg and capacity 5 t rest,');
});
