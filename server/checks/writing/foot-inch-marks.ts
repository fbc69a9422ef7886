// ' and " after a number, meant as feet and inches.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';

export const footInchMarks = check({
  slug: 'foot-inch-marks',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `' and " are not read as feet and inches here. Write ${facts.rewrite}.`,
  fixes: ({ at, facts }) => [rewrite(at, facts.rewrite, { preferred: true })],
});
