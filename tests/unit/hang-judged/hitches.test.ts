// Slings in hitches and over bends: what they may carry against published tables and worked examples, and what stays open.
import { describe, expect, test } from 'vitest';
import { chokeAngleFactor } from '../../../server/catalog/index.ts';
import { figure, g, hang, hook, openWhy } from '../../support/hanging.ts';
import { errors, message, slugs } from '../../support/lift.ts';
import { factorsOf, mayCarry, rated, rope } from '../../support/rated.ts';

const pound = 0.45359237;
const choker = (angle: number) => `hitch choker, around 200 mm, choke angle ${angle} deg`;

describe('chokers', () => {
  const tagged = (angle: number) => mayCarry(rated({ sling: `${rope}, choker capacity 6,000 lb`, leg: choker(angle) }));

  test.each([
    [130, 6000],
    [120, 5220],
    [100, 5220],
    [75, 4440],
    [45, 3720],
    [20, 2940],
  ])('a choker tag of 6,000 lb at %d deg carries %d lb (ASME B30.9 angle of choke table)', (angle, pounds) => {
    expect(tagged(angle)).toBeCloseTo(pounds * pound, 6);
  });

  test('no tag: the construction and the angle, each shown, once', () => {
    const s = rated({ leg: choker(100) });
    expect(factorsOf(s)).toEqual({ 'vertical capacity': 4600, choker: 0.73, 'choke angle': 0.87 });
    expect(mayCarry(s)).toBeCloseTo(4600 * 0.73 * 0.87, 6);
    expect(figure(s, 'sling', 'S1', 'capacity used')).toBeCloseTo(
      figure(s, 'sling', 'S1', 'load') / (4600 * 0.73 * 0.87),
      9,
    );
  });

  test('a published pair of 9,800 lb vertical and 7,200 lb choker is not passed (US training page, 3/4 in)', () => {
    const got = mayCarry(
      rated({ sling: 'wire rope, diameter 3/4 in, weight 0 kg, capacity 9,800 lb', leg: choker(135) }),
    ) as number;
    expect(got / pound).toBeLessThanOrEqual(7200);
    expect(got / pound).toBeGreaterThan(7000);
  });

  test('where tables by the vertical rating are lower they govern: 40 % at 30 to 59 deg (older tables, from memory)', () => {
    expect(mayCarry(rated({ leg: choker(45) }))).toBeCloseTo(4600 * 0.4, 6);
    for (let angle = 1; angle < 180; angle++)
      expect(0.73 * chokeAngleFactor((angle * Math.PI) / 180, 0.73).share).toBeLessThanOrEqual(
        angle <= 30 ? 0.4 : angle <= 60 ? 0.4 : angle <= 90 ? 0.55 : angle <= 120 ? 0.65 : 0.73,
      );
  });

  test.each([
    ['chain, diameter 13 mm, weight 0 kg, capacity 5.3 t', 5300 * 0.75],
    ['web, weight 0 kg, capacity 3 t', 2400],
    ['round, weight 0 kg, capacity 3 t', 2400],
    ['fibre rope, diameter 24 mm, weight 0 kg, capacity 1 t', 500],
    ['mesh, weight 0 kg, capacity 1 t', 750],
  ])(
    '%s in a choker (EN 1492 mode factor 0.8; BC Crane Safety quiz 0.75 for chain; others from memory)',
    (sling, kg) => {
      expect(mayCarry(rated({ sling, leg: choker(135) }))).toBeCloseTo(kg, 6);
    },
  );

  test.each([
    ['hitch choker, around 200 mm', 'choke angle'],
    ['hitch choker, choke angle 100 deg', 'around or wrap'],
  ])('%s: %s is asked for, and what it may carry is open', (leg, clause) => {
    const s = rated({ leg });
    expect(message(s, 'clause-missing')).toContain(`needs ${clause}`);
    expect(s.results.find('sling', 'S1', 'capacity used')?.value.value).toBeNull();
  });

  test('an angle that is not known yet stays open, and a tolerance counts at its lower end', () => {
    expect(
      rated({ leg: 'hitch choker, around 200 mm, choke angle ?' }).results.find('sling', 'S1', 'capacity used')?.value
        .value,
    ).toBeNull();
    expect(mayCarry(rated({ leg: 'hitch choker, around 200 mm, choke angle 100 deg ± 12 deg' }))).toBeCloseTo(
      4600 * 0.73 * 0.74,
      6,
    );
  });

  test('a sling of nothing said has no factor', () => {
    const s = rated({ sling: 'weight 0 kg, capacity 3 t', leg: choker(130) });
    expect(message(s, 'clause-missing')).toContain('choker capacity');
    expect(mayCarry(rated({ sling: 'weight 0 kg, capacity 3 t, choker capacity 2 t', leg: choker(130) }))).toBeCloseTo(
      2000,
      6,
    );
    expect(openWhy(s, 'sling', 'S1', 'capacity used').join()).toContain('made of');
  });

  test('a capacity that is not known is open', () => {
    expect(
      openWhy(
        rated({ sling: 'wire rope, diameter 20 mm, weight 0 kg, capacity ?', leg: choker(130) }),
        'sling',
        'S1',
        'capacity used',
      ),
    ).not.toEqual([]);
    expect(
      openWhy(rated({ sling: `${rope}, choker capacity ?`, leg: choker(130) }), 'sling', 'S1', 'capacity used'),
    ).not.toEqual([]);
  });
});

