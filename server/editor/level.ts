// "Level the load": what would hang it level, offered on its line and on its legs, also where it hangs within the limit.
import { levelFixes } from '../checks/levelling.ts';
import type { Snapshot } from '../workspace/types.ts';
import type { QuickFix } from './types.ts';

/** Tilts under this are not worth another sling: half a degree. Chosen here; no source. */
const hardlyTilted = Math.PI / 360;

/** Ways to level the loads on those rows, or whose legs stand on them; nothing where a finding on those rows offers them already. */
export function level(s: Snapshot, firstRow: number, lastRow: number): readonly QuickFix[] {
  const { results } = s;
  const inRows = (row: Parameters<Snapshot['tree']['rowNumber']>[0]): boolean => {
    const number = s.tree.rowNumber(row);
    return number >= firstRow && number <= lastRow;
  };
  const offered = s.own.some((finding) => finding.slug === 'hang-tilted' && inRows(finding.at.row));
  if (offered) return [];
  return results.hanging.loads.flatMap(({ thing, tilt }) => {
    const legs = results.legs.filter((leg) => leg.steps.some((step) => step.thing.load === thing));
    const here = inRows(thing.item.at.row) || legs.some((leg) => inRows(leg.item.at.row));
    if (!here || tilt < hardlyTilted) return [];
    return levelFixes({ results, system: results.plan.units }, thing).map(({ title, edits, cursor }) => ({
      title,
      slug: 'hang-tilted',
      preferred: false,
      finding: thing.item.nameAt,
      edits,
      cursor,
    }));
  });
}
