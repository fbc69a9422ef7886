// Shackles, eyebolts, hoist rings, picks, beams and bridles: what they may carry at the angle they are pulled, and what is barred.
import { describe, expect, test } from 'vitest';
import { eyeboltFactor, shackleFactor } from '../../../server/catalog/index.ts';
import { angleBetween, lengthWithin } from '../../../server/mechanics/index.ts';
import { figure, g, hang, hook, openWhy, type Rigged } from '../../support/hanging.ts';
import { errors, message, slugs } from '../../support/lift.ts';
import { factorsOf, mayCarry, rated } from '../../support/rated.ts';

const degree = Math.PI / 180;
/** Slings of 4 m that stand so many degrees off the plumb line. */
const off = (angle: number) => ({ out: 4 * Math.sin(angle * degree), length: 4 });
const bolted = (angle: number, clauses = 'capacity 4 t') =>
  rated({ ...off(angle), gear: [`eyebolt E1..E2: weight 0 kg, ${clauses}`], joined: 'E# > ', weight: 500 });

describe('the tables themselves', () => {
  test.each([
    [0, 1],
    [5, 1],
    [6, 0.7],
    [30, 0.7],
    [45, 0.7],
    [46, 0.5],
    [90, 0.5],
  ])('a shackle %d deg off its line keeps %d (ASME B30.26 steps; 17 t at 30 deg: 11.9 t)', (angle, share) => {
    expect(shackleFactor(angle * degree)?.share).toBe(share);
  });

  test('a shackle pulled backwards, an eyebolt beyond 45 deg: not allowed', () => {
    expect(shackleFactor(91 * degree)).toBeNull();
    expect(eyeboltFactor(46 * degree)).toBeNull();
  });

  test.each([
    [5, 1, 1],
    [15, 0.55, 0.8],
    [30, 0.35, 0.65],
    [45, 0.25, 0.3],
  ])(
    'an eyebolt at %d deg keeps %d (conservative set), never more than trade tables print (%d)',
    (angle, share, trade) => {
      expect(eyeboltFactor(angle * degree)?.share).toBe(share);
      expect(share).toBeLessThanOrEqual(trade);
    },
  );

  test('in pairs to BS 4278 (from memory) two collar eyebolts at 45 deg from upright lift half of one: our share is no higher', () => {
    const pair = (angle: number, k: number) =>
      expect(eyeboltFactor(angle * degree)?.share as number).toBeLessThanOrEqual(k / Math.cos(angle * degree) + 1e-9);
    pair(15, 0.63);
    pair(30, 0.4);
    pair(45, 0.25);
  });

  test('the angle between two directions, and the length of a line inside a box', () => {
    expect(angleBetween([1, 0, 0], [1, 1, 0])).toBeCloseTo(Math.PI / 4, 12);
    expect(angleBetween([1, 0, 0], [-1, 1e-12, 0])).toBeCloseTo(Math.PI, 6);
    expect(angleBetween([0, 0, 0], [1, 0, 0])).toBeNull();
    const corners = Float64Array.of(5, 5, 5, 6, 6, 6, 0, 0, 0, 1, 2, 3); // the second of two boxes
    expect(lengthWithin([-1, 1, 1], [2, 1, 1], corners, 1)).toBeCloseTo(1, 12);
    expect(lengthWithin([0, 0, 0], [1, 2, 3], corners, 1)).toBeCloseTo(Math.sqrt(14), 12);
    expect(lengthWithin([-1, 3, 1], [2, 3, 1], corners, 1)).toBe(0);
    expect(lengthWithin([0.5, 1, 3], [0.5, 1, 9], corners, 1)).toBe(0);
  });
});

