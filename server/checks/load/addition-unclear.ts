// Something is left out of a stated weight, or in it twice.
import { check } from '../check.ts';
import { addClause } from '../edits.ts';
import { named } from '../wording.ts';

export const additionUnclear = check({
  slug: 'addition-unclear',
  severity: 'error',
  effect: 'heavier',
  says: ({ facts }) =>
    facts.twice
      ? `${named(facts.thing)} is both inside the stated weight and added; it counts twice.`
      : `${named(facts.thing)} is left out of the stated weight and nowhere added. It is counted on top until the line says \`without\` or another state.`,
  fixes: ({ at, facts }, asked) =>
    facts.twice
      ? []
      : [addClause(asked, at, `without "${facts.thing.replace(/"/g, '""')}"`, `Insert without ${named(facts.thing)}`)],
});
