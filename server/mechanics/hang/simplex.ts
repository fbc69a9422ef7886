// A small linear programme: the largest of c·z over all z with t + N z ≥ 0, from z = 0.

/**
 * Largest value of c·z over free z (k numbers) with t + N z ≥ 0, where t ≥ 0 (n numbers) and N is n rows of k.
 * Infinity when it has no bound, NaN-free. Dictionary simplex with the smallest-subscript rule, which never cycles:
 * Bland, Mathematics of Operations Research 2 (1977).
 */
export function largest(c: ArrayLike<number>, t: ArrayLike<number>, rows: readonly ArrayLike<number>[]): number {
  const k = c.length;
  const n = t.length;
  const columns = 2 * k;
  const width = columns + 1;
  // Row i: t_i = d[i][columns] + Σ d[i][j] x_j, z = x⁺ − x⁻; the last row is the value sought.
  const d = new Float64Array((n + 1) * width);
  for (let i = 0; i <= n; i++) {
    for (let j = 0; j < k; j++) {
      const value = i < n ? rows[i]![j]! : c[j]!;
      d[i * width + j] = value;
      d[i * width + k + j] = -value;
    }
    d[i * width + columns] = i < n ? Math.max(0, t[i]!) : 0;
  }
  const outside = Int32Array.from({ length: columns }, (_, j) => j);
  const inside = Int32Array.from({ length: n }, (_, i) => columns + i);
  for (let pivots = 0; pivots < 100 * (n + columns); pivots++) {
    const enter = entering(d, n, columns, outside);
    if (enter < 0) break;
    const leave = leaving(d, n, columns, enter, inside);
    if (leave < 0) return Number.POSITIVE_INFINITY;
    exchange(d, n, columns, leave, enter);
    const name = outside[enter]!;
    outside[enter] = inside[leave]!;
    inside[leave] = name;
  }
  return d[n * width + columns]!;
}

const small = 1e-9;

function entering(d: Float64Array, n: number, columns: number, outside: Int32Array): number {
  let best = -1;
  for (let j = 0; j < columns; j++) {
    if (d[n * (columns + 1) + j]! > small && (best < 0 || outside[j]! < outside[best]!)) best = j;
  }
  return best;
}

function leaving(d: Float64Array, n: number, columns: number, enter: number, inside: Int32Array): number {
  const width = columns + 1;
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    const slope = d[i * width + enter]!;
    if (slope > -small) continue;
    const room = d[i * width + columns]! / -slope;
    if (room < least || (room === least && inside[i]! < inside[best]!)) {
      best = i;
      least = room;
    }
  }
  return best;
}

function exchange(d: Float64Array, n: number, columns: number, leave: number, enter: number): void {
  const width = columns + 1;
  const row = leave * width;
  const pivot = d[row + enter]!;
  for (let j = 0; j < width; j++) d[row + j] = j === enter ? 1 / pivot : d[row + j]! / -pivot;
  for (let i = 0; i <= n; i++) {
    if (i === leave) continue;
    const factor = d[i * width + enter]!;
    d[i * width + enter] = 0;
    for (let j = 0; j < width; j++) d[i * width + j] = d[i * width + j]! + factor * d[row + j]!;
    if (i < n && d[i * width + columns]! < 0) d[i * width + columns] = 0;
  }
}
