// Copper, ductile iron and plastic pipe, rope, chain and mesh of the catalog: look-ups by every usual spelling, and checks against geometry.
import { describe, expect, test } from 'vitest';
import {
  construction,
  constructionsOf,
  material,
  pipe,
  pipeSchedules,
  pipeSizes,
  sheet,
} from '../../server/catalog/index.ts';
import data from '../../server/catalog/pipes-other.json';
import sheetData from '../../server/catalog/sheets.json';

const inch = 0.0254; // m
const ring = (outside: number, wall: number) => Math.PI * (outside - wall) * wall;
const every = (of = '') =>
  pipeSizes().flatMap((size) => pipeSchedules(size).flatMap((schedule) => pipe(size, schedule, of) ?? []));

describe('pipe that is not of steel', () => {
  test.each([
    ['NPS 2', 'L', '', 'copper', 2.125 * inch, 0.07 * inch],
    ['copper 2 in', 'type L', '', 'copper', 2.125 * inch, 0.07 * inch],
    ['copper 2-1/2 in', 'K', '', 'copper', 2.625 * inch, 0.095 * inch],
    ['Copper 28mm', '1.20', '', 'copper', 0.028, 0.0012],
    ['DN 200', 'K9', '', 'ductile iron', 0.222, 0.0063],
    ['DN 200', 'c40', '', 'ductile iron', 0.222, 0.0047],
    ['NPS 8', 'PC 350', '', 'ductile iron', 9.05 * inch, 0.25 * inch],
    ['NPS 8', 'class 350', '', 'ductile iron', 9.05 * inch, 0.25 * inch],
    ['NPS 8', 'class 52', '', 'ductile iron', 9.05 * inch, 0.33 * inch],
    ['DN 110', 'SDR 11', 'HDPE', 'HDPE', 0.11, 0.01],
    ['DN 110', 'DR11', 'PE100', 'HDPE', 0.11, 0.01],
    ['NPS 4', 'SDR17', 'HDPE', 'HDPE', 4.5 * inch, (4.5 / 17) * inch],
    ['NPS 4', '40', 'PVC', 'PVC', 4.5 * inch, 0.237 * inch],
    ['NPS 4', 'sch 80', 'uPVC', 'PVC', 4.5 * inch, 0.337 * inch],
  ])('%s schedule %s %s is of %s', (size, schedule, of, made, outside, wall) => {
    const found = pipe(size, schedule, of);
    expect(found?.made).toBe(made);
    expect(found?.outside).toBeCloseTo(outside, 12);
    expect(found?.wall).toBeCloseTo(wall, 12);
  });

  test('nothing is guessed, and steel stays steel', () => {
    for (const [size, schedule] of [
      ['DN 111', 'SDR11'],
      ['DN 110', '40'],
      ['DN 110', 'SDR12'],
      ['copper 2', 'L'],
      ['copper 29 mm', '1'],
      ['copper 28 mm', '1.3'],
      ['NPS 2', 'N'],
      ['DN 200', 'K10'],
      ['NPS 8', 'class 400'],
    ] as const)
      expect(pipe(size, schedule), `${size} ${schedule}`).toBeUndefined();
    expect(pipe('NPS 4', '40')?.made).toBeUndefined();
    expect(pipe('NPS 4', '40', 'carbon steel')?.made).toBeUndefined();
    expect(pipe('NPS 4', '40', 'aluminium')?.massPerLength).toBe(pipe('NPS 4', '40')?.massPerLength);
  });

  test('every pipe: no lighter than its plain barrel, the heavy end used, a named source', () => {
    for (const of of ['', 'HDPE', 'PVC'])
      for (const row of every(of)) {
        const name = `${row.designation} ${row.schedule} ${of}`;
        expect(row.wall, name).toBeLessThan(row.outside * 0.45);
        expect(row.massPerLength, name).toBe(row.high);
        expect(row.high, name).toBeGreaterThanOrEqual(row.low);
        expect(row.massPerLength, name).toBeGreaterThanOrEqual(ring(row.outside, row.wall) * row.density - 1e-9);
        expect(row.source.length, name).toBeGreaterThan(20);
        if (row.made) expect(material(row.made), name).toBeDefined();
      }
    expect(every().length).toBeGreaterThan(1500);
  });

  test('copper weighs what its sizes give at 0.323 lb/in3, as ASTM B88 reckons', () => {
    const rows = every().filter((row) => row.made === 'copper');
    expect(rows.length).toBeGreaterThan(130);
    const density = (0.323 * 0.45359237) / inch ** 3;
    for (const row of rows)
      expect(row.massPerLength / (ring(row.outside, row.wall) * density), row.designation).toBeCloseTo(1, 3);
  });

  test('a ductile iron pipe weighs its barrel at 7050 kg/m3 (ISO 2531) and 6 % to 50 % for socket and lining', () => {
    const rows = every().filter((row) => row.made === 'ductile iron');
    expect(rows.length).toBeGreaterThan(200);
    for (const row of rows) {
      const share = row.massPerLength / (ring(row.outside, row.wall) * 7050);
      expect(share, `${row.designation} ${row.schedule}`).toBeGreaterThan(1.06);
      expect(share, `${row.designation} ${row.schedule}`).toBeLessThan(1.5);
    }
  });

  /** ISO 4427-2:2007, least walls, as a pipe maker's public page lists them: SDR 6, 7.4, 9, 11, 13.6, 17, 21, 26. */
  const least: readonly (readonly [number, string])[] = [
    [63, '10.5 8.6 7.1 5.8 4.7 3.8 3.0 2.5'],
    [75, '12.5 10.3 8.4 6.8 5.6 4.5 3.6 2.9'],
    [90, '15.0 12.3 10.1 8.2 6.7 5.4 4.3 3.5'],
    [110, '18.3 15.1 12.3 10.0 8.1 6.6 5.3 4.2'],
    [125, '20.8 17.1 14.0 11.4 9.2 7.4 6.0 4.8'],
    [140, '23.3 19.2 15.7 12.7 10.3 8.3 6.7 5.4'],
    [160, '26.6 21.9 17.9 14.6 11.8 9.5 7.7 6.2'],
    [180, '29.9 24.6 20.1 16.4 13.3 10.7 8.6 6.9'],
    [200, '33.2 27.4 22.4 18.2 14.7 11.9 9.6 7.7'],
  ];
  test.each(least)('the least wall of DN %d by its ratio is that of ISO 4427-2', (dn, walls) => {
    const ratios = ['6', '7.4', '9', '11', '13.6', '17', '21', '26'];
    const reckoned = ratios.map((ratio) => pipe(`DN ${dn}`, `SDR${ratio}`, 'HDPE')?.wall ?? Number.NaN);
    expect(reckoned.map((wall) => (wall * 1000).toFixed(1)).join(' ')).toBe(walls);
  });

  test('PVC by schedule reaches the thickest wall of ASTM D1785 within 0.02 mm, and of D2665 where listed', () => {
    const thickest: readonly (readonly [string, string, number])[] = [
      ['1', '40', 3.89],
      ['2', '40', 4.42],
      ['4', '40', 6.73],
      ['8', '40', 9.17],
      ['1', '80', 5.08],
      ['2', '80', 6.2],
      ['4', '80', 9.58],
      ['6', '80', 12.29],
      ['8', '80', 14.22],
    ];
    for (const [size, schedule, millimetres] of thickest) {
      const found = pipe(`NPS ${size}`, schedule, 'PVC');
      const { outside = 0, massPerLength = 0, density = 1 } = found ?? {};
      const wall = (outside - Math.sqrt(outside ** 2 - (4 * massPerLength) / (Math.PI * density))) / 2;
      expect(Math.abs(wall * 1000 - millimetres), `NPS ${size} ${schedule}`).toBeLessThan(0.02);
    }
  });

  test('sizes that have names in both systems, and schedules in order', () => {
    expect(pipeSizes()).toEqual(expect.arrayContaining(['NPS 8', 'DN 200', 'DN 110', 'copper 2 in', 'copper 28 mm']));
    expect(new Set(pipeSizes()).size).toBe(pipeSizes().length);
    expect(pipeSchedules('copper 28 mm')).toEqual(['0.9', '1', '1.2', '1.5']);
    expect(pipeSchedules('NPS 2')).toEqual(expect.arrayContaining(['40', 'K', 'L', 'M', 'SDR11']));
    expect(pipeSchedules('DN 110')).toEqual(expect.arrayContaining(['SDR11', 'SDR17']));
    expect(data.plastic.made.every((name) => material(name))).toBe(true);
  });
});

