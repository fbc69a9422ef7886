// What must not change, or change by a known factor, when a plan is written another way (a mirror, another order, a ring between, a scale).
import { describe, expect, test } from 'vitest';
import { figure, g, hang, hook, type Rigged, sling } from '../../support/hanging.ts';

const soft = (name: string, length: number) =>
  `sling ${name}: length ${length} m, stiffness 2 MN, weight 12 kg, capacity 500 t`;
const rig: Rigged = {
  weight: 7000,
  cog: '(0.3, -0.2, -1.1) m',
  picks: { A: '(2, 1, 0) m', B: '(-2, 1.2, 0.1) m', C: '(-1.8, -1, 0) m', D: '(2.1, -1.1, -0.1) m' },
  gear: [hook(), soft('S1', 4), soft('S2', 4.08), soft('S3', 3.97), soft('S4', 4.08)],
  legs: ['Hook > S1 > A', 'Hook > S2 > B', 'Hook > S3 > C', 'Hook > S4 > D'],
};
const slings = ['S1', 'S2', 'S3', 'S4'];
const pulls = (made: Rigged, names = slings) => {
  const s = hang(made);
  return names.map((name) => figure(s, 'sling', name, 'elastic tension'));
};
const tilt = (made: Rigged) => figure(hang(made), 'load', 'Load', 'tilt');
/** Every place of the rig through a map of coordinates. */
const moved = (made: Rigged, to: (x: number, y: number, z: number) => readonly [number, number, number]): Rigged => {
  const point = (text: string) =>
    text.replace(
      /\(([-\d.]+), ([-\d.]+), ([-\d.]+)\)/,
      (_, x, y, z) =>
        `(${to(Number(x), Number(y), Number(z))
          .map((one) => Number(one.toFixed(9)))
          .join(', ')})`,
    );
  return {
    ...made,
    cog: point(made.cog),
    picks: Object.fromEntries(Object.entries(made.picks).map(([name, at]) => [name, point(at)])),
  };
};
/** Alike to so many digits of the weight: a leg that is slack pulls nothing. */
const alike = (a: readonly number[], b: readonly number[], digits = 6) =>
  a.forEach((value, i) => {
    expect((value - (b[i] as number)) / (7000 * g)).toBeCloseTo(0, digits);
  });

test('mirrored across x: the same pulls and tilt', () => {
  for (const pull of pulls(rig)) expect(pull).toBeGreaterThan(2000); // all four legs carry, so that the rest of this page compares something
  alike(pulls(moved(rig, (x, y, z) => [-x, y, z])), pulls(rig));
  expect(tilt(moved(rig, (x, y, z) => [-x, y, z]))).toBeCloseTo(tilt(rig), 9);
});

test('turned about z, and measured from a datum a kilometre away', () => {
  const turned = moved(rig, (x, y, z) => [0.6 * x - 0.8 * y, 0.8 * x + 0.6 * y, z]);
  alike(pulls(turned), pulls(rig));
  alike(pulls(moved(rig, (x, y, z) => [x + 1000, y - 500, z + 20])), pulls(rig), 5);
});

test('legs and gear in another order', () => {
  alike(pulls({ ...rig, legs: (rig.legs as string[]).toReversed(), gear: rig.gear.toReversed() }), pulls(rig), 9);
});

test('a sling split by a weightless ring pulls as the whole one', () => {
  const split: Rigged = {
    ...rig,
    gear: [
      hook(),
      'sling U1: length 1.5 m, stiffness 2 MN, weight 4.5 kg, capacity 500 t',
      'sling L1: length 2.5 m, stiffness 2 MN, weight 7.5 kg, capacity 500 t',
      'master link R: weight 0 kg, capacity 500 t',
      soft('S2', 4.08),
      soft('S3', 3.97),
      soft('S4', 4.08),
    ],
    legs: ['Hook > U1 > R', 'R > L1 > A', 'Hook > S2 > B', 'Hook > S3 > C', 'Hook > S4 > D'],
  };
  // What differs is where the halves of 12 kg of sling hang.
  alike(pulls(split, ['L1', 'S2', 'S3', 'S4']), pulls(rig), 2);
  expect(tilt(split)).toBeCloseTo(tilt(rig), 3);
  const bare = (made: Rigged): Rigged => ({
    ...made,
    gear: made.gear.map((line) => line.replace(/weight [\d.]+ kg/, 'weight 0 kg')),
  });
  alike(pulls(bare(split), ['L1', 'S2', 'S3', 'S4']), pulls(bare(rig)), 7);
});

