// Plans in memory, and the paths that `use` may write there.
import { expect, test } from 'vitest';
import { joined, notRelative } from '../../../server/workspace/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import { gear, hung } from '../../support/plans.ts';

test('`use` is read from the file it stands in, and never leads out of the top', () => {
  const found = (path: string, file: string, library: string) =>
    check({ [file]: hung.replace('library/gear.liftplan', path), [library]: gear }, file)
      .findings.filter(({ slug }) => slug === 'file-missing')
      .map(({ message }) => message);
  expect(found('library/gear.liftplan', 'cover.liftplan', 'library/gear.liftplan')).toEqual([]);
  expect(found('../gear.liftplan', 'plans/cover.liftplan', 'gear.liftplan')).toEqual([]);
  expect(found('./a/../gear.liftplan', 'cover.liftplan', 'gear.liftplan')).toEqual([]);
  expect(found('../../gear.liftplan', 'plans/cover.liftplan', 'gear.liftplan')[0]).toContain(
    'outside the opened folder',
  );
  expect(found('/gear.liftplan', 'cover.liftplan', 'gear.liftplan')[0]).toContain('not a path relative to this file');
  expect(found('file:///gear.liftplan', 'cover.liftplan', 'gear.liftplan')[0]).toContain(
    'not a path relative to this file',
  );
});

test('a file that lies elsewhere is named', () => {
  const { findings } = check({ 'plans/cover.liftplan': hung, 'store/gear.liftplan': gear }, 'plans/cover.liftplan');
  const [fix] = findings.find(({ slug }) => slug === 'file-missing')?.fixes ?? [];
  expect(fix?.edits[0]).toMatchObject({ text: '"../store/gear.liftplan"' });
});

test('paths', () => {
  expect(joined('a/b', '../c')).toBe('a/c');
  expect(joined('', './x//y/.')).toBe('x/y');
  expect(joined('a', '../../b')).toBeNull();
  expect(notRelative('a\\b')).toContain('parted by /');
  expect(notRelative('a/b.liftplan')).toBeNull();
});

test('a text that is not there cannot be checked', () => {
  expect(() => check({}, 'none.liftplan')).toThrow('There is no text of none.liftplan.');
});
