// A word that the language does not have in this place.
import { editDistance, words } from '../../quantities/index.ts';
import type { SyntaxFacts } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { list, nearestOf } from '../wording.ts';

export const wordUnknown = check({
  slug: 'word-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `"${facts.word}" cannot stand here.${nearestOf(facts.nearest)}${canStand(facts)}`,
  fixes: ({ at, facts }) =>
    facts.nearest.map((word) => rewrite(at, word, { preferred: word.toLowerCase() === facts.word.toLowerCase() })),
});

/** So many words are named where none is near. */
const most = 12;

/** All that can stand there, nearest first; of many the nearest, and how many more there are. */
function canStand({ word, all = [] }: SyntaxFacts['word-unknown']): string {
  if (all.length === 0) return '';
  const asked = word.toLowerCase();
  const ordered = [...all].sort((a, b) => editDistance(asked, a) - editDistance(asked, b));
  const shown = ordered.slice(0, most);
  const more = ordered.length - shown.length;
  return more > 0
    ? ` Here can stand ${shown.join(', ')} or one of ${words(more, 'other word')}.`
    : ` Here can stand ${list(shown, 'or')}.`;
}
