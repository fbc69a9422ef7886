// What a rig can come to besides hanging well: falling over, spinning in the wind, rolling free, and every named error.
import { describe, expect, test } from 'vitest';
import { type HangModel, hang, sectionForces } from '../../../server/mechanics/hang/index.ts';
import type { Vec3 } from '../../../server/mechanics/vector.ts';
import { degrees, modelOf, type ShortRig, solved } from '../../support/rigs.ts';

const twoLegs = (cog: Vec3, more: Partial<ShortRig> = {}): ShortRig => ({
  hooks: { hook: [0, 0, 0] },
  bodies: { load: { mass: 4000, cog, at: { A: [2, 0, 0], B: [-2, 0, 0] } } },
  slings: { a: ['hook', 'load.A', 4, 2e7, 0], b: ['hook', 'load.B', 4, 2e7, 0] },
  ...more,
});

const fourLegs = (cog: Vec3, push: ShortRig['push'] = []): ShortRig => ({
  hooks: { hook: [0, 0, 0] },
  bodies: {
    load: { mass: 4000, cog, at: { A: [2, 1.5, 0], B: [-2, 1.5, 0], C: [-2, -1.5, 0], D: [2, -1.5, 0] } },
  },
  slings: Object.fromEntries(['A', 'B', 'C', 'D'].map((p) => [p, ['hook', `load.${p}`, 4, 2e7, 0]])),
  push: push!,
});

describe('a load that does not hang as drawn', () => {
  test('centre over two picks, exactly in the middle: the drawn pose, unstable, and the end of the fall', () => {
    const result = solved(hang(modelOf(twoLegs([0, 0, 0.5]))));
    expect(result).toMatchObject({ status: 'unstable', mode: 'topples', turnsOver: true });
    expect(result.turned).toBeLessThan(1e-9);
    expect(result.afterTopple!.turned / degrees).toBeCloseTo(180, 3);
    expect(result.bodies[0]!.rightingLever).toBe(null);
  });

  test('the same a little off the middle falls by itself, and reads the same', () => {
    const result = solved(hang(modelOf(twoLegs([0.05, 0.02, 0.5]))));
    expect(result).toMatchObject({ status: 'unstable', mode: 'topples', turnsOver: true });
    expect(result.turned / degrees).toBeLessThan(10);
    expect(result.afterTopple!.turned / degrees).toBeGreaterThan(150);
  });

  test('while typing it is told without the search', () => {
    const result = hang(modelOf(twoLegs([0.05, 0.02, 0.5])), { quick: true });
    expect(result).toMatchObject({ error: 'does-not-hang-as-drawn', name: 'load' });
    expect((result as { turned: number }).turned / degrees).toBeGreaterThan(150);
    const exact = solved(hang(modelOf(twoLegs([0, 0, 0.5])), { quick: true }));
    expect(exact).toMatchObject({ status: 'unstable', turnsOver: true, afterTopple: null });
  });

  test('quick and full agree on everything that hangs', () => {
    const model = modelOf(fourLegs([0.3, 0.1, -0.6]));
    expect(hang(model, { quick: true })).toEqual(hang(model));
  });

  test('high centre over four spread legs is stable; over soft, narrow ones it is not', () => {
    expect(solved(hang(modelOf(fourLegs([0, 0, 1])))).status).toBe('stable');
    const narrow: ShortRig = {
      hooks: { hook: [0, 0, 0] },
      bodies: {
        load: {
          mass: 4000,
          cog: [0, 0, 2],
          at: { A: [0.3, 0.3, 0], B: [-0.3, 0.3, 0], C: [-0.3, -0.3, 0], D: [0.3, -0.3, 0] },
        },
      },
      slings: Object.fromEntries(['A', 'B', 'C', 'D'].map((p) => [p, ['hook', `load.${p}`, 4, 4e5, 0]])),
    };
    expect(solved(hang(modelOf(narrow)))).toMatchObject({ status: 'unstable', turnsOver: true });
  });

  test('a leg far too long turns the load by more than 30°: at rest there, but not as drawn', () => {
    const rig = twoLegs([0.5, 0, -1], {
      slings: { a: ['hook', 'load.A', 3, 2e7, 0], b: ['hook', 'load.B', 9, 2e7, 0] },
    });
    const result = solved(hang(modelOf(rig)));
    expect(result).toMatchObject({ status: 'stable', turnsOver: true, afterTopple: null });
    expect(hang(modelOf(rig), { quick: true })).toMatchObject({ error: 'does-not-hang-as-drawn', name: 'load' });
    expect(result.slings[1]).toMatchObject({ tension: 0, slack: true, angleFromHorizontal: null, parts: [] });
    expect(result.turned / degrees).toBeGreaterThan(30);
  });
});

