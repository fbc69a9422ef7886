// Reads one number at a place of a line, in every form the language has, and says what is wrong with those it does not have.
import { fractionSigns, isDigit } from './characters.ts';
import type { LineProblem } from './types.ts';

export interface NumberRead {
  readonly to: number;
  /** Value; undefined where it cannot be read. */
  readonly number?: number;
  /** What would be written instead; null: nothing is known. */
  readonly fix?: string | null;
  /** A problem of its own, beside that the line cannot be read. */
  readonly slug?: 'decimal-comma' | 'foot-inch-marks';
  readonly facts?: LineProblem['facts'];
}

/** The number that begins at `at` (a digit or a fraction sign), longest form first: mixed, fraction, grouped, plain. */
export function readNumber(line: string, at: number): NumberRead {
  const sign = fractionSigns[line.charAt(at)];
  if (sign !== undefined) return marked(line, at, { to: at + 1, number: sign });
  const run = match(RUN, line, at);
  const end = at + run.length;
  const next = line.charCodeAt(end);
  const power = next === 101 || next === 69 ? match(POWER, line, end) : '';
  if (power) return { to: end + power.length, fix: unpowered(run, power) };
  if (!/[.,]/.test(run)) return marked(line, at, withFraction(line, run, end));
  if (PLAIN.test(run) || GROUPED.test(run)) return marked(line, at, { to: end, number: Number(run.replace(/,/g, '')) });
  return run.includes(',')
    ? doubtfulComma(line, at, run)
    : { to: end, fix: /^\d{1,3}(\.\d{3})+$/.test(run) ? run.replace(/\./g, ',') : null };
}

/** A number with a decimal point and just three digits after it: without ending zeros, and as it looks if the point groups thousands. */
export function doubtful(text: string, unit: string): { short: string; unit: string; other: string } | null {
  if (
    text.length < 5 ||
    text.charAt(text.length - 4) !== '.' ||
    !/^[1-9]\d{0,2}\.\d{3}$/.test(text) ||
    NEVER_THOUSANDS.has(unit)
  )
    return null;
  const [whole = '', part = ''] = text.split('.');
  const digits = part.replace(/0+$/, '') || '0';
  return {
    short: `${whole}.${digits}`,
    unit,
    other: `${whole},${part} ${unit}`,
  };
}

// Units in which three decimals are everyday and thousands are not, so that a point cannot be taken for a thousands mark.
const NEVER_THOUSANDS = new Set([
  'm',
  'cm',
  'in',
  'ft',
  'yd',
  'm2',
  'm3',
  'yd3',
  't',
  'short ton',
  'long ton',
  'kip',
  'MN',
  'tf',
  'kipf',
  'bar',
  'ksi',
  'MPa',
  'deg',
  'rad',
  '%',
  't/m',
  't/m2',
  't/m3',
  'g/cm3',
  'kg/L',
  'm/s',
  'kV',
  's',
  'min',
  'h',
  'day',
  'days',
  'week',
  'weeks',
  'month',
  'months',
  'year',
  'years',
]);

const RUN = /\d+(?:[.,]\d+)*/y;
const PLAIN = /^\d+\.\d+$/;
const GROUPED = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;
const POWER = /[eE][+-]?\d+(?![\p{L}\d])/uy;
const SLASH = /(?:( +|-)(\d+))?\/(\d+)(?![\d/]|[.,]\d)/y;
const SIGN = /(?: *|-)([½¼¾⅛⅜⅝⅞])/y;

function match(pattern: RegExp, line: string, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(line)?.[0] ?? '';
}

/** A whole number, with the fraction that follows it: `1 1/2`, `1-1/2`, `1/2`, `1½`. */
function withFraction(line: string, run: string, end: number): NumberRead {
  const whole = Number(run);
  if (!Number.isFinite(whole)) return { to: end, fix: null };
  if (!mayGoOn(line, end)) return { to: end, number: whole };
  SLASH.lastIndex = end;
  const slash = SLASH.exec(line);
  if (slash) {
    const to = end + slash[0].length;
    const below = Number(slash[3]);
    const value = slash[2] === undefined ? whole / below : whole + Number(slash[2]) / below;
    return Number.isFinite(value) && Number.isFinite(below) ? { to, number: value } : { to, fix: null };
  }
  SIGN.lastIndex = end;
  const sign = SIGN.exec(line);
  return sign
    ? { to: end + sign[0].length, number: whole + (fractionSigns[sign[1] ?? ''] ?? 0) }
    : { to: end, number: whole };
}

