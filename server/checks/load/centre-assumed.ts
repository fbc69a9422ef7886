// A centre taken as the middle of a size, since nobody states it.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const centreAssumed = check({
  slug: 'centre-assumed',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) =>
    `The centre of ${named(facts.item)} is taken as the middle of its ${facts.bound ? 'envelope' : 'size'}; nobody states it, and it may lie up to ${figures(system).any('m', facts.distance, 'up')} off. The legs are judged with the middle until ${facts.bound ? 'it is built from its shapes' : 'its `centre` is stated'}.`,
  // An envelope gives way to the shapes that are in it; only an item takes a centre of its own.
  fixes: ({ at, facts }, asked) =>
    facts.bound
      ? []
      : [addClause(asked, at, `centre (${here})`, 'Insert centre: where its weight sits, from the middle of its size')],
});
