// What gear itself weighs pulls on what carries it, at the heavy end of its tolerance.
import { expect, test } from 'vitest';
import { figure, g, hang, sling } from '../../support/hanging.ts';

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
