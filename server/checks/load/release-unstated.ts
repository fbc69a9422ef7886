// Something holds the load, and nothing says how it lets go.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named } from '../wording.ts';

export const releaseUnstated = check({
  slug: 'release-unstated',
  severity: 'error',
  effect: 'open',
  says: ({ facts: { by, load } }) =>
    `"${by}" holds ${named(load)}, and nothing says how it is let go (\`released\`) or what extra pull that may take (\`breakout\`). Until one of them is said, what each item takes at lift-off is not known.`,
  fixes: ({ at }, asked) => [
    addClause(asked, at, `released "${here}"`, 'Insert released: how and when it is let go'),
    addClause(asked, at, `breakout ${here}`, 'Insert breakout: the extra pull it may take'),
  ],
});