describe('eyebolts and hoist rings', () => {
  test('40 % of the straight figure at 45 deg off is 160 % in truth', () => {
    const s = bolted(44.9);
    const pull = figure(s, 'eyebolt', 'E1', 'load');
    expect(figure(s, 'eyebolt', 'E1', 'capacity used')).toBeCloseTo(pull / (4000 * 0.25), 6);
    expect(factorsOf(s, 'eyebolt', 'E1')).toEqual({ 'straight capacity': 4000, 'pull angle': 0.25 });
  });

  test('straight it keeps all; its shoulder and its upright bolt are assumed and said', () => {
    const s = bolted(3);
    expect(mayCarry(s, 'eyebolt', 'E1')).toBe(4000);
    expect(s.results.find('eyebolt', 'E1', 'capacity used')?.value.inputs[1]?.value.assumptions.join()).toMatch(
      /bolt of E1 stands along.*shoulder/,
    );
  });

  test('beyond 45 deg it is barred and not known', () => {
    const s = bolted(50);
    expect(message(s, 'pull-barred')).toMatch(
      /^E1 is pulled 5\d(\.\d+)? deg off its line; more than 45 deg is not allowed for an eyebolt/,
    );
    expect(openWhy(s, 'eyebolt', 'E1', 'capacity used').join()).toContain('off its line');
  });

  test('its own least angle stands in for the table, and below it nothing is known', () => {
    expect(mayCarry(bolted(40, 'capacity 4 t, least angle 45 deg'), 'eyebolt', 'E1')).toBe(4000);
    const flat = bolted(40, 'capacity 4 t, least angle 55 deg');
    expect(openWhy(flat, 'eyebolt', 'E1', 'capacity used').join()).toContain('flatter');
    expect(flat.findings.map((one) => one.message).join()).toContain('least angle of E1');
    expect(openWhy(bolted(10, 'capacity 4 t, least angle ?'), 'eyebolt', 'E1', 'capacity used')).not.toEqual([]);
  });

  test('a tilted load turns its bolts: the lean counts from the load, not from the plumb line', () => {
    const s = hang({
      weight: 500,
      cog: '(0.3, 0, -1) m',
      picks: { A: '(-0.6, 0, 0) m', B: '(0.6, 0, 0) m' },
      gear: [
        hook(),
        'sling S1..S2: length 4 m, weight 0 kg, capacity 5 t',
        'eyebolt E1..E2: weight 0 kg, capacity 4 t',
      ],
      legs: ['Hook > S1 > E1 > A', 'Hook > S2 > E2 > B'],
    });
    const tilt = figure(s, 'load', 'Load', 'tilt');
    const plumb = [1, 2].map((n) => Math.PI / 2 - figure(s, 'sling', `S${n}`, 'angle'));
    const lean = [1, 2].map((n) => mayCarry(s, 'eyebolt', `E${n}`));
    // The low side leans less from the plumb line than from its own upright, or the other way round: one of them changes its row.
    const rows = plumb.map((angle) =>
      [angle - tilt, angle + tilt].map((one) => (eyeboltFactor(Math.abs(one))?.share ?? 0) * 4000),
    );
    lean.forEach((kg, i) => expect(rows[i]?.some((row) => Math.abs(row - (kg as number)) < 1e-6)).toBe(true));
  });

  test("a hoist ring off its bolt asks for its maker's least angle; straight it does not", () => {
    const ring = (angle: number, clauses = 'capacity 4 t') =>
      rated({ ...off(angle), gear: [`hoist ring R1..R2: weight 0 kg, ${clauses}`], joined: 'R# > ', weight: 500 });
    expect(message(ring(20), 'clause-missing')).toContain('least angle');
    expect(openWhy(ring(20), 'hoist ring', 'R1', 'capacity used')).toEqual(['Nothing says how flat R1 may be pulled.']);
    expect(mayCarry(ring(20, 'capacity 4 t, least angle 30 deg'), 'hoist ring', 'R1')).toBe(4000);
    expect(mayCarry(ring(3), 'hoist ring', 'R1')).toBe(4000);
  });

  test('clamps, magnets and vacuum lifters stay with a qualified person', () => {
    for (const kind of ['clamp', 'magnet', 'vacuum lifter', 'personnel platform']) {
      const s = rated({ gear: [`${kind} C1..C2: weight 0 kg, capacity 4 t`], joined: 'C# > ' });
      expect(errors(s), kind).toContain('not-judged');
      expect(openWhy(s, kind, 'C1', 'capacity used'), kind).toEqual([`This version does not judge a ${kind}.`]);
      expect(s.results.notJudged.join(), kind).toContain(kind);
    }
  });
});

