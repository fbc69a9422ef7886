// From some place on, a line cannot be read.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { capital } from '../wording.ts';

export const lineUnreadable = check({
  slug: 'line-unreadable',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `Cannot be read from "${facts.text}" on; here can stand ${facts.expected}. ${capital(facts.parent)} stays open until it is put right.`,
  fixes: ({ at, facts }) => facts.readings.map((reading) => rewrite(at, reading)),
});
