// Only friction keeps the load as it hangs in its basket.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { list, named } from '../wording.ts';

export const frictionHolds = check({
  slug: 'friction-holds',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const slips = facts.over
      ? 'it would turn over'
      : `it hangs ${figures(system).any('rad', facts.angle, 'up')} otherwise`;
    return `${named(facts.load)} is held in ${list(facts.slings.map(named))} by friction only: where the sling runs, ${slips}.`;
  },
});
