// Bought-in pipework in a plan: what it comes to, how it lies, what it holds, and what is said of a size that is not made.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fittingSize,
  flangeClasses,
  flangeDesignations,
  flangeSize,
  pipe,
  reducerDesignations,
} from '../../../server/catalog/index.ts';
import { loadOf, message, slugs, value } from '../../support/lift.ts';

const one = (shape: string, more = '') => loadOf(`  part "P": ${shape}, at (0, 0, 0)${more}\n    empty "seen"`);
const weight = (shape: string): number | null => value(one(shape), 'load', 'L', 'calculated weight');
const load = (result: string, lines: string): number | null => value(loadOf(lines), 'load', 'L', result);

describe('weights by hand', () => {
  test('weld neck NPS 8 class 150 on schedule 40, as thick as B16.5 allows', () => {
    const disc = 345 ** 2 * (27 + 3) + 269.9 ** 2 * 2;
    const neck = 8.625 * 25.4;
    const hub = ((246 ** 2 + 246 * neck + neck ** 2) / 3) * 73;
    const bore = (neck - 2 * 0.322 * 25.4) ** 2 * 105;
    expect(weight('flange NPS 8, class 150, form weld neck, schedule 40')).toBeCloseTo(
      (Math.PI / 4) * (disc + hub - bore) * 7.85e-6,
      9,
    );
  });

  test('weld neck DN 200 PN16: 24 mm with its face, 1.5 mm more at most, hub 235 mm, 62 mm to the weld', () => {
    const [neck, wall] = [8.625 * 25.4, 0.322 * 25.4];
    const disc = 340 ** 2 * 22.5 + 268 ** 2 * 3;
    const hub = ((235 ** 2 + 235 * neck + neck ** 2) / 3) * 38;
    const bore = (neck - 2 * wall) ** 2 * 63.5;
    expect(weight('flange DN 200, class PN16, form weld neck, schedule 40')).toBeCloseTo(
      (Math.PI / 4) * (disc + hub - bore) * 7.85e-6,
      9,
    );
    expect(message(one('flange DN 200, class PN16, form slip on'), 'size-unknown')).toContain(
      'slip on is not in the table',
    );
  });

  test('slip on, lap joint and blind take their own hub, bore and face', () => {
    const of = (cubic: number) => (Math.PI / 4) * cubic * 7.85e-6;
    expect(weight('flange DN 200, class 150, form slip on')).toBeCloseTo(
      of(345 ** 2 * 30 + 269.9 ** 2 * 2 + 246 ** 2 * 16 - 221.5 ** 2 * 48),
      9,
    );
    expect(weight('flange DN 200, class 150, form lap joint')).toBeCloseTo(
      of(345 ** 2 * 31.6 + 246 ** 2 * 15.4 - 222.2 ** 2 * 47),
      9,
    );
    expect(weight('flange DN 200, class 150, form blind')).toBeCloseTo(of(345 ** 2 * 30 + 269.9 ** 2 * 2), 9);
  });

  test('threaded and socket-weld flanges are bored to their pipe all through, no lighter than a slip on', () => {
    const flange = (form: string) => weight(`flange NPS 2, class 150, form ${form}`) as number;
    const bore = (2.375 - 2 * 0.154) * 25.4;
    const solid = 150 ** 2 * 20.5 + 92.1 ** 2 * 2 + 78 ** 2 * 6.5;
    expect(flange('threaded')).toBeCloseTo((Math.PI / 4) * (solid - bore ** 2 * 29) * 7.85e-6, 9);
    expect(flange('socket weld')).toBe(flange('threaded'));
    expect(flange('threaded')).toBeGreaterThan(flange('slip on'));
    expect(flange('threaded, schedule 160')).toBeGreaterThan(flange('threaded'));
    expect(message(one('flange NPS 8, class 150, form socket weld'), 'size-unknown')).toContain('socket weld');
  });

  test('where makers list a flange heavier than the standard allows, the list governs: 562 lb, 123 lb, and 36 lb', () => {
    const pound = 0.45359237;
    const neck = (schedule: string) =>
      weight(`flange NPS 14, class 900, form weld neck, schedule ${schedule}`) as number;
    expect(neck('STD')).toBeCloseTo(562 * pound, 2);
    expect(neck('100')).toBeCloseTo(neck('STD'), 9); // the list says no schedule: a heavier wall is in its weight already
    expect(neck('160')).toBeGreaterThanOrEqual(neck('STD'));
    expect(weight('flange NPS 12, class 150, form blind')).toBeCloseTo(123 * pound, 2);
    expect(weight('flange NPS 3, class 900, form threaded')).toBeGreaterThanOrEqual(36 * pound - 1e-9);
    expect(weight('nozzle NPS 14, class 900, schedule STD, projection 300 mm')).toBeGreaterThan(neck('STD'));
    const manway = (davit: string) =>
      weight(`manway NPS 24, class 900, schedule STD, projection 500 mm, davit ${davit}`) as number;
    expect(manway('30 kg') - manway('none')).toBeCloseTo(30, 9); // what is stated is not raised
  });

  test('an elbow is its bend by Pappus with the allowance for thick walls', () => {
    const bend = Math.PI * (8.625 - 0.322) * 0.322 * 12 * (Math.PI / 2) * 0.0254 ** 3 * 7850;
    expect(weight('pipe elbow NPS 8, schedule 40, form long radius, angle 90 deg')).toBeCloseTo(bend * 1.12, 9);
    expect(weight('pipe elbow NPS 8, schedule 40, form short radius, angle 90 deg')).toBeCloseTo(
      bend * 1.12 * (2 / 3),
      9,
    );
    expect(weight('pipe elbow NPS 8, schedule 40, form long radius, angle 45 deg')).toBeCloseTo((bend * 1.12) / 2, 9);
  });

  test('an inch stud with two heavy nuts, and how many nuts and washers a form has', () => {
    const [rod, nut] = [(Math.PI / 4) * 0.75 ** 2 * 4, (Math.sqrt(3) / 2) * 1.25 ** 2 - (Math.PI / 4) * 0.75 ** 2];
    expect(weight('bolt 3/4 in, length 4 in, form stud')).toBeCloseTo((rod + 2 * nut * 0.758) * 0.0254 ** 3 * 7850, 9);
    const hex = (more: string) => weight(`bolt M24, length 120 mm, form hex${more}`) as number;
    const piece = (shape: string) => weight(shape) as number;
    expect(hex('') - hex(', nuts 0')).toBeCloseTo(piece('nut M24, form hex'), 9);
    expect(hex('') - hex(', washers 0')).toBeCloseTo(piece('washer M24'), 9);
    expect(piece('bolt M24, length 120 mm, form anchor') - piece('bolt M24, length 120 mm, form stud')).toBeCloseTo(
      piece('washer M24'),
      9,
    );
  });

  test('a reducing tee counts as the equal tee of its run, and has no branch above it', () => {
    expect(weight('pipe tee NPS 8 x 4, schedule 40')).toBe(weight('pipe tee NPS 8, schedule 40'));
    expect(message(one('pipe tee NPS 4 x 8, schedule 40'), 'size-unknown')).toContain('NPS 4 x 8');
  });

  test('a bolt set is the studs of its flange: NPS 8 class 150 has 8 of 3/4 in, 110 mm long', () => {
    expect(weight('bolt set NPS 8, class 150')).toBeCloseTo(
      8 * (weight('bolt 3/4 in, length 110 mm, form stud') ?? 0),
      9,
    );
    // DN 100 PN16: 8 of M16; two flanges 20 mm and at most 1.5 mm more, nuts 17.1 mm, 12 mm.
    expect(weight('bolt set DN 100, class PN16')).toBeCloseTo(
      8 * (weight('bolt M16, length 89.2 mm, form stud') ?? 0),
      9,
    );
    expect(weight('bolt set NPS 8, class 150, length 150 mm')).toBeCloseTo(
      8 * (weight('bolt 3/4 in, length 150 mm, form stud') ?? 0),
      9,
    );
  });

  test('a manway is its nozzle, a blind flange, the bolts and the davit', () => {
    const stub = 'NPS 24, class 150, schedule STD, projection 250 mm';
    const pieces = [
      weight(`nozzle ${stub}`),
      weight('flange NPS 24, class 150, form blind'),
      weight('bolt set NPS 24, class 150'),
    ];
    const sum = pieces.reduce<number>((total, piece) => total + (piece ?? Number.NaN), 0);
    expect(weight(`manway ${stub}, davit 60 kg`)).toBeCloseTo(sum + 60, 9);
    expect(weight(`manway ${stub}, davit none`)).toBeCloseTo(sum, 9);
  });

  test('schedules with S are of stainless steel, another material is taken as said', () => {
    const cap = (more: string) => weight(`pipe cap NPS 8, ${more}`) as number;
    expect(cap('schedule 40S') / cap('schedule 40')).toBeCloseTo(8000 / 7850, 9);
    expect(cap('schedule 40, of aluminium') / cap('schedule 40')).toBeCloseTo(
      (weight('box 1 x 1 x 1 m, of aluminium') as number) / 7850,
      9,
    );
  });
});

