// Works out what an expression of the text comes to, and notes why where it cannot.
import { type Dimension, nameOf, none, same } from '../quantities/dimension.ts';
import {
  add,
  divide,
  multiply,
  negate,
  plain,
  type Quantity,
  quantity,
  withTolerance,
} from '../quantities/quantity.ts';
import { ambiguous, joined, nearestUnits, unitsFor } from '../quantities/units.ts';
import type { Amount, Expression, PointValue, QuantityPart, Row, Span, UnitText } from '../syntax/types.ts';
import type { Measure } from '../vocabulary/index.ts';
import { fold } from './fold.ts';
import { dimensionOf, fit, measureName } from './measure.ts';
import { trigonometry } from './trigonometry.ts';
import type { Cell, PlanFacts, PlanProblem } from './types.ts';

/** What a name of an expression stands for: a value, `open` (declared, but not known), or null (no such name). */
export type Lets = (key: string) => Quantity | 'open' | null;

/** Where problems of one statement go, with what is needed to word them. */
export interface Sheet {
  readonly row: Row;
  readonly lets: Lets;
  readonly nearest: (name: string) => readonly string[];
  readonly problems: PlanProblem[];
}

export function note<S extends keyof PlanFacts>(
  sheet: Sheet,
  slug: S,
  span: Span,
  facts: PlanFacts[S],
  related: PlanProblem['related'] = [],
): null {
  sheet.problems.push({ slug, at: { row: sheet.row, from: span.from, to: span.to }, related, facts } as PlanProblem);
  return null;
}

const text = (sheet: Sheet, span: Span): string => sheet.row.text.slice(span.from, span.to);

/** The value of an expression; null after a problem has been noted, or where a name it uses is open. */
export function evaluate(expression: Expression, sheet: Sheet, clause: string, measure: Measure): Quantity | null {
  switch (expression.kind) {
    case 'quantity':
      return quantityOf(expression, sheet, clause, measure);
    case 'name':
      return nameValue(expression, sheet);
    case 'negative': {
      const of = evaluate(expression.of, sheet, clause, measure);
      return of && negate(of);
    }
    case 'call':
      return call(expression, sheet, clause, measure);
    case 'binary': {
      const left = evaluate(expression.left, sheet, clause, measure);
      const right = evaluate(expression.right, sheet, clause, measure);
      if (!left || !right) return null;
      if (expression.op === '*') return multiply(left, right);
      if (expression.op === '/')
        return (
          divide(left, right) ??
          note(sheet, 'value-outside', expression.right.span, {
            clause,
            value: text(sheet, expression.span),
            reason: 'divided by zero',
          })
        );
      const sum = add(left, right, expression.op === '+' ? 1 : -1);
      return 'clash' in sum ? clash(sheet, expression.span, clause, sum.clash) : sum;
    }
  }
}

const clash = (sheet: Sheet, span: Span, clause: string, [a, b]: readonly [Dimension, Dimension]): null =>
  note(sheet, 'dimension-mismatch', span, {
    clause,
    wanted: nameOf(a),
    text: text(sheet, span),
    found: nameOf(b),
    sum: true,
  });

function quantityOf(
  expression: Extract<Expression, { kind: 'quantity' }>,
  sheet: Sheet,
  clause: string,
  measure: Measure,
): Quantity | null {
  let total: Quantity | null = null;
  for (const part of expression.parts) {
    const value = partValue(part, expression.negative ? -1 : 1, sheet, measure);
    if (!value) return null;
    const sum: Quantity | { readonly clash: readonly [Dimension, Dimension] } = total ? add(total, value) : value;
    if ('clash' in sum) return clash(sheet, expression.span, clause, sum.clash);
    total = sum;
  }
  return total;
}

/** The sign belongs to the number: -5 degC lies five degrees under zero, it is not 5 degC taken negative. */
function partValue(part: QuantityPart, sign: 1 | -1, sheet: Sheet, measure: Measure): Quantity | null {
  const written = sign * part.value;
  if (!part.unit) return plain(written);
  if (part.unit.text === '%') return { ...quantity(written / 100, none), percent: true };
  const unit = unitOf(part.unit, sheet, measure);
  return unit && quantity(written * unit.factor + unit.offset, unit.dimension);
}

/** A unit as written; null after a problem has been noted. */
function unitOf(
  unit: UnitText,
  sheet: Sheet,
  measure: Measure,
): { factor: number; offset: number; dimension: Dimension } | null {
  const found = joined(unit.text);
  if (found) return found;
  const meanings = ambiguous(unit.text);
  if (meanings.length) return note(sheet, 'unit-ambiguous', unit.span, { unit: unit.text, meanings });
  return note(sheet, 'unit-unknown', unit.span, {
    unit: unit.text,
    dimension: measureName(measure),
    nearest: nearestUnits(unit.text, fitting(measure)),
  });
}

