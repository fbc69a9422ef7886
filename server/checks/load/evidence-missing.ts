// A number that rests on nothing named.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named } from '../wording.ts';

export const evidenceMissing = check({
  slug: 'evidence-missing',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) =>
    `${facts.number.startsWith('This ') ? facts.number : `The weight of ${named(facts.number)}`} rests on nothing named. Say \`by\` what, or \`from\` which document.`,
  fixes: ({ at }, asked) => [
    addClause(asked, at, `by ${here}`, 'Insert by: what it rests on'),
    addClause(asked, at, `from "${here}"`, 'Insert from: the document'),
  ],
});