describe('shackles', () => {
  const two = (half: number, more: Partial<Rigged> = {}) =>
    hang({
      weight: 1000,
      cog: '(0, 0, -1) m',
      picks: { A: `(${-half}, 0, 0) m`, B: `(${half}, 0, 0) m` },
      gear: [hook(), 'shackle K: weight 0 kg, capacity 3 t', 'sling S1..S2: length 2 m, weight 0 kg, capacity 5 t'],
      legs: ['Hook > K > S1 > A', 'Hook > K > S2 > B'],
      ...more,
    });

  test('one pull is taken as in line, and that is said', () => {
    const s = rated({ gear: ['shackle K1..K2: weight 0 kg, capacity 3 t'], joined: 'K# > ' });
    expect(mayCarry(s, 'shackle', 'K1')).toBe(3000);
    expect(s.results.find('shackle', 'K1', 'capacity used')?.value.inputs[1]?.value.assumptions).toEqual([
      'K1 is pulled in line',
    ]);
  });

  test('two legs that lie alike, up to 120 deg between them: the full figure (several pages quoting ASME B30.26)', () => {
    expect(mayCarry(two(1), 'shackle', 'K')).toBe(3000);
    expect(mayCarry(two(1.72), 'shackle', 'K')).toBe(3000);
  });

  test('wider than that is barred', () => {
    const s = two(1.75);
    expect(message(s, 'pull-barred')).toContain('more than 60 deg is not allowed for a shackle');
    expect(openWhy(s, 'shackle', 'K', 'capacity used').length).toBeGreaterThan(0);
  });

  test('legs that do not lie alike pull it sideways: 70 % up to 45 deg', () => {
    const s = two(1, {
      picks: { A: '(-0.3, 0, 0) m', B: '(1.3, 0, 0) m' },
      cog: '(0.2, 0, -1) m',
      gear: [
        hook(),
        'shackle K: weight 0 kg, capacity 3 t',
        'sling S1: length 2 m, weight 0 kg, capacity 5 t',
        'sling S2: length 2.3 m, weight 0 kg, capacity 5 t',
      ],
    });
    expect(factorsOf(s, 'shackle', 'K')).toEqual({ 'straight capacity': 3000, 'side load': 0.7 });
    expect(mayCarry(s, 'shackle', 'K')).toBeCloseTo(2100, 6);
  });

  test('a pin thicker than its hole is told of; a hole that fits, or a round pick, is not', () => {
    const pin = (pick: string) =>
      rated({ pick, gear: ['shackle K1..K2: weight 0 kg, capacity 3 t, pin diameter 35 mm'], joined: 'K# > ' });
    expect(message(pin('capacity 5 t, diameter 32 mm'), 'joint-wrong')).toBe(
      'K1 should not join A this way: pin 35 mm, hole 32 mm.',
    );
    expect(slugs(pin('capacity 5 t, diameter 35 mm'))).not.toContain('joint-wrong');
    expect(slugs(pin('kind trunnion, diameter 32 mm'))).not.toContain('joint-wrong');
  });

  test('a hook does not hold on an edge or a round pick, but may choke', () => {
    const hooked = (leg: string) =>
      rated({ sling: 'chain, diameter 13 mm, weight 0 kg, capacity 5.3 t, lower end hook', pick: 'kind round', leg });
    expect(message(hooked(''), 'joint-wrong')).toContain('its point would carry');
    expect(slugs(hooked('hitch choker, around 200 mm, choke angle 130 deg'))).not.toContain('joint-wrong');
  });
});

