// A # straight after a number or word: a comment, or pounds.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';

export const hashAfterNumber = check({
  slug: 'hash-after-number',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `From # on this is a comment, so "${facts.rest}" is not read. If # means pounds, write lb.`,
  fixes: ({ at }) => {
    const hash = { row: at.row, from: at.from, to: at.from + 1 };
    const afterNumber = /\d$/.test(at.row.text.slice(0, at.from));
    const comment = rewrite(hash, ' #', { title: 'Write a space before #: a comment' });
    return afterNumber ? [rewrite(hash, ' lb', { title: 'Write lb for #' }), comment] : [comment];
  },
});
