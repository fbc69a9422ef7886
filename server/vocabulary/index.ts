// Holds the two tables of the language (statements with clauses, subjects with results) and its lists of words.
// Must never know text, places, numbers of a plan, or what a row is used for.
// Read types.ts first, then load.ts and gear.ts, then results.ts; this file joins them.
import { crane } from './crane.ts';
import { gear } from './gear.ts';
import { load } from './load.ts';
import { everywhere, papers } from './papers.ts';
import { rig } from './rig.ts';
import { type ShapeName, shapes } from './shapes.ts';
import { site } from './site.ts';
import type { ClauseRow, ShapeRow, StatementRow } from './types.ts';

export { builtInContingency, type Evidence, evidence, evidenceHelp, readings, triggers } from './evidence.ts';
export { type GearKind, gearKinds } from './gear.ts';
export { everywhere } from './papers.ts';
export { results, resultsOf } from './results.ts';
export { type ShapeName, shapeNames, shapes, welds } from './shapes.ts';
export type { ClauseRow, Kind, Measure, ResultRow, ShapeRow, StatementRow, Takes } from './types.ts';

/** Material of a shape. */
export const material = {
  of: {
    takes: 'designation',
    names: 'material',
    help: 'What it is made of, by its plain trade name.',
    example: 'of carbon steel',
  },
  density: {
    takes: 'amount',
    measures: 'density',
    least: 10,
    most: 25_000,
    help: 'Instead of a material.',
    example: 'density 7,850 kg/m3',
  },
  moisture: {
    takes: 'amount',
    measures: 'percent',
    least: 0,
    most: 6,
    help: 'Water in wood, as a share of the weight of the dry wood; with it `of` takes a species, and `density` is that of the dry wood by its green volume.',
    example: 'moisture 20 %',
  },
  reinforcement: {
    takes: 'amount',
    measures: 'any',
    least: 0,
    help: 'Steel in the concrete: a share of the volume, counted at 7,850 kg/m3 in the place of the material; or a weight per volume, or the weight in all of it, both on top of the material.',
    example: 'reinforcement 2 %',
  },
} as const satisfies Readonly<Record<string, ClauseRow>>;

/** The clauses that make the shape of a part or a cut-out: each shape's own keyword, its sizes, and the material. */
const shapeClauses = (under: 'part' | 'less'): Record<string, ClauseRow> => {
  const rows: Record<string, ClauseRow> = { ...material };
  for (const [name, shape] of Object.entries(shapes) as [ShapeName, ShapeRow][]) {
    if (!shape.under.includes(under)) continue;
    rows[name] = { ...merge(undefined, shape.form), help: shape.help, example: shape.example };
    for (const [key, row] of Object.entries(shape.clauses)) rows[key] = merge(rows[key], row);
  }
  return rows;
};

/** One clause keyword of several shapes: needs and exact sides are the shape's business, the way it is written and the widest bounds are shared. */
function merge(known: ClauseRow | undefined, row: ClauseRow): ClauseRow {
  const { need: _need, ...rest } = row;
  if (!known) return rest;
  const takes = known.takes === row.takes ? row.takes : 'size or amount';
  const { sides: _sides, words: _words, least: _least, above: _above, most: _most, ...shared } = rest;
  // What one word measures in several shapes is the shape's business where it differs: a unit weight by length or by area.
  const measures = known.measures === row.measures ? row.measures : 'any';
  const words = known.words && row.words && [...new Set([...known.words, ...row.words])];
  return {
    ...shared,
    takes,
    ...(measures && { measures }),
    ...(words && { words }),
    ...widest(known, row),
    help: known.help,
  };
}

/** Bounds that no shape's figure is outside of: the lower of the least ones, the higher of the most. */
function widest(a: ClauseRow, b: ClauseRow): Pick<ClauseRow, 'least' | 'above' | 'most'> {
  const lows = [a, b].map(({ least, above }) => least ?? above);
  const low = lows.includes(undefined) ? undefined : Math.min(...(lows as number[]));
  const open = [a, b].every(({ least, above }) => (least ?? above) !== low || least === undefined);
  const most = a.most === undefined || b.most === undefined ? undefined : Math.max(a.most, b.most);
  return { ...(low !== undefined && { [open ? 'above' : 'least']: low }), ...(most !== undefined && { most }) };
}

/** Every statement of the language by its keyword. */
export const statements: Readonly<Record<string, StatementRow>> = {
  ...papers,
  ...load,
  part: { ...load.part, clauses: { ...load.part.clauses, ...shapeClauses('part') } },
  less: { ...load.less, clauses: { ...load.less.clauses, ...shapeClauses('less') } },
  ...gear,
  ...rig,
  ...crane,
  ...site,
};
export type StatementName =
  | keyof typeof papers
  | keyof typeof load
  | keyof typeof gear
  | keyof typeof rig
  | keyof typeof crane
  | keyof typeof site;

/** The clauses that may stand under a statement, those allowed everywhere among them. */
export function clausesOf(block: string): Readonly<Record<string, ClauseRow>> {
  let rows = clauseRows.get(block);
  if (!rows) {
    const own: Readonly<Record<string, ClauseRow>> =
      block === 'file'
        ? { note: everywhere.note, assumption: everywhere.assumption }
        : { ...everywhere, ...statements[block]?.clauses };
    rows = own;
    clauseRows.set(block, rows);
  }
  return rows;
}
const clauseRows = new Map<string, Readonly<Record<string, ClauseRow>>>();

/** The statements that may stand under a block (`file` is the top level). */
export function statementsUnder(block: string): Readonly<Record<string, StatementRow>> {
  let rows = statementRows.get(block);
  if (!rows) {
    rows = Object.fromEntries(Object.entries(statements).filter(([, row]) => row.under.includes(block)));
    statementRows.set(block, rows);
  }
  return rows;
}
const statementRows = new Map<string, Readonly<Record<string, StatementRow>>>();
