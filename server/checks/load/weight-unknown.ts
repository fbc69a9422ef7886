// A load without a weight.
import { check } from '../check.ts';
import { addUnder, here } from '../edits.ts';
import { named } from '../wording.ts';

export const weightUnknown = check({
  slug: 'weight-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${named(facts.load)} has no weight. State it with its evidence, or build it from parts.`,
  fixes: ({ at }, asked) => [
    addUnder(asked, at, [`stated ${here}, by `], 'Insert stated: a weight with its evidence'),
    addUnder(asked, at, [`part "${here}": `], 'Insert part: build it up'),
  ],
});
