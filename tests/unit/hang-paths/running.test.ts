// Slings that run over hooks, sheaves and picks, held or free, and how much of a sling is left for its leg.
import { describe, expect, test } from 'vitest';
import { figure, g, hang, hook, openWhy, type Rigged, sling } from '../../support/hanging.ts';
import { message, slugs } from '../../support/lift.ts';

const degrees = Math.PI / 180;

describe('one sling over the hook, picks 2f apart (the hook moves on an ellipse about the picks: closed form)', () => {
  const [f, L, e, x0, W] = [1.8, 7.2, 2.4, 0.12, 10000];
  const b = Math.sqrt(L ** 2 / 4 - f ** 2);
  const rig = (runs: string): Rigged => ({
    weight: W,
    cog: `(${x0}, 0, ${-e}) m`,
    picks: { A: '(1.8, 0, 0) m', B: '(-1.8, 0, 0) m' },
    gear: [hook(), sling('S', L)],
    legs: [`A > S > Hook > B${runs}`],
  });
  /** a x0 sin t + b e cos t = f² sin t cos t: rest on the ellipse. */
  function ellipse(): { readonly tilt: number; readonly tension: number } {
    const a = L / 2;
    const off = (t: number) => a * x0 * Math.sin(t) + b * e * Math.cos(t) - f * f * Math.sin(t) * Math.cos(t);
    let [low, high] = [Math.PI / 2, 2];
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2;
      if (off(middle) > 0) low = middle;
      else high = middle;
    }
    const [x, z] = [a * Math.cos(low), b * Math.sin(low)];
    const [across, up] = [x - x0, z + e];
    const beta = Math.acos(((x - f) * across + z * up) / (Math.hypot(x - f, z) * Math.hypot(across, up)));
    return { tilt: Math.atan2(Math.abs(across), up), tension: (W * g) / (2 * Math.cos(beta)) };
  }

  test('runs free unless it says otherwise: one tension, and the tilt of the ellipse', () => {
    const s = hang(rig(''));
    const exact = ellipse();
    expect(figure(s, 'load', 'Load', 'tilt') / exact.tilt).toBeCloseTo(1, 3);
    expect(exact.tilt / degrees).toBeCloseTo(5.02, 2);
    expect(figure(s, 'sling', 'S', 'elastic tension') / exact.tension).toBeCloseTo(1, 4);
  });

  test('a part at a fixed pin takes 1.35 of the pull without friction (32.5 : 67.5; common practice, no source)', () => {
    const s = hang(rig(', runs free'));
    expect(figure(s, 'sling', 'S', 'tension') / figure(s, 'sling', 'S', 'elastic tension')).toBeCloseTo(1.35, 9);
    expect(figure(s, 'pick', 'A', 'pull') / figure(s, 'sling', 'S', 'tension')).toBeCloseTo(1, 6);
    expect(figure(s, 'hook', 'Hook', 'tension') / (W * g)).toBeCloseTo(1, 6);
  });

  test('held: two legs of half its length, tilt x0 / (b + e) for small offsets', () => {
    const s = hang(rig(', runs held'));
    expect(Math.tan(figure(s, 'load', 'Load', 'tilt'))).toBeCloseTo(x0 / (b + e), 3);
    expect(figure(s, 'sling', 'S', 'tension')).toBeGreaterThan(figure(s, 'sling', 'S', 'elastic tension') * (1 - 1e-9));
  });

  test('a centre too high for it to stay: deeper than f²/b it hangs, over that it runs away', () => {
    const at = (depth: number) => hang({ ...rig(''), cog: `(0, 0, ${-depth}) m` });
    expect(slugs(at(f ** 2 / b + 0.03))).not.toContain('hang-unstable');
    expect(slugs(at(f ** 2 / b - 0.03))).toContain('hang-unstable');
    expect(openWhy(at(f ** 2 / b - 0.03), 'sling', 'S', 'tension')).not.toEqual([]);
    expect(message(at(f ** 2 / b - 0.03), 'hang-unstable')).toMatch(
      /^Load would turn over: its centre of gravity is [\d.,]+ m?m below the middle of its picks, and even so this rig does not keep it upright\.$/,
    );
    expect(message(at(-9), 'hang-unstable')).toMatch(
      / is 9 m above the middle of its picks, higher than this rig keeps upright\.$/,
    );
  });
});

test('over a sheave on its own sling: 1.10 of the pull in a part (45 : 55; common practice, no source), all of it above', () => {
  const s = hang({
    weight: 2000,
    cog: '(0, 0, -2) m',
    picks: { A: '(1, 0, 0) m', B: '(-1, 0, 0) m' },
    gear: [hook(), sling('Top', 2), 'sheave SH: weight 0 kg, capacity 50 t', sling('S', 5)],
    legs: ['Hook > Top > SH', 'A > S > SH > B'],
  });
  const T = (2000 * g) / (2 * Math.cos(Math.asin(1 / 2.5)));
  expect(figure(s, 'sling', 'S', 'elastic tension') / T).toBeCloseTo(1, 4);
  expect(figure(s, 'sling', 'S', 'tension') / T).toBeCloseTo(1.1, 4);
  expect(figure(s, 'sling', 'Top', 'tension') / (2000 * g)).toBeCloseTo(1, 8);
  expect(figure(s, 'sheave', 'SH', 'tension') / (2000 * g)).toBeCloseTo(1, 8);
});

