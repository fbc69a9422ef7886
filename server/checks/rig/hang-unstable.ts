// The load would turn over under its hook.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const hangUnstable = check({
  slug: 'hang-unstable',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) =>
    `${named(facts.load)} would turn over: its centre of gravity is ${figures(system).any('m', facts.height, 'up')} above the level up to which this rig stays upright.`,
});
