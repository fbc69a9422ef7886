// What a value of a clause means, however it is written: units, spaces and names of values make no difference.
import { fold } from '../plan/fold.ts';
import type { BoundClause, BoundValue, Cell, Compare } from '../plan/types.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { NameUse, Place } from '../syntax/types.ts';

/** How names are compared: by their folded form, or by what a thing is called in another version. */
export type Spell = (name: string) => string;

/** A value by its meaning; what could not be read by its words. */
export const clauseMeaning = ({ value, valueAt }: BoundClause, spell: Spell = fold): string =>
  value && !(value.kind === 'compare' && !value.compare) ? JSON.stringify(meaning(value, spell)) : words(valueAt);

function meaning(value: BoundValue, spell: Spell): unknown {
  const name = (use: NameUse) => nameMeaning(use, spell);
  switch (value.kind) {
    case 'quantity':
      return ['quantity', quantity(value.quantity)];
    case 'size':
      return ['size', value.sides.map(quantity)];
    case 'point':
      return ['point', value.at.map(cell)];
    case 'points':
      return ['points', value.points.map((point) => point.map(round))];
    case 'line':
      return ['line', value.corners.map((corner) => corner.map(round)), round(value.slack)];
    case 'names':
      return ['names', value.names.map(name)];
    case 'turn':
      return ['turn', quantity(value.angle), value.axis];
    case 'side':
      return ['side', name(value.name), value.axis];
    case 'tilt':
      return ['tilt', value.axis, quantity(value.from), value.to && quantity(value.to)];
    case 'circle':
      return ['circle', quantity(value.diameter), value.axis];
    case 'row':
      return ['row', cell(value.head), value.cells.map(cell)];
    case 'compare':
      return ['compare', value.compare && comparison(value.compare, name)];
    case 'subject':
      return ['subject', value.keyword, value.names.map(spell)];
    case 'word':
      return ['word', value.word, value.amount && quantity(value.amount)];
    default: // unknown, none, axis, text, date: nothing in them but themselves
      return value;
  }
}

const comparison = ({ subject, result, op, low, high }: Compare, name: (use: NameUse) => unknown) => [
  subject.kind,
  subject.names.map(name),
  result,
  op,
  round(low),
  round(high),
];

const cell = (value: Cell) => (value === null || typeof value === 'string' ? value : quantity(value));

const quantity = ({ value, low, high, dimension, percent }: Quantity) => [
  round(value),
  round(low),
  round(high),
  dimension,
  percent,
];

/** Twelve digits, so that `25.4 mm` and `1 in` are one figure whichever way they were converted. */
const round = (value: number) => Number(value.toPrecision(12));

const nameMeaning = ({ parts, until }: NameUse, spell: Spell) => [
  parts.map(({ text }) => spell(text)),
  until && spell(until.text),
];

/** What stands at a place, with single spaces. */
export const words = ({ row, from, to }: Place) => row.text.slice(from, to).replace(/\s+/g, ' ').trim();
