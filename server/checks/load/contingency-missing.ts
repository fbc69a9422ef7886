// A weight for which no contingency is stated.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { figures } from '../figures.ts';

export const contingencyMissing = check({
  slug: 'contingency-missing',
  severity: 'warning',
  effect: 'heavier',
  says: ({ facts }, { system }) =>
    `No contingency is stated for a weight by ${facts.evidence}; ${figures(system).share(facts.percent)} is added under ${facts.rule.startsWith('built in') ? 'the built-in rule' : facts.rule}.`,
  fixes: ({ at }, asked) => [addClause(asked, at, `contingency ${here} %`, 'Insert contingency')],
});
