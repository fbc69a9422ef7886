// How far the tolerances of its parts can move the weight of a load, and which parts move it most.
import { leavesOf } from './basis.ts';
import type { Body } from './types.ts';

export interface Spread {
  /** Parts with a tolerance, those that move the weight most first; kg, both at or above zero. */
  readonly parts: readonly { readonly body: Body; readonly up: number; readonly down: number }[];
  /** Every part at the same end at once, kg. */
  readonly worst: { readonly up: number; readonly down: number };
  /** Root of the sum of squares, kg: what independent errors come to as a rule (JCGM 100:2008, 5.1.2). Never judged by. */
  readonly likely: { readonly up: number; readonly down: number };
}

/** Null where a part's weight is not known, or none has a tolerance: a spread of some of the parts says nothing. */
export function spread(whole: Body): Spread | null {
  const parts = leavesOf(whole).map((body) => {
    const { value, low, high } = body.weight;
    return value === null || low === null || high === null ? null : { body, up: high - value, down: value - low };
  });
  if (parts.some((part) => part === null)) return null;
  const loose = parts.filter((part) => part !== null && (part.up > 0 || part.down > 0)) as Spread['parts'][number][];
  if (!loose.length) return null;
  const both = (of: (sides: readonly number[]) => number) => ({
    up: of(loose.map(({ up }) => up)),
    down: of(loose.map(({ down }) => down)),
  });
  return {
    parts: [...loose].sort((a, b) => Math.max(b.up, b.down) - Math.max(a.up, a.down)),
    worst: both((sides) => sides.reduce((sum, side) => sum + side, 0)),
    likely: both((sides) => Math.hypot(...sides)),
  };
}
