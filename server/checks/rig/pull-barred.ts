// An item is pulled further off its line than its kind may be.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const pullBarred = check({
  slug: 'pull-barred',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const [angle, limit] = figures(system).atMost('rad', facts.angle, facts.limit);
    return `${named(facts.item)} is pulled ${angle} off its line; more than ${limit} is not allowed for ${facts.kind} (${facts.source}).`;
  },
});
