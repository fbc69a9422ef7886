// Straight members along own x: rolled sections, pipes and bars, with the mass per length of a table where there is one.
import { formula } from '../formula.ts';
import type { Bar, Pipe, Section } from '../shapes.ts';
import { zero } from '../vector.ts';
import { cylinderVolume, tubeVolume } from './round.ts';
import { notAboveZero, type Row, type Worked, wallsMeet, worked } from './row.ts';

/** kg. */
export const memberMass = formula<'massPerLength' | 'length'>(
  'massPerLength * length',
  ({ massPerLength, length }) => massPerLength * length,
);

const massOf = ({ massPerLength, length }: { massPerLength?: number; length: number }): Worked | undefined =>
  massPerLength === undefined ? undefined : worked(memberMass, { massPerLength, length });

const section: Row<Section> = {
  fault: ({ length, depth, width, massPerLength }) => notAboveZero({ length, depth, width, massPerLength }),
  mass: massOf,
  centre: () => zero,
};

const pipe: Row<Pipe> = {
  fault: ({ length, outside, wall, massPerLength }) =>
    notAboveZero({ length, outside, wall, massPerLength }) ?? wallsMeet(wall, outside),
  volume: ({ outside, wall, length }) => worked(tubeVolume, { outside, wall, length }),
  mass: massOf,
  centre: () => zero,
};

const bar: Row<Bar> = {
  fault: ({ length, diameter, massPerLength }) => notAboveZero({ length, diameter, massPerLength }),
  volume: ({ diameter, length }) => worked(cylinderVolume, { diameter, length }),
  mass: massOf,
  centre: () => zero,
};

export const members = { section, pipe, bar };
