// A value that measures something else than its clause takes, or two unlike values added.
import { check } from '../check.ts';
import { capital } from '../wording.ts';

export const dimensionMismatch = check({
  slug: 'dimension-mismatch',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    facts.sum
      ? `"${facts.text}" cannot be worked out: one is ${facts.wanted}, the other ${facts.found}.`
      : `${capital(facts.clause)} takes ${facts.wanted}; ${facts.text} is ${facts.found}.`,
});
