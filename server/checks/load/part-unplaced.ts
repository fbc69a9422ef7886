// A part that has weight but no place.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named } from '../wording.ts';

export const partUnplaced = check({
  slug: 'part-unplaced',
  severity: 'warning',
  effect: 'opens centre',
  says: ({ facts }) =>
    `${named(facts.part)} has weight but no place, so the centre of gravity and every leg stay open.`,
  fixes: ({ at }, asked) => [
    addClause(asked, at, `at (${here})`, 'Insert at: where its datum point stands'),
    addClause(asked, at, `on ${here}`, 'Insert on: what it stands on'),
  ],
});
