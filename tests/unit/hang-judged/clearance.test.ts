// Legs through the load's own parts, headroom under the tip, the hook off the centre, and legs that share freely.
import { describe, expect, test } from 'vitest';
import { figure, hang, hook, openWhy, type Rigged } from '../../support/hanging.ts';
import { lift, message, slugs } from '../../support/lift.ts';

const four = { A: '(-1.5, -0.6, 0) m', B: '(1.5, -0.6, 0) m', C: '(1.5, 0.6, 0) m', D: '(-1.5, 0.6, 0) m' };
const onFour = (length: number, load: readonly string[], more: Partial<Rigged> = {}): Rigged => ({
  weight: 1600,
  cog: '(0, 0, 0.3) m',
  picks: four,
  load,
  gear: [
    hook('Hook', 'length 0.6 m'),
    `sling S1..S4: web, length ${length} m, weight 0 kg, capacity 9 t, stiffness 900 MN`,
  ],
  legs: ['A', 'B', 'C', 'D'].map((pick, i) => `Hook > S${i + 1} > ${pick}`),
  ...more,
});
const cabinet = (clauses: string) => [`part "Cabinet": ${clauses}, by drawing, from "D"`];

describe('a leg and the parts of its load', () => {
  const box = cabinet('item 1,600 kg, size 0.8 x 0.8 x 1.6 m, centre (0, 0, 0), at (0, 0, 0.8) m');

  test('runs through a cabinet in its way, and past it with longer slings', () => {
    expect(message(hang(onFour(2.5, box)), 'clearance-short')).toBe(
      'The leg to A runs through Cabinet as the load hangs; it has to go clear.',
    );
    expect(slugs(hang(onFour(4, box)))).not.toContain('clearance-short');
  });

  test('the shape counts, not the box around it: a sphere leaves the corner free', () => {
    // At the height where the legs are 0.62 m out, a sphere of 1.2 m is 0.5 m wide, its box 0.6 m.
    const round = ['part "Tank": sphere, diameter 1.2 m, density 1,768.388 kg/m3, at (0, 0, 0.6) m'];
    const square = ['part "Tank": box 1.2 x 1.2 x 1.2 m, density 925.9259 kg/m3, at (0, 0, 0.6) m'];
    expect(slugs(hang(onFour(2.2, round)))).not.toContain('clearance-short');
    expect(slugs(hang(onFour(2.2, square)))).toContain('clearance-short');
  });

  test('a beam that hangs too low runs into it, one on longer slings goes clear', () => {
    const under = (drop: number) =>
      hang({
        weight: 1600,
        cog: '(0, 0, -0.5125) m', // (100 kg at 0.8 m, 1,500 kg at -0.6 m)
        picks: { W: '(-1.2, 0, 0) m', E: '(1.2, 0, 0) m' },
        load: [
          ...cabinet('item 100 kg, size 0.8 x 0.8 x 1.6 m, centre (0, 0, 0), at (0, 0, 0.8) m'),
          'part "Base": item 1,500 kg, size 2.6 x 0.8 x 0.2 m, centre (0, 0, 0), at (0, 0, -0.6) m, by drawing, from "D"',
        ],
        gear: [
          hook('Hook'),
          'spreader Beam: weight 50 kg, capacity 9 t, least angle 45 deg',
          '  point BW: at (-1.2, 0, 0) m, capacity 9 t',
          '  point BE: at (1.2, 0, 0) m, capacity 9 t',
          `sling T1..T2: web, length 3 m, weight 0 kg, capacity 9 t, stiffness 900 MN`,
          `sling S1..S2: web, length ${drop} m, weight 0 kg, capacity 9 t, stiffness 900 MN`,
        ],
        legs: ['Hook > T1 > BW', 'Hook > T2 > BE', 'BW > S1 > W', 'BE > S2 > E'],
      });
    expect(message(under(1), 'clearance-short')).toBe(
      'Beam runs through Cabinet as the load hangs; it has to go clear.',
    );
    expect(slugs(under(2))).not.toContain('clearance-short'); // 1.6 m high
  });

  test('what a leg takes hold of is not in its way', () => {
    expect(
      slugs(hang(onFour(2.5, cabinet('item 1,600 kg, size 3 x 1.2 x 0.4 m, centre (0, 0, 0), at (0, 0, -0.2) m')))),
    ).not.toContain('clearance-short');
    expect(
      slugs(hang(onFour(2.5, cabinet('item 1,600 kg, size 3 x 1.2 x 0.4 m, centre (0, 0, 0), at (0, 0, 0) m')))),
    ).not.toContain('clearance-short');
  });

  test('copies are judged one by one: the space between them is free', () => {
    const posts = (x: number) =>
      cabinet(
        `item 800 kg, size 0.1 x 2 x 0.6 m, centre (0, 0, 0), at (${-x}, 0, 0.3) m, count 2, every (${2 * x}, 0, 0) m`,
      );
    expect(slugs(hang(onFour(2.5, posts(2))))).not.toContain('clearance-short');
    expect(slugs(hang(onFour(2.5, posts(1.2))))).toContain('clearance-short');
  });
});

