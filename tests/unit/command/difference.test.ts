// The difference of two texts, line by line: applied to the old text it gives the new one, and says nothing about equal ones.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { difference } from '../../../server/command/difference.ts';

test('what went stands before what came, and what stayed is left out', () =>
  expect(difference('a\nb\nc\nd', 'a\nB\nc\nd\ne')).toEqual(['- b', '+ B', '+ e']));

test('equal texts have none', () => expect(difference('a\nb\n', 'a\nb\n')).toEqual([]));

test('any two texts: lines taken off and put in account for the whole of the change', () => {
  const text = fc.array(fc.constantFrom('a', 'b', 'c', ''), { maxLength: 12 }).map((lines) => lines.join('\n'));
  fc.assert(
    fc.property(text, text, (old, now) => {
      const changes = difference(old, now);
      const count = (lines: readonly string[]) => [...lines].sort().join('|');
      const gone = changes.filter((line) => line.startsWith('- ')).map((line) => line.slice(2));
      const come = changes.filter((line) => line.startsWith('+ ')).map((line) => line.slice(2));
      expect(count([...old.split('\n'), ...come])).toBe(count([...now.split('\n'), ...gone]));
      expect(gone.length + come.length).toBeLessThanOrEqual(old.split('\n').length + now.split('\n').length);
    }),
  );
});

test('texts too far apart for a table are shown as all gone and all new', () => {
  const many = (word: string) => Array.from({ length: 2100 }, (_, i) => `${word} ${i}`).join('\n');
  expect(difference(many('old'), many('new'))).toHaveLength(4200);
});
