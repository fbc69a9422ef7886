// A value outside what its clause can take.
import { check } from '../check.ts';
import { capital, unstopped } from '../wording.ts';

export const valueOutside = check({
  slug: 'value-outside',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${capital(facts.clause)} cannot be ${facts.value}: ${unstopped(facts.reason)}.`,
});
