// A designation that the table of its kind does not have.
import type { PlanFacts } from '../../plan/types.ts';
import { check } from '../check.ts';
import { addClause, here, rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import type { Asked } from '../types.ts';
import { nearestOf } from '../wording.ts';

type Near = PlanFacts['size-unknown']['nearest'][number];

/** What a length or an area of one that the tables have weighs, or one piece. */
function weighs(near: Near, system: Asked['system']): string {
  if ('massPerArea' in near) return figures(system).any('kg/m2', near.massPerArea);
  return 'mass' in near ? figures(system).weight(near.mass) : figures(system).perLength(near.massPerLength);
}

export const sizeUnknown = check({
  slug: 'size-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) =>
    `${facts.designation} is not in the table of ${facts.table}.${nearestOf(facts.nearest.map((near) => `${near.name} (${weighs(near, system)})`))}`,
  fixes: ({ at, facts }, asked) => [
    ...facts.nearest.map((near) =>
      rewrite(at, near.name, { title: `Write ${near.name}: ${weighs(near, asked.system)}` }),
    ),
    ...(byPiece.has(facts.table) || facts.nearest.some((near) => 'mass' in near)
      ? []
      : [addClause(asked, at, `unit weight ${here}`, 'Insert unit weight')]),
  ],
});

/** Tables of what is bought by the piece: a weight per length says nothing of it. */
const byPiece: ReadonlySet<string> = new Set(['flanges', 'bolts', 'butt-weld fittings']);