describe('picks', () => {
  const picked = (angle: number, pick: string) => rated({ ...off(angle), pick, weight: 500 });

  test('a lug has its figure; flatter than its least angle nothing is known', () => {
    expect(mayCarry(picked(30, 'capacity 5 t'), 'pick', 'A')).toBe(5000);
    expect(mayCarry(picked(14, 'capacity 5 t, least angle 75 deg'), 'pick', 'A')).toBe(5000);
    expect(openWhy(picked(16, 'capacity 5 t, least angle 75 deg'), 'pick', 'A', 'capacity used').join()).toContain(
      'flatter',
    );
    expect(openWhy(picked(16, 'capacity ?'), 'pick', 'A', 'capacity used')).not.toEqual([]);
  });

  test('an eye is taken as an eyebolt, an anchor asks its maker', () => {
    expect(mayCarry(picked(25, 'kind eye, capacity 4 t'), 'pick', 'A')).toBeCloseTo(1400, 6);
    expect(mayCarry(picked(25, 'kind eye, capacity 4 t, least angle 60 deg'), 'pick', 'A')).toBe(4000);
    expect(openWhy(picked(25, 'kind anchor, capacity 4 t'), 'pick', 'A', 'capacity used')).toEqual([
      'Nothing says how flat A may be pulled.',
    ]);
    expect(mayCarry(picked(2, 'kind anchor, capacity 4 t'), 'pick', 'A')).toBe(4000);
  });
});

describe('beams', () => {
  const beam = (top: number, clauses: string, point = '') =>
    hang({
      weight: 4000,
      cog: '(0, 0, -1) m',
      picks: { A: '(-2, 0, 0) m', B: '(2, 0, 0) m' },
      gear: [
        hook(),
        `spreader Bar: weight 0 kg, ${clauses}`,
        `  point TA: at (-2, 0, 0) m${point}`,
        '  point TB: at (2, 0, 0) m',
        '  point LA: at (-2, 0, -0.2) m',
        '  point LB: at (2, 0, -0.2) m',
        `sling T1..T2: length ${top} m, weight 0 kg, capacity 50 t, stiffness 4000 MN`,
        'sling S1..S2: length 2 m, weight 0 kg, capacity 50 t, stiffness 4000 MN',
      ],
      legs: ['Hook > T1 > TA', 'Hook > T2 > TB', 'LA > S1 > A', 'LB > S2 > B'],
    });

  test('its capacity holds down to its least angle', () => {
    expect(mayCarry(beam(4.01, 'capacity 6 t, least angle 60 deg'), 'spreader', 'Bar')).toBe(6000);
    const s = beam(3, 'capacity 6 t, least angle 60 deg');
    expect(message(s, 'beam-angle-outside')).toMatch(
      /^The capacity of Bar holds for top slings at 60 deg from horizontal or steeper; here they lie at 48(\.\d+)? deg from horizontal\.$/,
    );
    expect(openWhy(s, 'spreader', 'Bar', 'capacity used').join()).toContain('steeper top slings');
  });

  test('12 t under slings at 60 deg press a bar with W / (2 tan 60 deg): the compression capacity is what counts then', () => {
    const pressure = (4000 / 2 / Math.tan(Math.acos(2 / 4))) * g;
    const s = beam(4, 'capacity 60 t, compression capacity 10 kN');
    expect(figure(s, 'spreader', 'Bar', 'compression')).toBeCloseTo(pressure, -1);
    expect(figure(s, 'spreader', 'Bar', 'capacity used')).toBeCloseTo(pressure / 10000, 2);
    expect(message(s, 'leg-overloaded')).toContain('Bar');
    expect(
      figure(beam(4, 'capacity 60 t, compression capacity 100 kN'), 'spreader', 'Bar', 'capacity used'),
    ).toBeCloseTo(pressure / 100000, 2);
    expect(openWhy(beam(4, 'capacity 60 t, compression capacity ?'), 'spreader', 'Bar', 'capacity used')).not.toEqual(
      [],
    );
  });

  test('a point has a capacity of its own and is named', () => {
    const s = beam(4, 'capacity 60 t', ', capacity 2 t');
    expect(figure(s, 'spreader', 'Bar', 'capacity used')).toBeCloseTo(2000 / Math.sin(Math.acos(0.5)) / 2000, 2);
    expect(
      s.findings
        .filter((one) => one.slug === 'leg-overloaded')
        .map((one) => one.message)
        .join(),
    ).toContain('Bar.TA');
    expect(s.findings.filter((one) => one.slug === 'leg-overloaded')).toHaveLength(1);
    expect(openWhy(beam(4, 'capacity 60 t', ', capacity ?'), 'spreader', 'Bar', 'capacity used')).not.toEqual([]);
  });
});

