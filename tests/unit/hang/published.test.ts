// Legs and beams against printed worked examples and closed forms; the source stands beside each.
import { describe, expect, test } from 'vitest';
import { envelope, hang, sectionForces, solve, withTensions } from '../../../server/mechanics/hang/index.ts';
import type { Vec3 } from '../../../server/mechanics/vector.ts';
import {
  bridle,
  close,
  degrees,
  gravity,
  modelOf,
  type ShortRig,
  type ShortSling,
  solved,
} from '../../support/rigs.ts';

const tensions = (rig: ShortRig) => solved(hang(modelOf(rig))).slings.map((sling) => sling.tension / gravity);

/** Two equal legs, each at an angle from horizontal. */
const pair = (mass: number, angle: number): ShortRig => {
  const picks: Vec3[] = [1, -1].map((side): Vec3 => [side * 2, 0, -2 * Math.tan(angle * degrees)]);
  return bridle(mass, picks, [0, 0, -2 * Math.tan(angle * degrees) - 1]);
};

describe('legs, published', () => {
  test('15,000 lb on two 16 ft legs, hook 12 ft over the picks: 10,000 lb each (BC Crane Safety, rigging quiz)', () => {
    const half = Math.sqrt(16 ** 2 - 12 ** 2);
    const rig = bridle(
      15000,
      [
        [half, 0, -12],
        [-half, 0, -12],
      ],
      [0, 0, -14],
    );
    for (const t of tensions(rig)) close(t, 10000, 5);
    expect(solved(hang(modelOf(rig))).slings[0]!.angleFromHorizontal! / degrees).toBeCloseTo(48.59, 1);
  });

  test('1,000 lb, L 10 ft, H 5 ft: 1,000 lb a leg (sling maker’s leaflet after the ASME B30.9 angle table)', () => {
    const half = Math.sqrt(75);
    const rig = bridle(
      1000,
      [
        [half, 0, -5],
        [-half, 0, -5],
      ],
      [0, 0, -7],
    );
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

  test('a heavy sling pulls more at its upper end: T + ½ w sin α, and half of it hangs on the load', () => {
    const base = pair(10000, 45);
    const slings = Object.fromEntries(
      Object.entries(base.slings).map(([name, sling]): [string, ShortSling] => [
        name,
        [...sling.slice(0, -1), 300] as unknown as ShortSling,
      ]),
    );
    const result = solved(hang(modelOf({ ...base, slings })));
    const [leg] = result.slings;
    close(leg!.tension / gravity, (10000 + 300) / (2 * Math.sin(45 * degrees)), 2);
    close((leg!.upperTension - leg!.tension) / gravity, 150 * Math.sin(45 * degrees), 0.01);
    close(-result.anchors[0]!.force[2] / gravity, 10600, 1e-3);
  });

  test('one pick: the righting lever is its height over the centre, whatever the sling weighs', () => {
    const rig: ShortRig = {
      hooks: { hook: [0, 0, 0] },
      bodies: { load: { mass: 1000, cog: [0, 0, -0.7], at: { A: [0, 0, 0] } } },
      slings: { sling: ['hook', 'load.A', 3, 1e8, 400] },
    };
    close(solved(hang(modelOf(rig))).bodies[0]!.rightingLever!, 0.7, 1e-5);
  });

  test('level lift, picks 1.2 and 2.8 m from the centre, hook 3 m over them: moment balance', () => {
    const rig = bridle(
      8000,
      [
        [-1.2, 0, -3],
        [2.8, 0, -3],
      ],
      [0, 0, -4],
    );
    const result = solved(hang(modelOf(rig)));
    close(result.slings[0]!.tension / gravity, 6031.4, 2);
    close(result.slings[1]!.tension / gravity, 3282.9, 2);
    close(result.slings[0]!.angleFromHorizontal! / degrees, 68.2, 0.01);
    close(result.slings[1]!.angleFromHorizontal! / degrees, 46.97, 0.01);
    close(result.bodies[0]!.tilt, 0, 1e-3);
  });

  test('picks at different heights: T1 = W L1 H2/(V1 H2 + V2 H1), not the simple lever split', () => {
    const rig = bridle(
      6000,
      [
        [-1.5, 0, -4],
        [2.5, 0, -3],
      ],
      [0, 0, -5],
    );
    const [one, two] = tensions(rig);
    close(one!, 4419.3, 1.5);
    close(two!, 2423.9, 1.5);
  });

  test.each([
    [-0.8, 3.764, 'stable'],
    [0.8, 6.483, 'unstable'],
  ])('equal legs, centre 0.25 m off and %f m over the picks: tan θ = e/(H + d)', (z, tilt, status) => {
    const rig = bridle(
      5000,
      [
        [2, 0, -3],
        [-2, 0, -3],
      ],
      [0.25, 0, -3 + z],
    );
    const result = solved(hang(modelOf(rig)));
    close(result.bodies[0]!.tilt / degrees, tilt, 0.002);
    expect(result.status).toBe(status);
  });

  test('three legs at 120° and 60° up: W/(3 sin α)', () => {
    const picks = [0, 120, 240].map(
      (a): Vec3 => [Math.cos(a * degrees), Math.sin(a * degrees), -Math.tan(60 * degrees)],
    );
    for (const t of tensions(bridle(9000, picks, [0, 0, -3]))) close(t, 3464.1, 1);
  });

  test('three legs, general: ΣF = 0', () => {
    const rig = bridle(
      9000,
      [
        [2, 0, -3.2],
        [-1, 1.6, -3.2],
        [-1.2, -1.5, -3.2],
      ],
      [0, 0, -4],
    );
    const result = solved(hang(modelOf(rig)));
    [3773.1, 3258.2, 3491.7].forEach((t, s) => close(result.slings[s]!.tension / gravity, t, 2));
    [3199.6, 2806.7, 2993.8].forEach((v, s) => close(result.slings[s]!.forces[1]![2] / gravity, v, 2));
  });

  test('four legs, 6 × 3 m: a quarter each when elastic, two of them all at worst', () => {
    const picks: Vec3[] = [
      [3, 1.5, -5],
      [-3, 1.5, -5],
      [-3, -1.5, -5],
      [3, -1.5, -5],
    ];
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
    const corners: Vec3[] = [
      [-3.6, -1.8, -5],
      [2.4, -1.8, -5],
      [2.4, 1.2, -5],
      [-3.6, 1.2, -5],
    ];
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