describe('headroom', () => {
  // D28 of the examples: load on at 12.0 m, 3.5 m tall, rigging 5.2 m: 20.7 m to the hook, 21.7 m with 1 m to spare.
  const crane = (tip: string, more = '') => [
    'crane C: kind mobile, capacity 50 t',
    `  position "Set": radius 5 m, tip height ${tip}, lift height 12 m${more}`,
  ];
  const tall = (tip: string, more: Partial<Rigged> = {}) =>
    hang({
      weight: 1000,
      cog: '(0, 0, 1) m',
      picks: { A: '(0, 0, 3.5) m' },
      load: cabinet('item 1,000 kg, size 1 x 1 x 3.5 m, centre (0, 0, -0.75 m), at (0, 0, 1.75) m'),
      gear: [
        hook('Hook', 'length 0.7 m'),
        'sling S1: web, length 4.5 m, weight 0 kg, capacity 9 t, stiffness 90000 MN',
      ],
      legs: ['Hook > S1 > A'],
      more: crane(tip),
      ...more,
    });

  test('tip height less lift height, load and rigging', () => {
    expect(figure(tall('21.7 m'), 'position', 'Set', 'headroom')).toBeCloseTo(1, 3);
    expect(figure(tall('21.7 m'), 'crane', 'C', 'headroom')).toBeCloseTo(1, 3);
    const headroom = tall('21.7 m').results.find('position', 'Set', 'headroom')?.value;
    expect(headroom?.formula).toBe('tip height - lift height - load height - rigging length');
    expect(headroom?.inputs.map(({ value }) => value.value)).toEqual(
      [21.7, 12, 3.5, 5.2].map((m) => expect.closeTo(m, 3)),
    );
  });

  test('too little is told of, at the worse end of a tolerance; a rule may ask for more', () => {
    expect(slugs(tall('20.8 m'))).not.toContain('clearance-short');
    expect(message(tall('20.6 m'), 'clearance-short')).toMatch(
      /^Headroom at Set: load and rigging reach up to 20\.7\d* m; the tip stands at 20\.6 m\.$/,
    );
    expect(slugs(tall('20.8 m ± 0.2 m'))).toContain('clearance-short');
    const ruled = tall('21.5 m', {
      more: [...crane('21.5 m'), 'rules "Yard"', '  limit position headroom >= 1 m, from "yard rule 9"'],
    });
    expect(message(ruled, 'clearance-short')).toContain('yard rule 9');
  });

  test('a piece without a length opens it; so does a lift height that is not said', () => {
    expect(
      openWhy(
        tall('30 m', { gear: [hook('Hook'), 'sling S1: web, length 4.5 m, weight 0 kg, capacity 9 t'] }),
        'position',
        'Set',
        'headroom',
      ),
    ).toEqual(['Hook has no length.']);
    const unsaid = tall('30 m', {
      more: ['crane C: kind mobile, capacity 50 t', '  position "Set": radius 5 m, tip height 30 m'],
    });
    expect(openWhy(unsaid, 'position', 'Set', 'headroom')).toEqual(['The lift height is not stated.']);
  });
});

