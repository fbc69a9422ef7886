// Drawings and lists on the sheet: their files are named, their rows stand in the weight table, and the content mark changes with them.
import { expect, test } from 'vitest';
import { markdown, page, report, sheetOf } from '../../../server/report/index.ts';
import { contentMark } from '../../../server/report/mark.ts';
import { check } from '../../../server/workspace/memory.ts';

const plan = `plan "Frame": date 2026-03-02, units metric
load "Frame"
  contingency 0 %
  free "stands loose"
  list "bill.csv", by drawing
  part "Lug": mesh "lug.obj", unit mm, of carbon steel, at (0, 0, 1 m)
`;
const bill = 'name,weight kg,x m,y m,z m\nBeam,100,0,0,0\n';
const lug = 'v 0 0 0\nv 600 0 0\nv 0 600 0\nv 0 0 600\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 1 4 3\n';
const snapshot = (files: Readonly<Record<string, string>> = {}) =>
  check({ 'plan.liftplan': plan, 'bill.csv': bill, 'lug.obj': lug, ...files }, 'plan.liftplan');

test('the mark is one for one content, another for another weight in the list or another body in the drawing', () => {
  const mark = contentMark(snapshot().plan);
  expect(contentMark(snapshot().plan)).toBe(mark);
  expect(contentMark(snapshot({ 'bill.csv': bill.replace('100', '101') }).plan)).not.toBe(mark);
  expect(contentMark(snapshot({ 'lug.obj': lug.replaceAll('600', '601') }).plan)).not.toBe(mark);
});

test('the JSON report names every file that went in, and has each row of the list as a part', () => {
  const made = report(snapshot(), (file) => file);
  expect(made?.files).toEqual(['plan.liftplan', 'bill.csv', 'lug.obj']);
  const results = (made?.results ?? []) as readonly { subject: { name: string | null }; result: string }[];
  const beam = results.find(({ subject, result }) => subject.name === 'Beam' && result === 'weight');
  expect(beam).toMatchObject({ value: 100, line: 5 });
});

test('the sheet says where a row and a body are from', () => {
  const sheet = markdown(sheetOf(snapshot(), { pathOf: (file) => file }), 'plan.liftplan');
  expect(sheet).toContain('bill.csv, row 2');
  expect(sheet).toContain('lug.obj');
});

test('a paper is named with its file and version, and is a link in Markdown and in the page that stands alone', () => {
  const text = plan.replace(
    'list "bill.csv", by drawing',
    'list "bill.csv", by drawing, from "papers/bill (2).pdf, page 1"',
  );
  const of = (seen = '') =>
    check(
      {
        'plan.liftplan': text.replace('page 1"', `page 1"${seen}`),
        'bill.csv': bill,
        'lug.obj': lug,
        'papers/bill (2).pdf': '%PDF',
      },
      'plan.liftplan',
    );
  const sheet = (seen?: string) => sheetOf(of(seen), { pathOf: (file) => file });
  expect(markdown(sheet(), '../plan.liftplan')).toContain(
    '| [papers/bill (2).pdf, page 1](../papers/bill%20%282%29.pdf) | List “bill.csv” | version not marked, now 315d-429b-7714 |',
  ); // sha256sum of GNU coreutils over the four bytes %PDF
  expect(page(sheet(', seen "315d-429b-7714"'), 'A4', 'plan.liftplan')).toContain(
    '<a href="papers/bill%20%282%29.pdf">papers/bill (2).pdf, page 1</a>',
  );
  expect(page(sheet(', seen "315d-429b-7714"'), 'A4', 'plan.liftplan')).toContain('as seen, 315d-429b-7714');
  expect(page(sheet(', seen "0"'), 'A4', 'plan.liftplan')).toContain('changed, now 315d-429b-7714; seen as 0');
  expect(report(of(), (file) => file)?.files).toEqual(['plan.liftplan', 'bill.csv', 'lug.obj', 'papers/bill (2).pdf']);
});
