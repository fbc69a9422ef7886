// A leg that carries nothing.
import { check } from '../check.ts';
import { list, named } from '../wording.ts';

export const legSlack = check({
  slug: 'leg-slack',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) => `${named(facts.leg)} hangs slack; ${list(facts.legs.map(named))} ${facts.legs.length === 1 ? 'carries' : 'carry'} the load.`,
});
