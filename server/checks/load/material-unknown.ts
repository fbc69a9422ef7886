// A material that no table and no line of the plan has.
import { check } from '../check.ts';
import { addBefore, here, rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import { named, nearestOf } from '../wording.ts';

export const materialUnknown = check({
  slug: 'material-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) =>
    `${named(facts.name)} is not among the ${facts.woods ? 'woods' : 'materials'} known here${facts.woods ? ', and `moisture` is water in wood' : ''}.${nearestOf(facts.nearest.map(({ name, density }) => `${name} (${figures(system).density(density)})`))}`,
  fixes: ({ at, facts }, asked) => [
    ...facts.nearest.map(({ name, density }) =>
      rewrite(at, name, { title: `Write ${name}: ${figures(asked.system).density(density)}` }),
    ),
    addBefore(
      asked,
      at,
      [`material "${facts.name.replaceAll('"', '')}": density ${here}`],
      `Insert a line: material ${named(facts.name)}`,
    ),
  ],
});