/** Dimensions a unit of the clause may have, for nearest units; none: any. */
const fitting = (measure: Measure): Dimension[] | undefined => {
  const dimension = measure === 'any' ? null : dimensionOf(measure);
  return dimension && !same(dimension, none)
    ? unitsFor(measure).flatMap((text) => {
        const unit = joined(text);
        return unit ? [unit.dimension] : [];
      })
    : undefined;
};

function nameValue(expression: Extract<Expression, { kind: 'name' }>, sheet: Sheet): Quantity | null {
  const value = sheet.lets(fold(expression.name));
  if (value === null)
    return note(sheet, 'name-unknown', expression.span, {
      name: expression.name,
      nearest: sheet.nearest(expression.name),
      wanted: 'a name given with `let`',
      is: null,
      declare: `let ${expression.name} = `,
    });
  return value === 'open' ? null : value;
}

function call(
  expression: Extract<Expression, { kind: 'call' }>,
  sheet: Sheet,
  clause: string,
  measure: Measure,
): Quantity | null {
  const inner: Measure = ['sin', 'cos', 'tan'].includes(expression.fn)
    ? 'angle'
    : expression.fn === 'sqrt'
      ? 'any'
      : measure;
  const args = expression.args.map((arg) => evaluate(arg, sheet, clause, inner));
  const [first, ...rest] = args;
  if (!first || rest.some((arg) => !arg)) return null;
  const outside = (reason: string) =>
    note(sheet, 'value-outside', expression.span, { clause, value: text(sheet, expression.span), reason });
  if (expression.fn === 'min' || expression.fn === 'max') return extreme(expression, args as Quantity[], sheet, clause);
  if (rest.length) return outside(`${expression.fn} takes one value`);
  if (expression.fn === 'sqrt') {
    if (first.low < 0) return outside('there is no square root of less than zero');
    return {
      value: Math.sqrt(first.value),
      low: Math.sqrt(first.low),
      high: Math.sqrt(first.high),
      dimension: first.dimension.map((n) => n / 2) as unknown as Dimension,
      percent: false,
      bare: first.bare,
    };
  }
  const angle = fit(first, 'angle');
  if (!angle || angle === 'missing')
    return note(
      sheet,
      angle ? 'unit-missing' : 'dimension-mismatch',
      expression.span,
      angle
        ? { number: text(sheet, expression.span), clause: expression.fn, dimension: 'an angle', units: ['deg', 'rad'] }
        : ({
            clause: expression.fn,
            wanted: 'an angle',
            text: text(sheet, expression.span),
            found: nameOf(first.dimension),
            sum: false,
          } as never),
    );
  return trigonometry(expression.fn, angle) ?? outside('it grows without end there');
}

function extreme(
  expression: Extract<Expression, { kind: 'call' }>,
  args: readonly Quantity[],
  sheet: Sheet,
  clause: string,
): Quantity | null {
  const pick = expression.fn === 'min' ? Math.min : Math.max;
  const [first, ...rest] = args as [Quantity, ...Quantity[]];
  let found = first;
  for (const arg of rest) {
    const fits = add(found, arg);
    if ('clash' in fits) return clash(sheet, expression.span, clause, fits.clash);
    found = {
      ...fits,
      value: pick(found.value, arg.value),
      low: pick(found.low, arg.low),
      high: pick(found.high, arg.high),
    };
  }
  return found;
}

/** A quantity held against what its clause measures; null after a problem has been noted. */
export function measured(
  q: Quantity | null,
  span: Span,
  sheet: Sheet,
  clause: string,
  measure: Measure,
): Quantity | null {
  if (!q) return null;
  const fits = fit(q, measure);
  const written = text(sheet, span);
  if (fits === 'missing')
    return note(sheet, 'unit-missing', span, {
      number: written,
      clause,
      dimension: measureName(measure),
      units: measure === 'percent' ? ['%'] : unitsFor(measure),
    });
  if (!fits)
    return note(sheet, 'dimension-mismatch', span, {
      clause,
      wanted: measureName(measure),
      text: written,
      found: q.percent ? 'a share in %' : nameOf(q.dimension),
      sum: false,
    });
  return fits;
}

/** An amount with its tolerance: a quantity, `unknown`, `none`, or null where it could not be worked out. `closing` is a unit that holds for bare numbers. */
export function amount(
  written: Amount,
  sheet: Sheet,
  clause: string,
  measure: Measure,
  closing: UnitText | null = null,
): Cell {
  if (written.kind !== 'sum') return written.kind;
  const value = closed(
    evaluate(written.value, sheet, clause, measure),
    written.value.span,
    closing,
    sheet,
    clause,
    measure,
  );
  if (!written.tolerance) return measured(value, written.span, sheet, clause, measure);
  const half = closed(
    evaluate(written.tolerance, sheet, clause, measure),
    written.tolerance.span,
    closing,
    sheet,
    clause,
    measure,
  );
  if (!value || !half) return null;
  const ranged = withTolerance(value, differenceOf(half, written.tolerance));
  if ('clash' in ranged)
    return half.bare
      ? note(sheet, 'unit-missing', written.tolerance.span, {
          number: text(sheet, written.tolerance.span),
          clause,
          dimension: measureName(measure),
          units: unitsFor(measure),
        })
      : clash(sheet, written.span, clause, ranged.clash);
  return measured(ranged, written.span, sheet, clause, measure);
}

