// A material whose name covers light and heavy kinds.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import { list } from '../wording.ts';

export const materialDoubtful = check({
  slug: 'material-doubtful',
  severity: 'warning',
  effect: 'heavier',
  says: ({ facts }, { system }) => {
    const { density } = figures(system);
    return `"${facts.material}" covers ${density(facts.low)} to ${density(facts.high)}; ${density(facts.used)} is used. Say which: ${list(facts.choices, 'or')}.`;
  },
  fixes: ({ at, facts }) => facts.choices.map((choice) => rewrite(at, choice)),
});