describe('the hook off the centre', () => {
  const two = (x: number, more: Partial<Rigged> = {}) =>
    hang({
      weight: 1000,
      cog: `(${x}, 0, -2) m`,
      picks: { A: '(-1, 0, 0) m', B: '(1, 0, 0) m' },
      gear: [hook(), 'sling S1..S2: web, length 3 m, weight 0 kg, capacity 9 t, stiffness 900 MN'],
      legs: ['Hook > S1 > A', 'Hook > S2 > B'],
      ...more,
    });

  test('more than 5 % of the span of the picks is told of, with the side', () => {
    expect(slugs(two(0.09))).not.toContain('lift-off-swing');
    expect(message(two(0.2), 'lift-off-swing')).toMatch(
      /the hook stands (0\.2\d* m|20\d mm|19\d mm) off the centre of gravity towards A;/,
    );
  });

  test('a hook at a place of its own is judged there', () => {
    expect(
      slugs(
        two(0, {
          gear: [hook('Hook', 'at (0, 0, 2.828) m'), 'sling S1..S2: web, length 3 m, weight 0 kg, capacity 9 t'],
        }),
      ),
    ).not.toContain('lift-off-swing');
    expect(
      message(
        two(0, {
          gear: [hook('Hook', 'at (0.5, 0, 2.828) m'), 'sling S1..S2: web, length 3 m, weight 0 kg, capacity 9 t'],
        }),
        'lift-off-swing',
      ),
    ).toMatch(/(500 mm|0\.5 m) off the centre of gravity towards B/);
  });

  test('a load that hangs tilted is told of once', () => {
    const found = slugs(two(0.6));
    expect(found).toContain('hang-tilted');
    expect(found).not.toContain('lift-off-swing');
  });
});

