// Legs, beams and two-crane shares against printed worked examples and closed forms; the source stands beside each.
import { describe, expect, test } from 'vitest';
import {
  envelope,
  hang,
  levelByLengths,
  levelOneHook,
  plumbShares,
  sectionForces,
  solve,
  upending,
  withTensions,
} from '../../../server/mechanics/hang/index.ts';
import type { Vec3 } from '../../../server/mechanics/vector.ts';
import { degrees, gravity, modelOf, type ShortRig, type ShortSling, solved } from '../../support/rigs.ts';
import data from './rigs.json';

/** Legs from a hook at the origin to picks given from it; stiff, so that the printed rigid statics applies (1e-4). */
function bridle(mass: number, picks: readonly Vec3[], cog: Vec3): ShortRig {
  const names = picks.map((_, i) => `P${i}`);
  const at = Object.fromEntries(names.map((name, i): [string, Vec3] => [name, picks[i]!]));
  const slings = names.map((name, i): [string, ShortSling] => [
    name,
    ['hook', `load.${name}`, Math.hypot(...picks[i]!), 2e4 * mass * gravity, 0],
  ]);
  return { hooks: { hook: [0, 0, 0] }, bodies: { load: { mass, cog, at } }, slings: Object.fromEntries(slings) };
}

const tensions = (rig: ShortRig) => solved(hang(modelOf(rig))).slings.map((sling) => sling.tension / gravity);
const close = (value: number, wanted: number, within: number) =>
  expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(within);

/** Two equal legs, each at an angle from horizontal. */
const pair = (mass: number, angle: number): ShortRig => {
  const picks: Vec3[] = [1, -1].map((side): Vec3 => [side * 2, 0, -2 * Math.tan(angle * degrees)]);
  return bridle(mass, picks, [0, 0, -2 * Math.tan(angle * degrees) - 1]);
};

describe('legs, published', () => {
  test('15,000 lb on two 16 ft legs, hook 12 ft over the picks: 10,000 lb each (BC Crane Safety, rigging quiz)', () => {
    const half = Math.sqrt(16 ** 2 - 12 ** 2);
    const rig = bridle(15000, [[half, 0, -12], [-half, 0, -12]], [0, 0, -14]); // biome-ignore format: two picks
    for (const t of tensions(rig)) close(t, 10000, 5);
    expect(solved(hang(modelOf(rig))).slings[0]!.angleFromHorizontal! / degrees).toBeCloseTo(48.59, 1);
  });

  test('1,000 lb, L 10 ft, H 5 ft: 1,000 lb a leg (sling maker’s leaflet after the ASME B30.9 angle table)', () => {
    const half = Math.sqrt(75);
    const rig = bridle(1000, [[half, 0, -5], [-half, 0, -5]], [0, 0, -7]); // biome-ignore format: two picks
    for (const t of tensions(rig)) close(t, 1000, 1);
  });

  test('1,000 lb at 60° and at 45°: 577 and 707 lb (web sling leaflet, factors 1.154 and 1.414)', () => {
    for (const t of tensions(pair(1000, 60))) close(t, 577, 0.5);
    for (const t of tensions(pair(1000, 45))) close(t, 707, 0.5);
  });

  test('500 lb between supports of unequal height: 454.5 and 304.5 lb ("Rigging Math Made Simple", lesson 4)', () => {
    // L2 is printed as 6.7 for √45, which is 0.1 % of T2.
    const rig: ShortRig = {
      hooks: { one: [-3, 0, 4], two: [6, 0, 3] },
      bodies: { load: { mass: 500, cog: [0, 0, -1], at: { P: [0, 0, 0] } } },
      slings: { one: ['one', 'load.P', 5, 1e8, 0], two: ['two', 'load.P', Math.sqrt(45), 1e8, 0] },
    };
    const [one, two] = tensions(rig);
    close(one!, 454.5, 0.5);
    close(two!, 304.5, 0.5);
  });
});

