// How values are written: numbers, quantities, sums, sizes, points, names and the rest.
import { describe, expect, test } from 'vitest';
import type { PointValue } from '../../../server/syntax/types.ts';
import { amount, problemsOf, read, under, value, written } from './reading.ts';

const length = (text: string) => amount(value('part', `length ${text}`));

describe('numbers', () => {
  test.each([
    ['12 m', '12 m'],
    ['9,850 mm', '9850 mm'],
    ['1,209,850.5 mm', '1209850.5 mm'],
    ['0.75 in', '0.75 in'],
    ['1/2 in', '0.5 in'],
    ['1 1/2 in', '1.5 in'],
    ['1-1/2 in', '1.5 in'],
    ['1½ in', '1.5 in'],
    ['1 ½ in', '1.5 in'],
    ['½ in', '0.5 in'],
    ['3⅝ in', '3.625 in'],
    ['8/12 ft', `${8 / 12} ft`],
    ['10ft', '10 ft'],
    ['10 ft', '10 ft'],
    ['0', '0'],
  ])('%s', (text, said) => expect(length(text)).toBe(said));

  test.each(['¼', '¾', '⅛', '⅜', '⅝', '⅞'])('%s is a fraction', (sign) => {
    const [above = 0, below = 1] = sign.normalize('NFKD').split('⁄').map(Number);
    expect(length(`${sign} in`)).toBe(`${above / below} in`);
  });

  test('the number keeps its own text and place', () => {
    const text = 'length 1 1/2 in';
    const found = value('part', text);
    const part =
      found?.kind === 'amount' && found.amount.kind === 'sum' && found.amount.value.kind === 'quantity'
        ? found.amount.value.parts[0]
        : undefined;
    expect([
      part?.text,
      under(text, part?.span ?? { from: 0, to: 0 }),
      under(text, part?.unit?.span ?? { from: 0, to: 0 }),
    ]).toEqual(['1 1/2', '1 1/2', 'in']);
  });

  test.each([
    ['.5 m', '0.5 m'],
    ['1e3 mm', '1,000 mm'],
    ['2.5E6 mm', '2,500,000 mm'],
    ['1e-3 m', '0.001 m'],
    ['1.850.000 mm', '1,850,000 mm'],
  ])('%s cannot be read; it could be %s', (text, reading) => {
    expect(problemsOf('part', `length ${text}`)).toMatchObject([
      { slug: 'line-unreadable', at: text, text, readings: [reading] },
    ]);
  });

  test.each(['1/0 m', `1${'0'.repeat(400)} m`, `1/${'9'.repeat(400)}0 m`])(
    '%s is never turned into a number',
    (text) => {
      const found = value('part', `length ${text}`);
      const numbers = JSON.stringify(found, (_, one) =>
        typeof one === 'number' && !Number.isFinite(one) ? 'not finite' : one,
      );
      expect(numbers).not.toContain('not finite');
      expect(read('part', `length ${text}`).opens).toBe(true);
    },
  );
});

describe('commas in numbers', () => {
  test.each([
    ['3,5 m', '3.5 m', '3, 5 m'],
    ['1234,567 mm', '1234.567 mm', '1,234,567 mm'],
    ['1,2345 mm', '1.2345 mm', '12,345 mm'],
    ['0,500 m', '0.500 m', '0, 500 m'],
    ['1.850,5 kg', '1,850.5 kg', '1.850, 5 kg'],
    ['1,23,456 mm', '1, 23, 456 mm', '1.23, 456 mm'],
  ])('%s could mean %s or %s', (text, a, b) => {
    expect(problemsOf('part', `length ${text}`)).toEqual([{ slug: 'decimal-comma', at: text, text, a, b }]);
  });

  test('a comma and a space separate: three coordinates', () => {
    expect((value('part', 'at (0, 4,000, 2) mm') as PointValue).coordinates.length).toBe(3);
  });

  test('a comma alone groups: two coordinates, which no point allows', () => {
    expect(problemsOf('part', 'at (1,200, 3) mm')).toMatchObject([
      { slug: 'line-unreadable', at: '1,200', readings: ['1, 200'] },
    ]);
  });

  test('a point before just three digits is read as such', () => {
    const line = read('load', 'stated 1.850 kg, by marking');
    expect(problemsOf('load', 'stated 1.850 kg, by marking')).toEqual([
      {
        slug: 'number-doubtful',
        at: '1.850 kg',
        text: '1.850 kg',
        short: '1.85',
        unit: 'kg',
        other: '1,850 kg',
      },
    ]);
    expect([amount(line.statement?.value ?? null), line.opens]).toEqual(['1.85 kg', false]);
  });

  test.each([
    ['12.345 kg', '12.345'],
    ['120.500 lb', '120.5'],
    ['21.000 kN', '21.0'],
  ])('%s is %s', (text, short) => {
    expect(problemsOf('load', `stated ${text}`)).toMatchObject([{ slug: 'number-doubtful', short }]);
  });

  test.each(['1.125 in', '3.048 m', '0.125 m', '4,850 lb', '1.25 kg', '2.125 t', '1,850.125 kg'])(
    '%s is not doubted',
    (text) => expect(problemsOf('load', `stated ${text}`)).toEqual([]),
  );

  test('nor is a designation or a label', () => {
    expect(problemsOf('part', 'section C8x11.500')).toEqual([]);
    expect(problemsOf('plan', 'revision 1.850 kg')).toEqual([]);
  });
});

