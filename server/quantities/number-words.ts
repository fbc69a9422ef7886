// Numbers and units in English words, to read a figure back to the person who typed it.
import { unit } from './unit-table.ts';

const small = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const thousands = ['', ' thousand', ' million', ' billion'];

/** Plain digits (`-12.345`) in words: `minus twelve point three four five`; null for a trillion and more. */
export function numberInWords(digits: string): string | null {
  const [whole = '', decimals = ''] = digits.replace('-', '').split('.');
  if (whole.length > 12) return null;
  const behind = decimals ? ` point ${[...decimals].map((digit) => small[Number(digit)]).join(' ')}` : '';
  return `${digits.startsWith('-') ? 'minus ' : ''}${wholeInWords(Number(whole))}${behind}`;
}

function wholeInWords(n: number): string {
  const groups: string[] = [];
  for (let [rest, i] = [n, 0]; rest > 0; rest = Math.floor(rest / 1000), i++) {
    if (rest % 1000) groups.unshift(`${hundredsInWords(rest % 1000)}${thousands[i]}`);
  }
  return groups.join(' ') || 'zero';
}

function hundredsInWords(n: number): string {
  const [hundred, rest] = [Math.floor(n / 100), n % 100];
  const below =
    rest < 20
      ? rest
        ? small[rest]
        : ''
      : [tens[Math.floor(rest / 10)], rest % 10 ? small[rest % 10] : ''].filter(Boolean).join('-');
  return [hundred ? `${small[hundred]} hundred` : '', below].filter(Boolean).join(' ');
}

/** A unit in words, in the plural unless for exactly one: `tonnes`, `kilograms per cubic metre`. What has no words stays as it is. */
export function unitInWords(text: string, single: boolean): string {
  const words = unitNames[unit(text)?.text ?? text];
  if (words) return single ? words[0] : words[1];
  const [over = '', under] = text.split('/');
  return under === undefined ? text : `${unitInWords(over, single)} per ${unitInWords(under, true)}`;
}

const regular = (name: string): readonly [string, string] => [name, `${name}s`];
const feet = (prefix: string): readonly [string, string] => [`${prefix}foot`, `${prefix}feet`];
const inches = (prefix: string): readonly [string, string] => [`${prefix}inch`, `${prefix}inches`];
const fixed = (name: string): readonly [string, string] => [name, name];

const unitNames: Readonly<Record<string, readonly [string, string]>> = {
  mm: regular('millimetre'),
  cm: regular('centimetre'),
  m: regular('metre'),
  in: inches(''),
  ft: feet(''),
  yd: regular('yard'),
  mm2: regular('square millimetre'),
  cm2: regular('square centimetre'),
  m2: regular('square metre'),
  in2: inches('square '),
  ft2: feet('square '),
  mm3: regular('cubic millimetre'),
  cm3: regular('cubic centimetre'),
  m3: regular('cubic metre'),
  L: regular('litre'),
  in3: inches('cubic '),
  ft3: feet('cubic '),
  yd3: regular('cubic yard'),
  bbl: regular('barrel'),
  'US gal': regular('US gallon'),
  'imperial gal': regular('imperial gallon'),
  g: regular('gram'),
  kg: regular('kilogram'),
  t: regular('tonne'),
  lb: regular('pound'),
  oz: regular('ounce'),
  kip: regular('kip'),
  'short ton': regular('short ton'),
  'long ton': regular('long ton'),
  N: regular('newton'),
  kN: regular('kilonewton'),
  MN: regular('meganewton'),
  lbf: ['pound-force', 'pounds-force'],
  kipf: ['kip-force', 'kips-force'],
  kgf: ['kilogram-force', 'kilograms-force'],
  tf: ['tonne-force', 'tonnes-force'],
  Pa: regular('pascal'),
  kPa: regular('kilopascal'),
  MPa: regular('megapascal'),
  bar: regular('bar'),
  psi: ['pound per square inch', 'pounds per square inch'],
  psf: ['pound per square foot', 'pounds per square foot'],
  ksi: ['kip per square inch', 'kips per square inch'],
  'm/s': ['metre per second', 'metres per second'],
  'km/h': ['kilometre per hour', 'kilometres per hour'],
  'ft/s': ['foot per second', 'feet per second'],
  mph: ['mile per hour', 'miles per hour'],
  knot: regular('knot'),
  deg: regular('degree'),
  rad: regular('radian'),
  degC: ['degree Celsius', 'degrees Celsius'],
  degF: ['degree Fahrenheit', 'degrees Fahrenheit'],
  V: regular('volt'),
  kV: regular('kilovolt'),
  '%': fixed('per cent'),
  s: regular('second'),
  min: regular('minute'),
  h: regular('hour'),
  day: regular('day'),
  week: regular('week'),
  month: regular('month'),
  year: regular('year'),
};
