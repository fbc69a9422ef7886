// A character that most editors do not show.
import { check } from '../check.ts';
import { remove } from '../edits.ts';
import { capital } from '../wording.ts';

export const hiddenCharacter = check({
  slug: 'hidden-character',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${capital(facts.character)} stands here and cannot be seen in most editors.`,
  fixes: ({ at, facts }) => [remove(at, `Remove ${facts.character}`, true)],
});