describe('legs, closed forms (statics)', () => {
  test.each([
    [60, 5773.5, 2886.8],
    [45, 7071.1, 5000.0],
    [30, 10000.0, 8660.3],
  ])('10,000 kg on two legs at %i°: W/(2 sin α)', (angle, pull, sideways) => {
    const [leg] = solved(hang(modelOf(pair(10000, angle)))).slings;
    close(leg!.tension / gravity, pull, pull * 2e-4);
    close(Math.abs(leg!.forces[1]![0]) / gravity, sideways, pull * 2e-4);
  });

  test('level lift, picks 1.2 and 2.8 m from the centre, hook 3 m over them: moment balance', () => {
    const rig = bridle(8000, [[-1.2, 0, -3], [2.8, 0, -3]], [0, 0, -4]); // biome-ignore format: two picks
    const result = solved(hang(modelOf(rig)));
    close(result.slings[0]!.tension / gravity, 6031.4, 2);
    close(result.slings[1]!.tension / gravity, 3282.9, 2);
    close(result.slings[0]!.angleFromHorizontal! / degrees, 68.2, 0.01);
    close(result.slings[1]!.angleFromHorizontal! / degrees, 46.97, 0.01);
    close(result.bodies[0]!.tilt, 0, 1e-3);
  });

  test('picks at different heights: T1 = W L1 H2/(V1 H2 + V2 H1), not the simple lever split', () => {
    const rig = bridle(6000, [[-1.5, 0, -4], [2.5, 0, -3]], [0, 0, -5]); // biome-ignore format: two picks
    const [one, two] = tensions(rig);
    close(one!, 4419.3, 1.5);
    close(two!, 2423.9, 1.5);
  });

  test.each([
    [-0.8, 3.764, 'stable'],
    [0.8, 6.483, 'unstable'],
  ])('equal legs, centre 0.25 m off and %f m over the picks: tan θ = e/(H + d)', (z, tilt, status) => {
    const rig = bridle(5000, [[2, 0, -3], [-2, 0, -3]], [0.25, 0, -3 + z]); // biome-ignore format: two picks
    const result = solved(hang(modelOf(rig)));
    close(result.bodies[0]!.tilt / degrees, tilt, 0.002);
    expect(result.status).toBe(status);
  });

  test('three legs at 120° and 60° up: W/(3 sin α)', () => {
    const picks = [0, 120, 240].map((a): Vec3 => [Math.cos(a * degrees), Math.sin(a * degrees), -Math.tan(60 * degrees)]);
    for (const t of tensions(bridle(9000, picks, [0, 0, -3]))) close(t, 3464.1, 1);
  });

  test('three legs, general: ΣF = 0', () => {
    const rig = bridle(9000, [[2, 0, -3.2], [-1, 1.6, -3.2], [-1.2, -1.5, -3.2]], [0, 0, -4]); // biome-ignore format: picks
    const result = solved(hang(modelOf(rig)));
    [3773.1, 3258.2, 3491.7].forEach((t, s) => close(result.slings[s]!.tension / gravity, t, 2));
    [3199.6, 2806.7, 2993.8].forEach((v, s) => close(result.slings[s]!.forces[1]![2] / gravity, v, 2));
  });

  test('four legs, 6 × 3 m: a quarter each when elastic, two of them all at worst', () => {
    const picks: Vec3[] = [[3, 1.5, -5], [-3, 1.5, -5], [-3, -1.5, -5], [3, -1.5, -5]]; // biome-ignore format: four picks
    const model = modelOf(bridle(20000, picks, [0, 0, -6]));
    const result = solved(hang(model));
    for (const sling of result.slings) {
      close(sling.tension / gravity, 6020.8, 1);
      close(sling.angleFromHorizontal! / degrees, 56.15, 0.01);
    }
    const hung = solve(model);
    if ('error' in hung) throw new Error(hung.error);
    for (const { most, least } of envelope(hung).slings) {
      close(most! / gravity, 12041.6, 3);
      close(least, 0, 1e-3);
    }
  });

  test('four legs, hook over an off centre: the bilinear shares are one of the sets that balance', () => {
    const corners: Vec3[] = [[-3.6, -1.8, -5], [2.4, -1.8, -5], [2.4, 1.2, -5], [-3.6, 1.2, -5]]; // biome-ignore format: picks
    const hung = solve(modelOf(bridle(20000, corners, [0, 0, -6])));
    if ('error' in hung) throw new Error(hung.error);
    const bilinear = Float64Array.from([4108, 5598, 8171, 6026], (t) => t * gravity);
    const [anchor] = withTensions(hung, bilinear).anchors;
    close(-anchor!.force[2] / gravity, 20000, 20);
    close(Math.hypot(anchor!.force[0], anchor!.force[1]) / gravity, 0, 20);
    envelope(hung).slings.forEach(({ least, most }, s) => {
      expect(bilinear[s]!).toBeLessThan(most! * 1.001);
      expect(bilinear[s]!).toBeGreaterThan(least * 0.999);
    });
  });

  test('a ring under the hook: the pendant carries the ring too, the legs do not', () => {
    const base = pair(10000, 60);
    const down = (v: Vec3): Vec3 => [v[0], v[1], v[2]];
    const load = base.bodies.load!;
    const slings = Object.entries(base.slings).map(([name, sling]): [string, ShortSling] => [
      name,
      ['ring', ...sling.slice(1)] as unknown as ShortSling,
    ]);
    const rig: ShortRig = {
      ...base,
      rings: { ring: 50 },
      bodies: { load: { ...load, cog: down(load.cog) } },
      slings: { pendant: ['hook', 'ring', 2, 1e9, 12], ...Object.fromEntries(slings) },
    };
    const result = solved(hang(modelOf(rig)));
    // T is at its middle: half its own weight more at the upper end, which is all of it at the hook.
    close(result.slings[0]!.tension / gravity, 10050 + 6, 0.01);
    close(result.slings[0]!.upperTension / gravity, 10050 + 12, 0.01);
    close(-result.anchors[0]!.force[2] / gravity, 10062, 0.001);
    close(result.slings[1]!.tension / gravity, 5773.5, 1);
  });

  test('wind on a load under a block: the hoist line leans atan(F/W) and pulls √(W² + F²)', () => {
    const wind = 12000;
    const rig: ShortRig = {
      hooks: { tip: [0, 0, 40] },
      rings: { block: 500 },
      bodies: { load: { mass: 10000, cog: [0, 0, -1], at: { A: [2, 0, 0], B: [-2, 0, 0] } } },
      slings: {
        line: ['tip', 'block', 20, 1e8, 0],
        a: ['block', 'load.A', 4, 5e7, 0],
        b: ['block', 'load.B', 4, 5e7, 0],
      },
      push: [['load', [0, 0, -1], [wind, 0, 0]]],
    };
    const result = solved(hang(modelOf(rig)));
    const all = 10500 * gravity;
    close(result.slings[0]!.tension, Math.hypot(all, wind), 1e-7 * all);
    close(90 - result.slings[0]!.angleFromHorizontal! / degrees, Math.atan(wind / all) / degrees, 1e-6);
    close(result.anchors[0]!.force[0], wind, 1e-7 * all);
  });
});

