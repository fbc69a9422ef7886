// The only place where a number becomes text for people: units, digits, rounding to the side asked for, and numbers in words.
import { full, grouped, magnitude, type Round, rounded, trimmed } from './decimal.ts';
import type { ResultUnit } from './derived.ts';
import type { DimensionName } from './dimension.ts';
import { type Shown, type System, shownIn } from './display.ts';
import { numberInWords, unitInWords } from './number-words.ts';

export type { Round, System };

export interface Style {
  readonly system: System;
  /** Demands (loads, tensions) are rounded up, capacities and what is left down, so that no print looks better than the sum. */
  readonly round: Round;
  /** Unit to show it in, such as that of the item's tag; force and mass are shown in each other's units by g0. */
  readonly unit?: string;
  /** Significant digits, 4 unless said. Whole numbers are never shortened. */
  readonly digits?: number;
  /** true, also unless said: only characters of a keyboard (`-`, `m2`, `deg`). false: `−`, `m²`, `°`. */
  readonly plain?: boolean;
}

/**
 * A value (SI) as text: `2,142 kg`, `12.5 ft`, `75.3 %`. About four significant digits, thousands with commas, a decimal point
 * everywhere, never `-0`, and never 0 for what is not zero (but less than 1e-9 SI is). `1` is a share in %, `number` a plain number.
 * A number that is not finite is `?`.
 */
export function write(value: number, unit: ResultUnit | DimensionName, style: Style): string {
  const real = settled(value);
  const shown = shownIn(unit, real, style.system, style.unit);
  if (!Number.isFinite(value)) return '?';
  const number = numberIn(real, shown);
  return withUnit(digitsOf(number, decimalsFor(number, shown, style.digits), style.round), shown, style.plain);
}

/** A share as per cent: 0.753 is `75.3 %`. Rounded up unless said: most shares are of something that must not be used up. */
export const share = (value: number, round: Round = 'up', plain = true): string =>
  write(value, '1', { system: 'metric', round, plain });

/** How two values are compared. */
export type Comparison = '<' | '<=' | '>' | '>=';

/**
 * Whether `a op limit` holds, on unrounded values. Values closer than 1e-9 of their size are equal: that is noise of the arithmetic
 * (0.1 + 0.2), far below what anything can be weighed or measured to. Never true for a number that is not finite.
 */
export function holds(a: number, op: Comparison, limit: number): boolean {
  if (!Number.isFinite(a) || !Number.isFinite(limit)) return false;
  if (equal(a, limit)) return op === '<=' || op === '>=';
  return op === '<' || op === '<=' ? a < limit : a > limit;
}

/**
 * A value and its limit as texts in one unit, with as many digits as it takes for the printed pair to compare as the unrounded one
 * does by `holds`: 75.3 % never stands as 75 % beside a limit of 75 %. The value is rounded to its worse side, the limit to its.
 */
export function writePair(
  a: number,
  limit: number,
  op: Comparison,
  unit: ResultUnit | DimensionName,
  style: Omit<Style, 'round'>,
): { readonly value: string; readonly limit: string } {
  if (!Number.isFinite(a) || !Number.isFinite(limit)) {
    const near = { ...style, round: 'near' } as const;
    return { value: write(a, unit, near), limit: write(limit, unit, near) };
  }
  const shown = shownIn(unit, Math.max(Math.abs(settled(a)), Math.abs(settled(limit))), style.system, style.unit);
  const [number, bound] = [numberIn(settled(equal(a, limit) ? limit : a), shown), numberIn(settled(limit), shown)];
  const side: readonly [Round, Round] = equal(a, limit)
    ? ['near', 'near']
    : op.startsWith('<')
      ? ['up', 'down']
      : ['down', 'up'];
  const start = Math.max(decimalsFor(number, shown, style.digits), decimalsFor(bound, shown, style.digits));
  for (let decimals = start; ; decimals += decimals === 2 ? 2 : 1) {
    const texts = [digitsOf(number, decimals, side[0]), digitsOf(bound, decimals, side[1])] as const;
    if (decimals >= MOST || compares(Number(texts[0]), op, Number(texts[1])) === holds(a, op, limit)) {
      return { value: withUnit(texts[0], shown, style.plain), limit: withUnit(texts[1], shown, style.plain) };
    }
  }
}

