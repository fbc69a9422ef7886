// Two weights of one load lie further apart than agreed.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { capital } from '../wording.ts';

export const evidenceDisagrees = check({
  slug: 'evidence-disagrees',
  severity: 'error',
  effect: 'heavier',
  says: ({ facts }, { system }) => {
    const { unlike, atMost } = figures(system);
    const [a, b] = unlike('kg', facts.valueA, facts.valueB);
    const [apart, limit] = atMost('1', facts.apart, facts.limit);
    return `${capital(facts.a)} is ${a}, ${facts.b} is ${b}: ${apart} apart, limit ${limit} (${facts.rule}). The heavier governs; find out why they differ.`;
  },
});