describe('how it lies', () => {
  const run = '  part "Run": pipe NPS 8, schedule 40, length 2 m, at (0, 0, 0)\n    empty "seen"\n';

  test('a flange laid along a pipe and against its end stands there with its face outwards', () => {
    const lines = `${run}  part "F": flange NPS 8, class 150, form weld neck, schedule 40, axis x, against "Run" x`;
    expect(slugs(loadOf(lines))).toEqual([]);
    expect(load('length', lines)).toBeCloseTo(2 + 0.105, 9);
    const turned = `${run}  part "F": flange NPS 8, class 150, form weld neck, schedule 40, axis -x, against "Run" -x`;
    expect(load('length', turned)).toBeCloseTo(2 + 0.105, 9);
    expect(load('cog x', turned)).toBeCloseTo(-(load('cog x', lines) ?? 0), 9);
  });

  test('placed by a point it stands with the middle of its gasket face there', () => {
    const lines = '  part "F": flange NPS 8, class 150, form blind, at (0, 0, 1 m)';
    expect(load('height', lines)).toBeCloseTo(0.032, 9);
    expect(load('cog z', lines)).toBeGreaterThan(1 - 0.032);
    expect(load('cog z', lines)).toBeLessThan(1);
  });

  test('an eccentric reducer laid along x lies flat at the bottom', () => {
    const laid = (form: string) =>
      load(
        'cog z',
        `  part "R": pipe reducer NPS 8 x 4, schedule 40, form ${form}, axis x, at (0, 0, 0)\n    empty "seen"`,
      );
    expect(laid('concentric')).toBeCloseTo(0, 12);
    expect(laid('eccentric')).toBeLessThan(-0.01);
  });

  test('bolts stand round a circle', () => {
    const lines = '  part "B": bolt M24, length 120 mm, form stud, at (0, 0, 0), count 8, circle 400 mm about z';
    expect(load('calculated weight', lines)).toBeCloseTo(8 * (weight('bolt M24, length 120 mm, form stud') ?? 0), 9);
    expect(load('length', lines)).toBeGreaterThan(0.4);
  });
});

