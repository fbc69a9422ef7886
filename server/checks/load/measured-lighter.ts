// A reading lighter than another figure, with something about it unsaid.
import { check } from '../check.ts';
import { addClauses } from '../edits.ts';
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
  fixes: ({ at, facts }, asked) => (facts.missing.length ? [addClauses(asked, at, facts.missing)] : []),
});
