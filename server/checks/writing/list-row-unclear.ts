// A row of a bill of materials that cannot be used.
import { words } from '../../quantities/index.ts';
import { check } from '../check.ts';

export const listRowUnclear = check({
  slug: 'list-row-unclear',
  severity: 'error',
  effect: 'open',
  says: ({ facts: { file, line, reason, more } }) =>
    `Row ${line} of ${file}: ${reason}.${more ? ` So it is with ${words(more, 'more row')}.` : ''} What the list adds up to stays not known until that is put right.`,
});
