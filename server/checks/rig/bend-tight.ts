// A sling bends tight over something.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const bendTight = check({
  slug: 'bend-tight',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const { any, times } = figures(system);
    const limit = facts.least === null ? `capacity falls to ${any('1', facts.falls, 'down')}` : 'less than its own diameter is not allowed';
    return `${named(facts.sling)} of ${any('m', facts.d)} bends over ${any('m', facts.D)} (${named(facts.over)}): ${times(facts.ratio)} its own diameter, ${limit}.`;
  },
});
