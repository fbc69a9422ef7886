// Worst sharing and worst tolerances against values computed by two methods, and against other ways to the same number.
import { describe, expect, test } from 'vitest';
import {
  diagonalPairs,
  envelope,
  envelopeOverBox,
  extremeSharings,
  type HangModel,
  hang,
  solve,
  sweep,
  withTensions,
} from '../../../server/mechanics/hang/index.ts';
import type { Vec3 } from '../../../server/mechanics/vector.ts';
import { drawFrom, tameRig } from '../../support/random-rigs.ts';
import { gravity, modelOf, type ShortRig, seeded, solved } from '../../support/rigs.ts';
import data from './rigs.json';

const hung = (model: HangModel) => {
  const result = solve(model);
  if ('error' in result) throw new Error(result.error);
  return result;
};

interface EnvelopeRow extends ShortRig {
  readonly id: string;
  readonly redundancy: number;
  readonly most: Record<string, number>;
  readonly least: Record<string, number>;
  readonly diagonals?: Record<string, number>;
  readonly triples?: string[][];
  readonly within: number;
}

const envelopes = data.envelopes as unknown as EnvelopeRow[];

describe('envelopes (computed: linear programme and enumeration of triples agree)', () => {
  test('none is left out', () => expect(envelopes.length).toBe(4));

  test.each(envelopes)('$id', (row) => {
    const model = modelOf(row);
    const rest = hung(model);
    const result = envelope(rest);
    const within = row.within * rest.rig.totalWeight;
    const names = Object.keys(row.slings);
    expect(result.redundancy).toBe(row.redundancy);
    names.forEach((name, s) => {
      expect(Math.abs(result.slings[s]!.most! - row.most[name]!)).toBeLessThan(within);
      expect(Math.abs(result.slings[s]!.least - row.least[name]!)).toBeLessThan(within);
    });
    if (row.triples) {
      const states = extremeSharings(rest)!.slice(1);
      const carried = states.map((state) => names.filter((_, s) => state[s]! > 1e-6));
      // At a symmetric rig a triple carries with two of its legs.
      const holds = (triple: string[]) => carried.some((set) => set.every((name) => triple.includes(name)));
      const triples = names.map((out) => names.filter((name) => name !== out));
      expect(triples.filter(holds).map(String).sort()).toEqual(row.triples.map(String).sort());
    }
    if (row.diagonals) {
      const pairs = diagonalPairs(model, solved(hang(model)), 0, [0, 1, 2, 3])!;
      names.forEach((name, s) => expect(Math.abs(pairs[s]! - row.diagonals![name]!)).toBeLessThan(within));
    }
  });

  test('two legs carry all on an equal rectangle: W/(2 sin α) (statics of the diagonal)', () => {
    const row = envelopes.find((one) => one.id === 'ENV-BR-4leg-sym-steel')!;
    const rest = hung(modelOf(row));
    const angle = solved(hang(modelOf(row))).slings[0]!.angleFromHorizontal!;
    const expected = rest.rig.totalWeight / (2 * Math.sin(angle));
    expect(envelope(rest).slings[0]!.most! / expected).toBeCloseTo(1, 6);
  });
});

describe('the linear programme against all vertices, random rigs', () => {
  const draw = drawFrom(seeded(77));
  const rigs = Array.from({ length: 60 }, (_, i) => ({ i, rig: tameRig(draw) }));
  let redundant = 0;
  test.each(rigs)('rig $i', ({ rig }) => {
    const rest = hung(modelOf(rig));
    const { redundancy, slings } = envelope(rest);
    const states = extremeSharings(rest)!;
    if (redundancy > 0) redundant++;
    slings.forEach(({ least, most }, s) => {
      const pulls = states.map((state) => state[s]!);
      expect(most).not.toBe(null);
      expect(Math.abs(most! - Math.max(...pulls))).toBeLessThan(1e-7 * rest.rig.totalWeight);
      expect(Math.abs(least - Math.min(...pulls))).toBeLessThan(1e-7 * rest.rig.totalWeight);
    });
    for (const state of states) {
      const { anchors } = withTensions(rest, state);
      const sum = anchors.reduce((total, anchor) => total + anchor.force[2], 0);
      // The null space is taken with singular values up to 2e-3, so balance holds to that.
      expect(Math.abs(sum + rest.rig.totalWeight)).toBeLessThan(0.02 * rest.rig.totalWeight);
    }
  });
  test('many of them are indeterminate', () => expect(redundant).toBeGreaterThan(10));
});

