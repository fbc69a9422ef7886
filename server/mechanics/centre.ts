// The common centre of many masses, and how far it can lie off when the masses are not known exactly.
import type { Vec3 } from './vector.ts';

/** A mass (kg; below zero for what is taken away) and where its centre is (m). */
export interface PointMass {
  readonly mass: number;
  readonly at: Vec3;
}

/** Sum of masses and their common centre; no centre unless the sum is above zero. */
export function centreOf(masses: readonly PointMass[]): { readonly mass: number; readonly centre: Vec3 | undefined } {
  const mass = masses.reduce((sum, one) => sum + one.mass, 0);
  if (!(mass > 0)) return { mass, centre: undefined };
  return { mass, centre: perAxis((axis) => masses.reduce((sum, one) => sum + one.mass * one.at[axis], 0) / mass) };
}

/** A mass between two ends, its centre between two ends along each axis. */
export interface MassRange {
  readonly low: number;
  readonly high: number;
  readonly atLow: Vec3;
  readonly atHigh: Vec3;
}

/**
 * The ends between which the common centre lies along each axis, for every combination of masses and places within their
 * ranges: exact, and reached. Nothing if the masses could add up to zero or less.
 */
export function centreRange(masses: readonly MassRange[]): { readonly low: Vec3; readonly high: Vec3 } | undefined {
  if (!(masses.reduce((sum, one) => sum + one.low, 0) > 0)) return undefined;
  return {
    low: perAxis((axis) => lowestMean(masses.map((one) => lever(one, axis, 1)))),
    high: perAxis((axis) => -lowestMean(masses.map((one) => lever(one, axis, -1)))),
  };
}

interface Lever {
  readonly low: number;
  readonly high: number;
  /** Where the lowest mean wants the mass, and where it stands if it is below zero. */
  readonly near: number;
  readonly far: number;
}

function lever({ low, high, atLow, atHigh }: MassRange, axis: Along, sign: 1 | -1): Lever {
  const [near, far] = sign > 0 ? [atLow[axis], atHigh[axis]] : [-atHigh[axis], -atLow[axis]];
  return { low, high, near, far };
}

/**
 * The lowest weighted mean. It is reached with the masses on the low side at their high ends and the others at their low ends,
 * so one pass over the masses in order of place finds it.
 */
function lowestMean(levers: readonly Lever[]): number {
  const placeOf = ({ near, far, high }: Lever): number => (high > 0 ? near : far);
  const sorted = [...levers].sort((a, b) => placeOf(a) - placeOf(b));
  const take = (mass: number, { near, far }: Lever): number => mass * (mass > 0 ? near : far);
  let mass = sorted.reduce((sum, one) => sum + one.low, 0);
  let moment = sorted.reduce((sum, one) => sum + take(one.low, one), 0);
  let best = moment / mass;
  for (const one of sorted) {
    mass += one.high - one.low;
    moment += take(one.high, one) - take(one.low, one);
    best = Math.min(best, moment / mass);
  }
  return best;
}

type Along = 0 | 1 | 2;

const perAxis = (compute: (axis: Along) => number): Vec3 => [compute(0), compute(1), compute(2)];
