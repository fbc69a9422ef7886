// A file named by `use` that cannot be read.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { unstopped } from '../wording.ts';

export const fileMissing = check({
  slug: 'file-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${facts.path} cannot be read: ${unstopped(facts.reason)}. What is taken from it stays open.`,
  fixes: ({ at, facts }) => facts.elsewhere.map((path) => rewrite(at, `"${path}"`)),
});
