// Flat steel by area: plate, floor plate, gauge sheet, bar grating, reinforcing mesh, and the wall of sheet piles.
import { designationKey } from './names.ts';
import { type Section, section } from './sections.ts';
import data from './sheets.json';
import { byKey, inch, nearestRows, onFirstUse, poundPerSquareFoot, printed, steelDensity, words } from './tables.ts';

export interface Sheet {
  readonly designation: string;
  readonly massPerArea: number; // kg/m2, of steel
  readonly low: number;
  readonly high: number;
  readonly thickness?: number; // m; of floor plate without its pattern
  readonly source: string;
}

/** `plate 1/2 in`, `plate 12 mm`, `floor plate 1/4 in`, `sheet 10 gauge`, `grating 19-W-4 1-1/4x3/16`, `A393`, a wall of `AZ 18-700`. */
export function sheet(designation: string): Sheet | undefined {
  const key = designationKey(designation);
  return index().get(key) ?? index().get(designationKey(otherName(designation))) ?? wallOf(section(designation));
}

/** Chequer plate and its like are floor plate; the word mesh or fabric may stand before its mark. */
const otherName = (designation: string): string =>
  designation
    .replace(/^\s*(?:chec?(?:ker|quer|kered|quered)|tread|tear|durbar|raised pattern)[\s-]*plate/i, 'floor plate')
    .replace(/^\s*(?:mesh|fabric|WWF|WWR)\s+/i, '');

/** A wall of sheet piles, by the width of a single one. */
function wallOf(pile: Section | undefined): Sheet | undefined {
  if (!pile || !/sheet piles/i.test(pile.table)) return undefined;
  const { designation, massPerLength, low, high, width, source } = pile;
  return { designation, massPerArea: massPerLength / width, low: low / width, high: high / width, source };
}

export function sheets(): readonly Sheet[] {
  return all();
}

/** Sheets of the same kind nearest in thickness to one that is not in the tables. */
export function nearestSheets(designation: string, count = 3): Sheet[] {
  return nearestRows(designation, index(), count);
}

const all = onFirstUse((): readonly Sheet[] =>
  data.tables.flatMap(({ table, unit, source, rows }) => {
    const read = readers[`${table}, ${unit}`];
    return read ? rows.map((row) => ({ ...read(row, table), source })) : [];
  }),
);

const index = onFirstUse(() => {
  const aliases = data.tables.flatMap(({ rows }) => rows.flatMap((row) => aliasOf(words(row)[0] ?? '')));
  const found = new Map(byKey(all()));
  for (const [alias, name] of aliases) {
    const entry = found.get(designationKey(name));
    if (entry) found.set(designationKey(alias), entry);
  }
  return found;
});

/** `6x6-W2.9xW2.9=6x6-6x6`: the second name and the first. */
const aliasOf = (names: string): [string, string][] => {
  const [name = '', alias] = names.split('=');
  return alias === undefined ? [] : [[alias, name]];
};

/** The pattern of floor plate weighs 1 to 2 lb/ft2 more than the plate (common practice, no source). */
const pattern = [1 * poundPerSquareFoot, 2 * poundPerSquareFoot] as const;
/** Zinc on both sides of a galvanized sheet, 0.15625 lb/ft2 on top of its gauge (from memory). */
const zinc = 0.15625 * poundPerSquareFoot;
/** Band bars, clips and zinc on a grating panel (common practice, no source). */
const bands = 1.06;

type Reader = (row: string, table: string) => Omit<Sheet, 'source'>;

const readers: Readonly<Record<string, Reader>> = {
  'plate, inch': (row, table) => plain(`${table} ${row} in`, printed(row) * inch),
  'plate, mm': (row, table) => plain(`${table} ${row} mm`, Number(row) / 1000),
  'floor plate, mm': (row, table) => patterned(`${table} ${row} mm`, Number(row) / 1000, []),
  'floor plate, inch lb/ft2': (row, table) => {
    const [thickness = '', pounds] = words(row);
    return patterned(`${table} ${thickness} in`, printed(thickness) * inch, [Number(pounds) * poundPerSquareFoot]);
  },
  'sheet, gauge lb/ft2': (row, table) => {
    const [gauge, pounds] = words(row);
    const low = Number(pounds) * poundPerSquareFoot;
    return ranged(`${table} ${gauge} gauge`, low, low + zinc);
  },
  'grating, lb/ft2': (row, table) => {
    const [mark = '', pounds] = words(row);
    const low = Number(pounds) * poundPerSquareFoot;
    return ranged(`${table} ${mark.replace('_', ' ')}`, low, low * bands);
  },
  'mesh, wires mm@mm kg/m2': (row) => {
    const [mark = '', along = '', across = '', kilograms] = words(row);
    const wires = [along, across].map((text) => {
      const [thick, apart] = text.split('@').map((millimetres) => Number(millimetres) / 1000) as [number, number];
      return ((Math.PI / 4) * thick ** 2 * steelDensity) / apart;
    });
    const masses = [(wires[0] ?? 0) + (wires[1] ?? 0), Number(kilograms)];
    return ranged(mark, Math.min(...masses), Math.max(...masses));
  },
  'mesh, lb/100 ft2': (row) => {
    const [names = '', pounds] = words(row);
    const mark = names.split('=')[0] ?? '';
    const [, apart, hundredths] = /^(\d+)x\d+-W([\d.]+)/.exec(mark) ?? [];
    const byArea = (2 * (Number(hundredths) / 100) * inch ** 2 * steelDensity) / (Number(apart) * inch);
    const masses = [byArea, (Number(pounds) / 100) * poundPerSquareFoot];
    return ranged(mark, Math.min(...masses), Math.max(...masses));
  },
};

function plain(designation: string, thickness: number): Omit<Sheet, 'source'> {
  return { ...ranged(designation, thickness * steelDensity, thickness * steelDensity), thickness };
}

function patterned(designation: string, thickness: number, tabled: readonly number[]): Omit<Sheet, 'source'> {
  const masses = [...pattern.map((extra) => thickness * steelDensity + extra), ...tabled];
  return { ...ranged(designation, Math.min(...masses), Math.max(...masses)), thickness };
}

function ranged(designation: string, low: number, high: number): Omit<Sheet, 'source'> {
  return { designation, massPerArea: high, low, high };
}
