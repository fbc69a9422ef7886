// Two items that do not go together as the leg says.
import type { ResultFacts } from '../../results/types.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import type { Asked } from '../types.ts';
import { named } from '../wording.ts';

export const jointWrong = check({
  slug: 'joint-wrong',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, asked) => `${named(facts.a)} should not join ${named(facts.b)} this way: ${reason(facts, asked)}.`,
});

function reason({ pin, hole }: ResultFacts['joint-wrong'], { system }: Asked): string {
  if (pin === null || hole === null) return 'a hook closes only on an eye or a link, and here its point would carry';
  const [thick, wide] = figures(system).atMost('m', pin, hole);
  return `pin ${thick}, hole ${wide}`;
}
