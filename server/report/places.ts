// Places of the text as a reader counts them: file, line and column from 1.
import type { BoundPlan } from '../plan/types.ts';
import type { Place } from '../syntax/types.ts';

export interface Spot {
  readonly file: string; // identity, as the workspace names it
  readonly line: number;
  readonly column: number; // UTF-16 units
  readonly endColumn: number; // exclusive
}

/** Finds the place of a row in a plan's files; a row that is in none of them (which no stage makes) counts as line 1. */
export function spotOf(plan: BoundPlan, { row, from, to }: Place): Spot {
  const tree = plan.files.find(({ file }) => file === row.file)?.tree;
  const line = tree ? Math.max(tree.rowNumber(row), 0) + 1 : 1;
  return { file: row.file, line, column: from + 1, endColumn: to + 1 };
}

/** In the order a reader meets them: the plan's own file first, then as used, each from top to bottom. */
export function inOrder<T>(plan: BoundPlan, items: readonly T[], at: (item: T) => Place): readonly T[] {
  const files = new Map(plan.files.map(({ file }, i) => [file, i]));
  const key = (item: T) => {
    const { file, line, column } = spotOf(plan, at(item));
    return [files.get(file) ?? files.size, line, column] as const;
  };
  const keyed = items.map((item) => ({ item, key: key(item) }));
  keyed.sort((a, b) => a.key[0] - b.key[0] || a.key[1] - b.key[1] || a.key[2] - b.key[2]);
  return keyed.map(({ item }) => item);
}

/** A cause's or figure's place, which the number itself carries without looking at it; null where it has none. */
export const placeIn = (at: unknown): Place | null => (isPlace(at) ? at : null);

const isPlace = (at: unknown): at is Place => typeof at === 'object' && at !== null && 'row' in at && 'from' in at;
