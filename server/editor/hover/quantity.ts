// Hover on a quantity: read back in the other system of units, and in words where its digits are easily misread.
import type { BoundClause, Item } from '../../plan/index.ts';
import {
  type DimensionName,
  joined,
  named,
  nameOf,
  type Round,
  type System,
  share,
  spoken,
  type Unit,
  write,
} from '../../quantities/index.ts';
import type { Expression, Row, Span, UnitText, Value } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { clauseAt, itemAt, ownFile } from '../items.ts';
import type { Hover } from '../types.ts';
import { expressionsIn } from '../uses.ts';
import { hoverOf, type Line, note } from './page.ts';

export function hoverQuantity(s: Snapshot, row: number, offset: number): Hover | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  const line = s.tree.lines[row];
  const where = s.tree.rows[row];
  if (!item || !line || !where) return null;
  const values = [
    ...(line.statement?.value ? [line.statement.value] : []),
    ...line.clauses.flatMap(({ value }) => (value ? [value] : [])),
  ];
  const value = values.find(({ span }) => offset >= span.from && offset <= span.to);
  const found = value && quantityAt(value, offset);
  if (!value || !found) return null;
  const clause = clauseAt(item, { row: where }, offset);
  const read = readBack(found, closingUnit(value), where, clause);
  if (!read) return null;
  return hoverOf(
    s.plan,
    { row: where, from: found.span.from, to: found.span.to },
    note(read.head, { working: [...read.lines, ...wholeOf(value, clause, read.unit), ...helpOf(clause, item)] }),
  );
}

type Counted = Extract<Expression, { kind: 'quantity' }>;

/** The quantity of a value that an offset is in. */
function quantityAt(value: Value, offset: number): Counted | null {
  const within = ({ from, to }: Span) => offset >= from && offset <= to;
  const inside = (expression: Expression): Counted | null => {
    if (!within(expression.span)) return null;
    switch (expression.kind) {
      case 'quantity':
        return expression;
      case 'name':
        return null;
      case 'negative':
        return inside(expression.of);
      case 'call':
        return firstOf(expression.args.map(inside));
      case 'binary':
        return inside(expression.left) ?? inside(expression.right);
    }
  };
  return firstOf(expressionsIn(value).map(inside));
}

const firstOf = <T>(list: readonly (T | null)[]): T | null => list.find((one) => one !== null) ?? null;

/** The unit that closes a size, a point or a row, and holds for bare numbers before it. */
function closingUnit(value: Value): UnitText | null {
  const of = (expression: Expression | undefined) =>
    expression?.kind === 'quantity' ? (expression.parts.at(-1)?.unit ?? null) : null;
  if (value.kind === 'point' || value.kind === 'points') return value.unit;
  if (value.kind === 'size') return of(value.sides.at(-1));
  if (value.kind !== 'row') return null;
  const last = value.cells.filter((cell) => cell.kind === 'sum').at(-1);
  return last?.kind === 'sum' ? of(last.value) : null;
}

interface Read {
  readonly head: string;
  readonly unit: string; // as written last
  readonly lines: readonly Line[];
}

function readBack(quantity: Counted, closing: UnitText | null, row: Row, clause: BoundClause | null): Read | null {
  const parts = quantity.parts.map((part) => ({ part, unit: joined((part.unit ?? closing)?.text ?? '') }));
  const [first] = parts;
  if (!first?.unit || parts.some(({ unit }) => !unit) || first.unit.text === '%') return null;
  const sign = quantity.negative ? -1 : 1;
  const value =
    sign * parts.reduce((sum, { part, unit }) => sum + part.value * (unit as Unit).factor + (unit as Unit).offset, 0);
  const written = `${row.text.slice(quantity.span.from, quantity.span.to)}${first.part.unit ? '' : ` ${closing?.text}`}`;
  const dimension = named(first.unit.dimension);
  const other =
    dimension &&
    otherSystem(
      parts.map(({ unit }) => unit as Unit),
      dimension,
      value,
      clause,
    );
  const said =
    parts.length === 1 && misleads(first.part.text) ? spoken(sign * first.part.value, first.unit.text) : null;
  const weight = dimension === 'force' && clause?.row.measures === 'weight' ? forces(clause) : [];
  return {
    unit: (parts.at(-1)?.unit ?? first.unit).text,
    head: other ? `${written} = ${other}` : `${written}, ${nameOf(first.unit.dimension)}`,
    lines: [...(said ? [{ says: said }] : []), ...weight],
  };
}

/** The same quantity in the other system; null where both write it alike. */
function otherSystem(
  units: readonly Unit[],
  dimension: DimensionName,
  value: number,
  clause: BoundClause | null,
): string | null {
  if (['angle', 'time', 'voltage', 'number'].includes(dimension)) return null;
  const system: System = units.some(({ text }) => customary.test(text)) ? 'metric' : 'US';
  return write(value, dimension, { system, round: roundOf(clause), digits: 6, plain: false });
}

/** Units of the US and of Britain, alone or as one side of a joined one. */
const customary =
  /(?:^|\/)(?:in|ft|yd)[23]?(?:$|\/)|(?:^|\/)(?:bbl|lb|oz|kip|lbf|kipf|psi|psf|ksi|mph|degF)(?:$|\/)|gal|short ton|long ton/;

/** What may be carried is rounded down, what weighs up. */
function roundOf(clause: BoundClause | null): Round {
  if (!clause) return 'near';
  if (/capacity|bearing|wind limit|tip height|distance/.test(clause.keyword)) return 'down';
  return clause.row.measures === 'weight' || clause.row.measures === 'density' ? 'up' : 'near';
}

const misleads = (text: string): boolean => /,|\.\d{3}|\/|\d{5}/.test(text);

/** A force written for a weight: the mass it counts as, in both systems. */
function forces(clause: BoundClause): readonly Line[] {
  const value = clause.value?.kind === 'quantity' ? clause.value.quantity.value : null;
  if (value === null) return [];
  const text = (system: System) => write(value, 'mass', { system, round: roundOf(clause), plain: false });
  return [{ says: `as a weight ${text('metric')}, ${text('US')} (by 9.80665 m/s²)` }];
}

/** What an expression comes to, and the ends of a tolerance, in the unit written. */
function wholeOf(value: Value, clause: BoundClause | null, unit: string): readonly Line[] {
  if (value.kind !== 'amount' || value.amount.kind !== 'sum' || clause?.value?.kind !== 'quantity') return [];
  const { quantity } = clause.value;
  const text = (number: number, round: Round) =>
    quantity.percent
      ? share(number, round, false)
      : write(number, named(quantity.dimension) ?? 'number', { system: 'metric', round, unit, plain: false });
  const sum = value.amount.value.kind === 'quantity' ? [] : [{ says: `together ${text(quantity.value, 'near')}` }];
  return value.amount.tolerance
    ? [...sum, { says: `from ${text(quantity.low, 'down')} to ${text(quantity.high, 'up')}` }]
    : sum;
}

/** What the figure is for: the one-line help of its clause. */
const helpOf = (clause: BoundClause | null, item: Item): readonly Line[] =>
  clause?.row.help && clause.row.measures !== 'any'
    ? [{ says: `${clause.keyword || item.keyword}: ${clause.row.help}` }]
    : [];
