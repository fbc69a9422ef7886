// The hook does not stand over the centre of gravity when the load comes off.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const liftOffSwing = check({
  slug: 'lift-off-swing',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const distance = figures(system).any('m', facts.distance, 'up');
    return `At lift-off the hook stands ${distance} off the centre of gravity towards ${named(facts.side)}; the load will swing that way or drag.`;
  },
});
