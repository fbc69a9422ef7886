// A sling bends tight over something.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const bendTight = check({
  slug: 'bend-tight',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const { any } = figures(system);
    const ratio = any('1', facts.ratio, 'down');
    const limit = facts.least === null ? `capacity falls to ${any('1', facts.falls, 'down')}` : `least ${any('1', facts.least)} allowed`;
    return `${named(facts.sling)} of ${any('m', facts.d)} bends over ${any('m', facts.D)} (${facts.over}): the bend is ${ratio} of its own diameter, ${limit}.`;
  },
});
