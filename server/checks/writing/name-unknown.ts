// A name that nothing in the plan or its libraries has, or that stands for another kind of thing.
import type { Place } from '../../syntax/types.ts';
import { statements } from '../../vocabulary/index.ts';
import { check } from '../check.ts';
import { addBefore, addToBlock, here, rewrite } from '../edits.ts';
import type { Asked, Fix } from '../types.ts';
import { named, nearestOf, withArticle } from '../wording.ts';

export const nameUnknown = check({
  slug: 'name-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    facts.meant
      ? `Nothing called ${named(facts.name)} is in this plan or its libraries: ${facts.meant.written} is one name. A range of names is written with two dots: ${facts.meant.range}.`
      : facts.is === null
        ? `Nothing called ${named(facts.name)} is in this plan or its libraries.${nearestOf(facts.nearest.map(named))}`
        : `${named(facts.name)} is ${withArticle(facts.is)}; here ${facts.wanted} is needed.${nearestOf(facts.nearest.map(named))}`,
  fixes: ({ at, facts }, asked) => [
    ...(facts.meant ? [rewrite(facts.meant.at, facts.meant.range)] : []),
    ...facts.nearest.map((name) => rewrite(at, named(name))),
    ...(facts.declare === null ? [] : declaration(asked, at, facts.declare)),
  ],
});

/** A new line that declares the name, its figure left empty: where such a statement may stand. */
function declaration(asked: Asked, at: Place, line: string): readonly Fix[] {
  const keyword = Object.keys(statements)
    .filter((word) => line.startsWith(`${word} `))
    .sort((a, b) => b.length - a.length)[0];
  const under = statements[keyword ?? '']?.under[0];
  const title = `Insert a line: ${line.trim()}`;
  if (under === 'file') return [addBefore(asked, at, [line + here], title)];
  return under === undefined ? [] : [addToBlock(asked, at, under, line + here, title)];
}
