// Bills of material: rows that become parts, and every way in which a row cannot be used. The sums are worked out by hand beside each.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entriesOf, mostRows } from '../../../server/plan/list.ts';
import { head, lift, message, slugs, value } from '../../support/lift.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const rowsOf = (text: string) => entriesOf(bytes(text)).entries;
const faultsOf = (text: string | Uint8Array) =>
  entriesOf(typeof text === 'string' ? bytes(text) : text).faults.map(({ line, reason }) => `${line}: ${reason}`);

const listed = (bill: string, more = '', others: Record<string, string> = {}) =>
  lift(`${head}load "L"\n  contingency 0 %\n  free "stands loose"\n  list "bills/frame.csv", by drawing\n${more}`, {
    'bills/frame.csv': bill,
    ...others,
  });

const bill = `name,weight kg,count,x mm,y mm,z mm,drawing
Long beam,412.5,2,0,0,200,D-1
"Bolts, M20",0.4,12,1500,-100,0,D-2
Cover,88 lb,1,0 in,10 in,1 m,D-3
`;

describe('rows become parts', () => {
  test('weight each times count, units in the head or in the cell, place in the axes of the load', () => {
    const s = listed(bill);
    expect(slugs(s)).toEqual([]);
    const cover = 88 * 0.45359237;
    const weight = 825 + 4.8 + cover;
    expect(value(s, 'part', 'Long beam', 'weight')).toBeCloseTo(825, 9);
    expect(value(s, 'part', 'Bolts, M20', 'weight')).toBeCloseTo(4.8, 9);
    expect(value(s, 'part', 'Cover', 'weight')).toBeCloseTo(cover, 9);
    expect(value(s, 'load', 'L', 'calculated weight')).toBeCloseTo(weight, 9);
    expect(value(s, 'load', 'L', 'cog x')).toBeCloseTo((4.8 * 1.5) / weight, 9);
    expect(value(s, 'load', 'L', 'cog y')).toBeCloseTo((cover * 0.254 - 4.8 * 0.1) / weight, 9);
    expect(value(s, 'load', 'L', 'cog z')).toBeCloseTo((825 * 0.2 + cover) / weight, 9);
  });

  test('each says which row of which file it is from, and its place is the line of the list', () => {
    const s = listed(bill);
    const found = s.results.find('part', 'Bolts, M20', 'weight');
    expect(found?.value.source).toContain('bills/frame.csv, row 3, 12 of 0.4 kg');
    expect(found?.at.row.text).toContain('list "bills/frame.csv"');
  });

  test('they are named like any part: stood on, weighed without, expected', () => {
    const s = listed(
      bill,
      '  part "Crate": item 30 kg, by marking, size 1 x 1 x 1 m, on "Cover"\n  stated 900 kg, by marking, without "Cover"\nexpect part "Cover" weight between 39 kg and 40 kg\n',
    );
    expect(value(s, 'part', 'Crate', 'cog z')).toBeCloseTo(1.5, 9);
    expect(s.results.expects[0]?.state).toBe('met');
    expect(s.results.loads[0]?.candidates.find(({ kind }) => kind === 'stated')?.weight.value).toBeCloseTo(
      900 + 88 * 0.45359237,
      6,
    );
  });

  test('in an assembly they move with it', () => {
    const s = lift(
      `${head}load "L"\n  contingency 0 %\n  free "stands loose"\n  assembly "A": at (10 m, 0, 0), turn 90 deg about z\n    list "frame.csv", by drawing\n`,
      { 'frame.csv': 'name,weight kg,x m,y m,z m\nBeam,100,1,0,0\n' },
    );
    expect([value(s, 'load', 'L', 'cog x'), value(s, 'load', 'L', 'cog y')]).toEqual([10, 1]);
  });

  test('without places the weight counts and the centre is open, said once', () => {
    const s = listed('name,weight kg\nBeam,100\nColumn,50\nBrace,25\n');
    expect(value(s, 'load', 'L', 'calculated weight')).toBe(175);
    expect(value(s, 'load', 'L', 'cog x')).toBeNull();
    expect(slugs(s)).toEqual(['part-unplaced']);
  });

  test('a name that comes twice counts twice', () => {
    expect(rowsOf('name,weight kg\nBeam,100\nbeam,50\n').map(({ name, mass }) => [name, mass])).toEqual([
      ['Beam', 100],
      ['beam (row 3)', 50],
    ]);
  });

  test('a name that a part of the plan has opens the load', () => {
    const s = listed(
      'name,weight kg,x m,y m,z m\nBeam,100,0,0,0\n',
      '  part "Beam": item 5 kg, by marking, at (0, 0, 0)\n',
    );
    expect(slugs(s)).toContain('stated-twice');
    expect(value(s, 'load', 'L', 'calculated weight')).toBeNull();
  });

  test('line ends, empty rows, a byte-order mark, other columns, capitals and brackets are passed over', () => {
    const text =
      '\ufeffItem,Name,Weight (kg),X [mm],Y [mm],Z [mm]\r\n1,Beam,100,0,0,0\r\n,,,,,\r\n2,"Two\r\nlines","1,250.5",5,6,7\r\n3,Last,1,0,0,0';
    expect(rowsOf(text).map(({ line, name, mass, at }) => [line, name, mass, at])).toEqual([
      [2, 'Beam', 100, [0, 0, 0]],
      [4, 'Two lines', 1250.5, [0.005, 0.006, 0.007]],
      [6, 'Last', 1, [0, 0, 0]],
    ]);
  });

  test('inches by their mark in a name are read as they stand', () =>
    expect(
      rowsOf('name,weight kg\nPipe 2" sch 40,12.5\n"Plate 1/2"", cut",8\n').map(({ name, mass }) => [name, mass]),
    ).toEqual([
      ['Pipe 2" sch 40', 12.5],
      ['Plate 1/2", cut', 8],
    ]));

  test('a count beside another column that sounds like one is the count', () =>
    expect(rowsOf('name,weight kg,count,qty\nBeam,100,3,1\n')[0]?.mass).toBe(300));

  test('a weight in a unit of force is the mass it presses with', () =>
    expect(rowsOf('name,weight kN\nBeam,9.80665\n')[0]?.mass).toBeCloseTo(1000, 9));
});

