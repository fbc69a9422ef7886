// How the legs share the load depends on small differences in length.
import { words } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { legsTo } from '../wording.ts';

export const legShareUncertain = check({
  slug: 'leg-share-uncertain',
  severity: 'note',
  effect: 'heavier',
  says: ({ facts }) =>
    `How ${words(facts.n, 'leg')} share a stiff load depends on small differences in length and on assumed stretch. Judged as if ${legsTo(facts.legs)} carried it.`,
});
