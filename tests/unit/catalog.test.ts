// Materials, pipes, bars and sheets of the catalog: look-ups by every usual spelling, and checks over every row.
import { describe, expect, test } from 'vitest';
import {
  bar,
  bars,
  material,
  materials,
  nearestBars,
  nearestMaterials,
  nearestPipes,
  nearestSheets,
  pipe,
  pipeSchedules,
  pipes,
  sheet,
  sheets,
} from '../../server/catalog/index.ts';

const steel = 7850; // kg/m3
const inch = 0.0254; // m
const failing = <T extends { readonly designation: string }>(rows: readonly T[], holds: (row: T) => boolean) =>
  rows.filter((row) => !holds(row)).map((row) => row.designation);

describe('materials', () => {
  test.each([
    ['carbon steel', 7850],
    ['Carbon  Steel', 7850],
    ['carbonsteel', 7850],
    ['steel', 7850],
    ['cast iron', 7208],
    ['water', 1000],
    ['Fresh Water', 1000],
    ['sea-water', 1030],
    ['aluminum', 2800],
    ['aluminium', 2800],
    ['reinforced concrete', 2550],
    ['GRP', 2100],
    ['azobé', 1300],
    ['60 % alumina brick', 2600],
    ['high alumina brick', 3200],
    ['Jet A-1', 845],
    ['urea solution', 1093],
    ['hot asphalt', 1040],
  ])('%s is %d kg/m3', (name, density) => expect(material(name)?.density).toBe(density));

  test('a name that is not known is not guessed', () => {
    expect(material('unobtainium')).toBeUndefined();
    expect(material('')).toBeUndefined();
  });

  test('there are at least 130, with at least 30 liquids; names and aliases are told apart', () => {
    expect(materials().length).toBeGreaterThanOrEqual(130);
    expect(materials().filter((entry) => entry.liquid).length).toBeGreaterThanOrEqual(30);
    for (const entry of materials()) {
      for (const name of [entry.name, ...entry.aliases]) expect(material(name)?.name, name).toBe(entry.name);
    }
  });

  test('every row: a range above zero, the value in it, a named source', () => {
    for (const { name, low, high, density, source } of materials()) {
      expect(low, name).toBeGreaterThan(5);
      expect(low, name).toBeLessThanOrEqual(density);
      expect(density, name).toBeLessThanOrEqual(high);
      expect(high, name).toBeLessThan(20_000);
      expect(source.length, name).toBeGreaterThan(8);
      expect(source, name).not.toMatch(/[{}]/);
    }
  });

  test('the heaviest of the sources governs, but where the trade bills by another figure, and then it says why', () => {
    const lighter = materials().filter((entry) => entry.choices.length === 0 && entry.density < entry.high);
    expect(lighter.map((entry) => entry.name)).toEqual(['carbon steel', 'cast iron']);
    for (const { density, source } of lighter) expect(source).toContain(`${density} is used: `);
  });

  test('a doubtful name takes the heaviest of its choices, which are known and stand heaviest first', () => {
    const families = materials().filter((entry) => entry.choices.length > 0);
    expect(families.length).toBeGreaterThanOrEqual(40);
    for (const { name, density, choices, liquid } of families) {
      const named = choices.map((choice) => material(choice));
      const densities = named.map((choice) => choice?.density ?? Number.NaN);
      expect(choices.length, name).toBeGreaterThan(1);
      expect(density, name).toBe(densities[0]);
      expect(densities, name).toEqual([...densities].sort((a, b) => b - a));
      expect(new Set(choices).size, name).toBe(choices.length);
      if (liquid)
        expect(
          named.every((choice) => choice?.liquid),
          name,
        ).toBe(true);
    }
  });

  test.each(['timber', 'wood', 'oak', 'concrete', 'soil', 'sand', 'granite', 'aluminium', 'insulation', 'oil'])(
    '%s is doubtful',
    (name) => {
      expect(material(name)?.choices.length).toBeGreaterThan(1);
    },
  );

  test.each([
    ...['timber', 'oak', 'pine', 'birch', 'larch', 'poplar', 'walnut', 'eucalyptus', 'ekki', 'greenheart', 'plywood'],
    ...['sand', 'gravel', 'soil', 'silt', 'loess', 'topsoil', 'peat', 'snow'],
    ...['mineral wool', 'insulation', 'vermiculite castable'],
  ])('%s is wet unless said', (name) => {
    expect(material(name)?.choices[0]).toMatch(/^(wet|packed) /);
  });

  test('nearest names', () => {
    expect(nearestMaterials('stainles').map((entry) => entry.name)[0]).toBe('stainless steel');
    expect(nearestMaterials('mild stel').map((entry) => entry.name)).toEqual(['carbon steel']);
    expect(nearestMaterials('aluminium aloy').map((entry) => entry.name)[0]).toBe('aluminium alloy');
    expect(nearestMaterials('concrete slab').map((entry) => entry.name)).toContain('concrete');
    expect(nearestMaterials('concrete slab').length).toBeLessThanOrEqual(3);
    expect(nearestMaterials('zzzz')).toEqual([]);
  });
});