describe('legs that share freely', () => {
  test('four like legs are judged as two, and it is the other diagonal that is named as slack', () => {
    const s = hang(onFour(3, [], { cog: '(0, 0, -1) m' }));
    expect(message(s, 'leg-share-uncertain')).toMatch(
      /^How 4 legs share .* Each leg is judged by the way that pulls it hardest; of all these pulls the hardest is on the leg to ([AC], with the legs to B and D|[BD], with the legs to A and C) slack\.$/,
    );
  });

  test('with the centre off the middle a third leg holds a little, and only the one that is slack is named so', () => {
    const s = hang(onFour(3, [], { cog: '(0.1, 0.02, -1) m' }));
    expect(message(s, 'leg-share-uncertain')).toMatch(
      /^How 4 legs share .* is on the leg to [A-D], with the leg to [A-D] slack\.$/,
    );
    // A diagonal pair is pulled by nearly twice its share; what is judged of each leg is at least that.
    for (const name of ['S1', 'S2', 'S3', 'S4'])
      expect(figure(s, 'sling', name, 'tension')).toBeGreaterThan(1.5 * figure(s, 'sling', name, 'elastic tension'));
  });

  test('legs that end at the same thing are told apart by their slings', () => {
    const s = hang({
      weight: 1600,
      cog: '(0, 0, -1) m',
      picks: { A: '(-1.5, 0, 0) m', B: '(1.5, 0, 0) m' },
      gear: [
        hook(),
        'sling S1: web, length 3 m, weight 0 kg, capacity 9 t, stiffness 900 MN',
        'sling S2: web, length 3 m, weight 0 kg, capacity 9 t, stiffness 900 MN',
        'sling S3: web, length 3.4 m, weight 0 kg, capacity 9 t, stiffness 900 MN',
      ],
      legs: ['Hook > S1 > A', 'Hook > S2 > B', 'Hook > S3 > B'],
    });
    expect(message(s, 'leg-slack')).toBe('The leg to B on S3 hangs slack; the legs to A and B on S2 carry the load.');
  });

  test('a hitch that is not known opens the tensions, in plain words', () => {
    const s = hang({
      ...onFour(3, [], { cog: '(0, 0, -1) m' }),
      legs: ['A', 'B', 'C', 'D'].map((pick, i) => `Hook > S${i + 1} > ${pick}${i ? '' : ', hitch ?'}`),
    });
    expect(message(s, 'not-judged')).toBe(
      'How a leg whose hitch is not known shares its pull changes the tension in every leg, and this version does not work that out. The tension in every leg stays open; have a qualified person judge it.',
    );
    expect(openWhy(s, 'sling', 'S2', 'tension')).not.toEqual([]);
  });

  test('what all legs hang from is no way of sharing', () => {
    const ring = onFour(3, [], {
      cog: '(0, 0, -1) m',
      gear: [
        hook(),
        'master link Ring: weight 5 kg, capacity 9 t, length 0.3 m',
        'sling S1..S4: web, length 3 m, weight 0 kg, capacity 9 t, stiffness 900 MN',
      ],
      legs: ['A', 'B', 'C', 'D'].map((pick, i) => `Hook > Ring > S${i + 1} > ${pick}`),
    });
    expect(message(hang(ring), 'leg-share-uncertain')).toMatch(
      /^How 4 legs share .* is on the leg to ([AC], with the legs to B and D|[BD], with the legs to A and C) slack\.$/,
    );
  });

  test('too many ways to try each: points and hooks take what each leg can come to, not what it has as drawn', () => {
    const many = (n: number) => {
      const names = Array.from({ length: n }, (_, i) => `P${i + 1}`);
      const picks = Object.fromEntries(
        names.map((name, i) => [
          name,
          `(${(2 * Math.cos((2 * Math.PI * i) / n)).toFixed(6)}, ${(2 * Math.sin((2 * Math.PI * i) / n)).toFixed(6)}, 0) m`,
        ]),
      );
      return hang({
        weight: 4000,
        cog: '(0, 0, -1) m',
        picks,
        gear: [hook(), `sling S1..S${n}: web, length 4 m, weight 0 kg, capacity 90 t, stiffness 900 MN`],
        legs: names.map((name, i) => `Hook > S${i + 1} > ${name}`),
      });
    };
    const pull = (n: number) => figure(many(n), 'pick', 'P1', 'pull');
    // 12 legs leave 220 ways, 40 legs 9,880: one leg and its opposite can carry all in both.
    expect(pull(40)).toBeGreaterThanOrEqual(figure(many(40), 'sling', 'S1', 'tension') * (1 - 1e-9));
    expect(pull(40)).toBeGreaterThanOrEqual(pull(12) * (1 - 1e-3));
    expect(message(many(40), 'leg-share-uncertain')).toMatch(
      /^How 40 legs share .* by the way that pulls it hardest\.$/,
    );
  });
});

test('a plan that cannot be hung still has its papers, temperature and joints looked at', () => {
  const s = lift(`plan "P": date 2026-03-02
load "L"
  stated 1 t, by drawing, from "D"
  pick A: at (0, 0, 1 m), capacity 5 t
gear
  hook H: weight 10 kg, capacity 5 t
  sling S1: web, length 3 m, weight 4 kg, capacity 2 t, inspected 2024-01-01, interval 12 month
rig
  leg H > S1 > A, direct "so"
weather: temperature 120 degC
`);
  expect(slugs(s)).toEqual(expect.arrayContaining(['date-passed', 'temperature-outside']));
});
