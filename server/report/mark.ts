// The content mark: a short digest of what a plan means, with all it takes in. Layout, order of lines, comments, notes, unit
// spellings and names of values do not change it; any figure, name or word that counts does.
import { fold } from '../plan/fold.ts';
import type { BoundClause, BoundPlan, BoundValue, Cell, Item } from '../plan/types.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { NameUse, Place } from '../syntax/types.ts';
import { digest, printOf } from './digest.ts';

/**
 * Twelve hexadecimal digits in groups of four, such as `1c9f-04be-77a2`. Left out are notes, `use` and `let` (what they bring
 * in counts where it is used), and approvals, permits and records: these are written about a mark, so they cannot change it.
 */
export function contentMark(plan: BoundPlan): string {
  const [own = '', ...used] = plan.files.map(({ items }) => block(items, 'file'));
  const drawings = [...plan.attached].flatMap(([item, { bytes }]) =>
    item.keyword === 'list' ? [] : bytes ? printOf(bytes) : '?',
  );
  const more = drawings.length ? [packed(drawings.sort())] : [];
  const hex = digest(packed([own, packed(used.sort()), packed(plan.opens.map(words).sort()), ...more]));
  return [0, 4, 8].map((at) => hex.slice(at, at + 4)).join('-');
}

/** Texts one behind the other, each with its length before it, so that no two lists look alike. */
const packed = (texts: readonly string[]): string => texts.map((text) => `${text.length}:${text}`).join('');

const aside = new Set(['use', 'let', 'approval', 'permit', 'record']);

/** Statements in an order of their own: only steps mean something by standing one after the other. */
function block(items: readonly Item[], parent: string): string {
  const texts = items.filter(({ keyword }) => !aside.has(keyword)).map(statement);
  return packed(parent === 'steps' ? texts : texts.sort());
}

/** Kept by item: an item stays the same object while nothing that it says has changed. */
const kept = new WeakMap<Item, string>();

function statement(item: Item): string {
  const before = kept.get(item);
  if (before !== undefined) return before;
  const clauses = [...item.clauses]
    .filter(([keyword]) => keyword !== 'note')
    .map(([keyword, uses]) => packed([keyword, ...uses.map(clause)]));
  const own = item.value ? clause(item.value) : '';
  const text = packed([
    item.keyword,
    packed(item.names.map(fold)),
    own,
    packed(clauses.sort()),
    packed(item.opens.map(words).sort()),
    block(item.children, item.keyword),
  ]);
  kept.set(item, text);
  return text;
}

/** A value by its meaning; what could not be read by its words. */
const clause = ({ value, valueAt }: BoundClause): string =>
  value && !(value.kind === 'compare' && !value.compare) ? JSON.stringify(meaning(value)) : words(valueAt);

function meaning(value: BoundValue): unknown {
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
      return ['compare', value.compare && comparison(value.compare)];
    case 'subject':
      return ['subject', value.keyword, value.names.map(fold)];
    case 'word':
      return ['word', value.word, value.amount && quantity(value.amount)];
    default: // unknown, none, axis, text, date: nothing in them but themselves
      return value;
  }
}

const comparison = ({
  subject,
  result,
  op,
  low,
  high,
}: NonNullable<Extract<BoundValue, { kind: 'compare' }>['compare']>) => [
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

const name = ({ parts, until }: NameUse) => [parts.map(({ text }) => fold(text)), until && fold(until.text)];

const words = ({ row, from, to }: Place) => row.text.slice(from, to).replace(/\s+/g, ' ').trim();
