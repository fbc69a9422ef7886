// Half-typed numbers, thousands of them: a balanced answer or a named error, never a number that is none, never for long.
import { expect, test } from 'vitest';
import { hang } from '../../../server/mechanics/hang/index.ts';
import { drawFrom, wildRig } from '../../support/random-rigs.ts';
import { modelOf, seeded } from '../../support/rigs.ts';

test('2,000 wild rigs', () => {
  const draw = drawFrom(seeded(12345));
  const outcomes = new Map<string, number>();
  let longest = 0;
  for (let i = 0; i < 2000; i++) {
    const model = modelOf(wildRig(draw));
    const before = performance.now();
    const result = hang(model);
    longest = Math.max(longest, performance.now() - before);
    const outcome = 'error' in result ? result.error : result.status;
    outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    if ('error' in result) continue;
    expect(result.residual).toBeLessThan(1e-8);
    const carried = result.anchors.reduce((sum, anchor) => sum - anchor.force[2], 0);
    expect(Math.abs(carried / result.totalWeight - 1)).toBeLessThan(1e-7);
    JSON.stringify(result, (key, value) => {
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`rig ${i}: ${key} is ${value}`);
      return value;
    });
  }
  // All kinds of outcome were met, and hardly a rig found no rest.
  for (const outcome of ['stable', 'neutral', 'unstable', 'legs-too-short', 'too-soft', 'no-weight']) {
    expect(outcomes.get(outcome) ?? 0, outcome).toBeGreaterThan(10);
  }
  expect(outcomes.get('no-convergence') ?? 0).toBeLessThan(40);
  // About 0.2 ms in the middle and 25 ms at worst on a quiet machine; the bound only says that nothing runs away.
  expect(longest).toBeLessThan(2000);
}, 120_000);

test('numbers that are none are refused by name', () => {
  const model = modelOf(wildRig(drawFrom(seeded(2))));
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, -1]) {
    const slings = model.slings.map((sling, s) => (s === 0 ? { ...sling, length: bad } : sling));
    expect(hang({ ...model, slings })).toEqual({ error: 'bad-number', name: slings[0]!.name });
    const bodies = model.bodies.map((body, i) => (i === 0 ? { ...body, weight: bad } : body));
    expect(hang({ ...model, bodies })).toEqual({ error: 'bad-number', name: bodies[0]!.name });
  }
});
