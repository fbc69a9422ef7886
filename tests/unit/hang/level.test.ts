// Lengths that level a load: solved again, it must hang level.
import { describe, expect, test } from 'vitest';
import { hang, levelByLengths, levelOneHook } from '../../../server/mechanics/hang/index.ts';
import type { Vec3 } from '../../../server/mechanics/vector.ts';
import { bridle, close, modelOf, type ShortRig, type ShortSling, solved } from '../../support/rigs.ts';
import data from './rigs.json';

describe('levelling', () => {
  test('legs for a hook over the centre hang level when solved again', () => {
    const picks: Vec3[] = [
      [2, 1, 0.3],
      [-1.5, 1.2, 0],
      [-1.8, -1, -0.2],
      [1.6, -1.3, 0.1],
    ];
    for (const count of [2, 3, 4]) {
      const used =
        count === 2
          ? ([
              [2, 0, 0.3],
              [-1.5, 0, 0],
            ] as Vec3[])
          : picks.slice(0, count);
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
        slings: Object.fromEntries(
          names.map((name): [string, ShortSling] => [name, ['hook', `load.${name}`, 3, 2e7, 15]]),
        ),
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
    const rig = bridle(
      1000,
      [
        [1, 0, 0],
        [2, 0, 0],
      ],
      [0, 0, -1],
    );
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
