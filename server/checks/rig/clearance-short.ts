// Something comes too near: a sling to a part of its load, the rigging to the crane's tip.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { capital, named } from '../wording.ts';

export const clearanceShort = check({
  slug: 'clearance-short',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    if ('a' in facts)
      return `${capital(facts.a)} runs through ${named(facts.b)} as the load hangs; it has to go clear.`;
    const [needed, tip] = figures(system).atMost('m', facts.needed + facts.limit, facts.tip);
    const least =
      facts.limit > 0 ? `, of which ${figures(system).any('m', facts.limit, 'up')} is left over (${facts.rule})` : '';
    return `Headroom at ${named(facts.position)}: load and rigging reach up to ${needed}${least}; the tip stands at ${tip}.`;
  },
});