describe('quantities and units', () => {
  test.each([
    ['12 ft 6 1/2 in', '12 ft 6.5 in'],
    ['3 lb 4 oz', '3 lb 4 oz'],
    ['-12 ft 6 in', '-12 ft 6 in'],
    ['14ft6in', '14 ft 6 in'],
    ['12 ft 6½ in', '12 ft 6.5 in'],
    ['55 US gal', '55 US gal'],
    ['2 short ton', '2 short ton'],
    ['2 long  ton', '2 long ton'],
    ['1.1 lb/ft', '1.1 lb/ft'],
    ['2,400 kg/m3', '2400 kg/m3'],
    ['2,400 kg/m³', '2400 kg/m3'],
    ['71 cm²', '71 cm2'],
    ['8 lb/US gal', '8 lb/US gal'],
    ['1 short ton/ft2', '1 short ton/ft2'],
    ['60 deg', '60 deg'],
    ['60°', '60 deg'],
    ['20 °C', '20 degC'],
    ['5 %', '5 %'],
    ['5%', '5 %'],
    ['3 lbs', '3 lbs'],
    ['3 furlong', '3 furlong'],
    ['2 m/s', '2 m/s'],
    ['14 ft ± 1 in', '14 ft ± 1 in'],
    ['14 ft +- 2 %', '14 ft ± 2 %'],
    ['?', 'unknown'],
    ['none', 'none'],
  ])('%s', (text, said) => expect(length(text)).toBe(said));

  test('an unknown word straight after a number is its unit, but never a word that joins', () => {
    expect(value('part', 'size 4 x 2 x 2 ft')).toMatchObject({
      kind: 'size',
      sides: [{ parts: [{ unit: null }] }, { parts: [{ unit: null }] }, { parts: [{ unit: { text: 'ft' } }] }],
    });
    expect(value('part', 'turn 30 about z')).toMatchObject({
      kind: 'turn',
      axis: 'z',
      angle: { parts: [{ value: 30, unit: null }] },
    });
    expect(value('stage', 'incline x 0 to 90 deg')).toMatchObject({
      kind: 'tilt',
      axis: 'x',
      angle: { parts: [{ value: 0 }] },
      to: { parts: [{ value: 90, unit: { text: 'deg' } }] },
    });
    expect(value('file', 'expect load weight between 7.3 and 7.5 t')).toMatchObject({
      op: 'between',
      left: { parts: [{ value: 7.3, unit: null }] },
    });
  });

  test('only one slash joins units', () => expect(read('part', 'density 3 kg/m/s').opens).toBe(true));
});

