// A figure of a piece of gear far from what its kind and size usually have.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import { capital, named, undoubted, written } from '../wording.ts';

export const gearImplausible = check({
  slug: 'gear-implausible',
  severity: 'warning',
  effect: 'stands',
  says: ({ at, facts }, { system }) => {
    const { any, times } = figures(system);
    const usual = `${others[facts.size] ?? facts.size} usually has (about ${any(facts.unit, facts.usual)})`;
    return `${capital(facts.clause)} ${written(at)} of ${named(facts.item)} is ${times(facts.times)} what ${usual}. Check the unit, the comma and the tag.`;
  },
  fixes: ({ at, facts }) => facts.readings.map((reading) => rewrite(at, undoubted(reading))),
});

/** Sizes that are no size of the item. */
const others: Readonly<Record<string, string>> = {
  'any size': 'the largest of its kind',
  'that capacity': 'gear of that capacity',
};
