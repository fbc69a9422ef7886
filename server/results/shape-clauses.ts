// Clauses of a part that do not go with its shape: of other shapes, or with a figure or word of another one.
import { type BoundClause, fit, type Item, measureName } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { nameOf } from '../quantities/dimension.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { type ClauseRow, type Measure, type ShapeName, type ShapeRow, shapes } from '../vocabulary/index.ts';
import type { Notes } from './notes.ts';
import { shapesWith } from './shape-words.ts';

export const label = (item: Item): string => item.names[0] ?? item.keyword;

/** A figure whose word measures different things in different shapes, held against what this shape takes. */
export function ofShape(
  item: Item,
  word: string,
  quantity: Quantity,
  measures: Measure,
  notes: Notes,
): Quantity | Cause {
  const clause = item.clauses.get(word)?.[0] as BoundClause;
  if (clause.row.measures === measures) return quantity;
  const fits = fit(quantity, measures);
  if (fits && fits !== 'missing') return fits;
  const text = clause.valueAt.row.text.slice(clause.valueAt.from, clause.valueAt.to);
  const facts = { clause: word, wanted: measureName(measures), text, found: nameOf(quantity.dimension), sum: false };
  return notes.add('dimension-mismatch', clause.valueAt, facts, `${word} does not fit ${label(item)}.`);
}

/** A word that another shape may have under the same clause, but not this one. */
export function otherWord(item: Item, word: string, { words = [] }: ClauseRow, notes: Notes): readonly Cause[] {
  const clause = item.clauses.get(word)?.[0];
  const said = clause?.value?.kind === 'word' ? clause.value.word : null;
  if (!clause || said === null || words.length === 0 || words.includes(said)) return [];
  const facts = { word: said, nearest: [], all: words };
  return [notes.add('word-unknown', clause.valueAt, facts, `${word} of ${label(item)} cannot be ${said}.`)];
}

/** Clauses that belong to other shapes than this one. */
export function foreign(item: Item, name: ShapeName, notes: Notes): Cause[] {
  const row: ShapeRow = shapes[name];
  const causes: Cause[] = [];
  for (const [word, list] of item.clauses) {
    if (word === name || word in row.clauses || word in item.row.clauses === false) continue;
    const others = placeWords.has(word) ? undefined : shapesWith.get(word);
    if (!others || (word === 'bend radius' && item.clauses.has('along'))) continue;
    causes.push(
      notes.add(
        'place-wrong',
        (list[0] as BoundClause).keywordAt,
        { keyword: word, parent: name, parents: others },
        `${word} does not belong to ${name}.`,
      ),
    );
  }
  const material = ['of', 'density', 'moisture', 'reinforcement'].flatMap((word) => item.clauses.get(word) ?? [])[0];
  if (row.material === 'none' && material)
    causes.push(
      notes.add(
        'place-wrong',
        material.keywordAt,
        { keyword: material.keyword, parent: name, parents: ['shapes with a volume'] },
        `${material.keyword} does not belong to ${name}.`,
      ),
    );
  return causes;
}
const placeWords = new Set(['at', 'on', 'against', 'inside', 'shift', 'axis', 'turn', 'count', 'every', 'circle']);
