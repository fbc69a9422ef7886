// Which words go with which shape: the rows of the vocabulary, put in order once, since every part of a load asks.
import { type ClauseRow, type ShapeName, type ShapeRow, shapeNames, shapes } from '../vocabulary/index.ts';

const rowOf = (name: ShapeName): ShapeRow => shapes[name];

const under = (keyword: 'part' | 'less'): readonly ShapeName[] =>
  shapeNames.filter((name) => rowOf(name).under.includes(keyword) && !(name === 'hole' && keyword === 'part'));

/** Shapes that may stand on a part line, and on a line that takes something away. */
export const shapesUnder = { part: under('part'), less: under('less') };

/** The clauses that a shape takes for its sizes. */
export const sizeClauses = Object.fromEntries(
  shapeNames.map((name) => [name, Object.entries(rowOf(name).clauses)]),
) as unknown as Readonly<Record<ShapeName, readonly (readonly [string, ClauseRow])[]>>;

const takers = new Map<string, readonly ShapeName[]>();
for (const name of shapeNames)
  for (const [word] of sizeClauses[name]) takers.set(word, [...(takers.get(word) ?? []), name]);

/** The shapes that take a clause, by its word. */
export const shapesWith: ReadonlyMap<string, readonly ShapeName[]> = takers;