describe('sums', () => {
  test.each([
    ['4 * 55 ft * 1.1 ft', '((4 * 55 ft) * 1.1 ft)'],
    ['1 m + 2 m * 3 - 4 m / 2', '((1 m + (2 m * 3)) - (4 m / 2))'],
    ['(1 m + 2 m) * 3', '((1 m + 2 m) * 3)'],
    ['-(18 in + 7 ft)', '-((18 in + 7 ft))'],
    ['-pipe-od', '-(pipe-od)'],
    ['pipe-od / 2', '(pipe-od / 2)'],
    ['sqrt(a * a + b * b)', 'sqrt(((a * a) + (b * b)))'],
    ['max(1 m, 2 m, 3 m)', 'max(1 m, 2 m, 3 m)'],
    ['min (a, b)', 'min(a, b)'],
    ['3 m · 2', '(3 m * 2)'],
    ['3 m − 2 m', '(3 m - 2 m)'],
    ['−3 m', '-3 m'],
    ['2 * -3 m', '(2 * -3 m)'],
    ['-(-3 m)', '-(-3 m)'],
    ['-sin(30 deg)', '-(sin(30 deg))'],
    ['149 bar * 71 cm2', '(149 bar * 71 cm2)'],
    ['1,100 m - 1 m ± 5 %', '(1100 m - 1 m) ± 5 %'],
  ])('%s', (text, said) => expect(length(text)).toBe(said));

  test.each([
    ['10 ft/2', '10 ft / 2'],
    ['10 ft*2', '10 ft * 2'],
    ['12-3 m', '12 - 3 m'],
    ['10 ft -2 ft', '10 ft - 2 ft'],
    ['1,200/3 mm', '1,200 / 3 mm'],
    ['deck+1 m', 'deck + 1 m'],
    ['1.5/2 m', '1.5 / 2 m'],
  ])('%s needs spaces: %s', (text, reading) => {
    const [problem] = problemsOf('part', `length ${text}`) as unknown as {
      slug: string;
      at: string;
      readings: string[];
    }[];
    expect([problem?.slug, problem?.readings.map((one) => `length ${text}`.replace(problem.at, one))]).toEqual([
      'line-unreadable',
      [`length ${reading}`],
    ]);
  });

  test('without spaces a slash between words stays with the unit, a hyphen with the name', () => {
    expect(length('10 ft/deck')).toBe('10 ft/deck');
    expect(length('deck-2')).toBe('deck-2');
  });
});

describe('sizes', () => {
  test.each(['deck x 4 ft x 1/2 in', 'deck × 4 ft × ½ in'])('%s: a name and two quantities', (text) => {
    const found = value('part', `size ${text}`);
    expect(found?.kind === 'size' && found.sides.map(written)).toEqual(['deck', '4 ft', '0.5 in']);
  });

  test('a bracket, two sides, a tolerance for each side', () => {
    const [box] = read('load', 'part "A": box (10 ft / 2) x 3 ft ± 1 in').clauses;
    expect(box?.value?.kind === 'size' && [box.value.sides.map(written), written(box.value.tolerance)]).toEqual([
      ['(10 ft / 2)', '3 ft'],
      '1 in',
    ]);
  });

  test.each([
    ['4x2 ft', '4 x 2 ft'],
    ['4 x2 ft', '4 x 2 ft'],
    ['4×2 ft', '4 x 2 ft'],
    ['4 X 2 ft', '4 x 2 ft'],
    ['10 ft/2 x 3 ft', '(10 ft / 2) x 3 ft'],
  ])('%s cannot be read; it could be %s', (text, reading) => {
    const [problem] = problemsOf('part', `size ${text}`) as unknown as { at: string; readings: string[] }[];
    expect(problem?.readings.map((one) => text.replace(problem.at, one))).toContain(reading);
  });

  test('base takes an amount or two sides', () => {
    expect(value('part', 'base 2 m')?.kind).toBe('amount');
    expect(value('part', 'base 2 x 1 m')?.kind).toBe('size');
  });
});

describe('points', () => {
  test('three amounts, a unit for all, a tolerance as a point or a sum', () => {
    const found = value('load', 'cog (0.4, 0, -1.5) m ± (0.2, 0.1, 0.2) m') as PointValue;
    expect(found.coordinates.map((one) => one.kind === 'sum' && written(one.value))).toEqual(['0.4', '0', '-1.5']);
    expect([
      found.unit?.text,
      (found.tolerance as PointValue).coordinates.length,
      (found.tolerance as PointValue).unit?.text,
    ]).toEqual(['m', 3, 'm']);
    expect(written((value('load', 'cog (0.4, 0, 1) m ± 10 mm') as PointValue).tolerance as never)).toBe('10 mm');
  });

  test.each([
    ['(2.1 m, 0, ?)', ['2.1 m', '0', 'unknown']],
    ['(-(18 in + 7 ft), 0, 0)', ['-((18 in + 7 ft))', '0', '0']],
    ['(5, 2, 8/12) ft', ['5', '2', `${8 / 12}`]],
    ['(0, 18 in + 3 ft, 0)', ['0', '(18 in + 3 ft)', '0']],
  ])('%s', (text, said) => {
    const found = value('load', `cog ${text}`) as PointValue;
    expect(found.coordinates.map((one) => (one.kind === 'sum' ? written(one.value) : one.kind))).toEqual(said);
  });

  test('points of an outline share a unit', () =>
    expect(value('part', 'outline (0, 0) (2, 0) (2, 1) m')).toMatchObject({
      kind: 'points',
      points: [{ length: 2 }, { length: 2 }, { length: 2 }],
      unit: { text: 'm' },
    }));

  test.each([
    ['(0, 1, 2', '(0, 1, 2)'],
    ['(0, 1, 2 m', '(0, 1, 2 m)'],
    ['(0,18 in, 3)', null],
    ['(0, 1, 2)) m', '(0, 1, 2) m'],
  ])('%s cannot be read', (text, reading) => {
    const [problem] = problemsOf('part', `at ${text}`) as unknown as {
      slug: string;
      at: string;
      readings?: string[];
    }[];
    expect(problem?.readings?.map((one) => text.replace(problem.at, one)) ?? null).toEqual(
      reading ? expect.arrayContaining([reading]) : null,
    );
  });
});