describe('bridles', () => {
  const set = (weight: number, tag: string, sling = 'weight 0 kg', leg = '', length = 3) =>
    hang({
      weight,
      cog: '(0, 0, -1) m',
      picks: { A: '(-1, -1, 0) m', B: '(1, -1, 0) m', C: '(1, 1, 0) m', D: '(-1, 1, 0) m' },
      gear: [
        hook(),
        `sling S1..S4: chain, diameter 13 mm, length ${length} m, ${sling}`,
        `bridle Set: items S1..S4, ${tag}`,
      ],
      legs: ['A', 'B', 'C', 'D'].map((pick, i) => `Hook > S${i + 1} > ${pick}${leg}`),
    });

  test('one tag of 11.2 t over four legs of 5.3 t: all they lift against the tag, not each against it', () => {
    const s = set(10_000, 'capacity 11.2 t, least angle 45 deg');
    expect(figure(s, 'sling', 'S1', 'capacity used')).toBeCloseTo(10_000 / 11_200, 6);
    expect(errors(s)).toEqual([]);
  });

  test("a leg's own figure counts beside it", () => {
    expect(
      figure(
        set(10_000, 'capacity 11.2 t, least angle 45 deg', 'weight 0 kg, capacity 5.3 t'),
        'sling',
        'S1',
        'capacity used',
      ),
    ).toBeGreaterThan(10_000 / 11_200);
  });

  test("flatter than the tag's angle nothing is known", () => {
    const s = set(10_000, 'capacity 11.2 t, least angle 65 deg');
    expect(openWhy(s, 'sling', 'S1', 'capacity used').join()).toContain('flatter');
    expect(message(s, 'angle-flat')).toContain('least angle of Set');
  });

  test.each([
    ['16,627 lb', 12_470],
    ['9,900 lb', 7425],
  ])('a bridle of %s that chokes keeps three quarters, %d lb (BC Crane Safety rigging quiz)', (tag, pounds) => {
    const s = set(
      1000,
      `capacity ${tag}, least angle 45 deg`,
      'weight 0 kg',
      ', hitch choker, around 100 mm, choke angle 130 deg',
    );
    expect((mayCarry(s) as number) / 0.45359237).toBeCloseTo(pounds, -1);
  });

  test('its tag says nothing of baskets, and a tag that is not known opens its slings', () => {
    expect(
      openWhy(
        set(1000, 'capacity 11.2 t, least angle 45 deg', 'weight 0 kg', ', hitch doubled, bend diameter 200 mm', 6),
        'sling',
        'S1',
        'capacity used',
      ).join(),
    ).toContain('straight legs');
    expect(openWhy(set(1000, 'capacity ?, least angle 45 deg'), 'sling', 'S1', 'capacity used')).not.toEqual([]);
  });
});
