// A cut-out that would take away material that is not there.
import type { ResultFacts } from '../../results/types.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';

export const cutoutOutside = check({
  slug: 'cutout-outside',
  severity: 'error',
  effect: 'heavier',
  says: ({ facts }, { system }) =>
    `This ${facts.cutout} would take away ${figures(system).volume(facts.volume)} that is not there: it is ${reason(facts)}. Nothing is taken until it fits.`,
});

function reason({ why, other }: ResultFacts['cutout-outside']): string {
  if (why === 'taken') return `already taken by ${other === null ? 'another cut-out' : `another ${other}`}`;
  return why === 'larger' ? 'larger than the part' : 'outside the part';
}
