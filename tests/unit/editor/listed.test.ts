// Parts that stand in a list: the editor shows what is written in the plan, and the list's own line stands for its rows.
import { expect, test } from 'vitest';
import { hints } from '../../../server/editor/hints.ts';
import { links } from '../../../server/editor/links.ts';
import { outline } from '../../../server/editor/outline.ts';
import { prepareRename } from '../../../server/editor/rename.ts';
import { check } from '../../../server/workspace/memory.ts';

const text = `plan "Frame": date 2026-03-02, units metric
load "Frame"
  contingency 0 %
  free "stands loose"
  list "bill.csv", by drawing
  part "Crate": item 30 kg, by marking, size 1 x 1 x 1 m, on "Beam"
  part "Lug": mesh "lug.obj", unit mm, of carbon steel, at (0, 0, 1 m)
`;
const files = {
  'plan.liftplan': text,
  'bill.csv': 'name,weight kg,x m,y m,z m\nBeam,100,0,0,0\nColumn,50,0,0,1\n',
  'lug.obj': 'v 0 0 0\nv 600 0 0\nv 0 600 0\nv 0 0 600\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 1 4 3\n',
};
const s = check(files, 'plan.liftplan');
const row = (words: string) => text.split('\n').findIndex((line) => line.includes(words));

test('its rows are no statements of the outline', () => {
  const [, load] = outline(s);
  expect(load?.children.map(({ keyword, name }) => `${keyword} ${name}`)).toEqual([
    expect.stringContaining('free'),
    expect.stringContaining('list'),
    'part Crate',
    'part Lug',
  ]);
});

test('its line has no hint of one row alone', () => {
  const on = { totals: true, parts: true, legs: true, crane: true };
  const rows = hints(s, 0, 99, on).map(({ at }) => s.tree.rowNumber(at.row));
  expect(rows).toContain(row('Lug'));
  expect(rows).not.toContain(row('list'));
});

test('the paths of lists and drawings can be opened', () =>
  expect(links(s).map(({ to }) => to)).toEqual([{ path: 'bill.csv' }, { path: 'lug.obj' }]));

test('a row is renamed in its file, and the editor says so', () => {
  const line = text.split('\n')[row('on "Beam"')] as string;
  expect(prepareRename(s, row('on "Beam"'), line.indexOf('Beam') + 1)).toEqual({
    refused: 'Beam stands in a list; rename it in its file.',
  });
});
