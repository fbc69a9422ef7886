// An item is used in a temperature it is not for.
import { write } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { named } from '../wording.ts';

export const temperatureOutside = check({
  slug: 'temperature-outside',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) => {
    const degrees = (kelvin: number): string => write(kelvin, 'temperature', { system, round: 'near', digits: 3 });
    return `${named(facts.item)} is for ${degrees(facts.from)} to ${degrees(facts.to)} (${facts.source}); the plan states ${degrees(facts.temperature)}.`;
  },
});
