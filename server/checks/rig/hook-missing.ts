// The legs of a load hang from nothing.
import type { Place } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { addToBlock, freeName, here, withMore } from '../edits.ts';
import type { Asked, Edit } from '../types.ts';
import { named } from '../wording.ts';

export const hookMissing = check({
  slug: 'hook-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `The legs of ${named(facts.load)} hang from nothing. Name the block, hook or ball, with its weight.`,
  fixes: ({ at, related }, asked) => {
    const name = named(freeName('Main block', asked));
    const gear = addToBlock(
      asked,
      at,
      'gear',
      `block ${name}: weight ${here}, capacity `,
      `Insert block ${name} in gear and legs`,
    );
    return [
      withMore(
        gear,
        legsAt([at, ...related.map((one) => one.at)], asked).map(
          (start): Edit => ({ kind: 'replace', at: start, text: `${name} > ` }),
        ),
      ),
    ];
  },
});

/** Where the paths of the legs on these lines begin. */
function legsAt(places: readonly Place[], { results }: Asked): readonly Place[] {
  return results.legs.flatMap(({ item }) => {
    const path = item.value?.valueAt;
    return path && places.some(({ row }) => row === path.row) ? [{ ...path, to: path.from }] : [];
  });
}
