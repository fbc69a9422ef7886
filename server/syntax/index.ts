// Text to lines to tree, and how a plan is laid out. Must never know what a value means: the words of the language are handed in.
// Read in this order: types.ts, scan.ts, line.ts, tree.ts, layout.ts.
export { format, formatText, type RowEdit } from './layout.ts';
export { readLine } from './line.ts';
export { editRows, type Position, replaceRows, splitRows } from './rows.ts';
export { rangeOf } from './slips.ts';
export { type Slot, slotAt } from './slot.ts';
export { editTree, readTree } from './tree.ts';
export type * from './types.ts';
