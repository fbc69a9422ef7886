// Whole rigs against values computed by at least two methods that share no formula (rigs.json says how far they agree).
import { describe, expect, test } from 'vitest';
import { hang, sectionForces } from '../../../server/mechanics/hang/index.ts';
import { degrees, modelOf, type ShortRig, solved } from '../../support/rigs.ts';
import data from './rigs.json';

interface Row extends ShortRig {
  readonly id: string;
  readonly rest: {
    readonly status: string;
    readonly turned: number;
    readonly zeroModes: number;
    /** Tension, angle from the vertical (degrees), length, force on the first and the second body. */
    readonly slings: Record<string, readonly [number, number | null, number | null, number[] | null, number[] | null]>;
    readonly bodies: Record<
      string,
      { z: number; tilt?: number; up?: number[]; lever?: number; beam?: Record<string, number> }
    >;
    readonly hooks: Record<string, number[]>;
    readonly after?: { tensions: Record<string, number>; tilt: Record<string, number> };
  };
}

const rows = data.rigs as unknown as Row[];

/** Computed, two methods agree; differences allowed are a hundred times wider than that agreement. */
describe('rigs at rest (computed, two methods agree)', () => {
  test('none is left out', () => expect(rows.length).toBe(39));

  test.each(rows)('$id', (row) => {
    const result = solved(hang(modelOf(row)));
    const all = result.totalWeight;
    const near = (value: number, wanted: number, within: number) =>
      expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(within);
    expect(result.residual).toBeLessThan(1e-8);
    expect(result.status).toBe(row.rest.status);
    expect(result.zeroModes).toBe(row.rest.zeroModes);
    near(result.turned / degrees, row.rest.turned, 1e-4);

    Object.values(row.rest.slings).forEach(([tension, angle, length, onA, onB], s) => {
      const sling = result.slings[s]!;
      near(sling.tension, tension, 1e-6 * all);
      expect(sling.slack).toBe(angle === null);
      if (angle === null) expect(sling.angleFromHorizontal).toBe(null);
      else near(90 - sling.angleFromHorizontal! / degrees, angle, 1e-4);
      if (length !== null) near(sling.lengthNow, length, 1e-6);
      onA?.forEach((f, d) => near(sling.forces[0]![d]!, f, 1e-6 * all));
      onB?.forEach((f, d) => near(sling.forces.at(-1)![d]!, f, 1e-6 * all));
    });

    Object.values(row.rest.bodies).forEach((wanted, i) => {
      const body = result.bodies[i]!;
      near(body.cogHeight, wanted.z, 1e-6);
      expect(body.orientationUnique).toBe(wanted.up !== undefined);
      if (wanted.tilt !== undefined) near(body.tilt / degrees, wanted.tilt, 1e-4);
      wanted.up?.forEach((v, d) => near(body.up[d]!, v, 1e-6));
      if (wanted.lever !== undefined) near(body.rightingLever! / wanted.lever, 1, 1e-4);
    });

    Object.values(row.rest.bodies).forEach(({ beam }, i) => {
      const sections = sectionForces(modelOf(row), result, i);
      if (!beam) return;
      expect(sections!.residual).toBeLessThan(1e-9);
      near(sections!.compression.value, beam.N_compression_max!, 1e-6 * all);
      near(sections!.tension.value, beam.N_tension_max!, 1e-6 * all);
      near(sections!.shearY.value, beam.Vy!, 1e-6 * all);
      near(sections!.shearZ.value, beam.Vz!, 1e-6 * all);
      near(sections!.torsion.value, beam.Mx!, 1e-6 * all);
      near(sections!.bendingY.value, beam.My!, 1e-6 * all);
      near(sections!.bendingZ.value, beam.Mz!, 1e-6 * all);
    });

    Object.values(row.rest.hooks).forEach((force, i) => {
      force.forEach((f, d) => near(result.anchors[i]!.force[d]!, f, 1e-6 * all));
    });

    if (row.rest.after) {
      const after = result.afterTopple!;
      expect(result.turnsOver).toBe(true);
      Object.values(row.rest.after.tensions).forEach((tension, s) => near(after.tensions[s]!, tension, 1e-6 * all));
      Object.values(row.rest.after.tilt).forEach((tilt, i) => near(after.tilts[i]! / degrees, tilt, 1e-4));
    } else {
      expect(result.afterTopple).toBe(null);
    }
  });
});

test('a body that hangs on nothing is named (computed, two methods agree)', () => {
  const [row] = data.errors as unknown as (ShortRig & { id: string; error: string })[];
  expect(row!.error).toBe('UNSUPPORTED_BODY');
  expect(hang(modelOf(row!))).toEqual({ error: 'unsupported-body', name: 'loose' });
});
