// Two hooks that pull straight up: one line each, bridles, rings and beams under them, as drawn and inclined.
import { describe, expect, test } from 'vitest';
import { plumbShares } from '../../../server/mechanics/hang/index.ts';
import { figure, g, hang, hook, openWhy, type Rigged, sling } from '../../support/hanging.ts';
import { slugs } from '../../support/lift.ts';

const degrees = Math.PI / 180;
const W = 60000;

/** Shares of two plumb lines at points a and b of the load's own upright plane (moment balance). */
function shares(
  a: readonly [number, number],
  b: readonly [number, number],
  c: readonly [number, number],
  tilt: number,
): { readonly a: number; readonly b: number } {
  const found = plumbShares({ weight: W * g, a, b, cog: c }, tilt);
  if ('open' in found) throw new Error(found.open);
  return found;
}

describe('a bridle of two legs under each hook: its hook stands over where its legs meet, so that point is what it pulls at', () => {
  // Legs of 5 m to picks 6 m apart meet 4 m above them.
  const rig: Rigged = {
    weight: W,
    cog: '(7, 0, -1.5) m',
    picks: { A1: '(0, 0, 0) m', A2: '(6, 0, 0) m', B1: '(12, 0, 0) m', B2: '(18, 0, 0) m' },
    gear: [hook('HA'), hook('HB'), ...['S1', 'S2', 'S3', 'S4'].map((name) => sling(name, 5))],
    legs: ['HA > S1 > A1', 'HA > S2 > A2', 'HB > S3 > B1', 'HB > S4 > B2'],
    more: ['stage "Tipped": incline x 20 deg', 'stage "Sweep": incline x 0 deg to 35 deg'],
  };
  const s = hang(rig);

  test('as drawn: shares by the lever rule, both legs of a hook alike', () => {
    const share = shares([3, 4], [15, 4], [7, -1.5], 0);
    expect(share.a / (W * g)).toBeCloseTo(8 / 12, 12);
    expect(figure(s, 'hook', 'HA', 'tension') / share.a).toBeCloseTo(1, 3);
    expect(figure(s, 'hook', 'HB', 'tension') / share.b).toBeCloseTo(1, 3);
    for (const name of ['S1', 'S2'])
      expect(figure(s, 'sling', name, 'elastic tension') / (share.a / (2 * 0.8))).toBeCloseTo(1, 3);
    expect(figure(s, 'load', 'Load', 'tilt')).toBeLessThan(1e-6);
  });

  test('inclined 20 deg: shares at the points where the legs meet, and each hook still plumb', () => {
    const share = shares([3, 4], [15, 4], [7, -1.5], 20 * degrees);
    expect(figure(s, 'hook', 'HA', 'tension', 'Tipped') / share.a).toBeCloseTo(1, 3);
    expect(figure(s, 'hook', 'HB', 'tension', 'Tipped') / share.b).toBeCloseTo(1, 3);
    expect(figure(s, 'load', 'Load', 'tilt', 'Tipped')).toBeCloseTo(20 * degrees, 6);
    // Two legs 3 : 4 : 5 whose pull leans by the incline: sine rule at the point where they meet.
    const beta = Math.asin(0.6);
    const [low, high] = [beta - 20 * degrees, beta + 20 * degrees].map(
      (angle) => (share.a * Math.sin(angle)) / Math.sin(2 * beta),
    );
    const pulls = ['S1', 'S2']
      .map((name) => figure(s, 'sling', name, 'elastic tension', 'Tipped'))
      .sort((x, y) => x - y);
    expect(pulls[0]! / low!).toBeCloseTo(1, 2);
    expect(pulls[1]! / high!).toBeCloseTo(1, 2);
  });

  test('a sweep in steps of 5 deg: its worst is the largest of every step, and the curve of shares is kept', () => {
    const stage = s.results.hanging.stages.find((one) => one.name === 'Sweep');
    expect(stage?.curve?.map((one) => Math.round(one.angle / degrees))).toEqual([0, 5, 10, 15, 20, 25, 30, 35]);
    for (const { angle, hooks } of stage?.curve ?? []) {
      const share = shares([3, 4], [15, 4], [7, -1.5], angle);
      expect((hooks?.[0] ?? Number.NaN) / share.a).toBeCloseTo(1, 3);
      expect((hooks?.[1] ?? Number.NaN) / share.b).toBeCloseTo(1, 3);
    }
    const most = Math.max(...(stage?.curve ?? []).map((one) => one.hooks?.[1] ?? 0));
    expect(figure(s, 'hook', 'HB', 'tension', 'Sweep') / most).toBeCloseTo(1, 9);
    expect(stage?.worst.find((one) => one.hook.name === 'HB')?.angle).toBeCloseTo(35 * degrees, 9);
    expect(s.results.find('hook', 'HB', 'tension', 'Sweep')?.value.source).toContain('at 35 deg');
  });
});