describe('beams (closed forms, statics)', () => {
  test('spreader, top slings at 60°: C = (W + Wb)/(2 tan α), T = (W + Wb)/(2 sin α)', () => {
    const half = 3;
    const top = half / Math.cos(60 * degrees);
    const ea = 1e9;
    const rig: ShortRig = {
      hooks: { hook: [0, 0, 0] },
      bodies: {
        beam: { mass: 650, cog: [0, 0, -0.01], axis: [-half, half], at: { L: [-half, 0, 0], R: [half, 0, 0] } },
        load: { mass: 12000, cog: [0, 0, -1], at: { A: [-half, 0, 0], B: [half, 0, 0] } },
      },
      slings: {
        tl: ['hook', 'beam.L', top, ea, 0],
        tr: ['hook', 'beam.R', top, ea, 0],
        dl: ['beam.L', 'load.A', 2, ea, 0],
        dr: ['beam.R', 'load.B', 2, ea, 0],
      },
    };
    const model = modelOf(rig);
    const result = solved(hang(model));
    close(result.slings[0]!.tension / gravity, 7303.5, 2);
    close(result.slings[2]!.tension / gravity, 6000, 0.1);
    const sections = sectionForces(model, result, 0)!;
    close(sections.compression.value / gravity, 3651.7, 2);
    // Self weight hung at its ends: Wb L/8 at mid-span.
    close(sections.bendingY.value, (650 * gravity * 2 * half) / 8, 2);
    close(sections.bendingY.at, 0, 1e-6);
  });

  test('lifting beam, 5 m between drops: M = W L/4 + Wb L/8', () => {
    const rig: ShortRig = {
      hooks: { hook: [0, 0, 0] },
      bodies: {
        beam: {
          mass: 900,
          cog: [0, 0, 0],
          axis: [-2.5, 2.5],
          at: { T: [0, 0, 0.3], L: [-2.5, 0, -0.2], R: [2.5, 0, -0.2] },
        },
        load: { mass: 12000, cog: [0, 0, -1], at: { A: [-2.5, 0, 0], B: [2.5, 0, 0] } },
      },
      slings: {
        top: ['hook', 'beam.T', 2, 1e9, 0],
        l: ['beam.L', 'load.A', 2, 1e9, 0],
        r: ['beam.R', 'load.B', 2, 1e9, 0],
      },
    };
    const model = modelOf(rig);
    close(sectionForces(model, solved(hang(model)), 0)!.bendingY.value / 1000, 152.62, 0.02);
  });

  test('lifting beam, centre off: tan θ = W e/(W (d + zt − zb) + Wb zt), whatever the drops’ length', () => {
    for (const drop of [1.5, 4]) {
      const rig: ShortRig = {
        hooks: { hook: [0, 0, 0] },
        bodies: {
          beam: { mass: 500, cog: [0, 0, 0], at: { T: [0, 0, 0.3], L: [-2.5, 0, -0.2], R: [2.5, 0, -0.2] } },
          load: { mass: 6000, cog: [0.1, 0, -0.8], at: { A: [-2.5, 0, 0], B: [2.5, 0, 0] } },
        },
        slings: {
          top: ['hook', 'beam.T', 2, 1e9, 0],
          l: ['beam.L', 'load.A', drop, 1e9, 0],
          r: ['beam.R', 'load.B', drop, 1e9, 0],
        },
      };
      const expected = Math.atan((6000 * 0.1) / (6000 * (0.8 + 0.5) + 500 * 0.3));
      close(solved(hang(modelOf(rig))).bodies[1]!.tilt, expected, 2e-5);
    }
  });

  test('a centre off the middle third, and one outside the beam, still add up beyond the right end', () => {
    for (const x of [-1.9, -0.8, 0.7, 1.4, 2.3]) {
      const rig: ShortRig = {
        hooks: { hook: [0, 0, 0] },
        bodies: { beam: { mass: 900, cog: [x, 0.05, -0.3], axis: [-2, 2], at: { L: [-2, 0, 0.1], R: [2, 0, 0.1] } } },
        slings: { l: ['hook', 'beam.L', 4, 1e8, 10], r: ['hook', 'beam.R', 4.1, 1e8, 10] },
      };
      const model = modelOf(rig);
      expect(sectionForces(model, solved(hang(model)), 0)!.residual).toBeLessThan(1e-9);
    }
  });
});

