// The weight that counts is more than the placed parts add up to.
import { check } from '../check.ts';
import { addUnder, here } from '../edits.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const weightUnplaced = check({
  slug: 'weight-unplaced',
  severity: 'error',
  effect: 'opens centre',
  says: ({ facts }, { system }) => {
    const { weight } = figures(system);
    return `${named(facts.load)} is taken as ${weight(facts.governing)}, ${weight(facts.difference)} more than its parts add up to. Where that weight sits is not known, so the centre of gravity stays open unless stated.`;
  },
  fixes: ({ at }, asked) => [
    addUnder(asked, at, [`cog (${here}), by `], 'Insert cog: the centre, with its evidence'),
    addUnder(asked, at, [`part "${here}": item `], 'Insert part: what the parts leave out'),
  ],
});
