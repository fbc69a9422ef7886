// What is in a load and what it has taken up: vessels of which nothing is said, wet timber and soil, materials whose name covers two weights.
// Plans of our own; figures worked out here by hand, traps are common practice, no source, unless one is named.
import { describe, expect, test } from 'vitest';
import { errors, head, lift, loadOf, message, paper, slugs, value, waysOut } from '../../support/lift.ts';

const foot = 0.3048;
const pound = 0.45359237;

describe('contents forgotten', () => {
  /** A drum 2 m across and 6 m long: some 4 t of steel that hold 20 t of water. */
  const drum = (said: string, heads = said) =>
    lift(`${head}load "Drum"
  contingency 5 %
  free "loose"
  part "Shell": tube, outside 2 m, wall 12 mm, length 6 m, axis x, of carbon steel, at (0, 0, 0)${said}
  part "West head": dished head, outside 2 m, wall 12 mm, form ellipsoidal, axis -x, of carbon steel, against "Shell" -x${heads}
  part "East head": dished head, outside 2 m, wall 12 mm, form ellipsoidal, axis x, of carbon steel, against "Shell" x${heads}
expect load weight < 30 t
`);

  test('a vessel of which nothing is said has no weight, and the finding says what water would add', () => {
    const s = drum('');
    expect(errors(s).filter((slug) => slug === 'contents-unstated')).toHaveLength(3);
    for (const result of ['weight', 'calculated weight', 'cog x']) expect(value(s, 'load', 'Drum', result)).toBeNull();
    expect(s.results.expects[0]?.state).toBe('open');
    expect(message(s, 'contents-unstated')).toMatch(
      /^Shell encloses 18\.4 m3\. .*water it would weigh 18,4\d\d kg more/,
    );
    expect(paper(s)).toMatch(/figures are not known\. This plan cannot be used as it stands/);
    expect(waysOut(s, 'contents-unstated')).toEqual(['Insert empty: who saw it', 'Insert a liquid inside it']);
  });

  test('one part said to be empty does not speak for the others', () => {
    const s = drum(', empty "drained, seen"', '');
    expect(errors(s).filter((slug) => slug === 'contents-unstated')).toHaveLength(2);
    expect(value(s, 'load', 'Drum', 'weight')).toBeNull();
  });

  test('a liquid inside the shell does not speak for the heads', () => {
    const s = lift(`${head}load "Drum"
  contingency 5 %
  part "Shell": tube, outside 2 m, wall 12 mm, length 6 m, axis x, of carbon steel, at (0, 0, 0)
  part "Head": dished head, outside 2 m, wall 12 mm, form ellipsoidal, axis x, of carbon steel, against "Shell" x
  part "Oil": liquid, level 0.3 m, of diesel, inside "Shell"
`);
    expect(message(s, 'contents-unstated')).toMatch(/^Head encloses/);
    expect(value(s, 'load', 'Drum', 'weight')).toBeNull();
  });

  test('a run with a corner, shut at both ends, is as closed as a straight one', () => {
    const run = (east: string) =>
      lift(`${head}load "Run"
  contingency 5 %
  part "Run": pipe DN 200, schedule 40, along (0, 0, 0) (2, 0, 0) (2, 2, 0) m
  part "Near cap": pipe cap DN 200, schedule 40, against "Run" -x, empty "blown out, seen"
  part "Far cap": pipe cap DN 200, schedule 40, ${east}, empty "blown out, seen"
`);
    expect(errors(run('against "Run" y'))).toContain('contents-unstated');
    expect(value(run('against "Run" y'), 'load', 'Run', 'weight')).toBeNull();
    expect(errors(run('at (0, 0, 5 m)'))).not.toContain('contents-unstated');
  });

  test('a ring of bent rectangular tube encloses what no liquid can be said to fill: it is empty, seen, or not known', () => {
    const ring = (said: string) =>
      lift(`${head}load "Ring"
  contingency 5 %
  part "Ring": rectangular tube 100 x 60 mm, wall 5 mm, of carbon steel, along (0, 0, 0) (2, 0, 0) (2, 2, 0) (0, 2, 0) (0, 0, 0) m, bend radius 300 mm${said}
`);
    const s = ring('');
    // 90 mm x 50 mm inside, over 4 x 1.4 m and a whole turn of 300 mm: 7.485 m.
    expect(message(s, 'contents-unstated')).toMatch(/^Ring encloses 33\.\d L\. Say `empty` with who saw it/);
    expect(waysOut(s, 'contents-unstated')).toEqual(['Insert empty: who saw it']);
    expect(value(s, 'load', 'Ring', 'weight')).toBeNull();
    expect(slugs(ring(', empty "drained, seen"'))).not.toContain('contents-unstated');
  });

  test('full of water it is five times as heavy as empty', () => {
    const empty = value(drum(', empty "drained, seen"'), 'load', 'Drum', 'weight') as number;
    const full = lift(`${head}load "Drum"
  contingency 5 %
  part "Shell": tube, outside 2 m, wall 12 mm, length 6 m, axis x, of carbon steel, at (0, 0, 0)
  part "West head": dished head, outside 2 m, wall 12 mm, form ellipsoidal, axis -x, of carbon steel, against "Shell" -x
  part "East head": dished head, outside 2 m, wall 12 mm, form ellipsoidal, axis x, of carbon steel, against "Shell" x
  part "Water": liquid, fill 100 %, of water, inside "Shell" and "West head" and "East head"
`);
    expect(slugs(full)).not.toContain('contents-unstated');
    // Inside: π r² L, and two thirds of a half ball flattened to half its height in each end.
    const r = 0.988;
    const water = (Math.PI * r ** 2 * 6 + 2 * ((2 / 3) * Math.PI * r ** 2 * (r / 2))) * 1000;
    expect((value(full, 'part', 'Water', 'weight') as number) / water).toBeCloseTo(1, 2);
    expect((value(full, 'load', 'Drum', 'weight') as number) / empty).toBeGreaterThan(4.5);
  });

  const tank = (plates: string) =>
    loadOf(`  part "Body": tube, outside 2 m, wall 12 mm, length 6 m, of carbon steel, at (0, 0, 3 m)\n${plates}`);
  const bottom = '  part "Bottom": plate 2.1 x 2.1 x 0.012 m, of carbon steel, at (0, 0, -6 mm)\n';
  const top = '  part "Top": cylinder, diameter 2 m, length 12 mm, of carbon steel, on "Body"\n';

  test.each([
    ['a plate over both ends', bottom + top, 'error'],
    ['a plate under it: rain fills it', bottom, 'error'],
    ['a lid alone', top, 'note'],
    ['nothing', '', 'note'],
    [
      'a ring, as a flange is',
      '  part "Flange": tube, outside 2.2 m, bore 1.976 m, length 40 mm, of carbon steel, at (0, 0, -20 mm)\n',
      'note',
    ],
    ['a plate beside it', '  part "Plate": plate 2 x 2 x 0.012 m, of carbon steel, at (3 m, 0, -6 mm)\n', 'note'],
    ['a plate too small', '  part "Plate": plate 1 x 1 x 0.012 m, of carbon steel, at (0, 0, -6 mm)\n', 'note'],
    ['a plate clear of it', '  part "Plate": plate 3 x 3 x 0.012 m, of carbon steel, at (0, 0, -50 mm)\n', 'note'],
  ])('an upright tank with %s', (_, plates, severity) => {
    const s = tank(plates);
    const said = s.findings.find(({ slug, message: text }) => slug === 'contents-unstated' && text.startsWith('Body'));
    expect(said?.severity).toBe(severity);
    expect(value(s, 'load', 'L', 'weight') === null).toBe(severity === 'error');
  });

  test('a lying column closed by plates at both ends, in an assembly that is turned', () => {
    const column = (more: string) =>
      loadOf(`  assembly "Column": at (5 m, 0, 0), turn 90 deg about z
    part "Shaft": rectangular tube 200 x 200 mm, wall 8 mm, length 6 m, of carbon steel, at (0, 0, 0)${more}
    part "Feet": plate 300 x 300 x 20 mm, of carbon steel, axis x, count 2, every (6,020 mm, 0, 0), at (-3,010 mm, 0, 0)`);
    expect(errors(column(''))).toEqual(['contents-unstated']);
    expect(errors(column(', empty "vent open, blown through"'))).toEqual([]);
  });
});

