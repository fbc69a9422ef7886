// What is kept along the children of a statement: the same values as working all of them out, however few are worked out.
import { expect, test } from 'vitest';
import { joined, keptAlong } from '../../../server/plan/index.ts';
import { random } from '../../bench/plans.ts';

test('after any change of the children the values are those of the children', () => {
  const next = random(5);
  const upTo = (n: number): number => Math.floor(next() * n);
  const row = { file: 'a', text: 'load' };
  const along = keptAlong<{ readonly n: number }, string>();
  let children = Array.from({ length: 60 }, (_, n) => ({ n }));
  let worked = 0;
  for (let turn = 0; turn < 400; turn++) {
    const at = upTo(children.length);
    const put = Array.from({ length: upTo(4) }, () => ({ n: upTo(1_000) }));
    children = turn % 9 === 0 ? children.toReversed() : children.toSpliced(at, upTo(4), ...put);
    const before = worked;
    const values = along(row, children, ({ n }) => {
      worked++;
      return `${n}`;
    });
    expect(values).toEqual(children.map(({ n }) => `${n}`));
    if (children.length >= 16 && turn % 9 !== 0) expect(worked - before).toBeLessThanOrEqual(put.length);
  }
});

test('another row, or another base, starts from nothing', () => {
  const along = keptAlong<number, number>();
  const children = Array.from({ length: 20 }, (_, n) => n);
  const [one, other] = ['one', 'other'].map((text) => ({ file: 'a', text }));
  const times = (by: number) => (n: number) => n * by;
  expect(along(one as never, children, times(2), [2])).toEqual(children.map(times(2)));
  expect(along(one as never, children, times(3), [3])).toEqual(children.map(times(3)));
  expect(along(other as never, children, times(4), [3])).toEqual(children.map(times(4)));
  expect(along(one as never, children, times(5), [3])).toEqual(children.map(times(3)));
});

test('lists are joined in their order', () => {
  expect(joined([[], [1], [], [2, 3]])).toEqual([1, 2, 3]);
  expect(joined([[], []])).toEqual([]);
});