describe('a sling that runs free over the hook (ellipse of equal length: closed form)', () => {
  const [f, length, e] = [1.8, 7.2, 2.4];
  const free = (x0: number, depth: number): ShortRig => ({
    hooks: { hook: [0, 0, 0] },
    bodies: { load: { mass: 10000, cog: [x0, 0, -depth], at: { A: [f, 0, 0], B: [-f, 0, 0] } } },
    slings: { run: ['load.A', 'hook', 'load.B', length, 1e5 * 10000 * gravity, 0] },
  });

  /** Rest on the ellipse about the picks: a x0 sin t + b e cos t = f² sin t cos t, hook at (a cos t, b sin t). */
  function ellipse(x0: number) {
    const a = length / 2;
    const b = Math.sqrt(a * a - f * f);
    const off = (t: number) => a * x0 * Math.sin(t) + b * e * Math.cos(t) - f * f * Math.sin(t) * Math.cos(t);
    let [low, high] = [Math.PI / 2, 2];
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2;
      if (off(middle) > 0) low = middle;
      else high = middle;
    }
    const [x, z] = [a * Math.cos(low), b * Math.sin(low)];
    const parts = [Math.hypot(x + f, z), Math.hypot(x - f, z)]; // the hook stands on the side of x < 0
    const [across, up] = [x - x0, z + e];
    const angle = Math.acos(((x - f) * across + z * up) / (parts[1]! * Math.hypot(across, up)));
    const tilt = Math.atan2(Math.abs(across), up);
    return { tilt, angle, tension: 1 / (2 * Math.cos(angle)), parts };
  }

  test('centre 0.12 m off: tension, one angle for both parts, tilt and lengths', () => {
    const result = solved(hang(modelOf(free(0.12, e))));
    const [run] = result.slings;
    const exact = ellipse(0.12);
    close(exact.tilt / degrees, 5.02, 5e-4);
    // What is left is the stretch of a rope of 1e5 W.
    close(run!.tension / result.totalWeight, exact.tension, 3e-6);
    for (const part of run!.parts) close(Math.PI / 2 - part.angle, exact.angle, 1e-5);
    close(result.bodies[0]!.tilt, exact.tilt, 1e-5);
    const parts = run!.parts.map((part) => part.length).sort((a, b) => a - b);
    exact.parts.forEach((part, i) => close(parts[i]!, part, 5e-5));
    expect(result.status).toBe('stable');
  });

  test('centre in the middle: righting lever e − f²/b, and over that depth it runs away', () => {
    const b = Math.sqrt(length ** 2 / 4 - f ** 2);
    close(solved(hang(modelOf(free(0, e)))).bodies[0]!.rightingLever!, 1.361, 1e-3);
    expect(solved(hang(modelOf(free(0, f ** 2 / b + 0.02)))).status).toBe('stable');
    expect(solved(hang(modelOf(free(0, f ** 2 / b - 0.02)))).status).toBe('unstable');
  });

  test('cut at the hook into two legs that happen to pull alike: the same pose', () => {
    const ea = 3e7;
    const rig = free(0.12, e);
    const run = solved(hang(modelOf({ ...rig, slings: { run: ['load.A', 'hook', 'load.B', length, ea, 0] } })));
    const cut = (share: number): ShortRig => ({
      ...rig,
      slings: { a: ['hook', 'load.A', share * length, ea, 0], b: ['hook', 'load.B', (1 - share) * length, ea, 0] },
    });
    const difference = (share: number) => {
      const [a, b] = solved(hang(modelOf(cut(share)))).slings;
      return a!.tension - b!.tension;
    };
    let [low, high] = [0.4, 0.6];
    const rising = difference(high) > difference(low);
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (difference(middle) > 0 === rising) high = middle;
      else low = middle;
    }
    const legs = solved(hang(modelOf(cut(low))));
    close(legs.slings[0]!.tension, run.slings[0]!.tension, 1e-7 * run.totalWeight);
    close(legs.bodies[0]!.tilt, run.bodies[0]!.tilt, 1e-7);
  });
});

