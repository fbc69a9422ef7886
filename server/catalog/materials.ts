// Densities by plain trade names. The heavier source governs; a name that covers several materials takes the heaviest.
import { editDistance } from '../quantities/nearest.ts';
import data from './materials.json';
import { nameKey } from './names.ts';
import { onFirstUse } from './tables.ts';

export interface Material {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly density: number; // kg/m3, the value used
  readonly low: number; // kg/m3, the range of the sources
  readonly high: number;
  readonly source: string;
  readonly liquid: boolean;
  /** Names more exact than this one, heaviest first; empty where the name is exact enough. */
  readonly choices: readonly string[];
}

interface Row {
  readonly name: string;
  readonly also?: readonly string[];
  readonly kg?: readonly number[];
  readonly uses?: number; // a value below the heaviest, and why
  readonly because?: string;
  readonly choices?: readonly string[];
  readonly liquid?: boolean;
  readonly source?: string;
}

/** The material of that name or alias; capitals, spaces and hyphens do not count. */
export function material(name: string): Material | undefined {
  return index().get(nameKey(name));
}

export function materials(): readonly Material[] {
  return all();
}

/** Materials somebody may have meant: those that share most words with the name, then those spelt most alike. */
export function nearestMaterials(name: string, count = 3): Material[] {
  const wanted = splitWords(name);
  const whole = nameKey(name);
  const limit = Math.max(1, Math.floor((whole.length + 1) / 3));
  return all()
    .map((entry) => {
      const names = [entry.name, ...entry.aliases];
      return {
        entry,
        shared: Math.max(...names.map((each) => sharedWords(wanted, splitWords(each)))),
        distance: Math.min(...names.map((each) => editDistance(whole, nameKey(each), limit))),
      };
    })
    .filter(({ shared, distance }) => shared > 0 || distance <= limit)
    .sort((a, b) => score(b) - score(a) || b.entry.density - a.entry.density)
    .slice(0, count)
    .map(({ entry }) => entry);
}

const all = onFirstUse((): readonly Material[] => {
  const rows: readonly Row[] = data.rows;
  const exact = new Map(rows.flatMap((row) => (row.kg ? [[row.name, single(row, row.kg)] as const] : [])));
  return rows.map((row) => exact.get(row.name) ?? family(row, exact));
});

const index = onFirstUse(
  () =>
    new Map(all().flatMap((entry) => [entry.name, ...entry.aliases].map((name) => [nameKey(name), entry] as const))),
);

function single(row: Row, range: readonly number[]): Material {
  const [low, high] = range as readonly [number, number];
  const because = row.because ? `; ${row.uses} is used: ${row.because}` : '';
  return {
    name: row.name,
    aliases: row.also ?? [],
    density: row.uses ?? high,
    low,
    high,
    source: cited(row.source ?? '') + because,
    liquid: row.liquid ?? false,
    choices: [],
  };
}

function family(row: Row, exact: ReadonlyMap<string, Material>): Material {
  const members = (row.choices ?? []).flatMap((name) => exact.get(name) ?? []);
  const heaviest = members.reduce((a, b) => (b.density > a.density ? b : a));
  return {
    name: row.name,
    aliases: row.also ?? [],
    density: heaviest.density,
    low: Math.min(...members.map((member) => member.low)),
    high: Math.max(...members.map((member) => member.high)),
    source: `the heaviest that the name covers, ${heaviest.name}: ${heaviest.source}`,
    liquid: row.liquid ?? false,
    choices: members.map((member) => member.name),
  };
}

function cited(source: string): string {
  const titles: Readonly<Record<string, string>> = data.sources;
  return source.replace(/\{(\w+)\}/g, (_, key) => titles[key] ?? key);
}

function splitWords(name: string): string[] {
  return name
    .toLowerCase()
    .split(/[\s-]+/)
    .filter((word) => word.length > 2);
}

function sharedWords(wanted: readonly string[], given: readonly string[]): number {
  return wanted.filter((word) => given.some((other) => editDistance(word, other, word.length > 4 ? 1 : 0) <= 1)).length;
}

// A shared word weighs as much as three letters in their places.
function score({ shared, distance }: { readonly shared: number; readonly distance: number }): number {
  return shared * 3 - Math.min(distance, 12);
}
