// Paths from one place to another, as text, and short names for long sources.
import { expect, test } from 'vitest';
import { known } from '../../../server/quantities/index.ts';
import { folderOf, relativePath } from '../../../server/report/index.ts';
import { sourceNames } from '../../../server/report/sheet/source-names.ts';

test.each([
  ['/w/plans', '/w/plans/a.liftplan', 'a.liftplan'],
  ['/w/plans', '/w/library/yard.liftplan', '../library/yard.liftplan'],
  ['/w', '/w/plans/a/b.liftplan', 'plans/a/b.liftplan'],
  ['/w/a/b', '/x/c.liftplan', '../../../x/c.liftplan'],
  ['', 'a.liftplan', 'a.liftplan'],
  ['quarry', 'quarry/library/yard.liftplan', 'library/yard.liftplan'],
  ['C:/w/plans', 'D:/yard.liftplan', 'D:/yard.liftplan'],
  ['/w/plans/', '/w/plans/a.liftplan', 'a.liftplan'],
])('%s to %s', (folder, file, path) => expect(relativePath(folder, file)).toBe(path));

test('the folder of a file', () => expect(['/w/a.liftplan', 'a.liftplan', '/a'].map(folderOf)).toEqual(['/w', '', '']));

test('short sources keep their words; long ones get a name of their own, which a new source does not change', () => {
  const [steel, other] = [
    'carbon steel: table 4 of a handbook, edition 5',
    'carbon steel: table 9 of another handbook',
  ];
  const figures = (...sources: readonly string[]) => sources.map((source) => known(1, 'kg', { source }));
  const names = sourceNames(figures('typed here', steel, steel));
  expect([names.nameOf('typed here'), names.nameOf(steel)]).toEqual(['typed here', 'carbon steel']);
  expect(names.list).toEqual([{ name: 'carbon steel', source: steel, figures: 2 }]);
  const more = sourceNames(figures('a very long source of water, and more of it', steel, other));
  expect([more.nameOf(steel), more.nameOf(other)]).toEqual(['carbon steel', 'carbon steel (2)']);
});
