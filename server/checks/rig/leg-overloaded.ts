// An item takes more than it may carry, or than a rule lets it.
import { g0 } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const legOverloaded = check({
  slug: 'leg-overloaded',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const { atMost } = figures(system);
    const [tension, capacity] = atMost('kg', facts.tension / g0, facts.capacity, facts.unit);
    const [used, limit] = atMost('1', facts.used, facts.limit);
    const free =
      facts.breakout > 0 ? `, ${figures(system).weight(facts.breakout / g0)} of it to break the load free,` : '';
    return `${named(facts.item)} in ${facts.leg} takes ${tension}${free} and may carry ${capacity}: ${used} of capacity, limit ${limit}.`;
  },
});
