// Two lists of the same kind of thing, old and new: takes out of both what belongs together.

/** What has no other half yet; taking pairs makes it shorter. */
export interface Left<T> {
  old: readonly T[];
  now: readonly T[];
}

/** The pairs of equal keys, in order, taken out of what is left; with `only one`, where just one on each side has the key. A key of null pairs with nothing. */
export function takeEqual<T>(
  left: Left<T>,
  keyOf: (one: T, side: 'old' | 'now') => string | null,
  which: 'all' | 'only one' = 'all',
): readonly (readonly [old: T, now: T])[] {
  const [before, after] = [keyed(left.old, (one) => keyOf(one, 'old')), keyed(left.now, (one) => keyOf(one, 'now'))];
  const pairs = [...before].flatMap(([key, old]) => {
    const now = after.get(key) ?? [];
    if (which === 'only one' && (old.length !== 1 || now.length !== 1)) return [];
    return old.slice(0, now.length).map((one, i) => [one, now[i] as T] as const);
  });
  strike(left, pairs);
  return pairs;
}

/** Takes pairs that were found in another way out of what is left. */
export function strike<T>(left: Left<T>, pairs: readonly (readonly [old: T, now: T])[]): void {
  const [old, now] = [new Set(pairs.map(([one]) => one)), new Set(pairs.map(([, one]) => one))];
  left.old = left.old.filter((one) => !old.has(one));
  left.now = left.now.filter((one) => !now.has(one));
}

function keyed<T>(list: readonly T[], keyOf: (one: T) => string | null): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const key = keyOf(one);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
}
