// What each family of solids says about a shape, and the checks they share.
import type { Formula } from '../formula.ts';
import type { Vec3 } from '../vector.ts';

/** Why sizes make no body. */
export type Fault =
  /** A size is zero, below zero or no number. Figures: the size. */
  | 'not-above-zero'
  /** A size that may be zero is below it. Figures: the size. */
  | 'below-zero'
  /** Two walls are as thick as the outside. Figures: wall (as it lies across the outside), outside. */
  | 'walls-meet'
  /** Figures: bore, outside. */
  | 'bore-not-inside'
  /** Figures: bend radius, half the outside. */
  | 'bend-too-tight'
  /** Figures: angle, largest angle. */
  | 'angle-too-large'
  /** Figures: how many corners there are, how many are due. */
  | 'too-few-corners'
  /** An outline crosses or touches itself. Figures: index of the hole, -1 for the outline. */
  | 'crosses-itself'
  /** Figures: index of the hole. */
  | 'hole-outside-outline'
  /** Figures: indexes of both holes. */
  | 'holes-overlap'
  /** The section of a ring closes over its middle. Figures: section diameter, mean diameter. */
  | 'ring-closed'
  /** A knuckle radius above half the inside diameter. Figures: knuckle radius, that half. */
  | 'knuckle-too-large'
  /** A crown radius below half the inside diameter. Figures: crown radius, that half. */
  | 'crown-too-small'
  /** A corner of a turned outline lies beyond the axis. Figures: its radius. */
  | 'across-axis'
  /** A segment higher than the round it is cut from. Figures: height, diameter. */
  | 'segment-too-high'
  /** A branch that ends in the run it leaves. Figures: its length, half the outside. */
  | 'branch-too-short'
  /** A nozzle that ends before its flange does. Figures: projection, length of the flange. */
  | 'projection-too-short'
  /** A pad that does not reach beyond the pipe it stands round. Figures: pad, outside. */
  | 'pad-inside'
  /** A bolt that its nuts and washers do not fit on. Figures: length, what they take up. */
  | 'bolt-too-short'
  /** A line of fewer than two corners. Figures: how many it has. */
  | 'line-too-short'
  /** Two corners of a line, one after the other, are one point. Figures: index of the first. */
  | 'line-stands-still'
  /** A line turns back on itself. Figures: index of the corner. */
  | 'line-doubles-back'
  /** A section led round a ring comes back turned. */
  | 'line-twists'
  /** The corners at its ends take more than a straight has. Figures: its length, what they take. */
  | 'corner-too-tight'
  /** A root face as thick as the plate or thicker. Figures: root face, thickness. */
  | 'root-face-too-large'
  /** A slope or bevel of a right angle or more. Figures: the angle. */
  | 'angle-too-steep'
  /** Round wires cannot lie so close. Figures: the share stated, the largest. */
  | 'wound-too-tight'
  /** More wire than fits into the ring. Figures: its volume, what the ring holds at most. */
  | 'coil-too-full'
  /** A heap shorter than it is wide. Figures: length, base. */
  | 'heap-too-short'
  /** Cores as wide together as the slab. Figures: their width together, the slab's. */
  | 'cores-too-wide'
  /** Cores as high as the slab. Figures: their height, the slab's. */
  | 'cores-too-high';

/** Sizes that make no body: why, the figures at odds (SI), and the names of the sizes they belong to. */
export interface Impossible {
  readonly impossible: true;
  readonly reason: Fault;
  readonly figures: readonly number[];
  readonly clauses: readonly string[];
}

/** A formula with its inputs filled in; those worked out themselves stand in `from` too. */
export interface Worked {
  readonly formula: Formula;
  readonly inputs: Readonly<Record<string, number>>;
  readonly from?: Readonly<Record<string, Worked>>;
}

/** What a filled-in formula comes to. */
export const figureOf = ({ formula: by, inputs }: Worked): number => by(inputs);

/** A formula over pieces that are worked out themselves, with further inputs as they are. */
export const joined = <Name extends string>(
  formula: Formula<Name>,
  from: Readonly<Partial<Record<Name, Worked>>>,
  plain?: Readonly<Partial<Record<Name, number>>>,
): Worked => {
  const pieces = from as Readonly<Record<string, Worked>>;
  const figures = Object.fromEntries(Object.entries(pieces).map(([name, piece]) => [name, figureOf(piece)]));
  return { formula: formula as Formula, inputs: { ...figures, ...(plain as Record<string, number>) }, from: pieces };
};

/** All that is said of one kind of shape; volume, mass and centre are only asked of a shape without a fault. */
export interface Row<S> {
  fault(shape: S): Impossible | undefined;
  volume?(shape: S): Worked;
  mass?(shape: S): Worked | undefined;
  centre(shape: S): Vec3;
}

export const worked = <Name extends string>(
  formula: Formula<Name>,
  inputs: Readonly<Record<Name, number>>,
): Worked => ({ formula: formula as Formula, inputs });

export const impossible = (reason: Fault, figures: readonly number[], clauses: readonly string[]): Impossible => ({
  impossible: true,
  reason,
  figures,
  clauses,
});

const isSize = (value: number): boolean => value > 0 && value < Number.POSITIVE_INFINITY;

/** The first size that is not a number above zero. */
export function notAboveZero(sizes: Readonly<Record<string, number | undefined>>): Impossible | undefined {
  for (const [name, size] of Object.entries(sizes)) {
    if (size !== undefined && !isSize(size)) return impossible('not-above-zero', [size], [name]);
  }
  return undefined;
}

/** A size that may be left out or zero, but not below. */
export const belowZero = (name: string, size: number | undefined): Impossible | undefined =>
  size === undefined || size === 0 || isSize(size) ? undefined : impossible('below-zero', [size], [name]);

/** Two walls against the outside they stand in. */
export const wallsMeet = (wall: number, outside: number, clause = 'outside'): Impossible | undefined =>
  2 * wall < outside ? undefined : impossible('walls-meet', [wall, outside], ['wall', clause]);

/** Whether one size is above another by more than the rounding of units accounts for. */
export const exceeds = (size: number, limit: number): boolean => size > limit * (1 + 1e-9);
