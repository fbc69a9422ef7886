// Reads a bought-in part of pipework from its clauses, and notes why where the tables have none.
import { type BoundClause, given, type Item, textOf } from '../../plan/index.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Notes } from '../notes.ts';
import { missing, type ShapeGiven } from '../shape.ts';
import { boughtIn } from './index.ts';
import { type NotListed, type PipeworkName, pipeworkNames, type Sizes, sizeWords, type Written } from './types.ts';
import { weigh } from './weigh.ts';

/** What an item writes of a part that is looked up. */
export function writtenOf(item: Item, name: PipeworkName): Written {
  const value = item.clauses.get(name)?.[0]?.value;
  return {
    designation: value?.kind === 'text' ? value.text : null,
    diameter: value?.kind === 'quantity' ? value.quantity.value : null,
    words: { class: textOf(item, 'class'), form: textOf(item, 'form'), schedule: textOf(item, 'schedule') },
    given: new Set(item.clauses.keys()),
  };
}

/** The bought-in part that an item's shape is; null where it is another shape. */
export const pipeworkOf = (item: Item): PipeworkName | null =>
  pipeworkNames.find((name) => item.clauses.has(name)) ?? null;

/** What an item writes in amounts, so far as it is known. */
export function sizesWritten(item: Item): Sizes {
  const sizes: Record<string, number> = {};
  for (const word of sizeWords) {
    const state = given(item, word);
    if (state.state === 'known') sizes[word] = state.quantity.value;
  }
  const pad = item.clauses.get('pad')?.[0]?.value;
  if (pad?.kind === 'size')
    pad.sides.forEach((side, i) => {
      sizes[`pad${i}`] = side.value;
    });
  return sizes;
}

/** The part, or what is missing or not in the tables. */
export function pipework(
  item: Item,
  name: PipeworkName,
  clause: BoundClause,
  sizes: Readonly<Record<string, Quantity>>,
  notes: Notes,
): ShapeGiven {
  const written = writtenOf(item, name);
  const found = boughtIn(name, written);
  if ('make' in found) return { name, clause, sizes, ...found };
  if ('due' in found) return { name, because: [missing(item, name, found.due, found.why, notes)] };
  return { name, because: [notListed(item, name, clause, written, sizes, found, notes)] };
}

function notListed(
  item: Item,
  name: PipeworkName,
  clause: BoundClause,
  written: Written,
  sizes: Readonly<Record<string, Quantity>>,
  { clause: word, designation, table, nearest }: NotListed,
  notes: Notes,
) {
  const at = word === name ? clause.valueAt : (item.clauses.get(word)?.[0]?.valueAt ?? clause.valueAt);
  const figures = Object.fromEntries(Object.entries(sizes).map(([key, size]) => [key, size.value]));
  const near = nearest.flatMap((text) => {
    const other = word === name ? { ...written, designation: text, diameter: null } : withWord(written, word, text);
    const mass = weigh(name, other, figures)?.mass;
    return mass === undefined ? [] : [{ name: text, mass }];
  });
  return notes.add(
    'size-unknown',
    at,
    { designation, table, nearest: near.slice(0, 3) },
    `${designation} is not in the table.`,
  );
}

const withWord = (written: Written, word: string, text: string): Written => ({
  ...written,
  words: { ...written.words, [word]: text },
});
