// A physical value with its dimension and the ends of its tolerance, and the arithmetic of expressions.
import { type Dimension, divided, multiplied, none, same } from './dimension.ts';

export interface Quantity {
  readonly value: number; // SI
  readonly low: number; // SI, low <= value <= high
  readonly high: number;
  readonly dimension: Dimension;
  /** Written with %, so that a share is never taken for a plain number. */
  readonly percent: boolean;
  /** No unit was written anywhere in it (then a closing unit may still come, and 0 fits anything). */
  readonly bare: boolean;
}

export const quantity = (value: number, dimension: Dimension, low = value, high = value): Quantity => ({
  value,
  low,
  high,
  dimension,
  percent: false,
  bare: false,
});
export const plain = (value: number): Quantity => ({
  value,
  low: value,
  high: value,
  dimension: none,
  percent: false,
  bare: true,
});

export type Sum = Quantity | { readonly clash: readonly [Dimension, Dimension] };

/** a + b or a − b; a bare zero fits any dimension. Unlike ones never add: the clash is returned. */
export function add(a: Quantity, b: Quantity, sign: 1 | -1 = 1): Sum {
  const dimension = same(a.dimension, b.dimension) ? a.dimension : zero(a) ? b.dimension : zero(b) ? a.dimension : null;
  if (!dimension || (a.percent !== b.percent && !zero(a) && !zero(b))) return { clash: [a.dimension, b.dimension] };
  const [low, high] = sign === 1 ? [b.low, b.high] : [-b.high, -b.low];
  return {
    value: a.value + sign * b.value,
    low: a.low + low,
    high: a.high + high,
    dimension,
    percent: a.percent || b.percent,
    bare: a.bare && b.bare,
  };
}

export function multiply(a: Quantity, b: Quantity): Quantity {
  return {
    value: a.value * b.value,
    ...ends([a.low * b.low, a.low * b.high, a.high * b.low, a.high * b.high]),
    dimension: multiplied(a.dimension, b.dimension),
    percent: (a.percent && b.bare) || (b.percent && a.bare),
    bare: a.bare && b.bare,
  };
}

/** a ÷ b; null where b is zero, its tolerance spans zero, or it is so near to zero that the answer has no end. */
export function divide(a: Quantity, b: Quantity): Quantity | null {
  if (b.value === 0 || (b.low <= 0 && b.high >= 0)) return null;
  const [value, range] = [a.value / b.value, ends([a.low / b.low, a.low / b.high, a.high / b.low, a.high / b.high])];
  if (![value, range.low, range.high].every(Number.isFinite)) return null;
  return { value, ...range, dimension: divided(a.dimension, b.dimension), percent: false, bare: a.bare && b.bare };
}

export const negate = (a: Quantity): Quantity => ({
  ...a,
  value: a.value === 0 ? 0 : -a.value,
  low: a.high === 0 ? 0 : -a.high,
  high: a.low === 0 ? 0 : -a.low,
});

/** The quantity with a tolerance of ± t (same dimension; a bare zero takes that of t), or ± a share of itself when t is in %. */
export function withTolerance(a: Quantity, t: Quantity): Sum {
  const half = t.percent && !a.percent ? Math.abs(a.value * t.value) : null;
  if (half === null && !same(a.dimension, t.dimension) && !zero(t) && !zero(a))
    return { clash: [a.dimension, t.dimension] };
  const width = half ?? Math.abs(t.value);
  const kept = half === null && zero(a) ? { dimension: t.dimension, percent: t.percent, bare: t.bare } : {};
  return { ...a, ...kept, low: a.low - width, high: a.high + width };
}

const zero = (a: Quantity) => a.value === 0 && a.low === 0 && a.high === 0 && a.bare;
const ends = (all: readonly number[]) => ({ low: Math.min(...all), high: Math.max(...all) });
