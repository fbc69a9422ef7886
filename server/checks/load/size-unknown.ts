// A designation that the table of its kind does not have.
import type { PlanFacts } from '../../plan/types.ts';
import { check } from '../check.ts';
import { addClause, here, rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import type { Asked } from '../types.ts';
import { nearestOf } from '../wording.ts';

export const sizeUnknown = check({
  slug: 'size-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) =>
    `${facts.designation} is not in the table of ${facts.table}.${nearestOf(facts.nearest.map((near) => `${near.name} (${weightOf(near, system)})`))}`,
  fixes: ({ at, facts }, asked) => [
    ...facts.nearest.map((near) =>
      rewrite(at, near.name, { title: `Write ${near.name}: ${weightOf(near, asked.system)}` }),
    ),
    ...(byPiece.has(facts.table) || facts.nearest.some(({ mass }) => mass !== undefined)
      ? []
      : [addClause(asked, at, `unit weight ${here}`, 'Insert unit weight')]),
  ],
});

/** Tables of what is bought by the piece: a weight per length says nothing of it. */
const byPiece: ReadonlySet<string> = new Set(['flanges', 'bolts', 'butt-weld fittings']);

type Near = PlanFacts['size-unknown']['nearest'][number];

/** By length, or of one piece. */
const weightOf = ({ massPerLength, mass }: Near, system: Asked['system']): string =>
  massPerLength !== undefined ? figures(system).perLength(massPerLength) : figures(system).weight(mass ?? Number.NaN);
