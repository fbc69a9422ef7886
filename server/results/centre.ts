// The centre of several weights, axis by axis, with the ends that their tolerances of weight and place allow.
import type { Vec3 } from '../mechanics/index.ts';
import { type Cause, type Derived, type Input, known, open, unique } from '../quantities/derived.ts';

export interface Mass {
  readonly weight: Derived;
  readonly centre: Vec3 | null; // in the load's axes
  readonly slack: Vec3; // half the tolerance of its place
  readonly open: readonly [readonly Cause[], readonly Cause[], readonly Cause[]]; // why a coordinate is not known
  readonly because: readonly Cause[]; // why there is no centre at all
}

/** Masses put together: sums, and what their tolerances reach from. */
export interface Gathered {
  readonly counted: number; // those that weigh anything, or may
  readonly weight: number; // Σ m
  readonly moment: Vec3; // Σ m r
  readonly fixed: readonly [boolean, boolean, boolean]; // nothing moves the centre along an axis
  readonly ends: Float64Array; // of each: least and greatest weight, then least and greatest coordinate along each axis
  readonly weights: readonly Cause[]; // why a weight is not known
  readonly places: readonly [readonly Cause[], readonly Cause[], readonly Cause[]]; // why a coordinate is not
}

const width = 8;

/** The sums of some masses. */
export function gathered(masses: readonly Mass[]): Gathered {
  const counted = masses.filter(({ weight }) => weight.value !== 0);
  const ends = new Float64Array(counted.length * width);
  const moment: [number, number, number] = [0, 0, 0];
  const fixed: [boolean, boolean, boolean] = [true, true, true];
  const places: [Cause[], Cause[], Cause[]] = [[], [], []];
  let total = 0;
  counted.forEach(({ weight, centre, slack, open: lost, because }, i) => {
    const { value, low, high } = weight as { readonly value: number; readonly low: number; readonly high: number };
    total += value;
    ends.set([low, high], i * width);
    for (const axis of [0, 1, 2] as const) {
      const x = centre?.[axis] ?? Number.NaN;
      moment[axis] += value * x;
      fixed[axis] &&= low === high && x - slack[axis] === x + slack[axis];
      ends.set([x - slack[axis], x + slack[axis]], i * width + 2 + 2 * axis);
      places[axis].push(...lost[axis], ...because);
    }
  });
  const weights = counted.flatMap(({ weight }) => weight.because);
  return { counted: counted.length, weight: total, moment, fixed, ends, weights, places };
}

/** Σ m r / Σ m along each axis; open where a weight or a place is not known. */
export function centreOf(
  all: readonly Gathered[],
  at: unknown,
  causes: readonly Cause[],
  inputs: () => readonly Input[],
): readonly [Derived, Derived, Derived] {
  const weights = all.flatMap((one) => one.weights);
  const total = all.reduce((sum, one) => sum + one.weight, 0);
  return ([0, 1, 2] as const).map((axis) => {
    const why = unique([...causes, ...weights, ...all.flatMap((one) => one.places[axis])]);
    if (why.length || !all.some((one) => one.counted)) return open('m', why, { at });
    const value = all.reduce((sum, one) => sum + one.moment[axis], 0) / total;
    const loose = all.some((one) => !one.fixed[axis]);
    const low = loose ? Math.min(-furthest(all, axis, -1, -value), value) : value;
    const high = loose ? Math.max(furthest(all, axis, 1, value), value) : value;
    return known(value, 'm', { formula: 'sum of weight * place / sum of weight', inputs, at }, low, high);
  }) as unknown as readonly [Derived, Derived, Derived];
}

/**
 * Greatest Σ m x / Σ m over weights and places between their ends, x counted along an axis to one side. It is reached with what
 * lies beyond it heavy and the rest light; from a mean that is reached, each such choice leads to one further out, until none does.
 */
function furthest(all: readonly Gathered[], axis: 0 | 1 | 2, side: 1 | -1, from: number): number {
  const column = 2 + 2 * axis + (side > 0 ? 1 : 0);
  let best = from;
  for (;;) {
    let mass = 0;
    let moment = 0;
    for (const { ends } of all)
      for (let i = 0; i < ends.length; i += width) {
        const x = side * (ends[i + column] as number);
        const m = ends[x > best ? i + 1 : i] as number;
        mass += m;
        moment += m * x;
      }
    if (!(mass > 0 && moment / mass > best)) return best;
    best = moment / mass;
  }
}
