// Flat steel by area: plate, floor plate, gauge sheet and bar grating.
import { designationKey } from './names.ts';
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

/** `plate 1/2 in`, `plate 12 mm`, `floor plate 1/4 in`, `sheet 10 gauge`, `grating 19-W-4 1-1/4x3/16`. */
export function sheet(designation: string): Sheet | undefined {
  return index().get(designationKey(designation));
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

const index = onFirstUse(() => byKey(all()));

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
