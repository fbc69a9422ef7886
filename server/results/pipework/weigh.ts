// What a bought-in part weighs by itself, for lists and for those nearest to one that is not in the tables.
import { boughtIn } from './index.ts';
import { massOf } from './looked-up.ts';
import type { BoughtIn, PipeworkName, Written } from './types.ts';

/** kg, of the steel it is made of by itself; `low` as light as standard and makers have it. */
export interface Weighed {
  readonly mass: number;
  readonly low: number;
  readonly found: BoughtIn;
}

/** The weight of one, or null where the tables have none, or a size is missing that is not in them. */
export function weigh(name: PipeworkName, written: Written, sizes: Readonly<Record<string, number>>): Weighed | null {
  const found = boughtIn(name, written);
  if (!('make' in found)) return null;
  const heavy = massOf(found.make(sizes), found.material);
  const light = massOf((found.least ?? found.make)(sizes), found.material, found.drilled);
  if (heavy === null || light === null) return null;
  return { mass: heavy * (found.allowance?.factor ?? 1), low: light, found };
}
