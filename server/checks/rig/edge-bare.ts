// A sling lies on an edge with nothing between.
import { check } from '../check.ts';
import { addClause, here } from '../edits.ts';
import { named } from '../wording.ts';

export const edgeBare = check({
  slug: 'edge-bare',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${named(facts.sling)} bears on an edge of ${named(facts.load)} with no protection and no edge radius stated.`,
  fixes: ({ at }, asked) => [
    addClause(asked, at, `edge protection "${here}"`, 'Insert edge protection: what lies between'),
    addClause(asked, at, `bend diameter ${here}`, 'Insert bend diameter: twice the radius of the edge'),
  ],
});
