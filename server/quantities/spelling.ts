// Units that the language does not know as written: those with several meanings, and the known ones nearest to a misspelling.
import { type Dimension, same } from './dimension.ts';
import { nearest } from './nearest.ts';
import { aliases, elsewhere } from './other-spellings.ts';
import { joined, units } from './unit-table.ts';

/** One meaning of an ambiguous unit. */
export interface Meaning {
  /** What can stand in its place in the text: a unit, or a factor and a unit (`12 cwt` may be `12 * 100 lb`). */
  readonly unit: string;
  readonly size: string; // for people: `2,000 lb = 907.185 kg`
}

/** Meanings of a unit whose size depends on who reads it (`ton`, `gal`, `cwt`, also in `ton/m2`); none if it has not several. */
export function ambiguous(text: string): readonly Meaning[] {
  const [over = '', under, ...more] = text.split('/');
  if (more.length) return [];
  if (under === undefined) return meanings(over);
  if (meanings(over).length)
    return joined(under) ? meanings(over).map((one) => ({ ...one, unit: `${one.unit}/${under}` })) : [];
  return joined(over)
    ? meanings(under)
        .filter((one) => joined(one.unit))
        .map((one) => ({ ...one, unit: `${over}/${one.unit}` }))
    : [];
}

const tons: readonly Meaning[] = [
  { unit: 't', size: '1,000 kg = 2,204.62 lb' },
  { unit: 'short ton', size: '2,000 lb = 907.185 kg' },
  { unit: 'long ton', size: '2,240 lb = 1,016.05 kg' },
];
const tonForces: readonly Meaning[] = [
  { unit: 'tf', size: '1,000 kgf = 9.80665 kN' },
  { unit: '* 2000 lbf', size: '2,000 lbf = 8.89644 kN' },
  { unit: '* 2240 lbf', size: '2,240 lbf = 9.96402 kN' },
];
const gallons: readonly Meaning[] = [
  { unit: 'US gal', size: '3.78541 L' },
  { unit: 'imperial gal', size: '4.54609 L' },
];
const hundredweights: readonly Meaning[] = [
  { unit: '* 100 lb', size: '100 lb = 45.3592 kg' },
  { unit: '* 112 lb', size: '112 lb = 50.8023 kg' },
];

const stones: readonly Meaning[] = [
  { unit: 'short ton', size: '2,000 lb = 907.185 kg' },
  { unit: '* 14 lb', size: '14 lb = 6.35029 kg' },
];

const several: Readonly<Record<string, readonly Meaning[]>> = {
  ton: tons,
  tons: tons,
  tn: tons,
  tns: tons,
  st: stones,
  tonf: tonForces,
  tonsf: tonForces,
  gal: gallons,
  gals: gallons,
  gallon: gallons,
  gallons: gallons,
  cwt: hundredweights,
  cwts: hundredweights,
  hundredweight: hundredweights,
};

const meanings = (text: string): readonly Meaning[] => (text === 'T' ? tons : (own(several, text.toLowerCase()) ?? []));

/**
 * Units of the language nearest to a spelling it does not know, best first, at most `count`; only of the dimensions given, if any.
 * None for a unit that exists elsewhere with a size of its own (`km`, `daN`): no unit here could stand in its place unchanged.
 */
export function nearestUnits(text: string, dimensions?: readonly Dimension[], count = 3): readonly string[] {
  const fits = (found: string) =>
    !dimensions || dimensions.some((dimension) => same(dimension, joined(found)?.dimension ?? []));
  const [over = '', under, ...more] = text.split('/');
  if (more.length) return [];
  const found =
    under === undefined
      ? candidates(text)
      : [...aliased(text), ...pairs(candidates(over.trim()), candidates(under.trim()))];
  return [...new Set(found)].filter((one) => joined(one) && fits(one)).slice(0, count);
}

const pairs = (over: readonly string[], under: readonly string[]): readonly string[] =>
  over.flatMap((a) => under.map((b) => `${a}/${b}`));

/** Known spellings of other places first, then another case, then the nearest by edits. */
function candidates(text: string): readonly string[] {
  if (joined(text)) return [text];
  if (elsewhere.has(text)) return [];
  return [aliased(text), otherCase(text), nearby(text)].find((found) => found.length) ?? [];
}

const aliased = (text: string): readonly string[] => own(aliases, text) ?? own(aliases, plainText(text)) ?? [];
const plainText = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[.\s]+$/, '')
    .replace(/\./g, '')
    .replace(/[\s-]+/g, ' ')
    .replace(/\^|\*\*/g, '')
    .trim();
const otherCase = (text: string): readonly string[] =>
  units()
    .map((one) => one.text)
    .filter((one) => one.toLowerCase() === plainText(text));

/** Short units are left out: nearly every one is one edit away from every other. */
const nearby = (text: string): readonly string[] =>
  plainText(text).length < 3
    ? []
    : nearest(
        plainText(text),
        units()
          .map((one) => one.text)
          .filter((one) => one.length > 2),
      );

const own = <T>(record: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(record, key) ? record[key] : undefined;
