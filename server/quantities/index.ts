// Quantities: dimensions, the exact table of units, physical values with tolerances, worked-out numbers, and their text.
// Must never know: lines, names, statements or what a figure is for; no clock, locale, random source or files.
// Read in this order: dimension, unit-table, units, quantity, derived, then decimal, display, write, formula, filled.
export * from './derived.ts';
export * from './dimension.ts';
export * from './filled.ts';
export * from './formula.ts';
export * from './nearest.ts';
export { numberInWords } from './number-words.ts';
export * from './quantity.ts';
export * from './units.ts';
export * from './write.ts';
