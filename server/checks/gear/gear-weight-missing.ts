// A piece of gear without a weight.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named, written } from '../wording.ts';

export const gearWeightMissing = check({
  slug: 'gear-weight-missing',
  severity: 'error',
  effect: 'open',
  says: ({ at }) => `${written(at)} has no weight, so the gross load stays open.`,
  fixes: ({ at, facts }, asked) => [
    addClause(asked, at, `weight ${here}`, 'Insert weight'),
    ...facts.nearest.map((name) => addClause(asked, at, `like ${named(name)}`, `Take the figures of ${named(name)}`)),
  ],
});