describe('a bar schedule', () => {
  const schedule = 'mark,size,length mm,count,shape\nB-1,16 mm,3950,8,straight\nB-2,8 mm,1480,27,stirrup\n';

  test('each row weighs its length by the table of its size, times its count', () => {
    // EN 10080: 1.578 kg/m and 0.395 kg/m by pi / 4 d2 at 7,850 kg/m3
    const steel = (d: number) => (Math.PI / 4) * d ** 2 * 7850;
    const [a, b] = rowsOf(schedule);
    expect((a?.mass as number) / (8 * 3.95 * steel(0.016))).toBeCloseTo(1, 2);
    expect((b?.mass as number) / (27 * 1.48 * steel(0.008))).toBeCloseTo(1, 2);
    expect([a?.name, b?.name]).toEqual(['16 mm', '8 mm']);
  });

  test('US sizes, a unit in the head, and names', () => {
    // ASTM A615: #5 weighs 1.043 lb/ft
    const [one] = rowsOf('name,size,length ft,count\nMain bars,#5,20,4\n');
    expect((one?.mass as number) / 0.45359237 / (4 * 20 * 1.043)).toBeCloseTo(1, 3);
    expect(rowsOf('size mm,length m\n16,2\n')[0]?.mass).toBe(rowsOf('size,length\n16 mm,2 m\n')[0]?.mass);
  });

  test('stands in the concrete it is named for, and says row, count and table', () => {
    const s = listed(schedule, '  part "Column": box 0.4 x 0.4 x 4 m, of plain concrete, at (1 m, 2 m, 2 m)\n').results;
    expect(s.find('load', 'L', 'cog x')?.value.value).toBeNull();
    const placed = lift(
      `${head}load "L"\n  contingency 0 %\n  free "seen"\n  part "Column": box 0.4 x 0.4 x 4 m, of plain concrete, at (1 m, 2 m, 2 m)\n  list "bars.csv", inside "Column"\n`,
      { 'bars.csv': schedule },
    );
    expect(slugs(placed)).toEqual([]);
    expect(['x', 'y', 'z'].map((axis) => value(placed, 'load', 'L', `cog ${axis}`))).toEqual(
      [1, 2, 2].map((x) => expect.closeTo(x, 9)),
    );
    expect(placed.results.find('part', '16 mm', 'weight')?.value.source).toMatch(
      /bars\.csv, row 2, 8 of 16 mm, 3\.95 m long, at 1\.58 kg\/m/,
    );
  });

  test('members of a truss by section and cut length (EN 10365: HE 100 A 16.7 kg/m; ASTM A6: W12x50 50 lb/ft)', () => {
    const [chord, post] = rowsOf('name,size,length m,count\nChord,HEA 100,6,2\nPost,W12x50,0.3048,1\n');
    expect((chord?.mass as number) / (16.7 * 12)).toBeCloseTo(1, 2);
    expect((post?.mass as number) / (50 * 0.45359237)).toBeCloseTo(1, 2);
  });

  test('a bill that has columns called size and length is a bill', () =>
    expect(rowsOf('name,weight kg,size,length\nBeam,100,HEB 200,6\nPost,50,,\n').map(({ mass }) => mass)).toEqual([
      100, 50,
    ]));

  test.each([
    [
      'a size that is not made',
      'size,length m\n17 mm,2\n',
      /^2: its size "17 mm" is no bar or section known here; near it are/,
    ],
    ['no length', 'size,length m\n16 mm,\n', /^2: it has no length$/],
    ['a length of zero', 'size,length m\n16 mm,0\n', /^2: its length is not above zero/],
    ['no unit', 'size,length\n16 mm,2000\n', /^2: its length "2000" has no unit/],
    ['no column of lengths', 'size,count\n16 mm,2\n', /^1: it names no column "length"$/],
    ['two columns of sizes', 'size,size,length m\n16 mm,16 mm,2\n', /^1: it has two columns "size"$/],
    ['a comma before decimals', 'size,length m\n16 mm,"2,5"\n', /^2: its length "2,5" has a comma/],
  ])('%s', (_, text, reason) => {
    expect(rowsOf(text)).toEqual([]);
    expect(faultsOf(text)[0]).toMatch(reason);
  });
});

