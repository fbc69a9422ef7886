// A leg lies flatter than the limit allows.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { capital } from '../wording.ts';

export const angleFlat = check({
  slug: 'angle-flat',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const [angle, limit] = figures(system).atLeast('rad', facts.angle, facts.limit);
    return `${capital(facts.leg)} lies ${angle} from horizontal; the limit is ${limit} from horizontal (${facts.rule}).`;
  },
});
