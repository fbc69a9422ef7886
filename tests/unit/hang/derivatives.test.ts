// The energy's gradient and Hessian against differences, and the small linear algebra against its own definitions.
import { describe, expect, test } from 'vitest';
import { gradient, measure } from '../../../server/mechanics/hang/energy.ts';
import { cholesky, choleskySolve, eigenSymmetric, nearNullSpace } from '../../../server/mechanics/hang/linear.ts';
import { copyPose, drawnPose, type Pose, take, type Unknowns, unknowns } from '../../../server/mechanics/hang/pose.ts';
import { layOut, type Rig } from '../../../server/mechanics/hang/rig.ts';
import { lengthRates } from '../../../server/mechanics/hang/sensitivity.ts';
import { largest } from '../../../server/mechanics/hang/simplex.ts';
import { solve } from '../../../server/mechanics/hang/solve.ts';
import { hessian } from '../../../server/mechanics/hang/stiffness.ts';
import { drawFrom, tameRig } from '../../support/random-rigs.ts';
import { modelOf, type ShortRig, seeded } from '../../support/rigs.ts';

const overBody: ShortRig = {
  // A path with two nodes on one body and a middle node over a second one, and wind.
  hooks: { hook: [0, 0, 3] },
  bodies: {
    beam: { mass: 300, cog: [0.1, 0, 0], at: { L: [-1, 0, 0.1], R: [1, 0.1, 0.1], U: [0, 0, -0.2] } },
    load: { mass: 2000, cog: [0.1, 0.1, -1], at: { A: [-1, 0, 0], B: [1, 0.2, 0], C: [0, -0.5, 0.1] } },
  },
  slings: {
    over: ['load.A', 'beam.L', 'beam.R', 'load.B', 6, 3e6, 12],
    top: ['hook', 'beam.L', 2, 3e6, 3],
    top2: ['hook', 'beam.R', 2.1, 3e6, 0],
    mid: ['beam.U', 'load.C', 2, 2e6, 0],
  },
  push: [['load', [0.3, 0.1, -0.5], [900, -400, 100]]],
};

const draw = drawFrom(seeded(99));
const rigs = [overBody, ...Array.from({ length: 24 }, () => tameRig(draw))].map((rig, i) => ({ i, rig }));

function moved(rig: Rig, pose: Pose, u: Unknowns, k: number, amount: number): Pose {
  const step = new Float64Array(u.n);
  step[k] = amount * u.scale[k]!;
  const next = copyPose(pose);
  take(rig, pose, u, step, next);
  measure(rig, next);
  return next;
}

describe.each(rigs)('rig $i', ({ rig: short }) => {
  const model = modelOf(short);

  test('gradient = central differences of the energy, at any pose', () => {
    const rig = layOut(model) as Rig;
    const u = unknowns(rig, true);
    const random = drawFrom(seeded(3));
    const pose = drawnPose(rig);
    const step = Float64Array.from({ length: u.n }, () => random(-1, 1));
    for (let i = 0; i < rig.movers; i++) step[u.at[i]! + 2] = -5 + random(-1, 1);
    take(rig, copyPose(pose), u, step, pose);
    measure(rig, pose);
    const g = new Float64Array(u.n);
    gradient(rig, pose, u, g);
    const size = Math.max(rig.totalWeight, ...pose.tension);
    for (let k = 0; k < u.n; k++) {
      const h = 1e-5;
      const slope = (moved(rig, pose, u, k, h).energy - moved(rig, pose, u, k, -h).energy) / (2 * h);
      expect(Math.abs(slope - g[k]! * u.scale[k]!)).toBeLessThan(1e-6 * size);
    }
  });

  test('Hessian = central differences of the gradient at rest, and symmetric', () => {
    const hung = solve(model);
    if ('error' in hung) throw new Error(hung.error);
    const { rig, pose, unknowns: u } = hung;
    const h = new Float64Array(u.n * u.n);
    hessian(rig, pose, u, h);
    const scaled = (i: number, j: number) => h[i * u.n + j]! * u.scale[i]! * u.scale[j]!;
    const size = Math.max(...Array.from({ length: u.n }, (_, i) => scaled(i, i)));
    const plus = new Float64Array(u.n);
    const minus = new Float64Array(u.n);
    for (let j = 0; j < u.n; j++) {
      gradient(rig, moved(rig, pose, u, j, 1e-6), u, plus);
      gradient(rig, moved(rig, pose, u, j, -1e-6), u, minus);
      for (let i = 0; i < u.n; i++) {
        const slope = ((plus[i]! - minus[i]!) / 2e-6) * u.scale[i]!;
        expect(Math.abs(slope - scaled(i, j))).toBeLessThan(1e-6 * size);
        expect(Math.abs(scaled(i, j) - scaled(j, i))).toBeLessThan(1e-12 * size);
      }
    }
  });
});

