// Sections of the catalog: look-ups by every usual spelling, and checks over every row of every table.
import { describe, expect, test } from 'vitest';
import { nearestSections, section, sections } from '../../server/catalog/index.ts';
import { designationKey, keyParts } from '../../server/catalog/names.ts';
import rails from '../../server/catalog/rails.json';
import europe from '../../server/catalog/sections-europe.json';
import us from '../../server/catalog/sections-us.json';
import piles from '../../server/catalog/sheet-piles.json';

const steel = 7850; // kg/m3
const foot = 0.3048; // m
const inch = 0.0254; // m
const pound = 0.45359237; // kg
const failing = <T extends { readonly designation: string }>(rows: readonly T[], holds: (row: T) => boolean) =>
  rows.filter((row) => !holds(row)).map((row) => row.designation);

describe('sections', () => {
  test.each([
    ['W12X50', 'W12X50'],
    ['w12x50', 'W12X50'],
    ['W 12 × 50', 'W12X50'],
    ['W12x50.0', 'W12X50'],
    ['W310x74', 'W310X74'],
    ['C8x11.5', 'C8X11.5'],
    ['C8 x 11.50', 'C8X11.5'],
    ['MC12x31', 'MC12X31'],
    ['S12x50', 'S12X50'],
    ['L4x4x3/8', 'L4X4X3/8'],
    ['L 4 x 4 x ⅜', 'L4X4X3/8'],
    ['L2 1/2 x 2 1/2 x 1/4', 'L2-1/2X2-1/2X1/4'],
    ['L2½x2½x¼', 'L2-1/2X2-1/2X1/4'],
    ['HSS6x6x1/4', 'HSS6X6X1/4'],
    ['HSS6x6x.25', 'HSS6X6X1/4'],
    ['HSS6.000x0.500', 'HSS6.000X0.500'],
    ['HSS6x1/2', 'HSS6.000X0.500'],
    ['HEB 300', 'HE 300 B'],
    ['heb300', 'HE 300 B'],
    ['HE 300 B', 'HE 300 B'],
    ['HE-B 300', 'HE 300 B'],
    ['HEM 100', 'HE 100 M'],
    ['IPE 300', 'IPE 300'],
    ['ipe300', 'IPE 300'],
    ['UPN 200', 'UPN 200'],
    ['UNP 200', 'UPN 200'],
    ['UB 457x191x67', 'UB 457x191x67'],
    ['457x191x67 UB', 'UB 457x191x67'],
    ['L 100x100x10', 'L 100x100x10'],
    ['CHS 114.3x5', 'CHS 114.3x5'],
    ['RSA 100x100x10', 'L 100x100x10'],
    ['457x191x67 UKB', 'UB 457x191x67'],
    ['INP 200', 'IPN 200'],
    ['UBP 305x305x110', 'UBP 305x305x110'],
    ['SHS 100x100x3', 'SHS 100x100x3'],
    ['a 100', 'A100'],
    ['60 E1', '60E1'],
    ['UIC 60', 'UIC60'],
    ['S49', 'S49'],
    ['115 RE', '115RE'],
    ['85AS', '85AS'],
    ['ASCE 85', 'ASCE 85'],
    ['104CR', 'CR104'],
    ['AZ 18-700', 'AZ 18-700'],
    ['az18-700', 'AZ 18-700'],
    ['AZ 13-700-10/10', 'AZ 13-700-10/10'],
    ['PU 18+1', 'PU 18+1'],
    ['PU18-1', 'PU 18-1'],
    ['PZ27', 'PZ 27'],
  ])('%s is %s', (written, designation) => expect(section(written)?.designation).toBe(designation));

  test.each(['W12X51', '12X50', 'W12', 'HEB', 'HEB 310', 'L4X4', '', 'X', '60', '61E1', 'A101', 'AZ 18-710'])(
    '"%s" is none',
    (written) => expect(section(written)).toBeUndefined(),
  );

  test('the families are complete as far as they go', () => {
    const files = [us, europe, rails, piles];
    const counts = Object.fromEntries(
      files.flatMap(({ tables }) => tables.map(({ table, rows }) => [table, rows.length] as const)),
    );
    expect(counts).toMatchObject({
      'US wide flange shapes': 289,
      'US standard beams': 28,
      'US standard channels': 32,
      'US miscellaneous channels': 40,
      'US angles': 137,
      'US square and rectangular hollow sections': 525,
      'US round hollow sections': 189,
      'European taper flange channels': 18,
      'Universal bearing piles': 17,
      'European taper flange I sections': 21,
      'Crane rails, form A': 7,
      'European railway rails': 8,
      'US rails, ASCE': 19,
      'US crane rails': 5,
      'Sheet piles, Z sections': 36,
    });
    expect(sections().length).toBe(Object.values(counts).reduce((sum, count) => sum + count, 0));
  });

  test('no two rows share a designation, and each is found by its own', () => {
    const keys = new Set(sections().map(({ designation }) => designationKey(designation)));
    expect(keys.size).toBe(sections().length);
    expect(failing(sections(), (row) => section(row.designation)?.designation === row.designation)).toEqual([]);
  });

  test('the rows of a table begin with one letter, as the look-up takes for granted', () => {
    for (const { table, rows } of [...us.tables, ...europe.tables])
      expect(new Set(rows.map((row) => row.charAt(0))).size, table).toBe(1);
  });

  test('a metric name leads to the same shape, and to no other', () => {
    const pairs = us.tables
      .flatMap(({ rows }) => rows.map((row) => (row.split(' ')[0] ?? '').split('=')))
      .filter(([, metric]) => metric);
    expect(pairs.length).toBeGreaterThan(400);
    for (const [name = '', metric = ''] of pairs) {
      expect(section(metric)?.massPerLength, metric).toBe(section(name)?.massPerLength);
      expect(section(metric)?.designation).toBe(metric);
    }
    expect(new Set(pairs.map(([, metric]) => metric)).size).toBe(pairs.length);
  });

  test('every row: sizes above zero, the heaviest of its range used, a named source', () => {
    expect(
      failing(
        sections(),
        (s) => s.low > 0.5 && s.low <= s.massPerLength && s.massPerLength === s.high && s.high < 1400,
      ),
    ).toEqual([]);
    expect(
      failing(
        sections(),
        (s) => s.depth > 0.01 && s.width > 0.01 && s.depth < 1.2 && s.width < 0.9 && s.density === steel,
      ),
    ).toEqual([]);
    expect(failing(sections(), (s) => s.source.length > 20 && s.table.length > 5)).toEqual([]);
  });

  test('every rolled row: mass agrees with area × density within 1.5 %', () => {
    const rolled = sections().filter(
      (row) => row.area !== undefined && (!row.table.includes('US') || !row.table.includes('hollow')),
    );
    expect(rolled.length).toBeGreaterThan(2000);
    const unsized = sections().filter((row) => row.area === undefined);
    expect([...new Set(unsized.map(({ table }) => table))]).toEqual([
      'European light rails',
      'US rails, ASCE',
      'US rails, AREMA',
      'US crane rails',
    ]);
    expect(
      failing(rolled, (row) => Math.abs(((row.area ?? Number.NaN) * steel) / row.massPerLength - 1) <= 0.015),
    ).toEqual([]);
  });

  test('every US hollow row: the area is that of the design wall, at most 8 % lighter and never heavier', () => {
    const hollow = sections().filter((row) => /^US .*hollow/.test(row.table));
    expect(hollow.length).toBe(714);
    const share = (area = Number.NaN, mass: number) => (area * steel) / mass;
    expect(
      failing(
        hollow,
        (row) => share(row.area, row.massPerLength) > 0.92 && share(row.area, row.massPerLength) <= 1.002,
      ),
    ).toEqual([]);
  });

  test('every US square and rectangular hollow row: nominal wall, corner radius twice the wall, 490 lb/ft3 (AISC Manual, part 1, from memory)', () => {
    const rows = sections().filter((row) => row.table === 'US square and rectangular hollow sections');
    const weight = ({ designation }: { readonly designation: string }) => {
      const [depth = 0, width = 0, wall = 0] = keyParts(designationKey(designation)).numbers;
      return ((2 * wall * (depth + width - 2 * wall) - (4 - Math.PI) * 3 * wall ** 2) * 490) / 144;
    };
    expect(failing(rows, (row) => Math.abs((weight(row) * pound) / foot / row.massPerLength - 1) < 0.003)).toEqual([]);
  });

  test('every row whose name gives its sizes has them', () => {
    const sized = sections().filter(({ table }) => /US .*(hollow|angles)|European angles|hollow/.test(table));
    expect(sized.length).toBeGreaterThan(1200);
    const unit = (table: string) => (table.startsWith('US') ? inch : 0.001);
    expect(
      failing(sized, (row) => {
        const [first = 0, second = first] = keyParts(designationKey(row.designation)).numbers;
        const named = /round|[Cc]ircular/.test(row.table)
          ? [first, first]
          : [Math.max(first, second), Math.min(first, second)];
        return (
          Math.abs(row.depth / unit(row.table) - (named[0] ?? 0)) < 1e-6 &&
          Math.abs(row.width / unit(row.table) - (named[1] ?? 0)) < 1e-6
        );
      }),
    ).toEqual([]);
  });

  test('a US name ends in its weight in lb/ft, and no shape is lighter than its name', () => {
    const named = sections().filter(({ table }) => /^US (wide|misc|standard|bearing)/.test(table));
    expect(named.length).toBe(427);
    const ratio = (row: (typeof named)[number]) =>
      row.massPerLength / ((Number(row.designation.split('X')[1]) * pound) / foot);
    expect(failing(named, (row) => ratio(row) > 1 - 1e-12)).toEqual([]);
    expect(failing(named, (row) => ratio(row) < 1 + 1e-12)).toEqual([
      'M4X4.08',
      'M3X2.9',
      'C3X3.5',
      'MC10X6.5',
      'MC6X7',
      'MC6X6.5',
    ]);
  });

  test('a US rail is no lighter than its name, in lb/yd, and 2 lb/yd heavier at most', () => {
    const named = sections().filter(({ table }) => /^US.* rails/.test(table));
    expect(named.length).toBe(34);
    const over = (row: (typeof named)[number]) =>
      (row.massPerLength * 3 * foot) / pound - Number(/\d+/.exec(row.designation));
    expect(failing(named, (row) => over(row) > -1e-9 && over(row) < 2)).toEqual([]);
  });

  test('a European rail weighs what its name says, within 2 %', () => {
    const named = sections().filter(({ table }) => table === 'European railway rails');
    const ratio = (row: (typeof named)[number]) => row.massPerLength / Number(/\d+/.exec(row.designation));
    expect(failing(named, (row) => Math.abs(ratio(row) - 1) < 0.02)).toEqual([]);
  });

  test('a US sheet pile weighs what its name says of a square foot of wall, within 1 %', () => {
    const named = sections().filter(({ table }) => table === 'US sheet piles');
    const perSquareFoot = (row: (typeof named)[number]) => ((row.massPerLength / row.width) * foot ** 2) / pound;
    const name = (row: (typeof named)[number]) => Number(/[\d.]+/.exec(row.designation));
    expect(failing(named, (row) => Math.abs(perSquareFoot(row) / name(row) - 1) < 0.01)).toEqual([]);
  });

  test('a cold-formed hollow section weighs no more than sharp corners of its walls, and no less than 90 % of it', () => {
    const rows = sections().filter(({ table }) => /^(Square|Rectangular).*cold formed/.test(table));
    expect(rows.length).toBe(127);
    const sharp = ({ designation }: { readonly designation: string }) => {
      const [depth = 0, width = 0, wall = 0] = keyParts(designationKey(designation)).numbers;
      return 2 * wall * (depth + width - 2 * wall) * 1e-6 * steel;
    };
    expect(
      failing(rows, (row) => row.massPerLength < sharp(row) * 1.002 && row.massPerLength > sharp(row) * 0.9),
    ).toEqual([]);
  });

  test('nearest: same kind and size first, else by spelling', () => {
    const names = (written: string) => nearestSections(written).map((row) => row.designation);
    expect(names('W12x51')).toEqual(['W12X50', 'W12X53', 'W12X45']);
    expect(names('HEB 310')).toEqual(['HE 320 B', 'HE 300 B', 'HE 340 B']);
    expect(names('HSS6x6x0.3')[0]).toBe('HSS6X6X5/16');
    expect(names('12x50')).toContain('W12X50');
    expect(names('61E1')[0]).toBe('60E1');
    expect(names('AZ 18-710')[0]).toBe('AZ 18-700');
    expect(names('')).toEqual([]);
  });
});
