// A designation that the table of its kind does not have.
import { check } from '../check.ts';
import { addClause, here, rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import { nearestOf } from '../wording.ts';

export const sizeUnknown = check({
  slug: 'size-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) =>
    `${facts.designation} is not in the table of ${facts.table}.${nearestOf(facts.nearest.map(({ name, massPerLength }) => `${name} (${figures(system).perLength(massPerLength)})`))}`,
  fixes: ({ at, facts }, asked) => [
    ...facts.nearest.map(({ name, massPerLength }) =>
      rewrite(at, name, { title: `Write ${name}: ${figures(asked.system).perLength(massPerLength)}` }),
    ),
    addClause(asked, at, `unit weight ${here}`, 'Insert unit weight'),
  ],
});