describe('rope and chain', () => {
  test.each([
    ['rope', '6x36 IWRC', '6x36 IWRC'],
    ['rope', '6 × 36 iwrc', '6x36 IWRC'],
    ['rope', '6x36', '6x36 IWRC'],
    ['rope', '6x37 FC', '6x36 FC'],
    ['rope', '18x7', '19x7'],
    ['chain', 'grade 80', 'short link'],
    ['chain', 'Stud-link', 'stud link'],
  ] as const)('%s %s is %s', (line, written, name) => expect(construction(line, written)?.construction).toBe(name));

  test('a construction that is not known is not guessed', () => {
    expect(construction('rope', '6x35')).toBeUndefined();
    expect(construction('chain', '6x36')).toBeUndefined();
    expect(construction('rope', '')).toBeUndefined();
  });

  test('heaviest first; the heavy end used; a steel core weighs more than a fibre core', () => {
    for (const line of ['rope', 'chain'] as const) {
      const factors = constructionsOf(line).map((each) => each.factor);
      expect(factors).toEqual([...factors].sort((a, b) => b - a));
      for (const each of constructionsOf(line)) {
        expect(each.factor).toBe(each.high);
        expect(each.low).toBeLessThanOrEqual(each.high);
      }
    }
    for (const of of ['6x7', '6x19', '6x36', '8x36'])
      expect(construction('rope', `${of} IWRC`)?.low).toBeGreaterThan(construction('rope', `${of} FC`)?.low ?? 9e9);
  });

  test('a rope weighs less than a round bar as thick, and more than 40 % of it', () => {
    const solid = (Math.PI / 4) * 7850;
    for (const { factor, construction: name } of constructionsOf('rope')) {
      expect(factor / solid, name).toBeLessThan(0.9);
      expect(factor / solid, name).toBeGreaterThan(0.4);
    }
  });

  test('short link chain weighs what its links give: pitch 3 d, inside width 1.25 to 1.35 d (EN 818-2), within 5 %', () => {
    const perPitch = (inside: number) => 2 * (3 - inside) + Math.PI * (inside + 1); // centre line of a link over d
    const [narrow, wide] = [1.25, 1.35].map((inside) => (((Math.PI / 4) * perPitch(inside)) / 3) * 7850) as [
      number,
      number,
    ];
    const found = construction('chain', 'short link');
    expect(found?.low ?? 0).toBeGreaterThan(narrow * 0.97);
    expect(found?.factor ?? 0).toBeGreaterThan(wide);
    expect(found?.factor ?? 9e9).toBeLessThan(wide * 1.05);
  });
});

