// A reading, paper or older figure that leaves something unsaid: it may govern upwards only.
import { check } from '../check.ts';
import { addClauses } from '../edits.ts';
import { list } from '../wording.ts';

export const readingUnclear = check({
  slug: 'reading-unclear',
  severity: ({ facts }) => (facts.older ? 'error' : 'warning'),
  effect: 'stands',
  says: ({ facts }) =>
    `This ${facts.reading} does not say ${list(facts.missing.map(({ words, clause }) => `${words} (\`${clause}\`)`))}. Until it does, it may make the load heavier, never lighter.`,
  fixes: ({ at, facts }, asked) => [
    addClauses(
      asked,
      at,
      facts.missing.map(({ clause }) => clause),
    ),
  ],
});
