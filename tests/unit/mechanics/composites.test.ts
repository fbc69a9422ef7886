// Volumes, masses and centres of single shapes and of bodies put together, against the rows of composites.json.
import { expect, test } from 'vitest';
import {
  type Axis,
  apply,
  axisRotation,
  centreOf,
  multiply,
  type PointMass,
  type Shape,
  turn,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { belowInDome } from '../../../server/mechanics/interiors/round.ts';
import table from './composites.json' with { type: 'json' };
import { made } from './specimens.ts';

interface Part {
  readonly shape?: Shape;
  readonly at: Vec3;
  readonly axis?: Axis;
  readonly turns?: readonly (readonly [number, Axis])[];
  readonly density?: number;
  readonly mass?: number;
}

interface Row {
  readonly id: string;
  readonly parts: readonly Part[];
  readonly expected: { readonly volume?: number; readonly mass: number; readonly centre: Vec3 };
}

const rows = table.rows as unknown as readonly Row[];

function massOf({ shape, at, axis = 'z', turns = [], density = 0, mass = 0 }: Part): PointMass {
  if (!shape) return { mass, at };
  const { volume, centre } = made(shape);
  const R = turns.reduce((before, [angle, about]) => multiply(turn(angle, about), before), axisRotation(axis));
  return { mass: volume * density, at: apply({ R, t: at }, centre) };
}

test.each(rows.map((row) => [row.id, row] as const))('%s', (_, { parts, expected }) => {
  const { mass, centre } = centreOf(parts.map(massOf));
  expect(Math.abs(mass / expected.mass - 1)).toBeLessThan(table.within);
  for (const axis of [0, 1, 2] as const)
    expect(Math.abs(centre![axis] - expected.centre[axis])).toBeLessThan(table.within);
  if (expected.volume !== undefined) {
    const volume = parts.reduce((sum, { shape }) => sum + (shape ? made(shape).volume : 0), 0);
    expect(Math.abs(volume / expected.volume - 1)).toBeLessThan(table.within);
  }
});

test('no row was lost', () => expect(rows.length).toBe(20));

// Invented; computed, two methods agree. A head turned from a solid: outer half axes longer by 20 mm, flange 50 mm.
test('VOL-ellipsoidal-head-1, as the difference of two domes', () => {
  const dome = (across: number, up: number) =>
    belowInDome(
      { form: 'dome', low: -0.05, tangent: 0, end: { curve: 'spheroid', across, up, grown: 0 } },
      [0, 0, 1],
      9,
    );
  const [outer, inner] = [dome(1.02, 0.52), dome(1, 0.5)];
  const volume = outer.volume - inner.volume;
  expect(volume).toBeCloseTo(0.0922329715191916, 11);
  expect((outer.moment[2] - inner.moment[2]) / volume).toBeCloseTo(0.2650168036695577, 10);
});