describe('what it holds', () => {
  const full = (shape: string) =>
    load(
      'volume',
      `  part "P": ${shape}, at (0, 0, 0)\n  part "W": liquid, fill 100 %, of water, inside "P"`,
    ) as number;
  const own = (shape: string) => value(one(shape), 'load', 'L', 'volume') as number;
  const bore = 8.625 * 0.0254 - 2 * 0.322 * 0.0254;

  test.each([
    [
      'elbow',
      'pipe elbow NPS 8, schedule 40, form long radius, angle 90 deg',
      (Math.PI / 4) * bore ** 2 * 12 * 0.0254 * (Math.PI / 2),
    ],
    ['flange', 'flange NPS 8, class 150, form weld neck, schedule 40', (Math.PI / 4) * bore ** 2 * 0.105],
    ['nozzle', 'nozzle NPS 8, class 150, schedule 40, projection 300 mm', (Math.PI / 4) * bore ** 2 * 0.3],
    ['tee', 'pipe tee NPS 8, schedule 40', (Math.PI / 4) * bore ** 2 * 3 * 0.178 - bore ** 3 / 3],
  ])('the bore of an %s', (_, shape, expected) => expect(full(shape) - own(shape)).toBeCloseTo(expected, 9));

  test('a pipe between two blind flanges, or with a blind on the flange of an end, is closed', () => {
    const run = '  part "Run": pipe NPS 8, schedule 40, length 2 m, at (0, 0, 0)\n';
    const blind = (axis: string, name: string, on = 'Run') =>
      `  part "${name}": flange NPS 8, class 150, form blind, axis ${axis}, against "${on}" ${axis}\n`;
    const said = (lines: string) =>
      loadOf(lines)
        .findings.filter(({ slug }) => slug === 'contents-unstated')
        .map(({ severity }) => severity);
    expect(said(run + blind('x', 'A'))).toEqual(['note']);
    expect(said(run + blind('x', 'A') + blind('-x', 'B'))).toEqual(['error']);
    const neck = '  part "F": flange NPS 8, class 150, form weld neck, schedule 40, axis -x, against "Run" -x\n';
    expect(said(run + blind('x', 'A') + neck)).toEqual(['note']);
    const standing = (axis: string, x: string) =>
      `  part "At ${x}": flange NPS 8, class 150, form blind, axis ${axis}, at (${x}, 0, 0)\n`;
    expect(said(run + standing('-x', '1 m') + standing('x', '-1.2 m'))).toEqual(['note']);
    expect(said(run + standing('-x', '1 m') + standing('x', '-1 m'))).toEqual(['error']);
    expect(said(run + blind('x', 'A') + neck + blind('-x', 'B', 'F'))).toEqual(['error']);
  });
});

