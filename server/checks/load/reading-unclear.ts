// A reading or shipping paper that leaves something unsaid: it may govern upwards only.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';

export const readingUnclear = check({
  slug: 'reading-unclear',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) =>
    `This ${facts.reading} does not say ${facts.missing.join(', ')}. It may govern upwards, never downwards.`,
  fixes: ({ at }, asked) => [addClause(asked, at, `state "${here}"`, 'Insert state: what was in it and on it')],
});
