// The load hangs further out of level than the limit allows.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const hangTilted = check({
  slug: 'hang-tilted',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const [angle, limit] = figures(system).atMost('rad', facts.angle, facts.limit);
    return `${named(facts.load)} hangs ${angle} out of level, ${facts.end} low; limit ${limit} (${facts.rule}).`;
  },
});
