// Something read here that this version cannot judge.
import { check } from '../check.ts';
import { capital } from '../wording.ts';

export const notJudged = check({
  slug: 'not-judged',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${capital(facts.thing)} changes ${facts.result}, and this version does not work that out. ${capital(facts.result)} stays open; have a qualified person judge it.`,
});
