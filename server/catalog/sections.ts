// Rolled and hollow steel sections by designation, US and European.
import { designationKey } from './names.ts';
import europe from './sections-europe.json';
import us from './sections-us.json';
import { byKey, inch, nearestRows, onFirstUse, poundPerFoot, steelDensity, words } from './tables.ts';

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

/** The section of that designation: `W12X50`, `heb300`, `C8 x 11.5`, `L4x4x3/8`, `HSS6x6x1/4`, `W310x74`. */
export function section(designation: string): Section | undefined {
  const key = designationKey(designation);
  return shelves.get(key.charAt(0))?.().get(key);
}

/** All sections, each once, under its first designation. */
export function sections(): readonly Section[] {
  return all();
}

/** Sections near to a designation that is not in the tables: same kind and size first. */
export function nearestSections(designation: string, count = 3): Section[] {
  return nearestRows(designation, new Map([...shelves.values()].flatMap((shelf) => [...shelf()])), count);
}

interface Table {
  readonly table: string;
  readonly source: string;
  readonly rows: readonly string[];
}

/** A row's section, and the same again under its metric designation if it has one. */
type Reader = (table: Table, row: string) => readonly Section[];

const tables: readonly (Table & { readonly read: Reader })[] = [
  ...us.tables.map((table) => ({ ...table, read: usSection })),
  ...europe.tables.map((table) => ({ ...table, read: europeanSection })),
];

const all = onFirstUse((): readonly Section[] =>
  tables.flatMap((table) => table.rows.flatMap((row) => table.read(table, row).slice(0, 1))),
);

// By first letter, so that the first look-up reads a part of the tables only; a table's rows share theirs.
const shelves: ReadonlyMap<string, () => ReadonlyMap<string, Section>> = new Map(
  tables
    .map(initial)
    .map((letter) => [
      letter,
      onFirstUse(() =>
        byKey(
          tables
            .filter((table) => initial(table) === letter)
            .flatMap((table) => table.rows.flatMap((row) => table.read(table, row))),
        ),
      ),
    ]),
);

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

function europeanSection(table: Table, row: string): readonly Section[] {
  const [name = '', masses = '', squareCentimetres, depth, width] = words(row);
  const [low, high = low] = masses.split('..').map(Number) as [number, number?];
  const entry = {
    designation: name.replaceAll('_', ' '),
    table: table.table,
    massPerLength: high,
    low,
    high,
    depth: Number(depth) / 1000,
    width: Number(width) / 1000,
    area: Number(squareCentimetres) / 10_000,
    density: steelDensity,
    source: table.source,
  };
  return [entry];
}
