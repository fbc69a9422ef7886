// A leg that does not run from a hook down to a pick.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { named, nearestOf, unstopped } from '../wording.ts';

export const pathBroken = check({
  slug: 'path-broken',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `This leg does not run from a hook down to a pick: ${unstopped(facts.where)}.${nearestOf(facts.nearest.map(named))}`,
  fixes: ({ at, facts }) => facts.nearest.map((name) => rewrite(at, named(name))),
});