test('redundancies: n legs n − 3, frame of 4 + 4 two, equalised pair none', () => {
  const square = (n: number): ShortRig => {
    const names = Array.from({ length: n }, (_, i) => `P${i}`);
    const at = names.map((name, i): [string, Vec3] => {
      const angle = (2 * Math.PI * i) / n;
      return [name, [2 * Math.cos(angle), 2 * Math.sin(angle), 0]];
    });
    return {
      hooks: { hook: [0, 0, 0] },
      bodies: { load: { mass: 5000, cog: [0.1, 0, -1], at: Object.fromEntries(at) } },
      slings: Object.fromEntries(names.map((name) => [name, ['hook', `load.${name}`, 4, 2e7, 0]])),
    };
  };
  for (const n of [3, 4, 5, 6]) expect(envelope(hung(modelOf(square(n)))).redundancy).toBe(n - 3);
  const frame = data.rigs.find((row) => row.id === 'T2-frame-offxy') as unknown as ShortRig;
  expect(envelope(hung(modelOf(frame))).redundancy).toBe(2);
  const four = square(4);
  const equalised: ShortRig = {
    ...four,
    slings: { P0: four.slings.P0!, P1: four.slings.P1!, pair: ['load.P2', 'hook', 'load.P3', 8, 2e7, 0] },
  };
  expect(envelope(hung(modelOf(equalised))).redundancy).toBe(0);
});

test('slings that pull against each other have no bound, and say so', () => {
  const rig: ShortRig = {
    hooks: { above: [0, 0, 5], below: [0, 0, -5] },
    bodies: { load: { mass: 1000, cog: [0, 0, -0.5], at: { T: [0, 0, 0.5], B: [0, 0, -1] } } },
    slings: { top: ['above', 'load.T', 4, 1e7, 0], tie: ['below', 'load.B', 4, 1e7, 0] },
  };
  const result = envelope(hung(modelOf(rig)));
  expect(result.slings.map((sling) => sling.most)).toEqual([null, null]);
});

test('the envelope over a box of the centre is no better than at any corner or inside', () => {
  const row = envelopes.find((one) => one.id === 'ENV-BR-4leg-off-xy')!;
  const model = modelOf(row);
  const box = envelopeOverBox(model, 0, [0.2, 0.1, 0.1]);
  if ('error' in box) throw new Error(box.error);
  const random = seeded(5);
  for (let i = 0; i < 20; i++) {
    const [x, y, z] = [0.2, 0.1, 0.1].map((half) => (2 * random() - 1) * half) as unknown as Vec3;
    const body = model.bodies[0]!;
    const moved: HangModel = {
      ...model,
      bodies: [{ ...body, cog: [body.cog[0] + x, body.cog[1] + y, body.cog[2] + z] }],
    };
    envelope(hung(moved)).slings.forEach(({ most }, s) => {
      expect(most!).toBeLessThanOrEqual(box.slings[s]!.most! + 1e-6 * 1e5);
    });
  }
});

test('a box that holds a place where the load falls has no envelope', () => {
  const rig: ShortRig = {
    hooks: { hook: [0, 0, 0] },
    bodies: { load: { mass: 1000, cog: [0, 0, -0.1], at: { A: [2, 0, 0], B: [-2, 0, 0] } } },
    slings: { a: ['hook', 'load.A', 4, 2e7, 0], b: ['hook', 'load.B', 4, 2e7, 0] },
  };
  expect(envelopeOverBox(modelOf(rig), 0, [0, 0, 0.2])).toMatchObject({
    error: 'does-not-hang-as-drawn',
    name: 'load',
  });
});

interface SweepRow extends ShortRig {
  readonly id: string;
  readonly body: string;
  readonly box: Vec3;
  readonly lengths: Record<string, number>;
  readonly nominal: Record<string, number>;
  readonly worst: Record<string, number>;
  readonly at: Record<string, string>;
  readonly corners: number;
  readonly unstable: number;
  readonly within: number;
}

const sweeps = data.sweeps as unknown as SweepRow[];