describe('pipes', () => {
  test.each([
    ['NPS 8', '40', 8.625, 0.322],
    ['nps 8', 'STD', 8.625, 0.322],
    ['NPS8', 'sch 40', 8.625, 0.322],
    ['DN 200', '40', 8.625, 0.322],
    ['NPS 1-1/2', '80', 1.9, 0.2],
    ['NPS 1 1/2', 'XS', 1.9, 0.2],
    ['NPS 1½', '80', 1.9, 0.2],
    ['DN 40', 'schedule 80', 1.9, 0.2],
    ['NPS 12', '40', 12.75, 0.406],
    ['NPS 12', 'STD', 12.75, 0.375],
    ['NPS 6', 'XXS', 6.625, 0.864],
    ['NPS 6', 'xxh', 6.625, 0.864],
    ['NPS 4', '10S', 4.5, 0.12],
    ['NPS 36', '40', 36, 0.75],
  ])('%s schedule %s is %d in outside, wall %d in', (size, schedule, outside, wall) => {
    expect(pipe(size, schedule)?.outside).toBeCloseTo(outside * inch, 12);
    expect(pipe(size, schedule)?.wall).toBeCloseTo(wall * inch, 12);
  });

  test('nothing is guessed: neither a bare size nor a schedule that is not made', () => {
    for (const [size, schedule] of [
      ['8', '40'],
      ['8 in', '40'],
      ['NPS 9', '40'],
      ['NPS 8', ''],
      ['NPS 8', '45'],
      ['NPS 22', '40'],
      ['DN 8.625', '40'],
    ] as const) {
      expect(pipe(size, schedule), `${size} ${schedule}`).toBeUndefined();
    }
  });

  test('it answers in the system asked in', () => {
    expect(pipe('dn200', '40')?.designation).toBe('DN 200');
    expect(pipe('nps8', '40')?.designation).toBe('NPS 8');
  });

  test('every row: wall within the pipe, the heaviest of the range used, the range narrow, a named source', () => {
    expect(pipes().length).toBeGreaterThanOrEqual(380);
    const named = pipes().map((row) => ({ ...row, designation: `${row.designation} ${row.schedule}` }));
    expect(failing(named, (row) => row.wall > 0.001 && row.wall < row.outside * 0.4 && row.outside < 1.25)).toEqual([]);
    expect(
      failing(
        named,
        (row) => row.low > 0.2 && row.massPerLength === row.high && row.high / row.low < 1.01 && row.high >= row.low,
      ),
    ).toEqual([]);
    expect(
      failing(named, (row) => row.massPerLength >= Math.PI * (row.outside - row.wall) * row.wall * row.density - 1e-9),
    ).toEqual([]);
    expect(failing(named, (row) => row.source.includes('B36.10M'))).toEqual([]);
    expect(failing(named, (row) => row.density === (/\dS$/.test(row.schedule) ? 8000 : steel))).toEqual([]);
  });

  test('schedules of a size: standard and 40 are one wall to NPS 10, extra strong and 80 to NPS 8', () => {
    expect(pipeSchedules('NPS 12')).toEqual(
      expect.arrayContaining(['5', '10', '20', '30', 'STD', '40', '60', 'XS', '80', '100', '120', '140', '160', 'XXS']),
    );
    const steel = (size: string) => pipeSchedules(size).filter((schedule) => pipe(size, schedule)?.made === undefined);
    expect(steel('DN 300')).toEqual(steel('NPS 12'));
    expect(pipeSchedules('NPS 9')).toEqual([]);
    for (const size of ['1/2', '1', '2', '4', '6', '8', '10'])
      expect(pipe(`NPS ${size}`, 'STD')?.wall).toBe(pipe(`NPS ${size}`, '40')?.wall);
    for (const size of ['1/2', '1', '2', '4', '6', '8'])
      expect(pipe(`NPS ${size}`, 'XS')?.wall).toBe(pipe(`NPS ${size}`, '80')?.wall);
    expect(pipe('NPS 12', 'STD')?.wall).not.toBe(pipe('NPS 12', '40')?.wall);
  });

  test('numbered schedules grow thicker with their number', () => {
    for (const size of new Set(pipes().map((row) => row.designation))) {
      const walls = pipes()
        .filter((row) => row.designation === size && /^\d+$/.test(row.schedule))
        .sort((a, b) => Number(a.schedule) - Number(b.schedule));
      expect(
        walls.every((row, index) => index === 0 || row.wall > (walls[index - 1]?.wall ?? 0)),
        size,
      ).toBe(true);
    }
  });

  test('nearest sizes', () => {
    expect(nearestPipes('NPS 9').map((row) => row.designation)).toEqual(['NPS 10', 'NPS 8', 'NPS 12']);
    expect(nearestPipes('DN 210').map((row) => row.designation)[0]).toBe('DN 200');
  });
});

