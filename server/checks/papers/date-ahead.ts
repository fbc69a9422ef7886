// Something is dated after the lift.
import { check } from '../check.ts';
import { capital } from '../wording.ts';

export const dateAhead = check({
  slug: 'date-ahead',
  severity: 'error',
  effect: 'stands',
  says: ({ facts: { what, date, lift } }) =>
    `${capital(what)} is dated ${date}, after the lift on ${lift}. Check both dates.`,
});
