// Printed formulas with their figures put in: `volume × density = 0.5 m³ × 7,850 kg/m³`, so that someone with a calculator can follow.
import type { Derived, Input } from './derived.ts';
import { pretty } from './formula.ts';
import { type Style, words, write } from './write.ts';

/** Sums of more figures than this are not written out. */
export const mostAddends = 40;

/** How a figure that goes into a formula looks: rounding and system; digits and units are those of a line to be worked out. */
export type PutIn = (label: string) => Pick<Style, 'system' | 'round'>;

/**
 * A formula as people read it, and behind `=` the same with its figures. One in words that stand for no figure (`share of the inside
 * below level`) is left in words with its figures behind it; a sum of many says how many they are. '' for a figure taken as it stands.
 */
export function filledIn(derived: Derived, style: PutIn): string {
  const { formula, inputs } = derived;
  const shown = pretty(spaced(formula)).replaceAll('9.80665', '9.80665 m/s²');
  if (!shown || !inputs.length) return shown;
  if (isMean(formula)) {
    const mean = meanIn(derived, style);
    return mean === null ? shown : `${shown} = ${mean}`;
  }
  const texts = inputs.map(({ label, value }) => ({
    label: pretty(spaced(label)),
    text: textOf(formula, label, value, style),
  }));
  if (isSum(formula))
    return inputs.length > mostAddends
      ? `${shown}, ${words(inputs.length, 'figure')}`
      : `${shown} = ${joined(texts.map(({ text }) => text))}`;
  if (isTypable(formula, inputs)) return `${shown} = ${replaced(shown, texts)}`;
  return `${shown}; ${texts.map(({ label, text }) => `${label} ${text}`).join(', ')}`;
}

/** The sum of all inputs, whatever they are called: `sum of parts`. */
const isSum = (formula: string): boolean => /^sum of [a-z ]+$/.test(formula);

/** Addends of a printed sum; one below zero keeps its sign. */
const joined = (addends: readonly string[]): string => addends.join(' + ').replaceAll('+ −', '− ');

/** The mean of places, each with the weight there. The place of `Block` is an input `place of Block`; without them it stays in words. */
const isMean = (formula: string): boolean => /^sum of (.+) \* place \/ sum of \1$/.test(formula);
export const placeOf = (label: string): string => `place of ${label}`;

const NOISE = 1e-9; // m: it prints as 0

/** `(3 kg × 2 m + 4 kg × 1 m) ÷ 7 kg`; what stands at zero adds nothing above the line. */
function meanIn({ inputs }: Derived, style: PutIn): string | null {
  const places = new Map(inputs.map(({ label, value }) => [label, value]));
  const weights = inputs.filter(({ label }) => places.has(placeOf(label)));
  if (!weights.length || weights.length * 2 !== inputs.length || weights.length > mostAddends) return null;
  const total = weights.reduce((sum, { value }) => sum + (value.value ?? Number.NaN), 0);
  const products = weights.flatMap(({ label, value }) => {
    const place = places.get(placeOf(label));
    if (!place || Math.abs(place.value ?? Number.NaN) < NOISE) return [];
    return [`${textOf('', label, value, style)} × ${textOf('', label, place, style)}`];
  });
  const [{ value }] = weights as [Input];
  const above = products.length ? joined(products) : `${textOf('', '', value, style)} × ${figureIn(0, 'm', style(''))}`;
  return `(${above}) ÷ ${figureIn(total, value.unit, style(''))}`;
}

/** Whether nothing but figures, signs and functions is left once its inputs are put in. */
function isTypable(formula: string, inputs: readonly Input[]): boolean {
  if (!inputs.every(({ label }) => formula.includes(label))) return false;
  const left = replaced(
    formula,
    inputs.map(({ label }) => ({ label, text: '1' })),
  );
  return !/[A-Za-z]/.test(left.replace(/\b(?:sqrt|min|max|sin|cos|tan|pi)\b/g, ''));
}

/** The text with every label in it replaced; of labels that begin alike the longest counts. Labels may be names of the plan. */
function replaced(text: string, values: readonly { readonly label: string; readonly text: string }[]): string {
  const longest = [...values].sort((a, b) => b.label.length - a.label.length);
  let made = '';
  for (let at = 0; at < text.length; ) {
    const found = letter.test(text.charAt(at - 1))
      ? undefined
      : longest.find(
          ({ label }) => label && text.startsWith(label, at) && !letter.test(text.charAt(at + label.length)),
        );
    made += found ? found.text : text.charAt(at);
    at += found ? found.label.length : 1;
  }
  return made;
}

const letter = /[\p{L}\p{N}]/u;

/** `massPerLength` as people write it. */
export const spaced = (label: string): string =>
  label.replace(/(?<=[a-z])[A-Z]/g, (found) => ` ${found.toLowerCase()}`);

function textOf(formula: string, label: string, { value, unit }: Derived, style: PutIn): string {
  if (value === null) return 'not known';
  const beside = ['sin', 'cos', 'tan'].reduce((text, of) => text.replaceAll(`${of}(${label})`, ''), formula);
  const multiplied = unit === 'rad' && beside.includes(label);
  return figureIn(value, unit, style(label), multiplied);
}

/**
 * A value as it goes into a line to be worked out: six digits, shares as plain numbers, lengths and volumes in the units of densities, and
 * angles in radians where they are multiplied.
 */
function figureIn(
  value: number,
  unit: Derived['unit'],
  { system, round }: Pick<Style, 'system' | 'round'>,
  multiplied = false,
): string {
  const style = { system, round, digits: 6, plain: false };
  if (unit === '1') return write(value, 'number', style);
  const one = inLines(unit, system) ?? (multiplied ? 'rad' : undefined);
  return write(value, unit, one === undefined ? style : { ...style, unit: one });
}

/** The unit of lengths, areas and volumes in lines to be worked out, so that none has to be turned into another. */
export const inLines = (unit: Derived['unit'], system: Style['system']): string | undefined =>
  unit === 'm' || unit === 'm2' || unit === 'm3' ? (system === 'US' ? unit.replace('m', 'ft') : unit) : undefined;
