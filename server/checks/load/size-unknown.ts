// A designation that the table of its kind does not have.
import { check } from '../check.ts';
import { addClause, here, rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import { nearestOf } from '../wording.ts';

type Near = { readonly name: string } & ({ readonly massPerLength: number } | { readonly massPerArea: number });
type System = Parameters<typeof figures>[0];

/** What a length, or an area, of one that the tables have weighs. */
const weighs = (near: Near, system: System): string =>
  'massPerArea' in near
    ? figures(system).any('kg/m2', near.massPerArea)
    : figures(system).perLength(near.massPerLength);

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
    addClause(asked, at, `unit weight ${here}`, 'Insert unit weight'),
  ],
});
