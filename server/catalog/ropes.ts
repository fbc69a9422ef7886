// Wire rope and chain by the length: mass as a factor of the diameter squared, by construction.
import { editDistance } from '../quantities/nearest.ts';
import { nameKey } from './names.ts';
import data from './ropes.json';
import { onFirstUse, words } from './tables.ts';

export type Line = 'rope' | 'chain';

/** What a construction of rope or chain weighs: kg/m for each square metre of its diameter squared. */
export interface Construction {
  readonly construction: string;
  readonly factor: number;
  readonly low: number;
  readonly high: number;
  readonly across: number; // outer width over the diameter
  readonly source: string;
}

/** `6x36 IWRC`, `35x7`, `stud link`: capitals, spaces and hyphens do not count. */
export function construction(line: Line, name: string): Construction | undefined {
  return tables[line]().names.get(constructionKey(name));
}

/** All constructions of rope or chain, heaviest first. */
export function constructionsOf(line: Line): readonly Construction[] {
  return tables[line]().all;
}

/** Constructions with a name spelt most like one that is not known, the heavier first of those equally alike. */
export function nearestConstructions(line: Line, name: string, count = 3): readonly Construction[] {
  const wanted = constructionKey(name);
  const nearest = new Map<Construction, number>(constructionsOf(line).map((one) => [one, Number.POSITIVE_INFINITY]));
  for (const [key, one] of tables[line]().names)
    nearest.set(one, Math.min(nearest.get(one) ?? Number.POSITIVE_INFINITY, editDistance(wanted, key)));
  return [...nearest]
    .sort(([, first], [, second]) => first - second)
    .slice(0, count)
    .map(([one]) => one);
}

const tables: Readonly<Record<Line, () => Table>> = {
  rope: onFirstUse(() => read('rope')),
  chain: onFirstUse(() => read('chain')),
};

interface Table {
  readonly all: readonly Construction[];
  readonly names: ReadonlyMap<string, Construction>;
}

/** kg per 100 m and mm2, in kg/m and m2. */
const perSquare = 1e6 / 100;

function read(line: Line): Table {
  const names = new Map<string, Construction>();
  for (const row of data[line].rows) {
    const [spelled = '', low, high = '', across = '1'] = words(row);
    const [first = '', ...others] = spelled.split('=').map((name) => name.replaceAll('_', ' '));
    const entry = {
      construction: first,
      factor: Number(high) * perSquare,
      low: Number(low) * perSquare,
      high: Number(high) * perSquare,
      across: Number(across),
      source: `${high} kg per 100 m for each mm2 of the diameter squared; ${data[line].source}`,
    };
    for (const name of [first, ...others]) names.set(constructionKey(name), entry);
  }
  return { all: [...new Set(names.values())].sort((a, b) => b.factor - a.factor), names };
}

const constructionKey = (name: string): string => nameKey(name).replace(/[×*]/g, 'x');
