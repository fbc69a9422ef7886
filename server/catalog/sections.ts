// Rolled and hollow steel sections, rails and sheet piles by designation, US and European.
import { designationKey } from './names.ts';
import rails from './rails.json';
import europe from './sections-europe.json';
import us from './sections-us.json';
import piles from './sheet-piles.json';
import { byKey, inch, nearestRows, onFirstUse, poundPerFoot, printed, steelDensity, words } from './tables.ts';

export interface Section {
  readonly designation: string;
  readonly table: string;
  readonly massPerLength: number; // kg/m, of steel
  readonly low: number;
  readonly high: number;
  readonly depth: number; // m
  readonly width: number; // m
  readonly area?: number; // m2; for US hollow sections that of the design wall, too small to weigh by
  readonly density: number; // kg/m3 that the mass is for: of another material it scales with this
  readonly source: string;
}

/** The section of that designation: `W12X50`, `heb300`, `C8 x 11.5`, `L4x4x3/8`, `HSS6x6x1/4`, `W310x74`, `60E1`, `AZ 18-700`. */
export function section(designation: string): Section | undefined {
  const key = designationKey(designation);
  return shelves.get(key.charAt(0))?.().get(key) ?? mixed().get(key);
}

/** All sections, each once, under its first designation. */
export function sections(): readonly Section[] {
  return all();
}

/** Sections near to a designation that is not in the tables: same kind and size first. */
export function nearestSections(designation: string, count = 3): Section[] {
  return nearestRows(designation, new Map([...shelves.values(), mixed].flatMap((shelf) => [...shelf()])), count);
}

interface Table {
  readonly table: string;
  readonly unit?: string;
  readonly source: string;
  readonly rows: readonly string[];
}

/** A row's section, and the same again under each other designation it has. */
type Reader = (table: Table, row: string) => readonly Section[];
type Read = Table & { readonly read: Reader };

const tables: readonly Read[] = [
  ...us.tables.map((table) => ({ ...table, read: usSection })),
  ...europe.tables.map((table) => ({ ...table, read: otherSection })),
];
const mixedTables: readonly Read[] = [...rails.tables, ...piles.tables].map((table) => ({
  ...table,
  read: otherSection,
}));

const all = onFirstUse((): readonly Section[] =>
  [...tables, ...mixedTables].flatMap((table) => table.rows.flatMap((row) => table.read(table, row).slice(0, 1))),
);

// By first letter, so that the first look-up reads a part of the tables only; a table's rows share theirs.
const shelves: ReadonlyMap<string, () => ReadonlyMap<string, Section>> = new Map(
  tables
    .map(initial)
    .map((letter) => [letter, onFirstUse(() => byKey(readAll(tables.filter((table) => initial(table) === letter))))]),
);

/** Rails and sheet piles, whose names begin anyhow. */
const mixed = onFirstUse(() => byKey(readAll(mixedTables)));

const readAll = (some: readonly Read[]): Section[] =>
  some.flatMap((table) => table.rows.flatMap((row) => table.read(table, row)));

function initial({ rows }: Table): string {
  return rows[0]?.charAt(0) ?? '';
}

function usSection(table: Table, row: string): readonly Section[] {
  const [names = '', weight, squareInches, depth, width] = words(row);
  const [designation = '', metric] = names.split('=');
  const area = Number(squareInches) * inch ** 2;
  const nominal = Number(weight) * poundPerFoot;
  // The lightest shapes are rounded so far that their area weighs more than their name says; of hollow sections the
  // area is that of the design wall and never weighs more.
  const byArea = area * steelDensity;
  const mass = byArea > nominal * 1.015 ? byArea : nominal;
  const entry = {
    designation,
    table: table.table,
    massPerLength: mass,
    low: nominal,
    high: mass,
    depth: Number(depth) * inch,
    width: Number(width) * inch,
    area,
    density: steelDensity,
    source: table.source,
  };
  return metric === undefined ? [entry] : [entry, { ...entry, designation: metric }];
}

/** What one printed unit of mass per length, of area and of length is in SI. */
const units: Readonly<Record<string, readonly [number, number, number]>> = {
  'kg/m': [1, 1e-4, 1e-3],
  'lb/ft': [poundPerFoot, inch ** 2, inch],
  'lb/yd': [poundPerFoot / 3, inch ** 2, inch],
};

function otherSection({ table, unit = 'kg/m', source }: Table, row: string): readonly Section[] {
  const [names = '', masses = '', area = '', depth = '', width = ''] = words(row);
  const [perLength, perArea, length] = units[unit] as readonly [number, number, number];
  const [low, high = low] = masses.split('..').map((mass) => Number(mass) * perLength) as [number, number?];
  const entry = {
    table,
    massPerLength: high,
    low,
    high,
    depth: printed(depth) * length,
    width: printed(width) * length,
    ...(area !== '-' && { area: Number(area) * perArea }),
    density: steelDensity,
    source,
  };
  return names.split('=').map((name) => ({ ...entry, designation: name.replaceAll('_', ' ') }));
}
