// What a bought-in part weighs by itself, for lists and for those nearest to one that is not in the tables.
import { material } from '../../catalog/index.ts';
import { type Shape, solid } from '../../mechanics/index.ts';
import { boughtIn } from './index.ts';
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
  const heavy = massOf(found.make(sizes), found);
  const light = massOf((found.least ?? found.make)(sizes), found, found.drilled);
  if (heavy === null || light === null) return null;
  return { mass: heavy * (found.allowance?.factor ?? 1), low: light, found };
}

function massOf(shape: Shape, found: BoughtIn, drilled = 0): number | null {
  const body = solid(shape);
  if ('impossible' in body || body.volume === undefined) return null;
  return (body.volume - drilled) * (material(found.material)?.density ?? Number.NaN);
}
