// Drawings and lists in the room with memory: read once for each content, never while somebody types, and looked at again when they change.
import { expect, test, vi } from 'vitest';
import { memoryFiles, Survey, Workspace } from '../../../server/workspace/index.ts';
import { stretch } from '../../support/plans.ts';

const plan = `plan "Frame": date 2026-03-02, units metric
load "Frame"
  contingency 0 %
  free "stands loose"
  list "bill.csv", by drawing
  part "Lug": mesh "lug.obj", unit mm, of carbon steel, at (0, 0, 1 m)
  part "Box": item 5 kg, by marking, at (0, 0, 0)
`;
const bill = 'name,weight kg,x m,y m,z m\nBeam,100,0,0,0\n';
const lug = (side: number) =>
  `v 0 0 0\nv ${side} 0 0\nv 0 ${side} 0\nv 0 0 ${side}\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 1 4 3\n`;
const texts = () =>
  new Map<string, string | Uint8Array>([
    ['plan.liftplan', plan],
    ['bill.csv', bill],
    ['lug.obj', lug(600)],
  ]);
const weightOf = (workspace: Workspace) =>
  workspace.snapshot('plan.liftplan')?.results.find('load', 'Frame', 'weight')?.value.value;
const lugWeight = (side: number) => ((side / 1000) ** 3 / 6) * 7850;

test('a key reads no file and makes no row anew', () => {
  const files = memoryFiles(texts());
  const bytes = vi.fn(files.bytes);
  const workspace = new Workspace({ ...files, bytes });
  workspace.openText('plan.liftplan', 1, plan);
  const before = workspace.snapshot('plan.liftplan');
  expect(before?.results.find('load', 'Frame', 'weight')?.value.value).toBeCloseTo(105 + lugWeight(600), 9);
  workspace.changeText('plan.liftplan', 2, [{ range: stretch(plan, '5 kg'), text: '7 kg' }]);
  const after = workspace.snapshot('plan.liftplan');
  expect(after?.results.find('load', 'Frame', 'weight')?.value.value).toBeCloseTo(107 + lugWeight(600), 9);
  expect(bytes).toHaveBeenCalledTimes(2);
  const beam = (s: typeof before) => s?.plan.names.find('part', 'beam')[0]?.item;
  expect(beam(after)).toBeDefined();
  expect(beam(after)).toBe(beam(before));
});

test('another content on disk is another weight; the same content leaves the snapshot as it was', () => {
  const store = texts();
  const workspace = new Workspace(memoryFiles(store));
  workspace.openText('plan.liftplan', 1, plan);
  const first = workspace.snapshot('plan.liftplan');
  expect([workspace.reread('bill.csv'), workspace.reread('lug.obj')]).toEqual([false, false]);
  expect(workspace.snapshot('plan.liftplan')).toBe(first);
  store.set('bill.csv', bill.replace('100', '250'));
  store.set('lug.obj', lug(900));
  expect([workspace.reread('bill.csv'), workspace.reread('lug.obj')]).toEqual([true, true]);
  expect(weightOf(workspace)).toBeCloseTo(255 + lugWeight(900), 9);
  store.delete('lug.obj');
  expect(workspace.reread('lug.obj')).toBe(true);
  expect(weightOf(workspace)).toBeNull();
  expect(workspace.snapshot('plan.liftplan')?.findings.map(({ slug }) => slug)).toContain('file-missing');
  store.set('lug.obj', lug(600));
  expect(workspace.reread('lug.obj')).toBe(true);
  expect(weightOf(workspace)).toBeCloseTo(255 + lugWeight(600), 9);
});

test('while a file is being fetched its plan is incomplete, and open; then it is whole', () => {
  const files = memoryFiles(texts());
  let here = false;
  const workspace = new Workspace({ ...files, bytes: (file) => (here ? files.bytes(file) : undefined) });
  workspace.openText('plan.liftplan', 1, plan);
  expect(weightOf(workspace)).toBeNull();
  expect(workspace.incomplete('plan.liftplan')).toBe(true);
  here = true;
  expect(workspace.reread('bill.csv')).toBe(true);
  expect(weightOf(workspace)).toBeCloseTo(105 + lugWeight(600), 9);
  expect(workspace.incomplete('plan.liftplan')).toBe(false);
});

test('a paper is read once, of its content only a print is kept, and another content is seen', () => {
  const text = plan.replace('item 5 kg, by marking', 'item 5 kg, by marking, from "papers/slip.txt", seen "0"');
  const store = texts().set('papers/slip.txt', 'net 5 kg');
  const files = memoryFiles(store);
  const bytes = vi.fn(files.bytes);
  const workspace = new Workspace({ ...files, bytes });
  workspace.openText('plan.liftplan', 1, text);
  const cited = () => [...(workspace.snapshot('plan.liftplan')?.plan.cited.values() ?? [])][0];
  const first = cited()?.paper;
  expect(first?.size).toBe(8);
  workspace.changeText('plan.liftplan', 2, [{ range: stretch(text, '5 kg'), text: '7 kg' }]);
  expect(cited()?.paper).toBe(first);
  expect(bytes.mock.calls.filter(([file]) => file === 'papers/slip.txt')).toHaveLength(1);
  expect(workspace.filesOf('plan.liftplan')).toContain('papers/slip.txt');
  expect(workspace.reread('papers/slip.txt')).toBe(false);
  store.set('papers/slip.txt', 'net 6 kg');
  expect(workspace.reread('papers/slip.txt')).toBe(true);
  expect(cited()?.paper?.print).not.toBe(first?.print);
  store.delete('papers/slip.txt');
  expect(workspace.reread('papers/slip.txt')).toBe(true);
  expect(cited()?.paper).toBeNull();
});

test('a library that is cited as a paper too is read again as both', () => {
  const material = (density: number) => `material "Odd": density ${density} kg/m3\n`;
  const store = new Map([['lib.txt', material(1000)]]);
  const workspace = new Workspace(memoryFiles(store));
  const part = '  part "A": box 1 x 1 x 1 m, of "Odd", at (0, 0, 0), from "lib.txt"';
  workspace.openText('plan.liftplan', 1, `use "lib.txt"\nload "L"\n  contingency 0 %\n  free "seen"\n${part}\n`);
  const weight = () => workspace.snapshot('plan.liftplan')?.results.totals.loadWeight.value;
  expect(weight()).toBe(1000);
  store.set('lib.txt', material(3000));
  expect(workspace.reread('lib.txt')).toBe(true);
  expect(weight()).toBe(3000);
  expect(workspace.reread('lib.txt')).toBe(false);
});

test('the survey knows which plans rest on a file, and which miss one', () => {
  const store = texts();
  const workspace = new Workspace(memoryFiles(store));
  const survey = new Survey();
  survey.add('plan.liftplan');
  survey.done('plan.liftplan', workspace.snapshot('plan.liftplan'));
  expect(survey.next()).toBeUndefined();
  survey.touch('bill.csv');
  expect(survey.next()).toBe('plan.liftplan');
  survey.done('plan.liftplan', workspace.snapshot('plan.liftplan'));
  survey.touchMissing();
  expect(survey.next()).toBeUndefined();
  store.delete('bill.csv');
  workspace.reread('bill.csv');
  survey.done('plan.liftplan', workspace.snapshot('plan.liftplan'));
  survey.touchMissing();
  expect(survey.next()).toBe('plan.liftplan');
  expect(survey.counts().total).toBe(1);
});