describe('led along a line', () => {
  const run = (back: string, shape = 'pipe DN 100, schedule 40') =>
    loadOf(`  part "Run": ${shape}, along (0, 0, 0) (1, 0, 0) (1, 1, 0) (0, 1, 0)${back} m`);

  test('a ring has no ends that anything could run out of', () => {
    const s = run(' (0, 0, 0)');
    expect(errors(s)).toEqual(['contents-unstated']);
    expect(value(s, 'load', 'L', 'weight')).toBeNull();
    expect(errors(run(''))).toEqual([]);
    expect(errors(run(' (0, 0, 0)', 'bar 20 mm'))).toEqual([]);
  });

  // Down at both ends, as a handrail on a deck; up on a foot; a bend with a blind at each end.
  test.each([
    ['(0, 0, 0) (0, 0, 1) (1, 0, 1) (1, 0, 0)', '(0, 0, -5 mm)', '(1 m, 0, -5 mm)', 1],
    ['(0, 0, 0) (0, 0, 1) (1, 0, 1)', '(0, 0, -5 mm)', '(3 m, 0, 0)', 1],
    ['(0, 0, 0) (0, 0, 1) (1, 0, 1)', '(2 m, 0, -5 mm)', '(3 m, 0, 0)', 0],
    ['(0, 0, 0) (0, 0, 1) (1, 0, 1) (1, 0, 0)', '(0, 0, -5 mm)', '(3 m, 0, 0)', 0],
  ])('plates over the ends of %s, at %s and %s: %d closed', (line, first, second, count) => {
    const plate = (n: number, at: string) => `  part "B${n}": plate 200 x 200 x 10 mm, of carbon steel, at ${at}\n`;
    const s = loadOf(`${plate(1, first)}${plate(2, second)}  part "Run": pipe DN 100, schedule 40, along ${line} m`);
    expect(errors(s)).toHaveLength(count);
    expect(slugs(s)).toEqual(['contents-unstated']);
  });
});

