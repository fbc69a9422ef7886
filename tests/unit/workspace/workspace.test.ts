// The room with memory: what is kept, what is made again, and what one bad file costs.
import { afterEach, expect, test, vi } from 'vitest';
import type { Item } from '../../../server/plan/index.ts';
import { type Files, memoryFiles, Survey, Workspace } from '../../../server/workspace/index.ts';
import * as making from '../../../server/workspace/snapshot.ts';
import { bench, gear, hung, stretch } from '../../support/plans.ts';

afterEach(() => vi.restoreAllMocks());

const texts = () =>
  new Map([
    ['cover.liftplan', hung],
    ['library/gear.liftplan', gear],
    ['bench.liftplan', bench],
  ]);
const change = (text: string, words: string, put: string) => ({ range: stretch(text, words), text: put });
const textOf = (workspace: Workspace, file: string) =>
  workspace
    .tree(file)
    ?.rows.map(({ text }) => text)
    .join('\n');

test('a snapshot is the same object until something it rests on has another text', () => {
  const files = texts();
  const workspace = new Workspace(memoryFiles(files));
  workspace.openText('cover.liftplan', 1, hung);
  const first = workspace.snapshot('cover.liftplan');
  expect(workspace.snapshot('cover.liftplan')).toBe(first);
  workspace.openText('bench.liftplan', 1, bench);
  workspace.changeText('bench.liftplan', 2, [change(bench, 'Hall 2', 'Hall 3')]);
  expect(workspace.snapshot('cover.liftplan')).toBe(first);
  workspace.openText('library/gear.liftplan', 1, gear);
  workspace.changeText('library/gear.liftplan', 2, [change(gear, '60 kg', '61 kg')]);
  const second = workspace.snapshot('cover.liftplan');
  expect(second).not.toBe(first);
  expect(second?.tree).toBe(first?.tree);
  expect(second?.results.totals.gross.value).toBeCloseTo((first?.results.totals.gross.value as number) + 1);
});

test('a file on disk is looked at again only when asked, and is as before while its text is', () => {
  const files = texts();
  const read = vi.fn(memoryFiles(files).read);
  const workspace = new Workspace({ ...memoryFiles(files), read });
  workspace.openText('cover.liftplan', 1, hung);
  const first = workspace.snapshot('cover.liftplan');
  workspace.changeText('cover.liftplan', 2, [change(hung, 'Yard', 'Hall')]);
  workspace.snapshot('cover.liftplan');
  expect(read).toHaveBeenCalledTimes(1);
  expect(workspace.reread('library/gear.liftplan')).toBe(false);
  expect(workspace.snapshot('cover.liftplan')?.plan.files[1]?.tree).toBe(first?.plan.files[1]?.tree);
  files.set('library/gear.liftplan', gear.replace('60 kg', '70 kg'));
  expect(workspace.reread('library/gear.liftplan')).toBe(true);
  expect(workspace.snapshot('cover.liftplan')?.plan.files[1]?.tree).not.toBe(first?.plan.files[1]?.tree);
  files.delete('library/gear.liftplan');
  expect(workspace.reread('library/gear.liftplan')).toBe(true);
  expect(workspace.snapshot('cover.liftplan')?.findings.map(({ slug }) => slug)).toContain('file-missing');
});

test('a key re-reads its line and binds its statement; every other item is the one it was', () => {
  const workspace = new Workspace(memoryFiles(texts()));
  workspace.openText('cover.liftplan', 1, hung);
  const items = (list: readonly Item[] = workspace.snapshot('cover.liftplan')?.plan.items ?? []): readonly Item[] =>
    list.flatMap((item) => [item, ...items(item.children)]);
  const before = new Set(items());
  workspace.changeText('cover.liftplan', 2, [change(hung, '20 mm', '25 mm')]);
  const fresh = items().filter((item) => !before.has(item));
  expect(fresh.map(({ keyword, names }) => `${keyword} ${names.join()}`)).toEqual(['load Cover', 'part Disc']);
});

test('edits by rows, whatever the line ends are, give the text that the editor has', () => {
  for (const ending of ['\n', '\r\n', '\r']) {
    const workspace = new Workspace(memoryFiles(new Map()));
    let text = `one${ending}two${ending}three`;
    workspace.openText('a', 1, text);
    const steps = [
      { range: { start: { line: 0, character: 3 }, end: { line: 1, character: 1 } }, text: '-' },
      { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, text: `x${ending}${ending}y` },
      { range: { start: { line: 99, character: 0 }, end: { line: 99, character: 9 } }, text: '!' },
      { range: { start: { line: 2, character: 77 }, end: { line: 2, character: 99 } }, text: '?' },
      { range: { start: { line: 1, character: 1 }, end: { line: 0, character: 0 } }, text: '<' },
    ];
    const wanted = ['one-wo|three', 'one-wo|x||ythree', 'one-wo|x||ythree!', 'one-wo|x|?|ythree!', '<|?|ythree!'];
    for (const [n, step] of steps.entries()) {
      workspace.changeText('a', n + 2, [step]);
      text = (wanted[n] as string).replaceAll('|', '\n');
      expect(textOf(workspace, 'a'), `step ${n} with ${JSON.stringify(ending)}`).toBe(text);
    }
    expect(workspace.versionOf('a')).toBe(steps.length + 1);
  }
});

test('a return that meets a line feed is one line end', () => {
  const workspace = new Workspace(memoryFiles(new Map()));
  workspace.openText('a', 1, 'one\rtwo');
  workspace.changeText('a', 2, [
    { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, text: '\n' },
  ]);
  expect(textOf(workspace, 'a')).toBe('one\ntwo');
  workspace.changeText('a', 3, [
    { range: null, text: 'a\nb' },
    { range: { start: { line: 0, character: 1 }, end: { line: 0, character: 1 } }, text: '\r' },
  ]);
  expect(textOf(workspace, 'a')).toBe('a\nb');
});