describe('a basket over two picks', () => {
  const rig = (cog: string, runs = ''): Rigged => ({
    weight: 6000,
    cog,
    picks: { A: '(-1, 0, 0) m, kind round', B: '(1, 0, 0) m, kind round' },
    gear: [hook(), sling('S', 8, 'diameter 20 mm, wire rope')],
    legs: [`Hook > S > A > B > Hook${runs}, bend diameter 1 m`],
  });
  const alpha = Math.acos(1 / 3); // legs of (8 − 2) / 2 m over 1 m

  test('straight through its picks: each leg is half of what is left', () => {
    for (const runs of ['', ', runs free', ', runs held']) {
      const s = hang(rig('(0, 0, -2) m', runs));
      expect(figure(s, 'sling', 'S', 'elastic tension') / ((6000 * g) / (2 * Math.sin(alpha))), runs).toBeCloseTo(1, 4);
      expect(figure(s, 'sling', 'S', 'angle'), runs).toBeCloseTo(alpha, 3);
    }
  });

  test('a centre aside: both ways are worked out, the worse holds, and both stand in the working', () => {
    const s = hang(rig('(0.05, 0, -2) m'));
    const each = ['runs held', 'runs free'].map((runs) => hang(rig('(0.05, 0, -2) m', `, ${runs}`)));
    const tilts = each.map((one) => figure(one, 'load', 'Load', 'tilt'));
    expect(figure(s, 'load', 'Load', 'tilt')).toBeCloseTo(Math.max(...tilts), 9);
    const tension = s.results.find('sling', 'S', 'elastic tension')?.value;
    expect(tension?.inputs.map((one) => one.label)).toEqual(['baskets held', 'baskets running free']);
    expect(tension?.value).toBeCloseTo(Math.max(...each.map((one) => figure(one, 'sling', 'S', 'elastic tension'))), 6);
  });

  test('contacts under the centre: friction alone holds it, and it says so; running free it turns over', () => {
    const high: Rigged = {
      ...rig(''),
      cog: '(0, 0, 0.3) m',
      picks: {
        A: '(-1, 1, 0) m, kind round',
        B: '(1, 1, 0) m, kind round',
        C: '(-1, -1, 0) m, kind round',
        D: '(1, -1, 0) m, kind round',
      },
      gear: [hook(), sling('S', 10, 'diameter 20 mm, wire rope'), sling('T', 10, 'diameter 20 mm, wire rope')],
      legs: ['Hook > S > A > B > Hook, bend diameter 1 m', 'Hook > T > C > D > Hook, bend diameter 1 m'],
    };
    const s = hang(high);
    expect(slugs(s)).toContain('friction-holds');
    expect(slugs(s)).not.toContain('hang-unstable');
    expect(figure(s, 'sling', 'S', 'tension')).toBeGreaterThan((6000 * g) / 4);
    const free = hang({ ...high, legs: (high.legs as string[]).map((leg) => `${leg}, runs free`) });
    expect(slugs(free)).toContain('hang-unstable');
  });

  test('what it wraps is in no leg', () => {
    const s = hang({ ...rig('(0, 0, -2) m', ', runs held, wrap 3 m') });
    expect(figure(s, 'sling', 'S', 'angle')).toBeCloseTo(Math.acos(1 / 2.5), 3);
    const free = hang({ ...rig('(0, 0, -2) m', ', runs free, wrap 3 m') });
    expect(figure(free, 'sling', 'S', 'angle')).toBeCloseTo(Math.acos(1 / 2.5), 3);
  });

  test('too short to go round: a finding at its leg, and nothing is known', () => {
    const s = hang({ ...rig('(0, 0, -2) m'), gear: [hook(), sling('S', 1.9, 'diameter 20 mm, wire rope')] });
    const found = s.findings.find((one) => one.slug === 'hang-unsolved');
    expect(found?.message).toContain('S has no length left for its leg');
    expect(found?.at.row.text).toContain('leg Hook > S');
    expect(openWhy(s, 'sling', 'S', 'tension')).not.toEqual([]);
  });
});

describe('what is left of a sling for its leg (language reference: hitches)', () => {
  const angleWith = (slings: readonly string[], hitch: string, more = '') =>
    figure(
      hang({
        weight: 1000,
        cog: '(0, 0, -2) m',
        picks: { A: '(-1, 0, 0) m', B: '(1, 0, 0) m' },
        gear: [hook(), ...slings],
        legs: [`Hook > S1 > A${hitch}${more}`, `Hook > S2 > B${hitch}${more}`],
      }),
      'pick',
      'A',
      'angle',
    );
  const pair = (length: number, more = '') => [sling('S1', length, more), sling('S2', length, more)];

  test('doubled: half its length; a basket on one pick likewise, less half of pi times what it goes round', () => {
    expect(angleWith(pair(4), ', hitch doubled')).toBeCloseTo(Math.acos(1 / 2), 3);
    expect(angleWith(pair(4), ', hitch basket')).toBeCloseTo(Math.acos(1 / 2), 3);
    expect(angleWith(pair(4), ', hitch basket', ', around 200 mm')).toBeCloseTo(
      Math.acos(1 / ((4 - (Math.PI * 0.2) / 2) / 2)),
      3,
    );
    expect(angleWith(pair(4), ', hitch basket', ', wrap 1 m')).toBeCloseTo(Math.acos(1 / 1.5), 3);
  });

  test('choked: less pi times what it goes round', () => {
    expect(angleWith(pair(4), ', hitch choker', ', choke angle 120 deg, around 300 mm')).toBeCloseTo(
      Math.acos(1 / (4 - Math.PI * 0.3)),
      3,
    );
  });

  test('endless: half its circumference', () => {
    const endless = ['S1', 'S2'].map(
      (name) => `sling ${name}: circumference 5 m, stiffness 400 MN, weight 0 kg, capacity 500 t`,
    );
    expect(angleWith(endless, '')).toBeCloseTo(Math.acos(1 / 2.5), 3);
  });
});