// 100 mm bore, 1 m long: 7.854 L each.
test('what an unstated space would hold counts in every copy of what it stands in', () => {
  const s = loadOf(
    '  assembly "Rack": at (0, 0, 0), count 5, every (0, 1 m, 0)\n    part "T": tube, outside 110 mm, bore 100 mm, length 1 m, of carbon steel, at (0, 0, 0), count 2, every (0, 0.3 m, 0)',
  );
  expect(message(s, 'contents-unstated')).toContain('encloses 78.6 L');
});

describe('water taken up', () => {
  test('timber without a word is taken wet: 47 % more than seasoned', () => {
    const mat = (of: string) => loadOf(`  part "Mat": box 16 x 4 x 1 ft, of ${of}, at (0, 0, 0)`);
    const [unsaid, wet, dry] = ['fir', 'wet fir', 'seasoned fir'].map((of) =>
      value(mat(of), 'part', 'Mat', 'weight'),
    ) as [number, number, number];
    expect(unsaid).toBe(wet);
    expect(wet / dry).toBeGreaterThan(1.3);
    expect(slugs(mat('fir'))).toContain('material-doubtful');
    expect(slugs(mat('wet fir'))).not.toContain('material-doubtful');
  });

  test.each(['mineral wool', 'sand', 'soil', 'snow', 'oak'])(
    '%s covers dry and wet: the heaviest counts, and the way out names that one first and prefers none',
    (of) => {
      const s = loadOf(`  part "P": box 1 x 1 x 1 m, of ${of}, at (0, 0, 0)`);
      expect(slugs(s)).toContain('material-doubtful');
      const ways = waysOut(s, 'material-doubtful');
      const weights = ways.map(
        (way) =>
          value(
            loadOf(`  part "P": box 1 x 1 x 1 m, of ${way.replace(/^Write /, '')}, at (0, 0, 0)`),
            'part',
            'P',
            'weight',
          ) as number,
      );
      expect(weights.length).toBeGreaterThan(1);
      expect(weights).toEqual([...weights].sort((a, b) => b - a));
      expect(value(s, 'part', 'P', 'weight')).toBe(weights[0]);
      expect(paper(s)).toMatch(/material-doubtful|covers/);
    },
  );

  test('water in what was weighed dry is added where it is named, and asked for where it is not', () => {
    const lagged = (more: string) =>
      loadOf(
        `  stated 2,000 kg, by drawing, from "V-3"${more}\n  part "Shell": item 2,000 kg, by drawing, from "V-3", at (0, 0, 0)\n  part "Wet lagging": box 2 x 1 x 0.1 m, of wet mineral wool, at (0, 0, 1 m)`,
      );
    const water = value(lagged(''), 'part', 'Wet lagging', 'weight') as number;
    expect(water).toBeGreaterThan(100);
    expect(value(lagged(', without "Wet lagging"'), 'load', 'L', 'stated weight')).toBeCloseTo(2000 + water, 9);
    expect(value(lagged(''), 'load', 'L', 'weight')).toBeCloseTo(2000 + water, 9); // by its parts, which govern
  });
});

describe('a light density', () => {
  test('the heaviest of a family counts: aluminium as its heaviest alloy, granite solid, concrete with steel', () => {
    const cubicFoot = (of: string) =>
      (value(loadOf(`  part "P": box 1 x 1 x 1 ft, of ${of}, at (0, 0, 0)`), 'part', 'P', 'weight') as number) / pound;
    // A pocket table's 165 lb/ft3 for aluminium, 96 for broken granite and 150 for concrete would all be lighter.
    expect(cubicFoot('aluminium')).toBeGreaterThan(2800 * 0.999 * foot ** 3 * (1 / pound));
    expect(cubicFoot('granite')).toBeGreaterThan(175);
    expect(cubicFoot('concrete')).toBeGreaterThan(150);
    expect(cubicFoot('aluminium') / 165).toBeGreaterThan(1.05);
  });

  test('a density of one’s own takes no name of the table', () => {
    const own = lift(`${head}material "granite": density 96 lb/ft3, from "pocket table"
load "L"
  contingency 0 %
  free "loose"
  part "P": box 1 x 1 x 1 m, of granite, at (0, 0, 0)
`);
    expect(errors(own)).toContain('name-reserved');
    expect(value(own, 'load', 'L', 'weight')).toBeNull();
  });
});
