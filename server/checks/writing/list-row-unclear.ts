// A row of a bill of materials that cannot be used.
import { words } from '../../quantities/index.ts';
import { check } from '../check.ts';

export const listRowUnclear = check({
  slug: 'list-row-unclear',
  severity: 'error',
  effect: 'open',
  says: ({ facts: { file, line, reason, more } }) =>
    `Row ${line} of ${file}: ${reason}. ${more ? `With ${words(more, 'more row')} that cannot be read, what` : 'What'} the list adds up to stays not known until ${more ? 'all are' : 'that is'} put right.`,
});
