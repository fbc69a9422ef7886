// Nearest names by edit distance: known distances, the cut-off, order of equals.
import { describe, expect, test } from 'vitest';
import { editDistance, nearest } from '../../server/quantities/nearest.ts';

describe('edit distance', () => {
  // Wagner and Fischer's and Damerau's textbook pairs; the last one tells this distance from the restricted one, which gives 3.
  test.each([
    ['', '', 0],
    ['', 'abc', 3],
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['ab', 'ba', 1],
    ['abcdef', 'abdcef', 1],
    ['ca', 'abc', 2],
  ])('%s and %s: %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
    expect(editDistance(b, a)).toBe(distance);
  });

  test('more than the limit is infinitely far, the limit itself is not', () => {
    expect(editDistance('kitten', 'sitting', 3)).toBe(3);
    expect(editDistance('kitten', 'sitting', 2)).toBe(Number.POSITIVE_INFINITY);
    expect(editDistance('a', 'abcdef', 2)).toBe(Number.POSITIVE_INFINITY);
  });

  test('never breaks the triangle rule, and is 0 only for equal words', () => {
    const words = ['', 'a', 'b', 'ab', 'ba', 'aab', 'aba', 'baa', 'abc', 'cab', 'acb', 'bca', 'abca', 'caab'];
    for (const a of words) {
      for (const b of words) {
        expect(editDistance(a, b) === 0).toBe(a === b);
        for (const c of words) expect(editDistance(a, c)).toBeLessThanOrEqual(editDistance(a, b) + editDistance(b, c));
      }
    }
  });
});

describe('nearest names', () => {
  const keywords = ['load', 'lead', 'leg', 'sling', 'shackle', 'spreader', 'stage', 'step'];

  test('the nearest come first, at most three', () => {
    expect(nearest('shakcle', keywords)).toEqual(['shackle']);
    expect(nearest('laod', keywords)).toEqual(['load']);
    expect(nearest('spraeder', keywords)).toEqual(['spreader']);
    expect(nearest('stap', keywords)).toEqual(['step']);
    expect(nearest('aaaa', ['aaab', 'aaac', 'aaad', 'aaae'])).toEqual(['aaab', 'aaac', 'aaad']);
    expect(nearest('aaaa', ['aaab', 'aaac', 'aaad', 'aaae'], 1)).toEqual(['aaab']);
  });

  test('equally near ones stand in the order given; capitals do not count', () => {
    expect(nearest('LAD', ['lead', 'load'])).toEqual(['lead', 'load']);
    expect(nearest('Sling', keywords)).toEqual(['sling']);
  });

  test('nothing is named that is far off', () => {
    expect(nearest('counterweight', keywords)).toEqual([]);
    expect(nearest('x', keywords)).toEqual([]);
    expect(nearest('', keywords)).toEqual([]);
  });
});
