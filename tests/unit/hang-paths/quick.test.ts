// What is done quickly while typing, against the same worked out in full: anchors that move, tolerances by sensitivity.
import { expect, test } from 'vitest';
import { follow, solve, sweep } from '../../../server/mechanics/hang/index.ts';
import { drawFrom, tameRig } from '../../support/random-rigs.ts';
import { modelOf, seeded } from '../../support/rigs.ts';

test('a rig followed to other anchor places hangs as one solved there from nothing', () => {
  const draw = drawFrom(seeded(31));
  let compared = 0;
  for (let i = 0; i < 60; i++) {
    const model = modelOf(tameRig(draw));
    const hung = solve(model, { quick: true });
    if ('error' in hung || hung.kind.status !== 'stable') continue;
    const anchors = model.anchors.map((anchor, k) => ({
      ...anchor,
      at: [anchor.at[0] + 0.02 * k, anchor.at[1], anchor.at[2] + 0.05 * k] as const,
    }));
    const near = follow(
      hung,
      anchors.map((anchor) => anchor.at),
    );
    const cold = solve({ ...model, anchors }, { quick: true });
    if (!near || 'error' in cold) continue;
    compared++;
    for (const [s, tension] of cold.pose.tension.entries())
      expect(Math.abs((near.pose.tension[s] as number) - tension) / cold.rig.totalWeight).toBeLessThan(1e-6);
  }
  expect(compared).toBeGreaterThan(20);
});

test('length tolerances taken as sensitivity asks: within a thousandth of the weight of every corner solved', () => {
  const draw = drawFrom(seeded(7));
  let compared = 0;
  for (let i = 0; i < 60 && compared < 20; i++) {
    const model = modelOf(tameRig(draw));
    const lengths = model.slings.map(() => 0.005);
    const tolerances = { centres: [{ body: 0, half: [0.03, 0.03, 0] as const }], lengths };
    if (lengths.length > 6) continue;
    const full = sweep(model, tolerances);
    const quick = sweep(model, { ...tolerances, quickOver: 0 });
    if ('error' in full || 'error' in quick || full.unstable) continue;
    compared++;
    const all = model.bodies.reduce((sum, body) => sum + body.weight, 0);
    for (const [s, { high }] of full.tensions.entries()) {
      const found = quick.tensions[s]?.high ?? Number.NaN;
      expect(found).toBeLessThanOrEqual(high * (1 + 1e-9) + 1e-6);
      expect((high - found) / all).toBeLessThan(1e-3);
    }
    expect(quick.corners).toBeLessThanOrEqual(full.corners);
  }
  expect(compared).toBeGreaterThanOrEqual(15);
});
