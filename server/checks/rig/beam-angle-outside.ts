// The slings above a beam lie flatter than its capacity holds for.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const beamAngleOutside = check({
  slug: 'beam-angle-outside',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) => {
    const [angle, least] = figures(system).atLeast('rad', facts.angle, facts.least);
    return `The capacity of ${named(facts.beam)} holds for top slings at ${least} from horizontal or steeper; here they lie at ${angle} from horizontal.`;
  },
});
