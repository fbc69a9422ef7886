// The clauses that many shapes share, each written once.
import type { ClauseRow } from '../types.ts';

export const length = (help: string, need?: 'always'): ClauseRow => ({
  takes: 'amount',
  measures: 'length',
  above: 0,
  help,
  ...(need && { need }),
});
export const must = (help: string): ClauseRow => length(help, 'always');
export const nothing: ClauseRow = { takes: 'nothing', help: '' };
export const sides3 = (help: string): ClauseRow => ({
  takes: 'size',
  sides: 3,
  measures: 'length',
  above: 0,
  need: 'always',
  help,
});
/** A diameter, or two sides where the shape has corners; which, the shape itself says. */
export const sidesOr = (help: string): ClauseRow => ({
  takes: 'size or amount',
  measures: 'length',
  above: 0,
  need: 'always',
  help,
});