describe('kinds of rest', () => {
  const wind = (x: number) => fourLegs([0, 0, -1], [['load', [x, 0, -0.8], [3000, 0, 0]]]);

  test('wind that pushes on the windward side turns the rig about the hook line: it spins, it does not topple', () => {
    const result = solved(hang(modelOf(wind(-1))));
    expect(result).toMatchObject({ status: 'unstable', mode: 'spins', turnsOver: false, afterTopple: null });
    expect(solved(hang(modelOf(wind(1))))).toMatchObject({ status: 'stable', mode: null });
  });

  test('a pipe on two lines, its picks and centre on one line, rolls free; tensions stay', () => {
    const rig: ShortRig = {
      hooks: { left: [0, 0, 20], right: [6, 0, 20] },
      bodies: { pipe: { mass: 3000, cog: [2.5, 0, 0], axis: [-1, 7], at: { A: [0, 0, 0], B: [6, 0, 0] } } },
      slings: { a: ['left', 'pipe.A', 10, 2e7, 0], b: ['right', 'pipe.B', 10, 2e7, 0] },
    };
    const model = modelOf(rig);
    const result = solved(hang(model));
    expect(result.status).toBe('neutral');
    expect(result.bodies[0]).toMatchObject({ freeToRoll: true, orientationUnique: false, rightingLever: null });
    expect(result.slings[0]!.tension / result.totalWeight).toBeCloseTo(3.5 / 6, 3);
    expect(sectionForces(model, result, 0)!.residual).toBeLessThan(1e-9);
  });

  test('a ring has no rotation to be free in: pendant, ring and legs are stable', () => {
    const rig: ShortRig = {
      ...twoLegs([0, 0, -1]),
      rings: { ring: 0 },
      slings: {
        pendant: ['hook', 'ring', 1, 2e7, 0],
        a: ['ring', 'load.A', 4, 2e7, 0],
        b: ['ring', 'load.B', 4, 2e7, 0],
      },
    };
    expect(solved(hang(modelOf(rig))).status).toBe('stable');
  });

  test('where the hook stands over the drawn centre', () => {
    const result = solved(hang(modelOf(twoLegs([0.3, 0, -1.5]))));
    // Equal legs: the hook stays over mid-pick in the load, 0.3 m towards −x of the marked centre.
    expect(result.bodies[0]!.hookOverCentre![0]).toBeCloseTo(-0.3, 2);
    expect(result.bodies[0]!.up[0]).toBeLessThan(0);
  });
});

describe('errors, each naming its item', () => {
  const base = modelOf(twoLegs([0, 0, -1]));
  const withSling = (change: object): HangModel => ({
    ...base,
    slings: base.slings.map((sling, s) => (s === 1 ? { ...sling, ...change } : sling)),
  });

  test('legs that cannot reach', () => {
    const rig = twoLegs([0, 0, -1], {
      slings: { a: ['hook', 'load.A', 1.5, 2e7, 0], b: ['hook', 'load.B', 1.5, 2e7, 0] },
    });
    expect(hang(modelOf(rig))).toMatchObject({ error: 'legs-too-short' });
  });

  test('legs far too soft for the weight', () => {
    expect(hang(withSling({ stiffness: 2e4 }))).toEqual({ error: 'too-soft', name: 'b' });
  });

  test('a running sling shorter than its picks are apart', () => {
    const rig = twoLegs([0, 0, -3], { slings: { run: ['load.A', 'hook', 'load.B', 3, 2e7, 0] } });
    expect(hang(modelOf(rig))).toEqual({ error: 'legs-too-short', name: 'run' });
  });

  test('paths that go nowhere', () => {
    const A = { body: 0, point: 0 };
    for (const path of [
      [A, { body: 0, point: 1 }],
      [{ anchor: 0 }, { anchor: 0 }],
      [A],
      [],
      [A, { body: 4, point: 0 }],
    ]) {
      expect(hang(withSling({ path }))).toEqual({ error: 'bad-path', name: 'b' });
    }
  });

  test('a body on nothing, and one held only by another that is', () => {
    const bodies = [...base.bodies, { name: 'tail', weight: 10, cog: [0, 0, 0] as Vec3, points: [] }];
    expect(hang({ ...base, bodies })).toEqual({ error: 'unsupported-body', name: 'tail' });
  });

  test('nothing that weighs anything', () => {
    expect(hang({ ...base, bodies: base.bodies.map((body) => ({ ...body, weight: 0 })) })).toMatchObject({
      error: 'no-weight',
    });
  });

  test('an orientation that is no rotation', () => {
    const bodies = base.bodies.map((body) => ({ ...body, orientation: [1, 0, 0, 0, 2, 0, 0, 0, 1] as const }));
    expect(hang({ ...base, bodies })).toEqual({ error: 'bad-number', name: 'load' });
  });

  test('two hooks too far apart for the slings', () => {
    const rig: ShortRig = {
      hooks: { left: [0, 0, 5], right: [30, 0, 5] },
      bodies: { load: { mass: 4000, cog: [2, 0, -1], at: { A: [0, 0, 0], B: [4, 0, 0] } } },
      slings: { a: ['left', 'load.A', 4, 2e7, 0], b: ['right', 'load.B', 4, 2e7, 0] },
    };
    expect(hang(modelOf(rig))).toMatchObject({ error: 'legs-too-short' });
  });
});

test('picks that coincide share by stiffness, and a pick right on the hook is no division by nothing', () => {
  const rig: ShortRig = {
    hooks: { hook: [0, 0, 0] },
    bodies: { load: { mass: 1000, cog: [0, 0, -1], at: { A: [0, 0, 0], B: [0, 0, 0] } } },
    slings: { a: ['hook', 'load.A', 2, 1e7, 0], b: ['hook', 'load.B', 2, 3e7, 0] },
  };
  const { slings } = solved(hang(modelOf(rig)));
  expect(slings[1]!.tension / slings[0]!.tension).toBeCloseTo(3, 6);
  const loose: ShortRig = {
    ...rig,
    slings: { a: ['hook', 'load.A', 1e-9, 1e7, 0], b: ['hook', 'load.B', 2, 1e7, 0] },
  };
  const result = hang(modelOf(loose));
  if ('error' in result) expect(result.error).not.toBe('');
  else for (const sling of result.slings) expect(Number.isFinite(sling.tension)).toBe(true);
});