/** A tolerance is a difference: ± 5 degC is five degrees, wherever their zero lies. */
function differenceOf(half: Quantity, written: Expression): Quantity {
  const zero = written.kind === 'quantity' ? (joined(written.parts[0]?.unit?.text ?? '')?.offset ?? 0) : 0;
  return zero === 0 ? half : { ...half, value: half.value - zero, low: half.low - zero, high: half.high - zero };
}

/** A bare number with the closing unit of its bracket or size; one that has a unit already keeps it only where no closing unit follows. */
function closed(
  q: Quantity | null,
  span: Span,
  closing: UnitText | null,
  sheet: Sheet,
  clause: string,
  measure: Measure,
): Quantity | null {
  if (!q || !closing || q.percent) return q;
  const unit = unitOf(closing, sheet, measure);
  if (!unit) return null;
  if (!q.bare)
    return note(sheet, 'dimension-mismatch', span, {
      clause,
      wanted: 'a number without unit, since one closes the bracket',
      text: text(sheet, span),
      found: nameOf(q.dimension),
      sum: false,
    });
  return multiply(q, quantity(unit.factor, unit.dimension));
}

/** The sides of a size, all of the measure; a closing unit on the last one holds for bare ones before it. Null where one does not fit. */
export function size(
  sides: readonly Expression[],
  tolerance: Expression | null,
  sheet: Sheet,
  clause: string,
  measure: Measure,
): Quantity[] | null {
  const values = sides.map((side) => evaluate(side, sheet, clause, measure));
  const last = sides.at(-1);
  const closing = last?.kind === 'quantity' && last.parts.length === 1 ? (last.parts[0]?.unit ?? null) : null;
  const shared = closing !== null && values.slice(0, -1).every((value) => value?.bare);
  const [first] = sides;
  // One unit behind the last side holds for all: one is missing, not as many as there are sides.
  if (first && last && sides.length > 1 && values.every((value) => value?.bare && fit(value, measure) === 'missing'))
    return note(sheet, 'unit-missing', last.span, {
      number: text(sheet, { from: first.span.from, to: last.span.to }),
      clause,
      dimension: measureName(measure),
      units: unitsFor(measure),
    });
  const fitted = values.map((value, i) =>
    measured(
      shared && i < values.length - 1
        ? closed(value, (sides[i] as Expression).span, closing, sheet, clause, measure)
        : value,
      (sides[i] as Expression).span,
      sheet,
      clause,
      measure,
    ),
  );
  if (fitted.some((value) => !value)) return null;
  if (!tolerance) return fitted as Quantity[];
  const half = evaluate(tolerance, sheet, clause, measure);
  if (!half) return null;
  const ranged = fitted.map((value) => withTolerance(value as Quantity, half));
  return ranged.some((value) => 'clash' in value)
    ? note(sheet, 'unit-missing', tolerance.span, {
        number: text(sheet, tolerance.span),
        clause,
        dimension: measureName(measure),
        units: unitsFor(measure),
      })
    : (ranged as Quantity[]);
}

/** Three coordinates with the tolerance of each axis; null where it has not three. */
export function point(written: PointValue, sheet: Sheet, clause: string): readonly [Cell, Cell, Cell] | null {
  if (written.coordinates.length !== 3)
    return note(sheet, 'value-outside', written.span, {
      clause,
      value: text(sheet, written.span),
      reason: `a place takes three coordinates, here are ${written.coordinates.length}`,
    });
  const cells = written.coordinates.map((coordinate) => amount(coordinate, sheet, clause, 'length', written.unit));
  if (!written.tolerance) return cells as [Cell, Cell, Cell];
  const halves = tolerances(written.tolerance, sheet, clause);
  return cells.map((cell, axis) => {
    const half = halves?.[axis];
    if (!cell || typeof cell === 'string') return cell;
    if (!half || typeof half === 'string') return null;
    const ranged = withTolerance(cell, half);
    return 'clash' in ranged ? null : ranged;
  }) as unknown as [Cell, Cell, Cell];
}

function tolerances(written: Expression | PointValue, sheet: Sheet, clause: string): readonly Cell[] | null {
  if (written.kind === 'point') return point(written, sheet, clause);
  const half = measured(evaluate(written, sheet, clause, 'length'), written.span, sheet, clause, 'length');
  return [half, half, half];
}