describe('bends', () => {
  test('20 mm rope in a basket on a 100 mm pin: 7.14 t by the formula, never more (IMCA M 179; 2 x 4.6 t x 0.776)', () => {
    const got = mayCarry(rated({ leg: 'hitch basket, around 100 mm, bend diameter 100 mm' })) as number;
    expect(got).toBeLessThanOrEqual(7143);
    expect(got).toBeGreaterThan(7143 * 0.99);
  });

  test('a basket tag wins, is whole from 25 diameters on and cut below', () => {
    const at = (over: number) =>
      mayCarry(
        rated({ sling: `${rope}, basket capacity 8 t`, leg: `hitch basket, around 100 mm, bend diameter ${over} mm` }),
      );
    expect(at(500)).toBeCloseTo(8000, 6);
    expect(at(100)).toBeCloseTo(8000 * 0.77, 6);
    expect(at(40)).toBeCloseTo(8000 * (1 - 0.5 / Math.SQRT2), 6);
  });

  test('doubled: the larger part takes 55 % (0027/ND Guidelines for Marine Lifting 5.8)', () => {
    expect(mayCarry(rated({ leg: 'hitch doubled, bend diameter 400 mm', length: 8 }))).toBeCloseTo(
      (4600 * (1 - 0.5 / Math.sqrt(20))) / 0.55,
      6,
    );
    const web = rated({ sling: 'web, weight 0 kg, capacity 3 t', leg: 'hitch doubled', length: 8 });
    expect(mayCarry(web)).toBeCloseTo(3000 / 0.55, 6);
    expect(web.results.find('sling', 'S1', 'capacity used')?.value.inputs[1]?.value.assumptions.join()).toContain(
      'whole width',
    );
  });

  test('wire rope and chain in a bend ask for its diameter; a round pick says it', () => {
    expect(message(rated({ leg: 'hitch doubled', length: 8 }), 'clause-missing')).toContain('bend diameter');
    expect(mayCarry(rated({ leg: 'hitch doubled', length: 8, pick: 'kind trunnion, diameter 400 mm' }))).toBeCloseTo(
      (4600 * (1 - 0.5 / Math.sqrt(20))) / 0.55,
      6,
    );
    const unknown = rated({ leg: 'hitch doubled, bend diameter ?', length: 8 });
    expect(openWhy(unknown, 'sling', 'S1', 'capacity used')).not.toEqual([]);
  });

  test('chain over an edge of twice its bar or less keeps half (EN 818-6, from memory)', () => {
    const chain = 'chain, diameter 13 mm, weight 0 kg, capacity 5.3 t';
    const at = (over: number) =>
      mayCarry(rated({ sling: chain, leg: `hitch basket, around 100 mm, bend diameter ${over} mm` }));
    expect([at(60), at(40), at(26)]).toEqual([10600, 10600 * 0.7, 5300].map((kg) => expect.closeTo(kg, 6)));
  });

  test('tight is told of, and under its own diameter nothing is left that a table knows', () => {
    const at = (over: number) => rated({ leg: `hitch basket, around 100 mm, bend diameter ${over} mm` });
    expect(slugs(at(40))).not.toContain('bend-tight');
    expect(message(at(39), 'bend-tight')).toMatch(/1\.95 times its own diameter: capacity falls to 64/);
    expect(message(at(19), 'bend-tight')).toContain('not allowed');
    expect(openWhy(at(19), 'sling', 'S1', 'capacity used')).toEqual(['S1 bends too tight.']);
  });

  test('a straight leg bends only where it says so', () => {
    expect(mayCarry(rated({}))).toBe(4600);
    expect(mayCarry(rated({ leg: 'bend diameter 100 mm' }))).toBeCloseTo(4600 * 0.77, 6);
  });

  test('the share left never grows as the bend gets tighter, and never passes the published formula', () => {
    let before = 0;
    for (let over = 20; over < 900; over += 7) {
      const now = mayCarry(rated({ leg: `bend diameter ${over} mm` })) as number;
      expect(now).toBeGreaterThanOrEqual(before);
      expect(now).toBeLessThanOrEqual(4600 * (1 - 0.5 / Math.sqrt(over / 20)) + 1e-6);
      before = now;
    }
  });
});

describe('baskets whose path comes back up', () => {
  const over = (weight: number, out: number, length: number) =>
    hang({
      weight,
      cog: '(0, 0, -2 m)',
      picks: { A: `(${-out}, 0, 0) m, kind round`, B: `(${out}, 0, 0) m, kind round` },
      gear: [hook(), `sling S1: web, length ${length} m, weight 0 kg, capacity 4.6 t, stiffness 40 MN`],
      legs: ['Hook > S1 > A > B > Hook, runs free'],
    });

  test('legs at 60 deg: 2 x 4.6 t x sin 60 deg lifts 7.97 t at full capacity', () => {
    const s = over(2 * 4600 * Math.sin(Math.PI / 3), 1, 6);
    const used = figure(s, 'sling', 'S1', 'tension') / g / 4600;
    expect(figure(s, 'sling', 'S1', 'capacity used')).toBeCloseTo(used, 9);
    expect(s.results.find('sling', 'S1', 'elastic tension')?.value.value).toBeCloseTo(4600 * g, -2);
    expect(used).toBeGreaterThanOrEqual(1 - 1e-3);
  });
});

describe('edges', () => {
  test('a bare edge opens the sling; protection or a radius does not', () => {
    const bare = rated({ pick: 'kind edge' });
    expect(errors(bare)).toContain('edge-bare');
    expect(openWhy(bare, 'sling', 'S1', 'capacity used')).toEqual(['S1 bears on a bare edge.']);
    expect(mayCarry(rated({ pick: 'kind edge', leg: 'edge protection "half pipe, 120 mm"' }))).toBe(4600);
    expect(slugs(rated({ pick: 'kind edge', leg: 'bend diameter 120 mm' }))).not.toContain('edge-bare');
  });
});