describe('names', () => {
  test('dotted, quoted, ranges, several', () => {
    const names = (block: string, text: string) => {
      const found = value(block, text);
      return found?.kind === 'names' || found?.kind === 'path'
        ? found.names.map(
            (name) => name.parts.map((part) => part.text).join('.') + (name.until ? `..${name.until.text}` : ''),
          )
        : found?.kind;
    };
    expect(names('bridle', 'items S1..S4')).toEqual(['S1..S4']);
    expect(names('part', 'inside "Shell" and "East head" and Tank')).toEqual(['Shell', 'East head', 'Tank']);
    expect(names('rig', 'leg "Main block" > S1 > K1 > "Pump skid".NW')).toEqual([
      'Main block',
      'S1',
      'K1',
      'Pump skid.NW',
    ]);
    expect(names('rig', 'leg Block>S1')).toEqual(['Block', 'S1']);
    expect(names('sling', 'like W14-1')).toEqual(['W14-1']);
    expect(names('part', 'on pick')).toEqual(['pick']);
    expect(names('part', 'on x and y')).toEqual(['x', 'y']);
  });

  test.each([
    ['on S1,S2', 'S1 and S2'],
    ['on Deck plate', '"Deck plate"'],
    ['on "Deck"NW', '"Deck".NW'],
  ])('%s cannot be read', (text, reading) => {
    const [problem] = problemsOf('part', text) as unknown as { slug: string; readings: string[] }[];
    expect(problem?.slug).toBe('line-unreadable');
    expect(problem?.readings).toEqual([reading]);
  });

  test('no space at the dot', () => expect(read('part', 'on "Pump skid". NW').opens).toBe(true));
});

