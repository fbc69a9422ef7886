// The load would turn over under its hook.
import type { ResultFacts } from '../../results/types.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const hangUnstable = check({
  slug: 'hang-unstable',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) =>
    `${named(facts.load)} would turn over: its centre of gravity is ${figures(system).any('m', Math.abs(facts.height), 'up')} ${where(facts)}.`,
});

const where = ({ height, above }: ResultFacts['hang-unstable']): string => {
  if (above === 'limit') return 'above the level up to which this rig stays upright';
  return height < 0
    ? 'below the middle of its picks, and even so this rig does not keep it upright'
    : 'above the middle of its picks, higher than this rig keeps upright';
};
