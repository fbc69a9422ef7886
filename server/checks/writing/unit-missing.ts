// A bare number where a unit is due.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { bare, capital, list, written } from '../wording.ts';

export const unitMissing = check({
  slug: 'unit-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${facts.number} of what? ${capital(facts.clause)} needs a unit of ${bare(facts.dimension)}: ${list(ordered(facts).slice(0, named), 'or')}.`,
  fixes: ({ at, facts }) => {
    const text = written(at);
    const before = /^[-−]?[\d.,/ ½¼¾⅛⅜⅝⅞-]+$/.test(text) ? text : /^\S+$/.test(text) ? `${text} * 1` : `(${text}) * 1`;
    return ordered(facts).map((unit) => rewrite(at, `${before} ${unit}`, { preferred: facts.units.length === 1 }));
  },
});

/** A sentence names so many units; the fixes offer all. */
const named = 6;

/** The unit that its neighbours have comes first. */
const ordered = ({ unit, units }: { readonly unit?: string; readonly units: readonly string[] }): readonly string[] =>
  unit === undefined ? units : [unit, ...units.filter((other) => other !== unit)];
