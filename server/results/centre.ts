// The centre of several weights, axis by axis, with the ends that their tolerances of weight and place allow.
import type { Vec3 } from '../mechanics/index.ts';
import type { Thing } from '../plan/index.ts';
import { type Cause, type Derived, type Input, known, open, unique } from '../quantities/derived.ts';

export interface Mass {
  readonly thing: Thing;
  readonly weight: Derived;
  readonly centre: Vec3 | null; // in the load's axes
  readonly slack: Vec3; // half the tolerance of its place
  readonly open: readonly [readonly Cause[], readonly Cause[], readonly Cause[]]; // why a coordinate is not known
  readonly because: readonly Cause[]; // why there is no centre at all
}

/** Σ m r / Σ m along each axis; open where a weight or a place is not known. */
export function centreOf(
  masses: readonly Mass[],
  at: unknown,
  causes: readonly Cause[],
): readonly [Derived, Derived, Derived] {
  const counted = masses.filter((mass) => mass.weight.value !== 0);
  const weights = unique(counted.flatMap((mass) => mass.weight.because));
  const inputs = counted.map((mass) => ({ label: mass.thing.name, value: mass.weight }));
  return [0, 1, 2].map((axis) => {
    const places: Cause[] = [];
    for (const mass of counted) {
      const why = mass.open[axis];
      if (why?.length) places.push(...why);
      if (mass.because.length) places.push(...mass.because);
    }
    const why = unique([...causes, ...weights, ...places]);
    if (why.length || !counted.length) return open('m', why, { at });
    return along(counted, axis, at, inputs);
  }) as unknown as readonly [Derived, Derived, Derived];
}

function along(masses: readonly Mass[], axis: number, at: unknown, inputs: readonly Input[]): Derived {
  const points = masses.map((mass) => {
    const x = mass.centre?.[axis] as number;
    const slack = mass.slack[axis] ?? 0;
    return {
      m: mass.weight.value as number,
      low: mass.weight.low as number,
      high: mass.weight.high as number,
      x,
      from: x - slack,
      to: x + slack,
    };
  });
  const total = points.reduce((sum, point) => sum + point.m, 0);
  const value = points.reduce((sum, point) => sum + point.m * point.x, 0) / total;
  const fixed = points.every((point) => point.low === point.high && point.from === point.to);
  const ends = fixed
    ? [value, value]
    : [
        -extreme(points.map((point) => ({ ...point, x: -point.from }))),
        extreme(points.map((point) => ({ ...point, x: point.to }))),
      ];
  return known(
    value,
    'm',
    {
      formula: 'sum of weight * place / sum of weight',
      inputs,
      at,
    },
    Math.min(ends[0] as number, value),
    Math.max(ends[1] as number, value),
  );
}

/** Greatest Σ m x / Σ m over weights between their ends: the far ones heavy, the near ones light; the best split is one of n. */
function extreme(points: readonly { readonly low: number; readonly high: number; readonly x: number }[]): number {
  const far = [...points].sort((a, b) => b.x - a.x);
  let mass = far.reduce((sum, point) => sum + point.low, 0);
  let moment = far.reduce((sum, point) => sum + point.low * point.x, 0);
  let best = mass > 0 ? moment / mass : Number.NEGATIVE_INFINITY;
  for (const point of far) {
    mass += point.high - point.low;
    moment += (point.high - point.low) * point.x;
    if (mass > 0) best = Math.max(best, moment / mass);
  }
  return best;
}
