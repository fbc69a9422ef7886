// A word that the language does not have in this place.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { nearestOf } from '../wording.ts';

export const wordUnknown = check({
  slug: 'word-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `"${facts.word}" cannot stand here.${nearestOf(facts.nearest)}`,
  fixes: ({ at, facts }) =>
    facts.nearest.map((word) => rewrite(at, word, { preferred: word.toLowerCase() === facts.word.toLowerCase() })),
});
