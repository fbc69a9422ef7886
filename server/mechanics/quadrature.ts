// Gauss-Legendre integration over an interval, plain and for integrands with square-root ends.

interface Node {
  readonly at: number;
  readonly weight: number;
}

const count = 40;

/** Points in (0, 1) with their weights; exact for polynomials up to degree 79. */
const plain: readonly Node[] = legendre(count);

/** The same points crowded to both ends, which turns half powers of the distance from an end into whole ones. */
const crowded: readonly Node[] = plain.map(({ at, weight }) => ({
  at: (1 - Math.cos(Math.PI * at)) / 2,
  weight: (weight * Math.PI * Math.sin(Math.PI * at)) / 2,
}));

/** Integral of a smooth function from a to b; 1e-14 of its size where its singularities lie an interval's length off. */
export function integrate(compute: (at: number) => number, from: number, to: number): number {
  let sum = 0;
  for (const { at, weight } of plain) sum += weight * compute(from + (to - from) * at);
  return sum * (to - from);
}

/**
 * Calls `visit` at points between neighbouring cuts, each with its weight. The integrand may behave like a half power of
 * the distance at each cut: where a plane begins to cut a disc, where a dome closes.
 */
export function sweep(cuts: readonly number[], visit: (at: number, weight: number) => void): void {
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1]!, cuts[i]!];
    if (!(to > from)) continue;
    for (const { at, weight } of crowded) visit(from + (to - from) * at, weight * (to - from));
  }
}

/** The interval's ends and those of the given values that lie between them, ascending. */
export function cutsBetween(from: number, to: number, values: readonly number[]): readonly number[] {
  return [from, ...values.filter((value) => value > from && value < to).sort((a, b) => a - b), to];
}

/** Nodes and weights on (0, 1): roots of the Legendre polynomial by Newton's method. */
function legendre(n: number): readonly Node[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step++) {
      let [before, now] = [1, x];
      for (let k = 2; k <= n; k++) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
      slope = (n * (x * now - before)) / (x * x - 1);
      x -= now / slope;
    }
    return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}