/** A value with the ends of its tolerance, SI. */
export interface Ends {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Two values of one thing as texts in one unit, with as many digits as it takes to tell them apart, and what the second is more
 * (`+112 kg`) or less (`-3 kg`); '' where only a tolerance differs. Each value is rounded to the side asked for, ends outwards.
 */
export function writeChange(
  old: Ends,
  now: Ends,
  unit: ResultUnit,
  style: Style,
): { readonly old: string; readonly now: string; readonly by: string } {
  const all = [old, now].flatMap(({ value, low, high }) => [value, low, high].map(settled));
  const shown = shownIn(unit, Math.max(...all.map(Math.abs)), style.system, style.unit);
  const textOf = ({ value, low, high }: Ends, decimals: number) => {
    const text = (number: number, round: Round) =>
      withUnit(digitsOf(numberIn(settled(number), shown), decimals, round), shown, style.plain);
    const own = text(value, style.round);
    return low === high ? own : `${own} (${text(low, 'down')} to ${text(high, 'up')})`;
  };
  const alike = equal(old.value, now.value) && equal(old.low, now.low) && equal(old.high, now.high);
  const [own, other] = [old, now].map(({ value }) => decimalsFor(numberIn(settled(value), shown), shown, style.digits));
  for (let least = 0; ; least += least === 2 ? 2 : 1) {
    const decimals = [Math.max(own ?? 0, least), Math.max(other ?? 0, least)] as const;
    const texts = [textOf(old, decimals[0]), textOf(now, decimals[1])] as const;
    if (least < MOST && !alike && texts[0] === texts[1]) continue;
    const more = settled(now.value - old.value) * (shown.bridge / shown.unit.factor);
    const by = more === 0 ? '' : withUnit(digitsOf(more, Math.min(...decimals), style.round), shown, style.plain);
    return { old: texts[0], now: texts[1], by: more > 0 ? `+${by}` : by };
  }
}

/** A value (SI) as the language reads it back, to 15 digits: for "copy result". Less than 1e-9 SI is 0; what is not finite is `?`. */
export function asInput(value: number, unit: ResultUnit, system: System, wanted?: string): string {
  if (!Number.isFinite(value)) return '?';
  const real = settled(value);
  const shown = shownIn(unit, real, system, wanted);
  return `${trimmed(full(numberIn(real, shown)))} ${shown.unit.text}`;
}

/** A number read back in words, with its unit: `four thousand seven hundred fifty tonnes`, `twelve point three four five kilograms`. */
export function spoken(value: number, unitText: string): string {
  if (!Number.isFinite(value)) return 'not known';
  const digits = full(value);
  return [numberInWords(digits) ?? grouped(digits), unitInWords(unitText, Math.abs(value) === 1)]
    .filter(Boolean)
    .join(' ');
}

/** A count with its noun: `1 figure`, `3 figures`, `0 sheaves` (plural given). */
export const words = (n: number, noun: string, plural = `${noun}s`): string =>
  `${grouped(rounded(n, 0, 'near'))} ${n === 1 ? noun : plural}`;

const MOST = 12; // decimals, beyond all guard digits of figures of any use here
const NOISE = 1e-9; // SI

const settled = (value: number): number => (Math.abs(value) < NOISE ? 0 : value);
const equal = (a: number, b: number): boolean => Math.abs(a - b) <= NOISE * Math.max(1, Math.abs(a), Math.abs(b));
const compares = (a: number, op: Comparison, b: number): boolean =>
  op === '<' ? a < b : op === '<=' ? a <= b : op === '>' ? a > b : a >= b;
const numberIn = (value: number, { unit, bridge }: Shown): number => (value * bridge - unit.offset) / unit.factor;

/** Decimals that give the significant digits asked for; never three behind a whole part (see `trimmed`). */
function decimalsFor(number: number, shown: Shown, digits: number | undefined): number {
  const wanted = Math.max(0, (digits ?? 4) - 1 - magnitude(number));
  const decimals = Math.min(wanted, digits === undefined ? shown.decimals : MOST);
  return decimals === 3 && Math.abs(number) >= 1 ? (digits === undefined ? 2 : 4) : decimals;
}

/** The rounded digits; more of them where the first ones would print 0 for something that is not. */
function digitsOf(number: number, decimals: number, round: Round): string {
  for (let more = decimals; ; more++) {
    const text = rounded(number, more, round);
    if (number === 0 || more >= MOST || /[1-9]/.test(text)) return text;
  }
}

function withUnit(digits: string, { unit }: Shown, plain = true): string {
  const number = grouped(trimmed(digits));
  const text = countable.has(unit.text) && number !== '1' ? `${unit.text}s` : unit.text;
  if (plain) return [number, text].filter(Boolean).join(' ');
  const [sign, symbol] = [
    number.replace('-', '−'),
    symbols[text] ?? text.replace(/(?<=[a-z])2/, '²').replace(/(?<=[a-z])3/, '³'),
  ];
  return symbol.startsWith('°') && symbol.length === 1 ? `${sign}°` : [sign, symbol].filter(Boolean).join(' ');
}

const countable: ReadonlySet<string> = new Set(['day', 'week', 'month', 'year']);
const symbols: Readonly<Record<string, string>> = {
  deg: '°',
  degC: '°C',
  degF: '°F',
  'kN m': 'kN·m',
  'lbf ft': 'lbf·ft',
};
