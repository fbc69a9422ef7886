// A unit that the language does not have under that spelling.
import { joined } from '../../quantities/units.ts';
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { bare } from '../wording.ts';

export const unitUnknown = check({
  slug: 'unit-unknown',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    facts.nearest.length
      ? `"${facts.unit}" is not a unit known here. Nearest of ${bare(facts.dimension)}: ${facts.nearest.join(', ')}.`
      : `"${facts.unit}" is not a unit known here.`,
  fixes: ({ at, facts }) =>
    facts.nearest.map((unit) =>
      rewrite(at, unit, { preferred: facts.nearest.length === 1 && sameUnit(facts.unit, unit) }),
    ),
});

/** Only another spelling of the same unit: `FT`, `lbs`, `feet`, `kg/m^3`. A misspelling may mean something else. */
function sameUnit(written: string, unit: string): boolean {
  const plain = written.toLowerCase().replace(/[\s.^-]/g, '');
  const wanted = unit.toLowerCase().replace(/\s/g, '');
  return joined(unit) !== undefined && (plain === wanted || plain === `${wanted}s` || longNames[plain] === unit);
}

const longNames: Readonly<Record<string, string>> = {
  inch: 'in',
  inches: 'in',
  foot: 'ft',
  feet: 'ft',
  yard: 'yd',
  yards: 'yd',
  pound: 'lb',
  pounds: 'lb',
  ounce: 'oz',
  ounces: 'oz',
  meter: 'm',
  meters: 'm',
  metre: 'm',
  metres: 'm',
  millimeter: 'mm',
  millimeters: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  kilogram: 'kg',
  kilograms: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  tonne: 't',
  tonnes: 't',
  degree: 'deg',
  degrees: 'deg',
  percent: '%',
};