describe('scales', () => {
  test('all lengths by 2.5: tensions and tilt stay', () => {
    const k = 2.5;
    const large = {
      ...moved(rig, (x, y, z) => [k * x, k * y, k * z]),
      gear: rig.gear.map((line) => line.replace(/length ([\d.]+) m/, (_, length) => `length ${Number(length) * k} m`)),
    };
    alike(pulls(large), pulls(rig), 7);
    expect(tilt(large)).toBeCloseTo(tilt(rig), 8);
  });

  test('all weights and stiffnesses by 3: tensions by 3', () => {
    const heavy = {
      ...rig,
      weight: 21000,
      gear: rig.gear.map((line) =>
        line.replace('weight 12 kg', 'weight 36 kg').replace('stiffness 2 MN', 'stiffness 6 MN'),
      ),
    };
    alike(
      pulls(heavy),
      pulls(rig).map((pull) => 3 * pull),
      7,
    );
  });

  test('three legs are determinate: ten times as stiff moves them by the strain only', () => {
    const three = (stiffness: string): Rigged => ({
      ...rig,
      legs: (rig.legs as string[]).slice(0, 3),
      gear: [
        hook(),
        ...[1, 2, 3].map((i) => `sling S${i}: length 4 m, stiffness ${stiffness}, weight 0 kg, capacity 500 t`),
      ],
    });
    alike(pulls(three('400 MN'), slings.slice(0, 3)), pulls(three('40 MN'), slings.slice(0, 3)), 2);
  });
});

test('what the hook takes is all that hangs under it', () => {
  expect(figure(hang(rig), 'hook', 'Hook', 'tension')).toBeCloseTo((7000 + 4 * 12) * g, 3);
});

describe('how the load hangs', () => {
  const two = hang({
    weight: 1000,
    cog: '(0.3, 0, -1) m',
    picks: { A: '(-1, 0, 0) m', B: '(1, 0, 0) m' },
    gear: [hook(), sling('S1', 3), sling('S2', 3)],
    legs: ['Hook > S1 > A', 'Hook > S2 > B'],
    load: ['part "Hull": box 4 x 2 x 1 m, density 125 kg/m3, at (0, 0, -0.5 m)'],
  });
  const [load] = two.results.hanging.loads;
  const b = Math.sqrt(8);

  test('tilt, the low side, and where the hook stands from the marked centre', () => {
    // The hook hangs b over the picks' middle in the load's axes, so it stands −0.3 m along x from the centre.
    expect(load?.tilt).toBeCloseTo(Math.atan2(0.3, b + 1), 3);
    expect(load?.low).toBe('B');
    expect(load?.hookOver?.[0]).toBeCloseTo(-0.3, 3);
    expect(load?.hookOver?.[1]).toBeCloseTo(0, 6);
  });

  test('reach below the hook to the lowest and the highest point of its box', () => {
    const t = load?.tilt ?? 0;
    const below = (x: number, z: number) => (b - z) * Math.cos(t) + x * Math.sin(t);
    const corners = [-2, 2].flatMap((x) => [-1, 0].map((z) => below(x, z)));
    expect(load?.below?.[0]?.lowest).toBeCloseTo(Math.max(...corners), 3);
    expect(load?.below?.[0]?.highest).toBeCloseTo(Math.min(...corners), 3);
  });
});
