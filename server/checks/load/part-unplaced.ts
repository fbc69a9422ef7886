// A part that has weight but no place.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named } from '../wording.ts';

export const partUnplaced = check({
  slug: 'part-unplaced',
  severity: 'warning',
  effect: 'opens centre',
  says: ({ facts }) =>
    facts.copies > 1
      ? `Nothing says how the ${facts.copies} copies of ${named(facts.part)} stand, so the centre of gravity and every leg stay open.`
      : `${named(facts.part)} has weight but no place, so the centre of gravity and every leg stay open.`,
  fixes: ({ at, facts }, asked) =>
    /^\s*list\b/.test(at.row.text) // the place of a list's row belongs in its file
      ? []
      : facts.copies > 1
        ? [
            addClause(asked, at, `every (${here})`, 'Insert every: the step from one copy to the next'),
            addClause(asked, at, `circle ${here} about z`, 'Insert circle: copies spread round a circle'),
          ]
        : [
            addClause(asked, at, `at (${here})`, 'Insert at: where its datum point stands'),
            addClause(asked, at, `on ${here}`, 'Insert on: what it stands on'),
          ],
});
