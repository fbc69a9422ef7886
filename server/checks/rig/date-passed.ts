// An inspection or permit that has run out on the day of the lift.
import { check } from '../check.ts';
import { capital, named } from '../wording.ts';

export const datePassed = check({
  slug: 'date-passed',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }) => {
    const what = `${capital(facts.what)} of ${named(facts.item)}`;
    return facts.lift === null
      ? `${what} holds until ${facts.until}; the plan has no date, so this cannot be judged.`
      : `${what} ran out on ${facts.until}; the lift is on ${facts.lift}.`;
  },
});