describe('tolerances (computed: every corner solved, interior points found below)', () => {
  test('none is left out', () => expect(sweeps.length).toBe(3));

  test.each(sweeps)('$id', (row) => {
    const model = modelOf(row);
    const names = Object.keys(row.slings);
    const lengths = names.map((name) => row.lengths[name] ?? 0);
    const result = sweep(model, { centres: [{ body: 0, half: row.box }], lengths });
    if ('error' in result) throw new Error(result.error);
    const within = row.within * hung(model).rig.totalWeight;
    expect(result.corners).toBe(row.corners);
    expect(result.unstable).toBe(row.unstable);
    names.forEach((name, s) => {
      expect(Math.abs(result.tensions[s]!.high - row.worst[name]!)).toBeLessThan(within);
      expect(Math.abs(hung(model).pose.tension[s]! - row.nominal[name]!)).toBeLessThan(within);
      // Mirror corners tie, so the corner itself is not compared but what it gives, solved cold.
      expect(Math.abs(coldAt(model, row, lengths, row.at[name]!).tension[s]! - result.tensions[s]!.high)).toBeLessThan(
        within,
      );
      expect(Math.abs(coldAt(model, row, lengths, signsOf(result.at[s]!)).tension[s]! - row.worst[name]!)).toBeLessThan(
        within,
      );
    });
  });
});

const signsOf = (signs: readonly number[]) => signs.map((sign) => (sign > 0 ? '+' : '-')).join('');

function coldAt(model: HangModel, row: SweepRow, lengths: readonly number[], signs: string) {
  let next = 0;
  const sign = (width: number) => (width > 0 ? (signs[next++] === '+' ? 1 : -1) : 0);
  const body = model.bodies[0]!;
  const cog = body.cog.map((c, d) => c + row.box[d]! * sign(row.box[d]!)) as unknown as Vec3;
  const slings = model.slings.map((one, s) => ({ ...one, length: one.length + lengths[s]! * sign(lengths[s]!) }));
  return hung({ ...model, bodies: [{ ...body, cog }], slings }).pose;
}

describe('more dimensions than corners can be tried', () => {
  const frame = data.rigs.find((row) => row.id === 'T2-frame-offxy') as unknown as ShortRig;
  const model = modelOf(frame);
  const lengths = model.slings.map((_, s) => (s < 6 ? 0.004 : 0));
  const tolerances = { centres: [{ body: 1, half: [0.1, 0.1, 0.1] as Vec3 }], lengths };
  const found = sweep(model, tolerances, (placed) => placed.slings.map((sling) => sling.upperTension));

  test('the search finds what every corner, solved cold one by one, has as its worst', () => {
    if ('error' in found) throw new Error(found.error);
    const worst = model.slings.map(() => 0);
    const least = model.slings.map(() => Number.POSITIVE_INFINITY);
    for (let corner = 0; corner < 2 ** 9; corner++) {
      const sign = (k: number) => ((corner >> k) & 1 ? 1 : -1);
      const [frameBody, load] = model.bodies;
      const cog = load!.cog.map((c, d) => c + 0.1 * sign(d)) as unknown as Vec3;
      const slings = model.slings.map((sling, s) => ({ ...sling, length: sling.length + lengths[s]! * sign(3 + s) }));
      const pose = hung({ ...model, slings, bodies: [frameBody!, { ...load!, cog }] }).pose;
      pose.tension.forEach((t, s) => {
        worst[s] = Math.max(worst[s]!, t);
        least[s] = Math.min(least[s]!, t);
      });
    }
    const all = 11500 * gravity;
    found.tensions.forEach(({ low, high }, s) => {
      expect(Math.abs(high - worst[s]!)).toBeLessThan(1e-7 * all);
      expect(Math.abs(low - least[s]!)).toBeLessThan(1e-7 * all);
    });
    expect(found.watched.length).toBe(8);
    expect(found.watched[0]!.high).toBeCloseTo(found.tensions[0]!.high, 3);
  });
});

test('a corner where the load falls is counted', () => {
  const rig: ShortRig = {
    hooks: { hook: [0, 0, 0] },
    bodies: { load: { mass: 1000, cog: [0, 0, -0.1], at: { A: [2, 0, 0], B: [-2, 0, 0] } } },
    slings: { a: ['hook', 'load.A', 4, 2e7, 0], b: ['hook', 'load.B', 4, 2e7, 0] },
  };
  const result = sweep(modelOf(rig), { centres: [{ body: 0, half: [0, 0, 0.2] }], lengths: [0, 0] });
  if ('error' in result) throw new Error(result.error);
  expect(result.corners).toBe(2);
  expect(result.unstable).toBe(1);
});