test('sensitivity to lengths = differences of full solves', () => {
  let compared = 0;
  for (const { rig: short } of rigs) {
    const model = modelOf(short);
    const hung = solve(model);
    if ('error' in hung || hung.kind.status !== 'stable') continue;
    const rates = lengthRates(hung.rig, hung.pose, hung.unknowns)!;
    const all = hung.rig.totalWeight;
    model.slings.forEach((sling, s) => {
      const at = (change: number) => {
        const slings = model.slings.map((one, i) => (i === s ? { ...one, length: sling.length + change } : one));
        const other = solve({ ...model, slings });
        if ('error' in other) throw new Error(other.error);
        return other.pose;
      };
      const [longer, shorter] = [at(1e-5), at(-1e-5)];
      for (let k = 0; k < model.slings.length; k++) {
        // A sling that goes slack in between has no one slope.
        if (longer.tension[k]! > 0 !== shorter.tension[k]! > 0) continue;
        const slope = (longer.tension[k]! - shorter.tension[k]!) / 2e-5;
        const size = all + (hung.rig.ea[s]! * hung.pose.length[s]!) / hung.rig.rest[s]! ** 2;
        expect(Math.abs(slope - rates[s]!.tension[k]!)).toBeLessThan(2e-4 * size);
        compared++;
      }
    });
  }
  expect(compared).toBeGreaterThan(100);
});

describe('linear algebra', () => {
  const random = drawFrom(seeded(1));
  const symmetric = (n: number) => {
    const a = new Float64Array(n * n);
    for (let i = 0; i < n; i++) for (let j = 0; j <= i; j++) a[i * n + j] = a[j * n + i] = random(-1, 1);
    return a;
  };

  test.each([1, 2, 3, 7, 24, 48])('eigenvectors of %i × %i rebuild the matrix and stand square', (n) => {
    const a = symmetric(n);
    const { values, vectors } = eigenSymmetric(a, n);
    const rebuilt = new Float64Array(n * n);
    for (let k = 0; k < n; k++) {
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) rebuilt[i * n + j]! += values[k]! * vectors[k * n + i]! * vectors[k * n + j]!;
      }
      for (let l = 0; l < n; l++) {
        let dot = 0;
        for (let i = 0; i < n; i++) dot += vectors[k * n + i]! * vectors[l * n + i]!;
        expect(Math.abs(dot - (k === l ? 1 : 0))).toBeLessThan(1e-12);
      }
      if (k > 0) expect(values[k]!).toBeGreaterThanOrEqual(values[k - 1]!);
    }
    a.forEach((value, i) => expect(Math.abs(rebuilt[i]! - value)).toBeLessThan(1e-12 * n));
  });

  test('eigenvalues of a chain of n equal springs: 2 − 2 cos(kπ/(n + 1)) (textbook result)', () => {
    const n = 12;
    const a = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      a[i * n + i] = 2;
      if (i > 0) a[i * n + i - 1] = a[(i - 1) * n + i] = -1;
    }
    const { values } = eigenSymmetric(a, n);
    values.forEach((value, k) => expect(value).toBeCloseTo(2 - 2 * Math.cos(((k + 1) * Math.PI) / (n + 1)), 12));
  });

  test('Cholesky solves what is positive, and refuses what is not', () => {
    const n = 9;
    const a = symmetric(n);
    const lower = new Float64Array(n * n);
    expect(cholesky(a, n, 0, lower)).toBe(false);
    expect(cholesky(a, n, n, lower)).toBe(true);
    const x = Float64Array.from({ length: n }, () => random(-1, 1));
    const b = Float64Array.from(x, (v, i) => n * v + x.reduce((sum, value, j) => sum + a[i * n + j]! * value, 0));
    choleskySolve(lower, n, b);
    b.forEach((value, i) => expect(Math.abs(value - x[i]!)).toBeLessThan(1e-12));
  });

  test('null space of rows that repeat', () => {
    const a = Float64Array.from([1, 1, 1, 2, 2, 2]);
    const base = nearNullSpace(a, 2, 3, 1e-3);
    expect(base.length).toBe(2);
    for (const vector of base) expect(Math.abs(vector[0]! + vector[1]! + vector[2]!)).toBeLessThan(1e-12);
  });

  test('a linear programme with a known corner, and one without a bound', () => {
    // z1 ≤ 4, 2 z2 ≤ 12, 3 z1 + 2 z2 ≤ 18, z ≥ 0: 3 z1 + 5 z2 = 36 at (2, 6) (textbook example, Hillier and Lieberman).
    const rows = [
      [-1, 0],
      [0, -2],
      [-3, -2],
      [1, 0],
      [0, 1],
    ];
    expect(largest([3, 5], [4, 12, 18, 0, 0], rows)).toBeCloseTo(36, 12);
    expect(
      largest(
        [1, 0],
        [4, 0],
        [
          [1, 0],
          [0, 1],
        ],
      ),
    ).toBe(Number.POSITIVE_INFINITY);
  });
});
