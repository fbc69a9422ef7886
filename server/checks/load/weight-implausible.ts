// A weight that does not go with the size it is said to fill, or a drawing far too small or large in the unit stated.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const weightImplausible = check({
  slug: 'weight-implausible',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const { any, weight, density } = figures(system);
    if ('longest' in facts)
      return `${named(facts.item)}: read in ${facts.unit}, its drawing is ${any('m', facts.longest)} over its longest side and weighs ${weight(facts.weight)}. Check the unit the drawing was made in.`;
    return `${named(facts.item)}: ${weight(facts.weight)} in ${facts.size} is ${density(facts.density)}, ${facts.like}. Check units and sizes.`;
  },
});
