// Something holds the load, and nothing says how it lets go.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named } from '../wording.ts';

export const releaseUnstated = check({
  slug: 'release-unstated',
  severity: 'error',
  effect: 'open',
  says: ({ facts: { by, load } }) =>
    `“${by}” holds ${named(load)}, and nothing says how it is let go, or how much more than its weight the hook may have to pull. What each item takes while it is broken free is not known.`,
  fixes: ({ at }, asked) => [
    addClause(asked, at, `released "${here}"`, 'Insert released: how and when it is let go'),
    addClause(asked, at, `breakout ${here}`, 'Insert breakout: the extra pull it may take'),
  ],
});