/** A quick look whether a fraction may follow a whole number: after a slash or hyphen, or a digit or fraction sign behind spaces. */
function mayGoOn(line: string, end: number): boolean {
  let at = end;
  while (line.charCodeAt(at) === 32) at++;
  const next = line.charCodeAt(at);
  return next > 127 || (at > end ? isDigit(next) : next === 45 || next === 47);
}

/** The number as read, unless marks for feet or inches follow: `5'-6 1/2"`, `6″`. */
function marked(line: string, at: number, read: NumberRead): NumberRead {
  if (read.number !== undefined && !Number.isFinite(read.number)) return { to: read.to, fix: null };
  let end = read.to;
  if (line.charCodeAt(end) === 32 && isPrime(line.charAt(end + 1))) end++;
  const mark = markAt(line, end);
  if (!mark) return read;
  const first = line.slice(at, read.to);
  if (mark.unit === 'in') return footInch(end + mark.length, `${first} in`);
  const between = match(/[ -]*/y, line, end + mark.length);
  const second = end + mark.length + between.length;
  if (isDigit(line.charCodeAt(second)) || line.charAt(second) in fractionSigns) {
    const inches = second + match(INCHES, line, second).length;
    const spaced = line.charCodeAt(inches) === 32 && isPrime(line.charAt(inches + 1)) ? 1 : 0;
    const close = markAt(line, inches + spaced);
    if (close?.unit === 'in')
      return footInch(inches + spaced + close.length, `${first} ft ${line.slice(second, inches)} in`);
  }
  return footInch(end + mark.length, `${first} ft`);
}

const footInch = (to: number, rewrite: string): NumberRead => ({
  to,
  fix: rewrite,
  slug: 'foot-inch-marks',
  facts: { rewrite },
});
const INCHES = /\d+(?:[ -]\d+\/\d+|\/\d+|\.\d+)?[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞]/y;
const isPrime = (sign: string) => sign === "'" || sign === '′' || sign === '″';

function markAt(line: string, at: number): { unit: 'ft' | 'in'; length: number } | null {
  const sign = line.charAt(at);
  if (sign === '"' || sign === '″' || sign === '”' || sign === '“') return { unit: 'in', length: 1 };
  if (sign !== "'" && sign !== '′' && sign !== '’') return null;
  return line.charAt(at + 1) === sign ? { unit: 'in', length: 2 } : { unit: 'ft', length: 1 };
}

/** A comma that neither separates nor groups: both things it may mean, each with the unit that follows. */
function doubtfulComma(line: string, at: number, run: string): NumberRead {
  const unit = match(/ *(?:[A-Za-z][A-Za-z0-9]*(?:\/[A-Za-z][A-Za-z0-9]*)?|%)(?![\w-])/y, line, at + run.length);
  const lone = /^(?: *)(?:x|and|about|to|or)$/.test(unit) ? '' : unit;
  const text = `${run}${lone}`;
  const [a, b] = readings(run);
  return {
    to: at + text.length,
    slug: 'decimal-comma',
    facts: { text, a: `${a}${lone}`, b: `${b}${lone}` },
    fix: null,
  };
}

function readings(run: string): [string, string] {
  const parts = run.split(/[.,]/);
  const last = parts.at(-1) ?? '';
  const apart = run.replace(/,/g, ', ');
  if (run.includes('.')) return [`${grouped(parts.slice(0, -1).join(''))}.${last}`, apart];
  const regrouped =
    !run.startsWith('0') && parts.slice(1).every((part) => part.length >= 3) ? grouped(parts.join('')) : null;
  if (parts.length > 2) return [regrouped ?? apart, regrouped ? apart : run.replace(',', '.').replace(/,/g, ', ')];
  return [run.replace(',', '.'), regrouped ?? apart];
}

const grouped = (digits: string): string => digits.replace(/\B(?=(?:\d{3})+$)/g, ',');

/** `1e3` written out; null where it would be unreasonably long. */
function unpowered(run: string, power: string): string | null {
  const shift = Number(power.slice(1));
  if (!/^\d+(\.\d+)?$/.test(run) || Math.abs(shift) > 9) return null;
  const [whole = '', part = ''] = run.split('.');
  const point = whole.length + shift;
  const digits = `${'0'.repeat(Math.max(0, 1 - point))}${whole}${part}`.padEnd(point, '0');
  const cut = Math.max(point, 1);
  const rest = digits.slice(cut);
  return `${grouped(digits.slice(0, cut).replace(/^0+(?=\d)/, ''))}${rest ? `.${rest}` : ''}`;
}
