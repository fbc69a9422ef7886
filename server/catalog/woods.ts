// Specific gravities of woods by species, for timber of a stated moisture.
import { editDistance } from '../quantities/nearest.ts';
import { nameKey } from './names.ts';
import { onFirstUse } from './tables.ts';
import data from './woods.json';

export interface Wood {
  readonly name: string;
  /** Oven-dry weight by the volume of the green wood, against water: the heavier of that printed green and that the printed one at 12 % comes to. */
  readonly basic: number;
  readonly source: string;
}

/** The wood of that species or trade name; capitals, spaces and hyphens do not count, nor how wet the name says it is. */
export const wood = (name: string): Wood | undefined => index().get(woodKey(name));

export const woods = (): readonly Wood[] => [...new Set(index().values())];

/** Woods spelt most like a name. */
export function nearestWoods(name: string, count = 3): Wood[] {
  const key = woodKey(name);
  const near = [...index()].map(([other, found]) => ({ found, distance: editDistance(key, other, key.length) }));
  const names = near.sort((a, b) => a.distance - b.distance).map(({ found }) => found);
  return [...new Set(names)].slice(0, count);
}

const woodKey = (name: string): string => nameKey(name.replace(/^\s*(?:wet|green|fresh|dry|air-dry|seasoned)\s+/i, ''));

const index = onFirstUse(
  () =>
    new Map(
      data.rows.flatMap((row): [string, Wood][] => {
        const found = { name: row.name, basic: Math.max(row.basic, basicOf(row.dry)), source: data.source };
        return [row.name, ...(row.also ?? [])].map((name) => [nameKey(name), found]);
      }),
    ),
);

/** From the gravity at 12 % back to the green volume, by the Wood Handbook's rule of shrinkage (chapter 4). */
const basicOf = (dry: number): number => dry / (1 + 0.265 * 0.6 * dry);
