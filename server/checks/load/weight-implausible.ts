// A weight that does not go with the size it is said to fill.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const weightImplausible = check({
  slug: 'weight-implausible',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const { weight, density } = figures(system);
    return `${named(facts.item)}: ${weight(facts.weight)} in ${facts.size} is ${density(facts.density)}, ${facts.like}. Check units and sizes.`;
  },
});
