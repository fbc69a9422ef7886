// Values that draw, held against their rows: corners of outlines and lines, turns, inclines and circles.
import type { Quantity } from '../quantities/quantity.ts';
import type { Expression, Value } from '../syntax/types.ts';
import type { ClauseRow } from '../vocabulary/index.ts';
import { amount, evaluate, measured, note, type Sheet } from './evaluate.ts';
import type { BoundValue } from './types.ts';

/** Corners of an outline, two coordinates each, or of a line, three. */
function bindCorners(
  value: Extract<Value, { kind: 'points' }>,
  row: ClauseRow,
  sheet: Sheet,
  clause: string,
): BoundValue | null {
  const due = row.takes === 'line' ? 3 : 2;
  const cells = value.points.map((corner) => corner.map((cell) => amount(cell, sheet, clause, 'length', value.unit)));
  if (cells.some((corner) => corner.length !== due))
    return note(sheet, 'value-outside', value.span, {
      clause,
      value: sheet.row.text.slice(value.span.from, value.span.to),
      reason: `a corner takes ${due === 3 ? 'three' : 'two'} coordinates`,
    });
  const numbers = cells.map((corner) => corner.map((cell) => (cell && typeof cell !== 'string' ? cell.value : null)));
  if (numbers.some((corner) => corner.includes(null))) return null;
  if (due === 2) return { kind: 'points', points: numbers as [number, number][] };
  const slack = value.tolerance && toleranceOf(value.tolerance, sheet, clause);
  if (value.tolerance && !slack) return null;
  return { kind: 'line', corners: numbers as [number, number, number][], slack: slack?.value ?? 0 };
}

/** A tolerance of a length on its own. */
const toleranceOf = (tolerance: Expression, sheet: Sheet, clause: string): Quantity | null =>
  measured(evaluate(tolerance, sheet, clause, 'length'), tolerance.span, sheet, clause, 'length');

/** Values that draw: corners, turns, inclines and circles. */
export function bindDrawn(
  value: Extract<Value, { kind: 'points' | 'turn' | 'tilt' | 'circle' }>,
  row: ClauseRow,
  sheet: Sheet,
  clause: string,
): BoundValue | null {
  switch (value.kind) {
    case 'points':
      return bindCorners(value, row, sheet, clause);
    case 'turn': {
      const angle = measured(evaluate(value.angle, sheet, clause, 'angle'), value.angle.span, sheet, clause, 'angle');
      return angle && { kind: 'turn', angle, axis: value.axis };
    }
    case 'tilt': {
      const from = measured(evaluate(value.angle, sheet, clause, 'angle'), value.angle.span, sheet, clause, 'angle');
      const to =
        value.to && measured(evaluate(value.to, sheet, clause, 'angle'), value.to.span, sheet, clause, 'angle');
      return from && (!value.to || to) ? { kind: 'tilt', axis: value.axis, from, to } : null;
    }
    case 'circle': {
      const diameter = measured(
        evaluate(value.diameter, sheet, clause, 'length'),
        value.diameter.span,
        sheet,
        clause,
        'length',
      );
      return diameter && { kind: 'circle', diameter, axis: value.axis };
    }
  }
}