describe('a row that cannot be used', () => {
  const head5 = 'name,weight kg,x mm,y mm,z mm\n';
  const bad: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['no number', `${head5}Beam,heavy,0,0,0\n`, /^2: its weight "heavy" is not a number$/],
    ['no weight', `${head5}Beam,,0,0,0\n`, /^2: it has no weight$/],
    ['a weight of zero', `${head5}Beam,0,0,0,0\n`, /^2: its weight is not above zero/],
    ['a weight below zero', `${head5}Beam,-5,0,0,0\n`, /^2: its weight is not above zero/],
    ['no unit', 'name,weight\nBeam,100\n', /^2: its weight "100" has no unit/],
    ['an unknown unit in the head', 'name,weight ton\nBeam,100\n', /^1: "ton" is no unit of weight known here$/],
    ['a unit of length for a weight', 'name,weight mm\nBeam,100\n', /^1: "mm" is no unit of weight/],
    ['a unit of weight for a place', `${head5}Beam,100,0,5 kg,0\n`, /^2: its y "5 kg": "kg" is no unit of length/],
    [
      'a decimal comma in quotes',
      `${head5}Beam,"412,5",0,0,0\n`,
      /^2: its weight "412,5" has a comma where decimals begin/,
    ],
    ['a decimal comma as a separator', `${head5}Beam,412,5,0,0,0\n`, /^2: it has more fields than the first row/],
    ['thousands by points', `${head5}Beam,"1.200,5",0,0,0\n`, /^2: its weight "1.200,5" is not a number$/],
    ['a doubtful point', `${head5}Beam,1.850,0,0,0\n`, /^2: its weight "1.850" may mean thousands or decimals/],
    ['an exponent', `${head5}Beam,1e3,0,0,0\n`, /^2: its weight "1e3"/],
    [
      'columns parted by semicolons',
      'name;weight kg\nBeam;100\n',
      /^1: its columns are parted by ";"; save it with commas$/,
    ],
    ['columns parted by tabs', 'name\tweight kg\nBeam\t100\n', /^1: its columns are parted by tabs/],
    ['no column of weights', 'name,mass kg\nBeam,100\n', /^1: it names no column "weight"$/],
    ['no column of names', 'part,weight kg\nBeam,100\n', /^1: it names no column "name"$/],
    ['two columns of weights', 'name,weight kg,weight lb\nBeam,100,220\n', /^1: it has two columns "weight"$/],
    ['two of three coordinates', 'name,weight kg,x mm,y mm\nBeam,100,0,0\n', /^1: a place takes three columns/],
    ['a place with a gap', `${head5}Beam,100,0,,0\n`, /^2: it has no y$/],
    ['a coordinate without unit', 'name,weight kg,x,y,z\nBeam,100,5,0,0\n', /^2: its x "5" has no unit/],
    ['a count of a half', 'name,weight kg,count\nBeam,100,1.5\n', /^2: its count "1.5" is not a whole number/],
    ['no count where there is a column', 'name,weight kg,count\nBeam,100,\n', /^2: its count "" is not a whole number/],
    ['no name', `${head5},100,0,0,0\n`, /^2: it has no name$/],
    [
      'a hidden character in the name',
      `${head5}Be\u202eam,100,0,0,0\n`,
      /^2: its name has a character that does not show$/,
    ],
    ['too few fields', `${head5}Beam,100\n`, /^2: it has fewer fields than the first row$/],
    ['quotation marks that do not close', `${head5}"Beam,100,0,0,0\n`, /^2: its quotation marks do not close$/],
    [
      'quotation marks that do not close in one of many rows',
      `${head5}A,1,0,0,0\n"Beam,100,0,0,0\n${'B,1,0,0,0\n'.repeat(50)}`,
      /^3: its quotation marks do not close$/,
    ],
    [
      'something behind quotation marks',
      `${head5}"Beam"5,100,0,0,0\n`,
      /^2: something stands behind its quotation marks$/,
    ],
    ['a count of zero', 'name,weight kg,count\nBeam,100,0\n', /^2: its count "0" is not a whole number from 1/],
    ['a count below zero', 'name,weight kg,count\nBeam,100,-2\n', /^2: its count "-2" is not a whole number/],
    ['thousands by spaces', `${head5}Beam,1 250,0,0,0\n`, /^2: its weight "1 250" is not a number$/],
    ['thousands by narrow spaces', `${head5}Beam,1\u202f250,0,0,0\n`, /^2: its weight "1\u202f250" is not a number$/],
    ['thousands by apostrophes', `${head5}Beam,1'250,0,0,0\n`, /^2: its weight "1'250"/],
    ['a sum among the rows', `${head5}Beam,100,0,0,0\nTotal,100,0,0,0\n`, /^3: "Total" may be the sum of other rows/],
    ['a count by another name', 'name,weight kg,Qty\nBeam,100,4\n', /^1: its column "Qty" may say how many there are/],
    [
      'the total in the head',
      'name,weight each (kg)\nBeam,100\n',
      /^1: "each \(kg\)" is no unit of weight known here$/,
    ],
    [
      'columns parted by semicolons, with commas in them',
      'name;weight kg;x mm, from the north end\nBeam;412,5;0\n',
      /^1: its columns are parted by ";"/,
    ],
    [
      'text in UTF-16 without a mark',
      new Uint8Array([...'name,weight kg\nBeam,1\n'].flatMap((c) => [c.charCodeAt(0), 0])),
      /^1: the file is not in UTF-8/,
    ],
    [
      'text in UTF-16, the other end first',
      new Uint8Array([0xfe, 0xff, 0, 0x6e, 0, 0x61]),
      /^1: the file is not in UTF-8/,
    ],
    ['an empty file', '', /^1: the file is empty$/],
    ['a head alone', head5, /^1: no row stands under it$/],
    ['text in UTF-16', new Uint8Array([0xff, 0xfe, 0x6e, 0, 0x61, 0]), /^1: the file is not in UTF-8/],
    [
      'text in Latin-1',
      new Uint8Array([...bytes(`${head5}Tr`), 0xe4, ...bytes('ger,100,0,0,0\n')]),
      /^1: the file is not in UTF-8/,
    ],
    ['too many rows', `name,weight kg\n${'Beam,1\n'.repeat(mostRows + 1)}`, /^5002: it has more than 5,000 rows$/],
  ];
  test.each(bad)('%s', (_, text, said) => {
    const faults = faultsOf(text);
    expect(faults[0]).toMatch(said);
    expect(faults).toHaveLength(1);
  });

  test('a point is one of decimals where the file shows it to be', () =>
    expect(rowsOf('name,weight kg,x m,y m,z m\nA,1.850,0.125,0,0\n')[0]?.mass).toBe(1.85));

  test('opens the list, names the row, and leaves nothing lighter', () => {
    const s = listed(
      'name,weight kg,x m,y m,z m\nBeam,100,0,0,0\nColumn,"50,5",0,0,0\nBrace,x,0,0,0\n',
      '  part "P": item 5 kg, by marking, at (0, 0, 0)\n',
    );
    expect(message(s, 'list-row-unclear')).toMatch(
      /^Row 3 of frame.csv: its weight "50,5" .* With 1 more row that cannot be read, what the list adds up to stays not known until all are put right\.$/,
    );
    for (const result of ['calculated weight', 'weight', 'cog x', 'length'])
      expect(value(s, 'load', 'L', result)).toBeNull();
  });

  test('in an assembly opens the assembly and the load', () => {
    const s = lift(
      `${head}load "L"\n  contingency 0 %\n  assembly "A"\n    list "frame.csv"\n    part "P": item 5 kg, by marking, at (0, 0, 0)\n`,
      { 'frame.csv': 'name,weight kg\nBeam,?\n' },
    );
    expect(value(s, 'assembly', 'A', 'weight')).toBeNull();
    expect(value(s, 'load', 'L', 'weight')).toBeNull();
  });

  test('a file that is not there, is no .csv, or lies outside the folder opens it too', () => {
    for (const path of ['gone.csv', 'bill.xlsx', '../../bill.csv']) {
      const s = lift(
        `${head}load "L"\n  contingency 0 %\n  list "${path}"\n  part "P": item 5 kg, by marking, at (0, 0, 0)\n`,
      );
      expect(slugs(s)).toContain('file-missing');
      expect(value(s, 'load', 'L', 'weight')).toBeNull();
    }
  });

  test('no text makes it throw, and a bill with a fault never gives more than it names', () => {
    fc.assert(
      fc.property(
        fc.string({
          unit: fc.constantFrom('n', 'a', 'm', 'e', ',', '"', '\n', '\r', '1', '.', ' ', 'k', 'g', ';', '-'),
        }),
        (text) => {
          const { entries, faults } = entriesOf(bytes(`name,weight kg\n${text}`));
          for (const { mass, count } of entries) expect(mass > 0 && Number.isFinite(mass) && count >= 1).toBe(true);
          expect(entries.length + faults.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 500 },
    );
  });
});
