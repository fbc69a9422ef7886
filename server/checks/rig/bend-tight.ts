// A sling bends tight over something.
import { write } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const bendTight = check({
  slug: 'bend-tight',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const { any } = figures(system);
    const ratio = write(facts.ratio, 'number', { system, round: 'down', digits: 3 });
    const left =
      facts.least === null
        ? `capacity falls to ${any('1', facts.falls, 'down')}`
        : 'less than its own diameter is not allowed';
    const over = `${any('m', facts.D)}${facts.over === null ? '' : ` (${named(facts.over)})`}`;
    return `${named(facts.sling)} of ${any('m', facts.d)} bends over ${over}, ${ratio} times its own diameter: ${left}.`;
  },
});
