// Hover on a material or a size of the built-in tables: its figure, its source, its range, and why this end is used.
import { material, wood } from '../../catalog/index.ts';
import type { BoundClause, Item } from '../../plan/types.ts';
import { pipeworkOf } from '../../results/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { clauseAt, itemAt, ownFile } from '../items.ts';
import type { Hover } from '../types.ts';
import { hoverOf } from './page.ts';
import { pipeworkNote } from './pipework.ts';
import { materialNote, pipeNote, sizedBy, sizedNote, tabledBy, woodNote } from './tabled.ts';

export function hoverTable(s: Snapshot, row: number, offset: number): Hover | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  const where = s.tree.rows[row];
  if (!item || !where) return null;
  const clause = clauseAt(item, { row: where }, offset);
  if (!clause?.value || offset < clause.valueAt.from) return null;
  if (looksUp(clause, item)) {
    const pipework = pipeworkNote(item, s.plan.units);
    if (pipework) return hoverOf(s.plan, clause.valueAt, pipework);
  }
  if (clause.value.kind !== 'text') return null;
  if (clause.row.names === 'material') {
    const timber = item.clauses.has('moisture') ? wood(clause.value.text) : undefined;
    if (timber) return hoverOf(s.plan, clause.valueAt, woodNote(timber, s.plan.units));
    const found = material(clause.value.text);
    return found ? hoverOf(s.plan, clause.valueAt, materialNote(found, s.plan.units)) : null;
  }
  if (!tabledBy.includes(clause.keyword)) return null;
  const sized = sizedBy(item);
  const said = sized ? sizedNote(sized, s.plan.units) : pipeNote(item, s.plan.units);
  return said && hoverOf(s.plan, clause.valueAt, said);
}

/** Whether a clause names a row of the tables of pipework: its own keyword, or one of those that tell the row. */
const looksUp = (clause: BoundClause, item: Item): boolean =>
  clause.keyword === pipeworkOf(item) ||
  (pipeworkOf(item) !== null && ['class', 'form', 'schedule'].includes(clause.keyword));