describe('mesh', () => {
  test.each([
    ['A393', 'A393'],
    ['mesh A142', 'A142'],
    ['6x6-W2.9xW2.9', '6x6-W2.9xW2.9'],
    ['6x6-6x6', '6x6-W2.9xW2.9'],
    ['WWF 6 x 6 - W1.4 x W1.4', '6x6-W1.4xW1.4'],
  ])('%s is %s', (written, designation) => expect(sheet(written)?.designation).toBe(designation));

  test('a British fabric has in its main direction the steel its name says, within 1 % (mm2/m)', () => {
    const table = sheetData.tables.find(({ table: name, unit }) => name === 'mesh' && unit.startsWith('wires'));
    expect(table?.rows.length).toBe(18);
    for (const row of table?.rows ?? []) {
      const [mark = '', along = ''] = row.split(' ');
      const [thick = 0, apart = 0] = along.split('@').map(Number);
      expect((((Math.PI / 4) * thick ** 2 * 1000) / apart / Number(mark.slice(1))).toFixed(2), mark).toMatch(
        /^(?:1\.00|0\.99|1\.01)$/,
      );
    }
  });

  test('the wall of a sheet pile weighs the pile over its width', () => {
    expect(sheet('AZ 18-700')?.massPerArea).toBeCloseTo(76.5 / 0.7, 9);
    expect(sheet('W12x50')).toBeUndefined();
    expect(sheet('60E1')).toBeUndefined();
  });
});
