// The solver against explicit relaxation on random rigs: two methods that share nothing but the laws.
import { describe, expect, test } from 'vitest';
import { hang } from '../../../server/mechanics/hang/index.ts';
import { drawFrom, tameRig } from '../../support/random-rigs.ts';
import { relax } from '../../support/relaxation.ts';
import { modelOf, seeded, solved } from '../../support/rigs.ts';

describe('random rigs, seeded', () => {
  const draw = drawFrom(seeded(20240611));
  const rigs = Array.from({ length: 60 }, (_, i) => ({ i, rig: tameRig(draw) }));
  let compared = 0;

  test.each(rigs)('rig $i', ({ rig }) => {
    const model = modelOf(rig);
    const result = solved(hang(model));
    // A pose that falls is none that relaxation could find; nor does a rolling beam rest twice in the same place.
    if (result.status !== 'stable' || result.turnsOver) return;
    const other = relax(model);
    expect(other, 'relaxation came to rest').not.toBe(null);
    compared++;
    result.slings.forEach((sling, s) => {
      expect(Math.abs(sling.tension - other!.tensions[s]!)).toBeLessThan(2e-7 * result.totalWeight);
    });
    result.bodies.forEach((body, i) => {
      body.up.forEach((v, d) => expect(Math.abs(v - other!.ups[i]![d]!)).toBeLessThan(2e-6));
    });
  });

  test('nearly all of them were compared', () => expect(compared).toBeGreaterThanOrEqual(50));
});