describe('bars and sheets', () => {
  test.each([
    ['#5', '#5'],
    ['No. 5', '#5'],
    ['no 5', '#5'],
    ['16 mm', '16 mm'],
    ['Ø16', '16 mm'],
    ['D16', '16 mm'],
    ['15M', '15M'],
    ['15m', '15M'],
  ])('bar %s is %s', (written, designation) => {
    expect(bar(written)?.designation).toBe(designation);
  });

  test.each(['5', '#12', '15 mm', '16M', ''])('bar "%s" is none', (written) => expect(bar(written)).toBeUndefined());

  test('every bar: mass agrees with its diameter within 1 %, the heaviest of its range used, a named source', () => {
    expect(bars().length).toBeGreaterThanOrEqual(35);
    expect(
      failing(bars(), (row) => Math.abs(((Math.PI / 4) * row.diameter ** 2 * steel) / row.massPerLength - 1) < 0.01),
    ).toEqual([]);
    expect(
      failing(
        bars(),
        (row) => row.low > 0.1 && row.low <= row.high && row.massPerLength === row.high && row.source.length > 20,
      ),
    ).toEqual([]);
    expect(failing(bars(), (row) => bar(row.designation) === row)).toEqual([]);
  });

  test.each([
    'plate 1/2 in',
    'plate 12 mm',
    'floor plate 1/4 in',
    'floor plate 6 mm',
    'sheet 10 gauge',
    'grating 19-W-4 1-1/4 x 3/16',
    'checker plate 1/4 in',
    'chequered plate 6 mm',
    'AZ 18-700',
    'PZ 27',
  ])('%s is known', (written) => {
    expect(sheet(written)?.massPerArea).toBeGreaterThan(10);
  });

  test('every sheet: the heaviest of its range used, no lighter than the plain plate, a named source', () => {
    expect(sheets().length).toBeGreaterThanOrEqual(160);
    expect(
      failing(
        sheets(),
        (row) => row.low > 0.5 && row.low <= row.high && row.massPerArea === row.high && row.source.length > 20,
      ),
    ).toEqual([]);
    expect(failing(sheets(), (row) => row.massPerArea >= (row.thickness ?? 0) * steel - 1e-9)).toEqual([]);
    expect(failing(sheets(), (row) => sheet(row.designation) === row)).toEqual([]);
  });

  test('every grating weighs more than its bearing bars alone, by cross bars and not by much', () => {
    const spacing: Readonly<Record<string, number>> = { 19: 19 / 16, 15: 15 / 16 }; // in, NAAMM marks: sixteenths between bars
    const gratings = sheets().filter((row) => row.designation.startsWith('grating'));
    expect(gratings.length).toBe(48);
    const bearing = (designation: string) => {
      const [, mark = '', whole = '0', over = '0', under = '1', thick = '', thin = ''] =
        /(\d+)-W-\d (?:(\d+)-?)??(?:(\d+)\/(\d+))?x(\d+)\/(\d+)/.exec(designation) ?? [];
      const depth = (Number(whole) + Number(over) / Number(under)) * inch;
      return ((depth * (Number(thick) / Number(thin)) * inch) / ((spacing[mark] ?? Number.NaN) * inch)) * steel;
    };
    expect(
      failing(gratings, (row) => row.low / bearing(row.designation) > 1.02 && row.low / bearing(row.designation) < 1.7),
    ).toEqual([]);
  });

  test('nearest bars and sheets', () => {
    expect(nearestBars('#12').map((row) => row.designation)).toEqual(['#11', '#14', '#10']);
    expect(nearestBars('15 mm').map((row) => row.designation)[0]).toBe('16 mm');
    expect(nearestSheets('plate 13 mm').map((row) => row.designation)[0]).toBe('plate 12 mm');
  });
});
