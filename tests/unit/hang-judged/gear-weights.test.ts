// What gear itself weighs pulls on what carries it, at the heavy end of its tolerance.
import { describe, expect, test } from 'vitest';
import type { Snapshot } from '../../../server/workspace/types.ts';
import { figure, g, hang, hook, openWhy, sling } from '../../support/hanging.ts';

const beam = (weight: string) =>
  hang({
    weight: 2000,
    cog: '(0, 0, 0) m',
    picks: { W: '(-1, 0, 1) m', E: '(1, 0, 1) m' },
    gear: [
      'hook Hook: weight 50 kg ± 10 kg, capacity 10 t',
      `spreader Beam: weight ${weight}, capacity 10 t, least angle 45 deg`,
      '  point BW: at (-1, 0, 0) m, capacity 10 t',
      '  point BE: at (1, 0, 0) m, capacity 10 t',
      ...['T1', 'T2', 'S1', 'S2'].map((name) => sling(name, 2)),
    ],
    legs: ['Hook > T1 > BW', 'Hook > T2 > BE', 'BW > S1 > W', 'BE > S2 > E'],
  });

test('a beam of 300 kg, 100 kg more or less, hangs on its top slings with 400 kg (by hand: sum of forces)', () => {
  const [loose, heavy] = [beam('300 kg ± 100 kg'), beam('400 kg')];
  expect(figure(loose, 'hook', 'Hook', 'tension') / g).toBeCloseTo(2000 + 400 + 60, 6);
  for (const name of ['T1', 'T2', 'S1', 'S2'])
    expect(figure(loose, 'sling', name, 'tension')).toBeCloseTo(figure(heavy, 'sling', name, 'tension'), 6);
  // Half of 2,400 kg each at arccos 1/2 from horizontal.
  expect(figure(loose, 'sling', 'T1', 'tension') / g).toBeCloseTo(1200 / Math.sin(Math.PI / 3), 0);
});

describe('gear that hangs beside the legs pulls on what carries it (by hand: sum of forces)', () => {
  const two = (...more: readonly string[]) =>
    hang({
      weight: 2000,
      cog: '(0, 0, 0) m',
      picks: { W: '(-1, 0, 1) m', E: '(1, 0, 1) m' },
      gear: [hook('Hook'), sling('S1', 2), sling('S2', 2), ...more],
      legs: ['Hook > S1 > W', 'Hook > S2 > E'],
    });
  const hookTakes = (s: Snapshot) => figure(s, 'hook', 'Hook', 'tension') / g;
  const slingsTake = (s: Snapshot) =>
    ['S1', 'S2'].map((name) => (figure(s, 'sling', name, 'tension') / g) * Math.sin(Math.PI / 3));

  test('from the load: on both slings, the pick and the hook', () => {
    const s = two('other "Tags": weight 200 kg ± 40 kg, count 2, hangs from "Load"');
    expect(hookTakes(s)).toBeCloseTo(2000 + 480, 4);
    for (const each of slingsTake(s)) expect(each).toBeCloseTo(1240, 1);
  });

  test('from the hook, or from nothing that is said: on the hook alone', () => {
    for (const where of [', hangs from "Hook"', '']) {
      const s = two(`other "Tag": weight 500 kg${where}`);
      expect(hookTakes(s)).toBeCloseTo(2500, 4);
      for (const each of slingsTake(s)) expect(each).toBeCloseTo(1000, 1);
    }
  });

  test('from a sling, and from what hangs on it: on that sling', () => {
    const s = two('other "Scale": weight 60 kg, hangs from S1', 'other "Display": weight 40 kg, hangs from "Scale"');
    expect(hookTakes(s)).toBeCloseTo(2100, 4);
    const [first = 0, second = 0] = slingsTake(s);
    expect(first).toBeGreaterThan(1050); // more than its half of all: the load leans to it, and the sling stands steeper
    expect(second).toBeLessThan(1050);
  });

  test('a circle of them ends nowhere: every hook counts it', () => {
    const s = two('other "A": weight 60 kg, hangs from "B"', 'other "B": weight 40 kg, hangs from "A"');
    expect(hookTakes(s)).toBeCloseTo(2100, 4);
  });

  test('of unknown weight: the tensions are open', () => {
    const s = two('other "Tag": weight ?, hangs from "Load"');
    expect(openWhy(s, 'sling', 'S1', 'tension').join()).toBe('weight is not known yet (?).');
  });

  test('on two hooks either line may carry what hangs from the load', () => {
    const s = hang({
      weight: 1000,
      cog: '(0, 0, -1) m',
      picks: { W: '(-1, 0, 0) m', E: '(1, 0, 0) m' },
      gear: [hook('HW'), hook('HE'), sling('S1', 2), sling('S2', 2), 'other "Tag": weight 100 kg, hangs from "Load"'],
      legs: { west: ['HW > S1 > W'], east: ['HE > S2 > E'] },
    });
    for (const name of ['HW', 'HE']) expect(figure(s, 'hook', name, 'tension') / g).toBeCloseTo(600, 4);
    for (const name of ['W', 'E']) expect(figure(s, 'pick', name, 'pull') / g).toBeCloseTo(600, 4);
  });
});
