// What a number measures: exponents of mass, length, time, temperature, voltage and angle, and their names in plain words.

/** Exponents over [mass, length, time, temperature, voltage, angle]. */
export type Dimension = readonly number[];

export const none: Dimension = [0, 0, 0, 0, 0, 0];

export const same = (a: Dimension, b: Dimension): boolean => a === b || a.every((exponent, i) => exponent === b[i]);
export const multiplied = (a: Dimension, b: Dimension): Dimension => a.map((exponent, i) => exponent + (b[i] ?? 0));
export const divided = (a: Dimension, b: Dimension): Dimension => a.map((exponent, i) => exponent - (b[i] ?? 0));

export type DimensionName =
  | 'number'
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'speed'
  | 'time'
  | 'angle'
  | 'temperature'
  | 'voltage'
  | 'mass per length'
  | 'mass per area'
  | 'mass density'
  | 'force per length'
  | 'force density'
  | 'acceleration'
  | 'moment';

export const dimensions: Readonly<Record<DimensionName, Dimension>> = {
  number: none,
  length: [0, 1, 0, 0, 0, 0],
  area: [0, 2, 0, 0, 0, 0],
  volume: [0, 3, 0, 0, 0, 0],
  mass: [1, 0, 0, 0, 0, 0],
  force: [1, 1, -2, 0, 0, 0],
  pressure: [1, -1, -2, 0, 0, 0],
  speed: [0, 1, -1, 0, 0, 0],
  time: [0, 0, 1, 0, 0, 0],
  angle: [0, 0, 0, 0, 0, 1],
  temperature: [0, 0, 0, 1, 0, 0],
  voltage: [0, 0, 0, 0, 1, 0],
  'mass per length': [1, -1, 0, 0, 0, 0],
  'mass per area': [1, -2, 0, 0, 0, 0],
  'mass density': [1, -3, 0, 0, 0, 0],
  'force per length': [1, 0, -2, 0, 0, 0],
  'force density': [1, -2, -2, 0, 0, 0],
  acceleration: [0, 1, -2, 0, 0, 0],
  moment: [1, 2, -2, 0, 0, 0],
};

const names = Object.keys(dimensions) as readonly DimensionName[];

/** The name of a dimension of the table; undefined for any other. */
export const named = (dimension: Dimension): DimensionName | undefined =>
  names.find((name) => same(dimensions[name], dimension));

/** Plain words with an article: `a length`, `a weight per length`, `a plain number`; odd ones `a length × a force`. */
export function nameOf(dimension: Dimension): string {
  const name = named(dimension);
  return name ? inWords[name] : (product(dimension) ?? quotient(dimension) ?? powers(dimension));
}

const inWords: Readonly<Record<DimensionName, string>> = {
  number: 'a plain number',
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  mass: 'a weight',
  force: 'a force',
  pressure: 'a pressure',
  speed: 'a speed',
  time: 'a time',
  angle: 'an angle',
  temperature: 'a temperature',
  voltage: 'a voltage',
  'mass per length': 'a weight per length',
  'mass per area': 'a weight per area',
  'mass density': 'a density',
  'force per length': 'a force per length',
  'force density': 'a force per volume',
  acceleration: 'an acceleration',
  moment: 'a moment',
};

// What a person meets in a plan, in the order in which odd dimensions are taken apart.
const simple: readonly DimensionName[] = [
  'length',
  'area',
  'volume',
  'mass',
  'force',
  'pressure',
  'angle',
  'time',
  'speed',
  'temperature',
  'voltage',
];

function product(dimension: Dimension): string | null {
  for (const first of simple) {
    const second = simple.find((name) => same(multiplied(dimensions[first], dimensions[name]), dimension));
    if (second) return `${inWords[first]} × ${inWords[second]}`;
  }
  return null;
}

function quotient(dimension: Dimension): string | null {
  for (const first of ['number', ...simple] as const) {
    const second = simple.find((name) => same(divided(dimensions[first], dimensions[name]), dimension));
    if (second) return `${inWords[first]} ÷ ${inWords[second]}`;
  }
  return null;
}

const bases: readonly DimensionName[] = ['mass', 'length', 'time', 'temperature', 'voltage', 'angle'];

const powers = (dimension: Dimension): string =>
  bases
    .map((name, i) => ({ name, exponent: dimension[i] ?? 0 }))
    .filter(({ exponent }) => exponent !== 0)
    .map(({ name, exponent }) => (exponent === 1 ? inWords[name] : `${inWords[name]} to the power ${exponent}`))
    .join(' × ');
