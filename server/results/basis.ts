// What the weights of parts rest on, from a bound down to a calculation, and how much of a load rests on each.
import { textOf } from '../plan/index.ts';
import type { Body } from './types.ts';

/**
 * unnamed: a figure with no evidence and no document; estimate: by estimate; bound: an `envelope`, which the part cannot exceed;
 * stated: a figure with its evidence; calculated: worked out from shape and material. In this order: what wants better evidence
 * comes first.
 */
export const bases = ['unnamed', 'estimate', 'bound', 'stated', 'calculated'] as const;
export type Basis = (typeof bases)[number];

/** Of one part. Evidence named for a shape speaks of its sizes, so its weight stays a calculation or a bound; an estimate stays one. */
export function basisOf({ thing: { item }, working }: Body): Basis {
  const by = textOf(item, 'by');
  if (by === 'estimate') return 'estimate';
  if (working?.shape === 'envelope') return 'bound';
  if (working && working.shape !== 'item') return 'calculated';
  return by || textOf(item, 'from') ? 'stated' : 'unnamed';
}

export interface Share {
  readonly basis: Basis;
  readonly kg: number;
  readonly parts: readonly Body[];
}

/** How much of all parts rests on what, in the order of `bases`; null where a part is not known, or nothing weighs anything. */
export function shares(whole: Body): readonly Share[] | null {
  if (whole.weight.value === null || whole.weight.value <= 0) return null;
  const leaves = leavesOf(whole).filter(({ working }) => working);
  return bases.flatMap((basis): readonly Share[] => {
    const parts = leaves.filter((part) => basisOf(part) === basis);
    return parts.length
      ? [{ basis, kg: parts.reduce((sum, part) => sum + (part.weight.value ?? Number.NaN), 0), parts }]
      : [];
  });
}

/** The parts of a load or assembly, however deep; a part is its own. */
export const leavesOf = (body: Body): readonly Body[] => (body.bodies.length ? body.bodies.flatMap(leavesOf) : [body]);
