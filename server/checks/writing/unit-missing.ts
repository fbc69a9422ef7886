// A bare number where a unit is due.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { bare, capital, list, written } from '../wording.ts';

export const unitMissing = check({
  slug: 'unit-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) =>
    `${facts.number} of what? ${capital(facts.clause)} needs ${asked(facts.dimension)}${list(ordered(facts, system).slice(0, named), 'or')}.`,
  fixes: ({ at, facts }, { system }) => {
    const text = written(at);
    const before = /^[-−]?[\d.,/ ½¼¾⅛⅜⅝⅞-]+$/.test(text) ? text : /^\S+$/.test(text) ? `${text} * 1` : `(${text}) * 1`;
    const share = Number(text);
    // 0.2 may be meant as 20 %: both are offered, none is preferred.
    if (facts.units.length === 1 && facts.units[0] === '%' && share > 0 && share <= 1)
      return [rewrite(at, `${Math.round(share * 1e12) / 1e10} %`), rewrite(at, `${text} %`)];
    return ordered(facts, system)
      .slice(0, offered)
      .map((unit) => rewrite(at, `${before} ${unit}`, { preferred: facts.units.length === 1 }));
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
  'lb/US gal',
  'lb/in3',
  'lb/yd3',
  'lb/in',
  'lb/yd',
  'kip/ft',
  'lb/in2',
  'kip/ft2',
  'short ton/ft2',
  'lbf/ft',
  'kipf/ft',
  'lbf/ft3',
  'lbf/ft2',
  'kipf/ft2',
  'mph',
  'ft/s',
  'degF',
]);

/** The unit that its neighbours have, inches for a fraction, two of the plan's own system, two of the other, the rest. */
function ordered(
  { number, unit, units }: { readonly number: string; readonly unit?: string; readonly units: readonly string[] },
  system: 'US' | 'metric',
): readonly string[] {
  const own = units.filter((one) => american.has(one) === (system === 'US'));
  const other = units.filter((one) => !own.includes(one));
  return [
    ...new Set([
      ...(unit === undefined ? [] : [unit]),
      ...(fraction.test(number) ? units.filter((one) => one === 'in') : []),
      ...own.slice(0, 2),
      ...other.slice(0, 2),
      ...own,
      ...other,
    ]),
  ];
}

/** Halves, quarters, eighths: no other unit of length is written so. */
const fraction = /\d\/\d|[½¼¾⅛⅜⅝⅞]/;
