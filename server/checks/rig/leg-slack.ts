// A leg that carries nothing.
import { check } from '../check.ts';
import { capital, legsTo } from '../wording.ts';

export const legSlack = check({
  slug: 'leg-slack',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) =>
    `${capital(legsTo([facts.leg]))} hangs slack; ${legsTo(facts.legs)} ${facts.legs.length === 1 ? 'carries' : 'carry'} the load.`,
});
