// A bare number where a unit is due.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { bare, capital, list, written } from '../wording.ts';

export const unitMissing = check({
  slug: 'unit-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${facts.number} of what? ${capital(facts.clause)} needs ${asked(facts.dimension)}${list(ordered(facts).slice(0, named), 'or')}.`,
  fixes: ({ at, facts }, { system }) => {
    const text = written(at);
    const before = /^[-−]?[\d.,/ ½¼¾⅛⅜⅝⅞-]+$/.test(text) ? text : /^\S+$/.test(text) ? `${text} * 1` : `(${text}) * 1`;
    const share = Number(text);
    // 0.2 may be meant as 20 %: both are offered, none is preferred.
    if (facts.units.length === 1 && facts.units[0] === '%' && share > 0 && share <= 1)
      return [rewrite(at, `${Math.round(share * 1e12) / 1e10} %`), rewrite(at, `${text} %`)];
    return usual(ordered(facts), system).map((unit) =>
      rewrite(at, `${before} ${unit}`, { preferred: facts.units.length === 1 }),
    );
  },
});

/** A share has one unit, %, which its own name already says. */
const asked = (dimension: string): string => (dimension.endsWith('%') ? 'the unit ' : `a unit of ${bare(dimension)}: `);

/** A sentence names so many units, and so many are offered to write. */
const named = 6;
const offered = 4;

const american = new Set([
  'in',
  'ft',
  'yd',
  'in2',
  'ft2',
  'in3',
  'ft3',
  'yd3',
  'US gal',
  'lb',
  'oz',
  'kip',
  'short ton',
  'lbf',
  'kipf',
  'psi',
  'psf',
  'ksi',
  'lb/ft',
  'lb/ft2',
  'lb/ft3',
  'mph',
  'ft/s',
  'degF',
]);

/** The units of the plan's own system first. */
const usual = (units: readonly string[], system: 'US' | 'metric'): readonly string[] => {
  const own = (unit: string): boolean => american.has(unit) === (system === 'US');
  return [...units.filter(own), ...units.filter((unit) => !own(unit))].slice(0, offered);
};

/** The unit that its neighbours have comes first. */
const ordered = ({ unit, units }: { readonly unit?: string; readonly units: readonly string[] }): readonly string[] =>
  unit === undefined ? units : [unit, ...units.filter((other) => other !== unit)];