test('a file on which the program fails is set aside alone, until its text changes', () => {
  const failed: string[] = [];
  const workspace = new Workspace(memoryFiles(texts()), (file) => failed.push(file));
  const real = making.snapshotOf;
  vi.spyOn(making, 'snapshotOf').mockImplementation((file, version, source) => {
    if (source.tree(file)?.rows.some(({ text }) => text.includes('Hall 2'))) throw new Error('a fault');
    return real(file, version, source);
  });
  workspace.openText('bench.liftplan', 1, bench);
  workspace.openText('cover.liftplan', 1, hung);
  const aside = workspace.snapshot('bench.liftplan');
  expect(aside).toMatchObject({ setAside: true, version: 1 });
  expect(aside?.own.map(({ slug, severity }) => [slug, severity])).toEqual([['not-judged', 'error']]);
  expect(aside?.results.totals.gross.value).toBeNull();
  expect(aside?.tree.rows).toHaveLength(bench.split('\n').length);
  expect(workspace.snapshot('cover.liftplan')?.setAside).toBe(false);
  workspace.snapshot('bench.liftplan');
  expect(failed).toEqual(['bench.liftplan']);
  workspace.changeText('bench.liftplan', 2, [change(bench, 'Hall 2', 'Hall 3')]);
  expect(workspace.snapshot('bench.liftplan')).toMatchObject({ setAside: false, findings: [] });
});

test('what takes in a file that is set aside is open', () => {
  const workspace = new Workspace(memoryFiles(texts()));
  workspace.setAside('library/gear.liftplan');
  workspace.openText('cover.liftplan', 1, hung);
  workspace.openText('library/gear.liftplan', 1, gear);
  expect(workspace.snapshot('library/gear.liftplan')?.setAside).toBe(true);
  const plan = workspace.snapshot('cover.liftplan');
  expect(plan?.results.totals.gross.value).toBeNull();
  expect(plan?.findings.some(({ at }) => at.row.file === 'library/gear.liftplan')).toBe(true);
  workspace.changeText('library/gear.liftplan', 2, [change(gear, '60 kg', '61 kg')]);
  expect(workspace.snapshot('cover.liftplan')?.results.totals.gross.value).not.toBeNull();
});

test('while a text is being fetched its plan is incomplete, and whole once it has come', () => {
  let arrived = false;
  const memory = memoryFiles(texts());
  const files: Files = {
    ...memory,
    read: (file) => (file === 'library/gear.liftplan' && !arrived ? undefined : memory.read(file)),
  };
  const workspace = new Workspace(files);
  workspace.openText('cover.liftplan', 1, hung);
  workspace.snapshot('cover.liftplan');
  expect(workspace.incomplete('cover.liftplan')).toBe(true);
  arrived = true;
  expect(workspace.snapshot('cover.liftplan')?.results.totals.gross.value).not.toBeNull();
  expect(workspace.incomplete('cover.liftplan')).toBe(false);
});

test('closed files do not pile up', () => {
  const many = new Map(Array.from({ length: 500 }, (_, n) => [`plan ${n}.liftplan`, bench]));
  const read = vi.fn(memoryFiles(many).read);
  const workspace = new Workspace({ ...memoryFiles(many), read });
  for (const file of many.keys()) workspace.snapshot(file);
  read.mockClear();
  for (const file of many.keys()) workspace.tree(file);
  expect(read.mock.calls.length).toBeGreaterThan(300);
});

test('the survey knows what is due, who takes in whom, and counts plans only', () => {
  const files = texts();
  const workspace = new Workspace(memoryFiles(files));
  const survey = new Survey();
  for (const file of files.keys()) survey.add(file);
  expect(survey.counts()).toEqual({ checked: 0, total: 3 });
  const checkAll = (): string[] => {
    const done: string[] = [];
    for (let file = survey.next(); file; file = survey.next()) {
      survey.done(file, workspace.snapshot(file));
      done.push(file);
    }
    return done.sort();
  };
  expect(checkAll()).toEqual([...files.keys()].sort());
  expect(survey.counts()).toEqual({ checked: 2, total: 2 });
  expect(survey.plansWith('library/gear.liftplan')).toEqual(['cover.liftplan']);
  expect(survey.libraries()).toEqual(['library/gear.liftplan']);
  survey.touch('library/gear.liftplan');
  expect(survey.counts()).toEqual({ checked: 1, total: 2 });
  expect(checkAll()).toEqual(['cover.liftplan', 'library/gear.liftplan']);
  files.delete('library/gear.liftplan');
  workspace.reread('library/gear.liftplan');
  survey.touch('library/gear.liftplan');
  expect(checkAll()).toEqual(['cover.liftplan', 'library/gear.liftplan']);
  survey.touchMissing();
  expect(checkAll()).toEqual(['cover.liftplan']);
});

test('a file whose tree was let go is still known by its text', () => {
  const many = new Map(Array.from({ length: 300 }, (_, n) => [`plan ${n}.liftplan`, `${bench}# ${n}\n`]));
  const workspace = new Workspace(memoryFiles(many));
  for (const file of many.keys()) workspace.snapshot(file);
  expect([...many.keys()].filter((file) => workspace.reread(file))).toEqual([]);
  many.set('plan 7.liftplan', bench);
  many.delete('plan 8.liftplan');
  expect([...many.keys(), 'plan 8.liftplan'].filter((file) => workspace.reread(file))).toEqual([
    'plan 7.liftplan',
    'plan 8.liftplan',
  ]);
  expect(workspace.snapshot('plan 8.liftplan')).toBeNull();
});
