// Stages of a lift: inclined and swept, without rigs or parts, with liquids that stay level, on one hook and on hooks with a place.
import { describe, expect, test } from 'vitest';
import { figure, g, hang, hook, openWhy, type Rigged, rigText, sling } from '../../support/hanging.ts';
import { lift, slugs } from '../../support/lift.ts';

const degrees = Math.PI / 180;

describe('upending between two hooks, one line each (moment balance about the first line)', () => {
  const W = 40000;
  const rig: Rigged = {
    weight: W,
    cog: '(5, 0, -1) m',
    picks: { Tail: '(0, 0, 0) m, capacity 22 t', Head: '(10, 0, 0) m' },
    gear: [hook('HT'), hook('HH'), sling('ST', 6), sling('SH', 6)],
    legs: { tail: ['HT > ST > Tail'], head: ['HH > SH > Head'] },
    more: ['stage "Upending": incline x 0 deg to 75 deg', 'stage "Hanging": incline x 78 deg, without "tail"'],
  };
  const s = hang(rig);
  const shareOfHead = (angle: number) => (5 * Math.cos(angle) + 1 * Math.sin(angle)) / (10 * Math.cos(angle));

  test('every 5 deg, worst of each hook with its angle', () => {
    const stage = s.results.hanging.stages[0];
    expect(stage?.curve).toHaveLength(16);
    for (const { angle, hooks } of stage?.curve ?? []) expect(hooks?.[1]).toBeCloseTo(W * g * shareOfHead(angle), 3);
    const most = Math.max(...(stage?.curve ?? []).map((one) => shareOfHead(one.angle)));
    expect(figure(s, 'hook', 'HH', 'tension', 'Upending')).toBeCloseTo(W * g * most, 3);
  });

  test('a stage with worse figures than drawn carries its name, and stands at the leg', () => {
    const heavy = hang({
      ...rig,
      picks: { Tail: '(0, 0, 0) m', Head: '(10, 0, 0) m, capacity 24 t' },
      more: ['stage "Upending": incline x 0 deg to 75 deg'],
    });
    const over = heavy.findings.filter((one) => one.slug === 'leg-overloaded');
    expect(over).toHaveLength(1);
    expect(over[0]?.message).toMatch(/^Stage Upending: Head /);
    expect(over[0]?.at.row.text).toContain('leg HH > SH > Head');
  });

  test('let go of one hook where the load hangs so by itself: the other carries all', () => {
    // Hung by its head, the centre comes to stand plumb under it: 5 m along and 1 m below gives atan(5 / 1) = 78.7 deg.
    expect(figure(s, 'hook', 'HH', 'tension', 'Hanging')).toBeCloseTo(W * g, 3);
    expect(s.results.find('hook', 'HT', 'tension', 'Hanging')).toBeUndefined();
    expect(figure(s, 'load', 'Load', 'tilt', 'Hanging')).toBeCloseTo(Math.atan2(5, 1), 4);
  });

  test('inclined on one hook where it would not hang so: said, and open', () => {
    const wrong = hang({ ...rig, more: ['stage "Hanging": incline x 30 deg, without "tail"'] });
    const said = wrong.findings.find((one) => one.slug === 'not-judged');
    expect(said?.at.row.text).toContain('stage "Hanging"');
    expect(openWhy(wrong, 'hook', 'HH', 'tension', 'Hanging')[0]).toMatch(/does not stay inclined by itself/);
  });
});

test('a sweep through the angle at which both lines coincide is open, not a number', () => {
  const s = hang({
    weight: 1000,
    cog: '(5, 0, -1) m',
    picks: { A: '(0, 0, 0) m', B: '(10, 0, 0) m' },
    gear: [hook('HA'), hook('HB'), sling('SA', 6), sling('SB', 6)],
    legs: ['HA > SA > A', 'HB > SB > B'],
    more: ['stage "Up": incline x 0 deg to 90 deg'],
  });
  expect(openWhy(s, 'hook', 'HA', 'tension', 'Up')).not.toEqual([]);
  expect(s.results.hanging.stages[0]?.curve?.at(-1)?.hooks).toBeNull();
  expect(s.results.hanging.stages[0]?.curve?.[0]?.hooks?.[0]).toBeCloseTo((1000 * g) / 2, 6);
});

