// A piece of gear that carries load but has no capacity.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { written } from '../wording.ts';

export const gearCapacityMissing = check({
  slug: 'gear-capacity-missing',
  severity: 'error',
  effect: 'open',
  says: ({ at }) => `${written(at)} carries load but has no capacity; nothing can be said about whether it holds.`,
  fixes: ({ at }, asked) => [addClause(asked, at, `capacity ${here}`, 'Insert capacity: from its tag or body')],
});
