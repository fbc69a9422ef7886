// A number with three digits behind its point: perhaps the point was meant to group thousands.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { undoubted, written } from '../wording.ts';

export const numberDoubtful = check({
  slug: 'number-doubtful',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) => `${facts.text} is read as ${facts.spoken}. If the point groups thousands, write ${facts.other}.`,
  fixes: ({ at, facts }) => [
    rewrite(at, facts.other),
    rewrite(at, undoubted(written(at)), { title: `Keep it as ${facts.spoken}` }),
  ],
});
