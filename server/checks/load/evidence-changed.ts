// A paper is not the one that was seen when it was cited, or is gone.
import { isMark } from '../../plan/index.ts';
import { words } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { list } from '../wording.ts';

export const evidenceChanged = check({
  slug: 'evidence-changed',
  severity: 'error',
  effect: 'stands',
  says: ({ facts: { paper, on, seen, now } }) => {
    const figures = list(on.length > 3 ? [...on.slice(0, 2), words(on.length - 2, 'more figure')] : on);
    if (paper === null)
      return `Nothing says which file was seen for ${figures}, so \`seen\` is held against nothing. Name the file in \`from\`, by its path from this plan.`;
    const rests = `on which ${figures} ${on.length > 1 ? 'rest' : 'rests'},`;
    if (now === null)
      return `${paper}, ${rests} is not there or cannot be read. Find the paper that was seen, or cite the one that the plan rests on now.`;
    return !isMark(seen)
      ? `${paper}, ${rests} is cited with "${seen}" as \`seen\`, which is no mark of a file: that is twelve hexadecimal digits or more. Look at it again; it is ${now} now.`
      : `${paper}, ${rests} has changed since it was cited: seen as ${seen}, now ${now}. Look again.`;
  },
  fixes: ({ facts: { seenAt, now } }) =>
    now === null ? [] : [rewrite(seenAt, `"${now}"`, { title: `Confirm as seen: looked at again, it is ${now} now` })],
});