describe('two plumb lines', () => {
  test.each(data.shares)('$id (computed, two methods agree)', (row) => {
    if ('lever' in row) {
      const [a, b] = row.lever as [number, number];
      const shares = plumbShares({ weight: row.W!, a: [0, 0], b: [a + b, 0], cog: [a, 0] }, 0);
      if ('open' in shares) throw new Error(shares.open);
      close(shares.a / row.RA, 1, row.within);
      close(shares.b / row.RB, 1, row.within);
      return;
    }
    const weight = row.mass! * gravity;
    const load = { weight, a: row.a as [number, number], b: row.b as [number, number], cog: row.cog as [number, number] };
    const shares = plumbShares(load, row.tilt! * degrees);
    if ('open' in shares) throw new Error(shares.open);
    close(shares.a, row.RA, row.within * weight);
    close(shares.b, row.RB, row.within * weight);
    expect(shares.depth).toBeGreaterThan(0);
  });

  test('centre 3 m from one crane and 5 m from the other, level and 3° off (lever rule; 3° after 0027/ND §5.4)', () => {
    const load = { weight: 60000, a: [0, 0], b: [8, 0], cog: [3, -1.2] } as const;
    const rows: [number, number, number][] = [[0, 37500, 22500], [3, 37028, 22972], [-3, 37972, 22028]]; // biome-ignore format: rows
    for (const [tilt, a, b] of rows) {
      const shares = plumbShares(load, tilt * degrees);
      if ('open' in shares) throw new Error(shares.open);
      close(shares.a, a, 0.5);
      close(shares.b, b, 0.5);
    }
  });

  test('upending a 100 t vessel: the top takes all of it in the end (moment balance)', () => {
    const load = { weight: 100, a: [0, 0], b: [20, -1.5], cog: [9, -1.5] } as const;
    const rows: [number, number][] = [[0, 45], [30, 47.28], [60, 51.32], [80, 61.41], [90, 100]]; // biome-ignore format: rows
    for (const [tilt, top] of rows) {
      const shares = plumbShares(load, tilt * degrees);
      if ('open' in shares) throw new Error(shares.open);
      close(shares.b, top, 0.005);
      close(shares.a, 100 - top, 0.005);
    }
    const way = upending(load, 0, Math.PI / 2);
    close(way.worstB!.share, 100, 1e-9);
    close(way.worstB!.tilt, Math.PI / 2, 1e-12);
    close(way.worstA!.share, 55, 1e-9);
    expect(way.worstA!.tilt).toBe(0);
    expect(way.open).toEqual([]);
    const gaps = way.steps.slice(1).map((step, i) => step.tilt - way.steps[i]!.tilt);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(degrees * 1.0001);
  });

  test('a line that would have to push has no share, nor have lines that coincide', () => {
    expect(plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [5, -1] }, 0)).toEqual({ open: 'a-pushes' });
    expect(plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [-1, -1] }, 0)).toEqual({ open: 'b-pushes' });
    expect(plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [2, 0] }, Math.PI / 2)).toEqual({ open: 'lines-coincide' });
    const above = plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [1, 0.5] }, 5 * degrees);
    if ('open' in above) throw new Error(above.open);
    expect(above.depth).toBeLessThan(0);
    // Centre over the line: the raised end takes less; under it, more.
    expect(above.b).toBeLessThan(0.25);
  });
});

