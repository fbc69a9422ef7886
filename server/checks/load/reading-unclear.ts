// A reading, paper or older figure that leaves something unsaid: it may govern upwards only.
import { check } from '../check.ts';
import { addClauses } from '../edits.ts';

export const readingUnclear = check({
  slug: 'reading-unclear',
  severity: ({ facts }) => (facts.older ? 'error' : 'warning'),
  effect: 'stands',
  says: ({ facts }) =>
    `This ${facts.reading} does not say ${facts.missing.map(({ words, clause }) => `${words} (\`${clause}\`)`).join(', ')}. It may govern upwards, never downwards.`,
  fixes: ({ at, facts }, asked) => [
    addClauses(
      asked,
      at,
      facts.missing.map(({ clause }) => clause),
    ),
  ],
});