describe('everything else', () => {
  test.each([
    ['part', 'axis -x', { kind: 'axis', axis: '-x' }],
    ['part', 'axis +y', { kind: 'axis', axis: 'y' }],
    ['part', 'axis −z', { kind: 'axis', axis: '-z' }],
    ['part', 'turn a + 5 deg about -x', { kind: 'turn', axis: '-x' }],
    ['part', 'circle 17 in about y', { kind: 'circle', axis: 'y' }],
    ['part', 'against "Shell" -x', { kind: 'side', axis: '-x', name: { parts: [{ text: 'Shell' }] } }],
    ['stage', 'incline x -10 deg', { kind: 'tilt', axis: 'x', angle: { negative: true }, to: null }],
    ['plan', 'date 2026-05-18', { kind: 'date', text: '2026-05-18' }],
    ['plan', 'revision C', { kind: 'label', text: 'C' }],
    ['plan', 'revision 0', { kind: 'label', text: '0' }],
    ['plan', 'revision "C 2"', { kind: 'label', text: 'C 2' }],
    ['part', 'schedule 40', { kind: 'label', text: '40' }],
    ['part', 'schedule 10S', { kind: 'label', text: '10S' }],
    ['sling', 'grade 80', { kind: 'label', text: '80' }],
    ['part', 'by shipping paper', { kind: 'word', word: 'shipping paper' }],
    ['part', 'by  shipping   paper', { kind: 'word', word: 'shipping paper' }],
    ['pick', 'kind lug', { kind: 'word', word: 'lug' }],
    ['plan', 'site "Say ""stop"", then wait"', { kind: 'text', text: 'Say "stop", then wait' }],
    ['plan', 'site “Mill Creek”', { kind: 'text', text: 'Mill Creek' }],
    ['plan', 'site ""', { kind: 'text', text: '' }],
    ['part', 'of carbon steel', { kind: 'designation', text: 'carbon steel' }],
    ['part', 'of "cured grout, fine"', { kind: 'designation', text: 'cured grout, fine' }],
    ['part', 'section C8x11.5', { kind: 'designation', text: 'C8x11.5' }],
    ['part', 'section 2L4x4x1/2', { kind: 'designation', text: '2L4x4x1/2' }],
    ['part', 'section HEB 300', { kind: 'designation', text: 'HEB 300' }],
    ['part', 'section W12×50', { kind: 'designation', text: 'W12×50' }],
    ['part', 'pipe NPS 1 1/2', { kind: 'designation', text: 'NPS 1 1/2' }],
    ['part', 'bar "#5"', { kind: 'designation', text: '#5' }],
    ['part', 'bar 20 mm', { kind: 'amount' }],
    ['part', 'liquid', null],
    ['part', 'liquid 55 US gal', { kind: 'amount' }],
    ['rules', 'contingency load cell 3 %', { kind: 'word', word: 'load cell', amount: { kind: 'sum' } }],
    [
      'rules',
      'require approval "Person in charge"',
      { kind: 'subject', words: [{ kind: 'word', text: 'approval' }, { kind: 'name' }] },
    ],
    ['category', 'when people lifted', { kind: 'word', word: 'people lifted' }],
    ['category', 'when crane capacity used > 75 %', { kind: 'compare', op: '>' }],
    [
      'chart',
      'radius 10 ft: 60,000; 51,000 lb; none',
      { kind: 'row', head: { kind: 'sum' }, cells: [{ kind: 'sum' }, { kind: 'sum' }, { kind: 'none' }] },
    ],
    ['chart', 'columns 35; 50 ft', { kind: 'row', head: null, cells: [{ kind: 'sum' }, { kind: 'sum' }] }],
  ])('%s: %s', (block, text, said) => {
    expect(problemsOf(block, text)).toEqual([]);
    if (said) expect(value(block, text)).toMatchObject(said);
    else expect(value(block, text)).toBeNull();
  });

  test.each([
    ['<', '<'],
    ['<=', '<='],
    ['≤', '<='],
    ['>', '>'],
    ['>=', '>='],
    ['≥', '>='],
  ])('compares by %s', (sign, op) =>
    expect(value('file', `expect gross load ${sign} 8,000 lb`)).toMatchObject({ kind: 'compare', op }),
  );

  test('what is compared stands apart from the bound', () => {
    const text = 'expect load "Pump skid".NW capacity used = 3 t ± 1 %';
    const found = value('file', text);
    expect(
      found?.kind === 'compare' && [
        under(text, found.subjectSpan),
        found.op,
        written(found.left),
        written(found.right),
      ],
    ).toEqual(['load "Pump skid".NW capacity used', '=', '3 t', '1 %']);
  });

  test.each([
    ['file', 'expect gross load = 3 t'],
    ['file', 'expect gross load'],
    ['file', 'expect < 3 t'],
    ['file', 'expect gross load =< 3 t'],
  ])('%s: %s cannot be read', (block, text) => expect(read(block, text).opens).toBe(true));

  test('? is not known yet, whatever is written there', () => {
    for (const [block, text] of [
      ['part', 'at ?'],
      ['plan', 'site ?'],
      ['plan', 'date ?'],
      ['part', 'on ?'],
      ['part', 'by ?'],
      ['part', 'size ?'],
      ['part', 'of ?'],
      ['part', 'bar ?'],
      ['plan', 'revision ?'],
      ['part', 'axis ?'],
    ] as const) {
      expect([text, amount(value(block, text)), read(block, text).opens]).toEqual([text, 'unknown', false]);
    }
  });

  test.each([
    ['2026/5/8', ['2026-05-08']],
    ['2026-5-18', ['2026-05-18']],
    ['18.5.2026', ['2026-05-18']],
    ['4/5/2026', ['2026-05-04', '2026-04-05']],
    ['2026-05-188', []],
  ])('date %s could be %s', (text, readings) => {
    expect(problemsOf('plan', `date ${text}`)).toMatchObject([{ slug: 'line-unreadable', readings }]);
  });
});
