// A `let` name that is already a unit, a keyword or a function.
import { check } from '../check.ts';
import { freeName, rewrite } from '../edits.ts';

export const nameReserved = check({
  slug: 'name-reserved',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `"${facts.name}" is already a ${facts.as}; choose another name.`,
  fixes: ({ at, facts }, asked) => [rewrite(at, freeName(`${facts.name}-1`, asked))],
});
