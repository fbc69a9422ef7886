// Gear or a pick that is in no leg.
import type { Place } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { addBeside, here } from '../edits.ts';
import type { Asked, Fix } from '../types.ts';
import { named } from '../wording.ts';

export const leftUnused = check({
  slug: 'left-unused',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) =>
    facts.pick
      ? `Pick ${named(facts.item)} is in no leg.`
      : `${named(facts.item)} is in no leg; its weight counts as hanging all the same.`,
  fixes: ({ facts }, asked) => (facts.pick ? newLeg(facts.item, asked) : intoLegs(facts.item, asked)),
});

/** A leg that ends at the pick; what it hangs from is left empty. */
function newLeg(pick: string, asked: Asked): readonly Fix[] {
  const last = asked.results.legs.at(-1);
  return last ? [addBeside(asked, last.item.at, `leg ${here} > ${named(pick)}`, `Insert a leg to ${named(pick)}`)] : [];
}

/** The item put before the last step of a leg, one fix a leg. */
function intoLegs(item: string, asked: Asked): readonly Fix[] {
  return asked.results.legs.slice(0, most).flatMap((leg): readonly Fix[] => {
    const end = leg.steps.at(-1);
    if (!end || leg.broken) return [];
    const before: Place = { ...end.at, to: end.at.from };
    return [
      {
        title: `Put ${named(item)} into the leg to ${named(end.thing.name)}`,
        preferred: false,
        edits: [{ kind: 'replace', at: before, text: `${named(item)} > ` }],
        cursor: null,
      },
    ];
  });
}
const most = 8;
