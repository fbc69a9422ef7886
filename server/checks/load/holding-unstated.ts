// Nothing says whether something still holds the load.
import { check } from '../check.ts';
import { addUnder, here } from '../edits.ts';
import { named } from '../wording.ts';

export const holdingUnstated = check({
  slug: 'holding-unstated',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) =>
    `Nothing says what still holds ${named(facts.load)} before lift-off (bolts, grout, suction, ice, pipework), or that it is free. A stuck load can pull more than its weight.`,
  fixes: ({ at }, asked) => [
    addUnder(asked, at, [`held by "${here}", released ""`], 'Insert held by: what holds it, and how it is released'),
    addUnder(asked, at, [`free "${here}"`], 'Insert free: who saw that nothing holds it'),
  ],
});