describe('levelling', () => {
  test('legs for a hook over the centre hang level when solved again', () => {
    const picks: Vec3[] = [[2, 1, 0.3], [-1.5, 1.2, 0], [-1.8, -1, -0.2], [1.6, -1.3, 0.1]]; // biome-ignore format: picks
    for (const count of [2, 3, 4]) {
      const used = count === 2 ? ([[2, 0, 0.3], [-1.5, 0, 0]] as Vec3[]) : picks.slice(0, count); // biome-ignore format: picks
      const names = used.map((_, i) => `P${i}`);
      const rig: ShortRig = {
        hooks: { hook: [0, 0, 10] },
        bodies: {
          load: {
            mass: 7000,
            cog: count === 2 ? [0.2, 0, -0.9] : [0.1, 0.1, -0.9],
            at: Object.fromEntries(names.map((name, i): [string, Vec3] => [name, used[i]!])),
          },
        },
        slings: Object.fromEntries(names.map((name): [string, ShortSling] => [name, ['hook', `load.${name}`, 3, 2e7, 15]])),
      };
      const model = modelOf(rig);
      const level = levelOneHook(model, 4)!;
      const slings = model.slings.map((sling, s) => ({ ...sling, length: level.lengths[s]! }));
      const result = solved(hang({ ...model, slings }));
      close(result.bodies[0]!.tilt, 0, 1e-7);
      close(result.bodies[0]!.hookOverCentre![2], 4 + 0.9, 1e-6);
      result.slings.forEach((sling, s) => close(sling.tension, level.tensions[s]!, 1e-6 * result.totalWeight));
    }
  });

  test('no legs, or legs that cannot hold it so: no answer', () => {
    const rig = bridle(1000, [[1, 0, 0], [2, 0, 0]], [0, 0, -1]); // biome-ignore format: both picks on one side
    expect(levelOneHook(modelOf(rig), 3)).toBe(null);
  });

  test('turnbuckles under a spreader bring the load level, inside their ranges or as far as those go', () => {
    const model = modelOf(data.rigs.find((row) => row.id === 'T2-spreader-4pick-offxy') as unknown as ShortRig);
    const free = (range: number) =>
      [0, 1, 2, 3, 4, 5].map((sling) => {
        const { length } = model.slings[sling]!;
        return { sling, least: length - range, most: length + range };
      });
    const level = levelByLengths(model, 1, free(0.5));
    if ('error' in level) throw new Error(level.error);
    close(level.tilt, 0, 1e-8);
    const slings = model.slings.map((sling, s) => ({ ...sling, length: level.lengths[s]! }));
    close(solved(hang({ ...model, slings })).bodies[1]!.tilt, 0, 1e-8);
    const short = levelByLengths(model, 1, free(0.03));
    if ('error' in short) throw new Error(short.error);
    expect(short.tilt).toBeGreaterThan(0.01);
    expect(short.tilt).toBeLessThan(solved(hang(model)).bodies[1]!.tilt);
    short.lengths.forEach((length, s) => expect(Math.abs(length - model.slings[s]!.length)).toBeLessThan(0.03 + 1e-12));
  });
});
