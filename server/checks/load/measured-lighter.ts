// A reading lighter than another figure, with something about it unsaid.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { figures } from '../figures.ts';
import { capital } from '../wording.ts';

export const measuredLighter = check({
  slug: 'measured-lighter',
  severity: 'error',
  effect: 'heavier',
  says: ({ facts }, { system }) => {
    const [a, b] = figures(system).unlike('kg', facts.a, facts.b);
    return `${capital(facts.reading)} is ${a}, lighter than ${facts.other}, ${b}. The heavier governs until what hung on it, its accuracy and the difference are explained${facts.missing.length ? ` (missing: ${facts.missing.join(', ')})` : ''}.`;
  },
  fixes: ({ at, facts }, asked) => {
    const clauses = facts.missing.filter((word) => word !== '±'); // a tolerance stands behind the figure itself, not in a clause
    return clauses.length
      ? [
          addClause(
            asked,
            at,
            clauses.map((clause, i) => template(clause, i === 0)).join(', '),
            `Insert ${clauses.join(', ')}`,
          ),
        ]
      : [];
  },
});

/** The clause with its value left empty; the cursor goes to the first. */
function template(clause: string, first: boolean): string {
  const cursor = first ? here : '';
  return clause === 'state'
    ? `state "${cursor}"`
    : clause === 'accuracy'
      ? `accuracy ${cursor} %`
      : `${clause} ${cursor}`;
}
