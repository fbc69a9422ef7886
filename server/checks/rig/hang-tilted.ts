// The load hangs further out of level than the limit allows.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { levelFixes } from '../levelling.ts';
import { named } from '../wording.ts';

export const hangTilted = check({
  slug: 'hang-tilted',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }, { system }) => {
    const [angle, limit] = figures(system).atMost('rad', facts.angle, facts.limit);
    return `${named(facts.load)} hangs ${angle} out of level, ${facts.end} low; limit ${limit} (${facts.rule}).`;
  },
  fixes: ({ facts, at }, asked) => {
    if ('inStage' in facts) return []; // as drawn it hangs level
    const load = asked.results.loads.find(({ thing }) => thing.name === facts.load && thing.item.nameAt.row === at.row);
    return load ? levelFixes(asked, load.thing) : [];
  },
});
