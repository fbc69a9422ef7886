// Shapes whose clauses depend on each other: what goes with what, and the body they make together.
import type { Shape } from '../mechanics/index.ts';
import { type BoundClause, type Item, textOf } from '../plan/index.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { Notes } from './notes.ts';
import { type Done, missing, type Refuse, type ShapeGiven } from './shape.ts';

/** Two sides where a shape takes a diameter. */
export function notRound(
  sizes: Readonly<Record<string, Quantity>>,
  clause: BoundClause,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven | null {
  const word = 'base0' in sizes ? 'base' : 'top0' in sizes ? 'top' : null;
  if (word === null) return null;
  const facts = { clause: word, wanted: 'a diameter', text: 'two sides', found: 'two sides', sum: false };
  return refuse(notes.add('dimension-mismatch', clause.at, facts, 'It takes a diameter.'));
}

/** A vessel head: one form is given by its radii, the other by none. */
export function dishedHead(
  item: Item,
  sizes: Readonly<Record<string, Quantity>>,
  clause: BoundClause,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const form = textOf(item, 'form');
  if (form === 'torispherical') {
    for (const [word, key] of [
      ['crown radius', 'crownRadius'],
      ['knuckle radius', 'knuckleRadius'],
    ] as const)
      if (!(key in sizes))
        return refuse(missing(item, 'dished head', word, 'a torispherical head is given by its inside radii', notes));
  } else if ('crownRadius' in sizes || 'knuckleRadius' in sizes)
    return refuse(
      notes.add(
        'place-wrong',
        clause.keywordAt,
        {
          keyword: 'crownRadius' in sizes ? 'crown radius' : 'knuckle radius',
          parent: 'ellipsoidal head',
          parents: ['torispherical head'],
        },
        'An ellipsoidal head takes no radii.',
      ),
    );
  return done((s) => ({ kind: 'dished head', form, ...s }) as unknown as Shape);
}
