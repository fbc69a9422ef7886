// Nearest names: what somebody may have meant who wrote a name that is not known.

/**
 * The candidates nearest to `word` by edit distance, nearest first, equally near ones in the order given; at most `count`.
 * Capitals do not count. Nothing further off than a third of the word's letters (at least one) is named.
 */
export function nearest(word: string, candidates: Iterable<string>, count = 3): string[] {
  const wanted = word.toLowerCase();
  const limit = Math.max(1, Math.floor((wanted.length + 1) / 3));
  const found: { readonly name: string; readonly distance: number }[] = [];
  for (const name of candidates) {
    const distance = editDistance(wanted, name.toLowerCase(), limit);
    if (distance <= limit) found.push({ name, distance });
  }
  return found
    .sort((a, b) => a.distance - b.distance)
    .slice(0, count)
    .map((entry) => entry.name);
}

/**
 * Fewest letters to put in, take out, replace or swap with their neighbour to turn `a` into `b` (Damerau and Levenshtein's
 * distance, after Lowrance and Wagner, 1975); Infinity where it is more than `limit`.
 */
export function editDistance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  if (Math.abs(a.length - b.length) > limit) return Number.POSITIVE_INFINITY;
  const rows = distanceTable(a, b);
  const distance = rows[a.length + 1]?.[b.length + 1] ?? Number.POSITIVE_INFINITY;
  return distance > limit ? Number.POSITIVE_INFINITY : distance;
}

// Row and column 0 stand for "never"; row i + 1, column j + 1 is the distance of the first i letters from the first j.
function distanceTable(a: string, b: string): number[][] {
  const never = a.length + b.length;
  const table = Array.from({ length: a.length + 2 }, () => new Array<number>(b.length + 2).fill(never));
  const at = (i: number, j: number) => table[i]?.[j] ?? never;
  for (let i = 0; i <= a.length; i++) (table[i + 1] as number[])[1] = i;
  for (let j = 0; j <= b.length; j++) (table[1] as number[])[j + 1] = j;
  const lastRow = new Map<string, number>(); // where each letter of b was last seen in a
  for (let i = 1; i <= a.length; i++) {
    let lastColumn = 0; // where this letter of a was last seen in b
    for (let j = 1; j <= b.length; j++) {
      const swapRow = lastRow.get(b.charAt(j - 1)) ?? 0;
      const swapColumn = lastColumn;
      const same = a.charAt(i - 1) === b.charAt(j - 1);
      if (same) lastColumn = j;
      (table[i + 1] as number[])[j + 1] = Math.min(
        at(i, j) + (same ? 0 : 1),
        at(i + 1, j) + 1,
        at(i, j + 1) + 1,
        at(swapRow, swapColumn) + (i - swapRow - 1) + 1 + (j - swapColumn - 1),
      );
    }
    lastRow.set(a.charAt(i - 1), i);
  }
  return table;
}
