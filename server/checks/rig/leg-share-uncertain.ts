// How the legs share the load depends on small differences in length.
import { words } from '../../quantities/index.ts';
import type { ResultFacts } from '../../results/types.ts';
import { check } from '../check.ts';
import { legsTo } from '../wording.ts';

export const legShareUncertain = check({
  slug: 'leg-share-uncertain',
  severity: 'note',
  effect: 'heavier',
  says: ({ facts }) =>
    `How ${words(facts.n, 'leg')} share a stiff load depends on small differences in length and on assumed stretch. Each leg is judged by the way that pulls it hardest${worst(facts.hardest)}.`,
});

/** The hardest pull of all, and the legs that hang slack with it. */
const worst = (hardest: ResultFacts['leg-share-uncertain']['hardest']): string =>
  hardest === null
    ? ''
    : `; of all these pulls the hardest is on ${legsTo([hardest.leg])}${hardest.slack.length ? `, with ${legsTo(hardest.slack)} slack` : ''}`;
