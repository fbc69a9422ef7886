// Which names from `let` the values of one line use.
import type { Amount, Expression, PointValue, ReadLine, Value } from '../../syntax/types.ts';

/** Each name once, in the order of the line. */
export const letNames = (line: ReadLine): readonly string[] => [
  ...new Set(
    [line.statement?.value ?? null, ...line.clauses.map(({ value }) => value)].flatMap((value) =>
      value ? inValue(value) : [],
    ),
  ),
];

function inValue(value: Value): readonly string[] {
  switch (value.kind) {
    case 'amount':
      return inAmount(value.amount);
    case 'size':
      return [...value.sides, ...some(value.tolerance)].flatMap(inExpression);
    case 'point':
      return inPoint(value);
    case 'points':
      return [...value.points.flat().flatMap(inAmount), ...some(value.tolerance).flatMap(inExpression)];
    case 'turn':
      return inExpression(value.angle);
    case 'tilt':
      return [value.angle, ...some(value.to)].flatMap(inExpression);
    case 'circle':
      return inExpression(value.diameter);
    case 'row':
      return [...some(value.head), ...value.cells].flatMap(inAmount);
    case 'compare':
      return [value.left, ...some(value.right)].flatMap(inExpression);
    case 'word':
      return some(value.amount).flatMap(inAmount);
    default: // words, names, texts, dates, axes: no sums in them
      return [];
  }
}

const some = <T>(value: T | null): readonly T[] => (value === null ? [] : [value]);

const inAmount = (amount: Amount): readonly string[] =>
  amount.kind === 'sum' ? [amount.value, ...some(amount.tolerance)].flatMap(inExpression) : [];

function inPoint({ coordinates, tolerance }: PointValue): readonly string[] {
  const ends = tolerance === null ? [] : tolerance.kind === 'point' ? inPoint(tolerance) : inExpression(tolerance);
  return [...coordinates.flatMap(inAmount), ...ends];
}

function inExpression(expression: Expression): readonly string[] {
  switch (expression.kind) {
    case 'quantity':
      return [];
    case 'name':
      return [expression.name];
    case 'call':
      return expression.args.flatMap(inExpression);
    case 'negative':
      return inExpression(expression.of);
    case 'binary':
      return [expression.left, expression.right].flatMap(inExpression);
  }
}