describe('what is not made, and what is missing', () => {
  test('a size, a class, a form and a schedule that are not in the tables, with the nearest and their weights', () => {
    expect(message(one('flange NPS 9, class 150, form blind'), 'size-unknown')).toMatch(
      /^NPS 9 is not in the table of flanges\. Nearest: NPS (8|10) \([\d.]+ kg\)/,
    );
    expect(message(one('flange NPS 8, class 400, form blind'), 'size-unknown')).toContain(
      'NPS 8 class 400 is not in the table of flanges',
    );
    expect(message(one('flange NPS 8, class 1500, form slip on'), 'size-unknown')).toContain(
      'NPS 8 class 1500 slip on is not in the table',
    );
    expect(message(one('pipe tee NPS 8, schedule 45'), 'size-unknown')).toContain(
      'NPS 8 schedule 45 is not in the table of pipes',
    );
    expect(message(one('pipe reducer NPS 8 x 2, schedule 40, form concentric'), 'size-unknown')).toContain('NPS 8 x 2');
    expect(message(one('bolt M25, length 100 mm, form hex'), 'size-unknown')).toMatch(
      /M25 is not in the table of bolts\. Nearest: M24 \(/,
    );
    expect(message(one('bolt 25 mm, length 100 mm, form hex'), 'size-unknown')).toContain('not in the table of bolts');
  });

  test('no way out of it makes up a weight per length', () => {
    const found = one('flange NPS 9, class 150, form blind').findings.find(({ slug }) => slug === 'size-unknown');
    expect(found?.fixes.map(({ title }) => title).join()).not.toContain('unit weight');
  });

  test('what is due is asked for, and the weight stays open', () => {
    for (const [shape, due] of [
      ['flange NPS 8, form blind', 'class'],
      ['flange NPS 8, class 150', 'form'],
      ['flange NPS 8, class 150, form weld neck', 'schedule'],
      ['manway NPS 24, class 150, schedule STD, projection 250 mm', 'davit'],
      ['nozzle NPS 8, class 150, schedule 40', 'projection'],
    ] as const) {
      expect(message(one(shape), 'clause-missing'), shape).toContain(due);
      expect(weight(shape), shape).toBeNull();
    }
  });

  test('what is not known yet leaves the weight open, and never counts as left out', () => {
    for (const shape of [
      'bolt M24, length 120 mm, form ?',
      'bolt M24, length 120 mm, form none',
      'bolt M24, length 120 mm, form hex, nuts ?',
      'flange NPS 8, class ?, form blind',
      'flange NPS 8, class 150, form ?',
      'flange NPS 8, class 150, form weld neck, schedule ?',
      'flange ?, class 150, form blind',
      'pipe cap NPS 8, schedule ?',
      'nozzle NPS 8, class 150, schedule 40, projection ?',
      'manway NPS 24, class 150, schedule STD, projection 250 mm, davit ?',
      'bolt set NPS 8, class 150, length ?',
      'dished head, outside 2 m, wall 12 mm, form ?, of carbon steel',
      'pipe NPS 8, schedule ?, length 1 m',
    ])
      expect(weight(shape), shape).toBeNull();
  });

  test('a class is read as it is written on drawings', () => {
    for (const said of ['150', '"150#"', '"150 lb"', '"Class 150"'])
      expect(weight(`flange NPS 8, class ${said}, form blind`), said).toBe(
        weight('flange NPS 8, class 150, form blind'),
      );
    expect(weight('flange DN 200, class "PN 16", form blind')).toBe(weight('flange DN 200, class PN16, form blind'));
  });

  test('a word of another shape is not taken for one of this', () => {
    expect(message(one('flange NPS 8, class 150, form torispherical'), 'word-unknown')).toContain('weld neck');
    expect(weight('flange NPS 8, class 150, form torispherical')).toBeNull();
    expect(weight('dished head, outside 2 m, wall 12 mm, form blind, of carbon steel')).toBeNull();
  });

  test('what cannot be is said: a nozzle shorter than its flange, a pad inside its pipe, nuts on a short stud', () => {
    const nozzle = 'nozzle NPS 8, class 150, schedule 40';
    expect(message(one(`${nozzle}, projection 80 mm`), 'geometry-impossible')).toContain('ends before its flange');
    expect(message(one(`${nozzle}, projection 300 mm, pad 200 x 10 mm`), 'geometry-impossible')).toContain(
      'does not reach',
    );
    expect(message(one('bolt M24, length 30 mm, form stud'), 'geometry-impossible')).toContain('leaves no room');
  });

  test('nothing is cut out of a part that is bought in', () =>
    expect(
      slugs(one('flange NPS 8, class 150, form blind', '\n    less: hole, diameter 20 mm, depth 10 mm, at (0, 0, 0)')),
    ).toContain('cutout-outside'));
});

describe('over the tables', () => {
  const sizes = flangeDesignations().flatMap((size) => flangeClasses(size).map((one) => [size, one] as const));

  test('every flange can be made in every form, heavier in a higher class of the same size', () => {
    expect(sizes.length).toBeGreaterThanOrEqual(165);
    for (const [size, pressureClass] of sizes) {
      const forms = Object.keys(flangeSize(size, pressureClass)?.forms ?? {});
      for (const form of forms)
        expect(
          weight(`flange ${size}, class ${pressureClass}, form ${form}, schedule STD`),
          `${size} ${pressureClass} ${form}`,
        ).toBeGreaterThan(0.3);
    }
    for (const size of flangeDesignations()) {
      const classes = flangeClasses(size).filter((one) => !one.startsWith('PN'));
      const blinds = classes.map((one) => weight(`flange ${size}, class ${one}, form blind`) as number);
      // From class 300 to 600 on NPS 3-1/2 and below only the thickness grows, and 900 has the row of 1500 there.
      expect(
        blinds.every((mass, i) => i === 0 || mass >= (blinds[i - 1] as number)),
        size,
      ).toBe(true);
    }
  }, 120_000);

  test('drilling and hubs fit the flange: circle within, hub and face clear of the holes', () => {
    const odd = sizes.filter(([size, pressureClass]) => {
      const row = flangeSize(size, pressureClass);
      if (!row) return true;
      const inside = row.circle + row.hole < row.outside && row.circle - row.hole > row.hub - 0.02;
      return !(inside && row.raisedFace < row.circle - row.hole + 0.006 && (row.stud ?? 1) > 2 * row.thickness);
    });
    expect(odd).toEqual([]);
  });

  test('a thicker wall makes a heavier weld neck, elbow, tee and cap', () => {
    const walls = ['10', '40', '80', '160'];
    fc.assert(
      fc.property(
        fc.constantFrom('2', '4', '6', '8'),
        fc.constantFrom('flange', 'pipe elbow', 'pipe tee', 'pipe cap'),
        (size, shape) => {
          const rest = {
            flange: 'class 600, form weld neck',
            'pipe elbow': 'form long radius, angle 90 deg',
            'pipe tee': '',
            'pipe cap': '',
          }[shape];
          const masses = walls.map(
            (wall) => weight(`${shape} NPS ${size}, schedule ${wall}${rest && `, ${rest}`}`) as number,
          );
          expect(masses.every((mass, i) => i === 0 || mass > (masses[i - 1] as number))).toBe(true);
        },
      ),
      { numRuns: 16, seed: 2 },
    );
  });

  test('reducers weigh between pipes of their two ends, before the allowance', () => {
    for (const name of reducerDesignations()) {
      const [large = '', small = ''] = name.split(' x ');
      const [base, top] = [pipe(large, 'STD'), pipe(`NPS ${small}`, 'STD')];
      const length = fittingSize(large)?.reducer?.length ?? Number.NaN;
      const nominal =
        (weight(`pipe reducer ${name}, schedule STD, form eccentric`) ?? Number.NaN) /
        (fittingSize(large)?.reducer?.allowance ?? Number.NaN);
      expect(nominal, name).toBeLessThan((base?.massPerLength ?? 0) * length);
      expect(nominal, name).toBeGreaterThan((top?.massPerLength ?? 0) * length * 0.98);
    }
  });
});
