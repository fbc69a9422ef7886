// Parts of steel held against other parts: weight, volume, centre and box must be the same.
import fc from 'fast-check';
import { expect } from 'vitest';
import { loadOf, slugs, value } from './lift.ts';

export const size = fc.integer({ min: 20, max: 4000 }); // mm
export const results = ['calculated weight', 'volume', 'cog x', 'cog y', 'cog z'];
export const boxes = ['length', 'width', 'height'];

export const near = (a: number | null, b: number | null, rel = 1e-9): void => {
  expect(a).not.toBeNull();
  expect(b).not.toBeNull();
  expect(Math.abs((a as number) - (b as number))).toBeLessThanOrEqual(rel * Math.max(1, Math.abs(b as number)));
};

export type Part = readonly [shape: string, place: string];
export const steel = (parts: readonly Part[]) =>
  loadOf(
    parts
      .map(([shape, place], i) => `  part "P${i}": ${shape}, of carbon steel, ${place}\n    empty "seen"`)
      .join('\n'),
  );
export const alike = (
  a: readonly Part[],
  b: readonly Part[],
  which: readonly string[] = [...results, ...boxes],
): void => {
  const [first, second] = [steel(a), steel(b)];
  expect(slugs(first)).toEqual([]);
  for (const result of which) near(value(first, 'load', 'L', result), value(second, 'load', 'L', result), 2e-9);
};