test('a ring with a spreader under each hook, across the load: each hook takes its lever share', () => {
  const gear = ['A', 'B'].flatMap((side) => [
    hook(`H${side}`),
    sling(`T${side}`, 3),
    `master link R${side}: weight 50 kg, capacity 90 t`,
    sling(`U${side}1`, 4),
    sling(`U${side}2`, 4),
    `spreader Sp${side}: weight 400 kg, capacity 90 t, length 4 m`,
    `  point left: at (0, -2, 0) m, capacity 50 t`,
    `  point right: at (0, 2, 0) m, capacity 50 t`,
    `  point under-left: at (0, -2, -0.1) m, capacity 50 t`,
    `  point under-right: at (0, 2, -0.1) m, capacity 50 t`,
    sling(`D${side}1`, 3),
    sling(`D${side}2`, 3),
  ]);
  const s = hang({
    weight: W,
    cog: '(4, 0, -1) m',
    picks: { A1: '(0, -2, 0) m', A2: '(0, 2, 0) m', B1: '(10, -2, 0) m', B2: '(10, 2, 0) m' },
    gear,
    legs: ['A', 'B'].flatMap((side) => [
      `H${side} > T${side} > R${side}`,
      `R${side} > U${side}1 > Sp${side}.left`,
      `R${side} > U${side}2 > Sp${side}.right`,
      `Sp${side}.under-left > D${side}1 > ${side}1`,
      `Sp${side}.under-right > D${side}2 > ${side}2`,
    ]),
  });
  expect(figure(s, 'sling', 'TA', 'elastic tension') / (W * g * 0.6 + 450 * g)).toBeCloseTo(1, 4);
  expect(figure(s, 'sling', 'TB', 'elastic tension') / (W * g * 0.4 + 450 * g)).toBeCloseTo(1, 4);
  expect(figure(s, 'sling', 'DA1', 'elastic tension') / (W * g * 0.3)).toBeCloseTo(1, 3);
});

test('one beam between both hooks with the load under it', () => {
  const s = hang({
    weight: W,
    cog: '(1, 0, -1) m',
    picks: { P1: '(-3, 0, 0) m', P2: '(3, 0, 0) m' },
    gear: [
      hook('HA'),
      hook('HB'),
      sling('TA', 4),
      sling('TB', 4),
      'spreader Beam: weight 2,000 kg, capacity 120 t, length 8 m',
      '  point a: at (-4, 0, 0.2) m, capacity 90 t',
      '  point b: at (4, 0, 0.2) m, capacity 90 t',
      '  point c: at (-3, 0, -0.2) m, capacity 90 t',
      '  point d: at (3, 0, -0.2) m, capacity 90 t',
      sling('D1', 3),
      sling('D2', 3),
    ],
    legs: ['HA > TA > Beam.a', 'HB > TB > Beam.b', 'Beam.c > D1 > P1', 'Beam.d > D2 > P2'],
  });
  expect(figure(s, 'hook', 'HB', 'tension') / (1000 * g + (W * g * 5) / 8)).toBeCloseTo(1, 3);
  expect(figure(s, 'hook', 'HA', 'tension') / (1000 * g + (W * g * 3) / 8)).toBeCloseTo(1, 3);
});

test('one line each, centre aside of them and inclined: rolled plumb under the line between its picks', () => {
  // The centre lies t = 4 m along the line and ρ = √(1 + 4) m off it; inclined by θ it stands 4 cos θ + ρ sin θ out.
  const s = hang({
    weight: W,
    cog: '(4, 1, -2) m',
    picks: { A: '(0, 0, 0) m', B: '(10, 0, 0) m' },
    gear: [hook('HA'), hook('HB'), sling('SA', 9), sling('SB', 9)],
    legs: ['HA > SA > A', 'HB > SB > B'],
    more: ['stage "Up": incline x 30 deg'],
  });
  const out = 4 * Math.cos(30 * degrees) + Math.hypot(1, 2) * Math.sin(30 * degrees);
  expect(figure(s, 'hook', 'HB', 'tension', 'Up') / ((W * g * out) / (10 * Math.cos(30 * degrees)))).toBeCloseTo(1, 9);
  expect(figure(s, 'load', 'Load', 'tilt')).toBeCloseTo(Math.atan2(1, 2), 9);
});

test('more than two hooks, or hooks of which some have a place: said to be not worked out, and open', () => {
  const three: Rigged = {
    weight: W,
    cog: '(5, 0, -1) m',
    picks: { A: '(0, 0, 0) m', B: '(10, 0, 0) m', C: '(5, 3, 0) m' },
    gear: [hook('HA'), hook('HB'), hook('HC'), sling('SA', 9), sling('SB', 9), sling('SC', 9)],
    legs: ['HA > SA > A', 'HB > SB > B', 'HC > SC > C'],
  };
  const mixed: Rigged = {
    ...three,
    picks: { A: '(0, 0, 0) m', B: '(10, 0, 0) m' },
    gear: [hook('HA', 'at (0, 0, 9) m'), hook('HB'), sling('SA', 9), sling('SB', 9)],
    legs: ['HA > SA > A', 'HB > SB > B'],
  };
  for (const rig of [three, mixed]) {
    const s = hang(rig);
    expect(slugs(s)).toContain('not-judged');
    expect(openWhy(s, 'sling', 'SA', 'tension')[0]).toMatch(/does not work out/);
  }
});

test('a centre outside the two hooks: neither share is given, and the finding says why', () => {
  const s = hang({
    weight: W,
    cog: '(11, 0, -1) m',
    picks: { A: '(0, 0, 0) m', B: '(10, 0, 0) m' },
    gear: [hook('HA'), hook('HB'), sling('SA', 9), sling('SB', 9)],
    legs: ['HA > SA > A', 'HB > SB > B'],
  });
  expect(s.findings.find((one) => one.slug === 'hang-unsolved')?.message).toMatch(/not between the two hooks/);
  expect(openWhy(s, 'hook', 'HA', 'tension')).not.toEqual([]);
});
