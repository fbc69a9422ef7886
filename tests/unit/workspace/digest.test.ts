// The mark by which a file is known to hold what it held.
import { expect, test } from 'vitest';
import { digest } from '../../../server/workspace/digest.ts';
import { random } from '../../bench/plans.ts';
import { bench } from '../../support/plans.ts';

test('texts that differ in one character, in order or in length have different marks', () => {
  const next = random(5);
  const texts = new Set([
    bench,
    '',
    ' ',
    '\0',
    '\0\0',
    'ab',
    'ba',
    ...Array.from({ length: 5_000 }, () => {
      const at = Math.floor(next() * bench.length);
      return (
        bench.slice(0, at) +
        String.fromCharCode(32 + Math.floor(next() * 500)) +
        bench.slice(at + (next() < 0.5 ? 1 : 0))
      );
    }),
  ]);
  expect(new Set([...texts].map(digest)).size).toBe(texts.size);
});

test('the mark is a whole number that a number holds exactly', () => {
  for (const text of [bench, 'x'.repeat(100_000)]) expect(Number.isSafeInteger(digest(text))).toBe(true);
});