describe('without parts', () => {
  const text = rigText({
    weight: 0,
    cog: '(0, 0, 0) m',
    picks: { A: '(-1, 0, 2) m', B: '(1, 0, 2) m' },
    gear: [hook(), sling('S1', 3), sling('S2', 3)],
    legs: ['Hook > S1 > A', 'Hook > S2 > B'],
  }).replace(
    / {2}stated.*\n {2}cog.*\n/,
    [
      '  part Frame: item 800 kg, by drawing, from "D-1", at (0, 0, 0)',
      '  part Crate: item 200 kg, by drawing, from "D-1", at (1 m, 0, 0)',
      '',
    ].join('\n'),
  );

  test('weight and centre are those of what is left', () => {
    const s = lift(`${text}stage "Bare": without Crate\n`);
    expect(figure(s, 'load', 'Load', 'weight', 'Bare')).toBeCloseTo(800, 9);
    expect(figure(s, 'load', 'Load', 'cog x')).toBeCloseTo(0.2, 9);
    expect(figure(s, 'load', 'Load', 'cog x', 'Bare')).toBeCloseTo(0, 9);
    expect(figure(s, 'hook', 'Hook', 'tension', 'Bare')).toBeCloseTo(800 * g, 3);
    expect(figure(s, 'load', 'Load', 'tilt', 'Bare')).toBeLessThan(1e-6);
  });

  test('contingency goes with the part; of a stated weight only the bare part is taken off', () => {
    const added = lift(`${text.replace('contingency 0 %', 'contingency 10 %')}stage "Bare": without Crate\n`);
    expect(figure(added, 'load', 'Load', 'weight', 'Bare')).toBeCloseTo(880, 9);
    const stated = lift(
      `${text.replace('contingency 0 %', 'contingency 10 %').replace('  free', '  stated 1,040 kg, by marking, from "plate"\n  free')}stage "Bare": without Crate\n`,
    );
    expect(figure(stated, 'load', 'Load', 'weight')).toBeCloseTo(1144, 9);
    expect(figure(stated, 'load', 'Load', 'weight', 'Bare')).toBeCloseTo(944, 9);
  });

  test('a name that is nothing: a finding at the name, the stage open, the rest known', () => {
    const s = lift(`${text}stage "Bare": without Creat\n`);
    expect(s.findings.find((one) => one.slug === 'name-unknown')?.at.row.text).toContain('stage "Bare"');
    expect(openWhy(s, 'sling', 'S1', 'tension', 'Bare')).not.toEqual([]);
    expect(figure(s, 'sling', 'S1', 'tension')).toBeGreaterThan(0);
  });
});

test('a liquid stays level: in a half-full square box tipped 10 deg its centre moves a² tan θ / (12 h) aside (wall-sided formula)', () => {
  const s = lift(
    [
      'plan "Tank": date 2026-03-02, units metric',
      'load "Load"',
      '  contingency 0 %',
      '  free "stands loose"',
      '  part Shell: rectangular tube 2 x 2 m, wall 1 mm, length 4 m, density 8,000 kg/m3, at (0, 0, 1 m)',
      '  part Water: liquid 4 m3, density 1,000 kg/m3, inside Shell',
      '  pick A: at (0, -2 m, 2 m), capacity 50 t',
      '  pick B: at (0, 2 m, 2 m), capacity 50 t',
      'gear',
      `  ${hook('HA')}`,
      `  ${hook('HB')}`,
      `  ${sling('SA', 6)}`,
      `  ${sling('SB', 6)}`,
      'rig',
      '  leg HA > SA > A, direct "so"',
      '  leg HB > SB > B, direct "so"',
      'stage "Tipped": incline y 10 deg',
      '',
    ].join('\n'),
  );
  expect(slugs(s).filter((slug) => slug.startsWith('hang') || slug === 'line-unreadable')).toEqual([]);
  const still = figure(s, 'load', 'Load', 'cog y');
  const tipped = s.results.hanging.stages[0];
  const drawn = figure(s, 'hook', 'HA', 'tension');
  const shell = figure(s, 'part', 'Shell', 'weight');
  const inside = 1.998;
  const depth = 4 / (inside * 4);
  const aside = (inside ** 2 * Math.tan(10 * degrees)) / (12 * depth);
  const rise = (inside ** 2 * Math.tan(10 * degrees) ** 2) / (24 * depth);
  const all = shell + 4000;
  const z = (shell * 1 + 4000 * (0.001 + depth / 2 + rise)) / all;
  const y = (4000 * -aside) / all;
  // Picks 4 m apart and 2 m up, y end up by 10 deg: lever of the centre about the low pick.
  const c = Math.cos(10 * degrees);
  const t = Math.sin(10 * degrees);
  const lever = (y + 2) * c - (z - 2) * t;
  expect(still).toBeCloseTo(0, 9);
  expect(drawn / ((all * g) / 2)).toBeCloseTo(1, 9);
  expect(figure(s, 'hook', 'HB', 'tension', tipped?.name ?? '') / ((all * g * lever) / (4 * c))).toBeCloseTo(1, 6);
});

test('hooks with a place in an inclined stage: fixed points in world axes, the load finds its rest; where it would not stay so it is open', () => {
  const rig: Rigged = {
    weight: 60000,
    cog: '(5, 0, -0.8) m',
    picks: { A: '(0, 0, 0) m', B: '(10, 0, 0) m' },
    gear: [
      hook('HA', `at (0, 0, 20) m`),
      hook('HB', `at (${10 * Math.cos(10 * degrees)}, 0, ${20 + 10 * Math.sin(10 * degrees)}) m`),
      sling('SA', 20),
      sling('SB', 20),
    ],
    legs: ['HA > SA > A', 'HB > SB > B'],
    more: ['stage "As it hangs": incline x 10 deg', 'stage "Not so": incline x 40 deg'],
  };
  const s = hang(rig);
  expect(figure(s, 'load', 'Load', 'tilt', 'As it hangs')).toBeCloseTo(10 * degrees, 3);
  const out = 5 * Math.cos(10 * degrees) + 0.8 * Math.sin(10 * degrees);
  expect(
    figure(s, 'hook', 'HB', 'tension', 'As it hangs') / (60000 * g * (out / (10 * Math.cos(10 * degrees)))),
  ).toBeCloseTo(1, 4);
  expect(openWhy(s, 'hook', 'HB', 'tension', 'Not so')).not.toEqual([]);
});
