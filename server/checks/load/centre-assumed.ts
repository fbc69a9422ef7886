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
    `The centre of ${named(facts.item)} is taken as the middle of its size; nobody states it, and it may lie up to ${figures(system).any('m', facts.distance, 'up')} off. The legs are judged with the middle.`,
  fixes: ({ at }, asked) => [
    addClause(asked, at, `centre (${here})`, 'Insert centre: where its weight sits, from the middle of its size'),
  ],
});
