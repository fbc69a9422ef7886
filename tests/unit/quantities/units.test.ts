// The unit table against general unit libraries, published factors and the relations it is built from.
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { unit as mathjs } from 'mathjs';
import { expect, test } from 'vitest';
import { dimensions, same } from '../../../server/quantities/dimension.ts';
import { plain, type Quantity, quantity } from '../../../server/quantities/quantity.ts';
import {
  ambiguous,
  asDensity,
  asForce,
  asMass,
  asMassPerArea,
  asMassPerLength,
  asPressure,
  g0,
  joined,
  nearestUnits,
  unit,
  units,
  unitsFor,
  wholeMonths,
} from '../../../server/quantities/units.ts';

// unitmath carries no types that TypeScript finds.
type Unitmath = (value: number, unit: string) => { to(unit: string): { getValue(): number } };
const unitmath = createRequire(import.meta.url)('unitmath') as Unitmath;

/** The units of the language reference. */
const all = [
  'mm',
  'cm',
  'm',
  'in',
  'ft',
  'yd',
  'mm2',
  'cm2',
  'm2',
  'in2',
  'ft2',
  'mm3',
  'cm3',
  'm3',
  'L',
  'in3',
  'ft3',
  'yd3',
  'bbl',
  'US gal',
  'imperial gal',
  'g',
  'kg',
  't',
  'lb',
  'oz',
  'kip',
  'short ton',
  'long ton',
  'N',
  'kN',
  'MN',
  'lbf',
  'kipf',
  'kgf',
  'tf',
  'Pa',
  'kPa',
  'MPa',
  'psi',
  'psf',
  'ksi',
  'bar',
  'm/s',
  'km/h',
  'ft/s',
  'mph',
  'knot',
  'deg',
  'rad',
  'degC',
  'degF',
  'V',
  'kV',
  's',
  'min',
  'h',
  'day',
  'week',
  'month',
  'year',
  '%',
];

const factor = (text: string): number => joined(text)?.factor ?? Number.NaN;

test('exactly the units of the language are known, and the long ones in the plural', () => {
  expect(
    units()
      .map((one) => one.text)
      .sort(),
  ).toEqual([...all].sort());
  for (const text of ['days', 'weeks', 'months', 'years']) expect(unit(text)).toBe(unit(text.slice(0, -1)));
  for (const text of ['feet', 'lbs', 'KG', 'ton', 'T', 'gal', 'kg ', '', 'toString', 'kg/m3'])
    expect(unit(text), text).toBeUndefined();
});

// As mathjs 15 spells them. Its kip is 4448.2216 N, 3.4e-9 too small; it has no knot, tf, long ton or imperial gallon.
const inMathjs: Readonly<Record<string, string>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'inch',
  ft: 'ft',
  yd: 'yd',
  mm2: 'mm^2',
  cm2: 'cm^2',
  m2: 'm^2',
  in2: 'in^2',
  ft2: 'ft^2',
  mm3: 'mm^3',
  cm3: 'cm^3',
  m3: 'm^3',
  L: 'L',
  in3: 'in^3',
  ft3: 'ft^3',
  yd3: 'yd^3',
  bbl: 'oilbarrel',
  'US gal': 'gallon',
  g: 'g',
  kg: 'kg',
  t: 'tonne',
  lb: 'lbm',
  oz: 'oz',
  'short ton': 'ton',
  N: 'N',
  kN: 'kN',
  MN: 'MN',
  lbf: 'lbf',
  kipf: 'kip',
  kgf: 'kgf',
  Pa: 'Pa',
  kPa: 'kPa',
  MPa: 'MPa',
  psi: 'psi',
  psf: 'lbf/ft^2',
  ksi: 'kip/in^2',
  bar: 'bar',
  'm/s': 'm/s',
  'km/h': 'km/hour',
  'ft/s': 'ft/s',
  mph: 'mi/hour',
  deg: 'deg',
  rad: 'rad',
  V: 'V',
  kV: 'kV',
  s: 's',
  min: 'minute',
  h: 'hour',
  day: 'day',
  week: 'week',
  month: 'month',
  year: 'year',
  'kg/m3': 'kg/m^3',
  'lb/ft3': 'lbm/ft^3',
  'lb/ft': 'lbm/ft',
  't/m2': 'tonne/m^2',
  'kN/m3': 'kN/m^3',
  'lb/US gal': 'lbm/gallon',
  'g/cm3': 'g/cm^3',
};

test.each(Object.entries(inMathjs))('%s has the size that mathjs gives it', (text, theirs) => {
  expect(Math.abs(factor(text) / Number(mathjs(1, theirs).toSI().toNumeric()) - 1)).toBeLessThan(1e-8);
});

// As unitmath 0.8 spells them. It has no kgf, knot, long ton or imperial gallon.
const inUnitmath: Readonly<Record<string, readonly [theirs: string, si: string]>> = {
  in: ['in', 'm'],
  ft: ['ft', 'm'],
  yd: ['yd', 'm'],
  in2: ['in^2', 'm^2'],
  ft2: ['ft^2', 'm^2'],
  L: ['L', 'm^3'],
  in3: ['in^3', 'm^3'],
  ft3: ['ft^3', 'm^3'],
  yd3: ['yd^3', 'm^3'],
  'US gal': ['gal', 'm^3'],
  bbl: ['oilbarrel', 'm^3'],
  t: ['tonne', 'kg'],
  lb: ['lbm', 'kg'],
  oz: ['oz', 'kg'],
  'short ton': ['ton', 'kg'],
  lbf: ['lbf', 'N'],
  kipf: ['kip', 'N'],
  psi: ['psi', 'Pa'],
  psf: ['lbf/ft^2', 'Pa'],
  ksi: ['kip/in^2', 'Pa'],
  bar: ['bar', 'Pa'],
  mph: ['mi/hour', 'm/s'],
  'km/h': ['km/hour', 'm/s'],
  deg: ['deg', 'rad'],
  week: ['week', 's'],
  day: ['day', 's'],
  'lb/ft3': ['lbm/ft^3', 'kg/m^3'],
  'lb/ft': ['lbm/ft', 'kg/m'],
};

test.each(Object.entries(inUnitmath))('%s has the size that unitmath gives it', (text, [theirs, si]) => {
  expect(Math.abs(factor(text) / unitmath(1, theirs).to(si).getValue() - 1)).toBeLessThan(1e-8);
});

test.each([
  ['degC', 'degC'],
  ['degF', 'degF'],
])('%s starts where mathjs puts it', (text, theirs) => {
  const one = unit(text);
  for (const number of [-40, 0, 32, 98.6, 212]) {
    expect(number * (one?.factor ?? 0) + (one?.offset ?? 0)).toBeCloseTo(
      Number(mathjs(number, theirs).toSI().toNumeric()),
      9,
    );
  }
});

// NIST Special Publication 811 (2008), appendix B.8, from memory: the figures in bold there are exact, the others have seven digits.
const published: readonly (readonly [text: string, size: number, exact: boolean])[] = [
  ['in', 0.0254, true],
  ['ft', 0.3048, true],
  ['yd', 0.9144, true],
  ['in2', 6.4516e-4, true],
  ['ft2', 9.290304e-2, true],
  ['in3', 1.6387064e-5, true],
  ['ft3', 2.831685e-2, false],
  ['yd3', 7.645549e-1, false],
  ['bbl', 1.589873e-1, false],
  ['US gal', 3.785412e-3, false],
  ['imperial gal', 4.54609e-3, true],
  ['lb', 0.45359237, true],
  ['oz', 2.834952e-2, false],
  ['short ton', 907.1847, false],
  ['long ton', 1016.047, false],
  ['kgf', 9.80665, true],
  ['lbf', 4.448222, false],
  ['kipf', 4448.222, false],
  ['psi', 6894.757, false],
  ['psf', 47.88026, false],
  ['ksi', 6894757, false],
  ['bar', 1e5, true],
  ['mph', 0.44704, true],
  ['knot', 0.5144444, false],
  ['ft/s', 0.3048, true],
  ['km/h', 0.2777778, false],
  ['lb/ft', 1.488164, false],
  ['lb/ft2', 4.882428, false],
  ['lb/ft3', 16.01846, false],
  ['lb/US gal', 119.8264, false],
  ['lb/imperial gal', 99.77637, false],
  ['lb/yd3', 0.5932764, false],
];

test.each(published)('%s is %d as published', (text, size, exact) => {
  if (exact) expect(factor(text)).toBe(size);
  else expect(Math.abs(factor(text) / size - 1)).toBeLessThan(5e-7); // half of the last of seven digits
});

test('factors are the doubles nearest to the exact relations', () => {
  expect(factor('short ton')).toBe(907.18474);
  expect(factor('long ton')).toBe(1016.0469088);
  expect(factor('US gal')).toBe(0.003785411784);
  expect(factor('bbl')).toBe(0.158987294928);
  expect(factor('lbf')).toBe(4.4482216152605);
  expect(factor('oz')).toBe(0.028349523125);
  expect(factor('kip')).toBe(453.59237);
  expect(factor('tf')).toBe(9806.65);
  expect(factor('psi') / factor('psf')).toBeCloseTo(144, 12);
});

test('two units join by one stroke; temperatures, shares and a second stroke do not', () => {
  expect(joined('kN/m2')).toMatchObject({ text: 'kN/m2', factor: 1000, dimension: dimensions.pressure });
  expect(joined('kg/m³')?.dimension).toEqual(dimensions['mass density']);
  for (const text of ['kg/m/s', 'degC/m', '%/m', 'kg/', '/m', 'km/h/s', 'kg/x', 'kg / m3'])
    expect(joined(text), text).toBeUndefined();
});

test('a number goes into any unit and back', () => {
  fc.assert(
    fc.property(fc.constantFrom(...units()), fc.double({ min: -1e9, max: 1e9, noNaN: true }), (one, number) => {
      const back = (number * one.factor + one.offset - one.offset) / one.factor;
      expect(Math.abs(back - number)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(number)));
    }),
  );
});

test('typical units fit their measure and are known', () => {
  const measures = [
    'length',
    'area',
    'volume',
    'mass',
    'weight',
    'weight per length',
    'weight per area',
    'density',
    'force',
    'pressure',
    'angle',
    'time',
    'speed',
    'voltage',
    'temperature',
    'percent',
  ];
  for (const measure of measures) {
    expect(unitsFor(measure).length, measure).toBeGreaterThan(0);
    for (const text of unitsFor(measure)) expect(joined(text), `${measure}: ${text}`).toBeDefined();
  }
  const fitting = {
    weight: asMass,
    'weight per length': asMassPerLength,
    'weight per area': asMassPerArea,
    density: asDensity,
    force: asForce,
    pressure: asPressure,
  };
  for (const [measure, as] of Object.entries(fitting)) {
    for (const text of unitsFor(measure))
      expect(as(quantity(1, joined(text)?.dimension ?? [])), `${measure}: ${text}`).not.toBeNull();
  }
  expect(unitsFor('whole')).toEqual([]);
});

test('mass and force meet by standard gravity, at the clause alone', () => {
  const tonForce = quantity(9806.65, dimensions.force, 9800, 9810);
  expect(asMass(tonForce)?.value).toBeCloseTo(1000, 9);
  expect(asMass(tonForce)?.low).toBeCloseTo(9800 / g0, 9);
  expect(asForce(quantity(1000, dimensions.mass))?.value).toBeCloseTo(9806.65, 9);
  expect(asDensity(quantity(25_000, dimensions['force density']))?.value).toBeCloseTo(2549.29, 2); // 25 kN/m3, unit weight of reinforced concrete: EN 1991-1-1 table A.1
  expect(asPressure(quantity(20_000, dimensions['mass per area']))?.value).toBeCloseTo(196_133, 6); // 20 t/m2
  expect(asMassPerLength(quantity(g0, dimensions['force per length']))?.value).toBeCloseTo(1, 12);
  expect(asMassPerArea(quantity(g0, dimensions.pressure))?.value).toBeCloseTo(1, 12);
});

test('what is neither fits nothing, but a bare zero fits all', () => {
  const share: Quantity = { ...plain(0.05), percent: true, bare: false };
  for (const as of [asMass, asForce, asDensity, asMassPerLength, asMassPerArea, asPressure]) {
    expect(as(quantity(1, dimensions.length))).toBeNull();
    expect(as(plain(3))).toBeNull();
    expect(as(share)).toBeNull();
    expect(as(plain(0))?.value).toBe(0);
  }
  expect(asMass(plain(0))?.dimension).toEqual(dimensions.mass);
});

test('units of several sizes list each, with its size', () => {
  for (const text of ['ton', 'tons', 'T', 'gal', 'cwt', 'Ton', 'gallons', 'st']) {
    expect(ambiguous(text).length, text).toBeGreaterThan(1);
    for (const { unit: meant } of ambiguous(text)) expect(joined(meant.replace(/^\* \d+ /, '')), meant).toBeDefined();
  }
  expect(ambiguous('ton').map((one) => one.unit)).toEqual(['t', 'short ton', 'long ton']);
  expect(ambiguous('gal').map((one) => one.unit)).toEqual(['US gal', 'imperial gal']);
  expect(ambiguous('cwt').map((one) => one.unit)).toEqual(['* 100 lb', '* 112 lb']);
  expect(ambiguous('ton/m2').map((one) => one.unit)).toEqual(['t/m2', 'short ton/m2', 'long ton/m2']);
  expect(ambiguous('lb/gal').map((one) => one.unit)).toEqual(['lb/US gal', 'lb/imperial gal']);
  for (const text of [...all, 't/m2', 'xyz', 'constructor', 'ton/x']) expect(ambiguous(text), text).toEqual([]);
});

test('the sizes told for ambiguous units are those of the table', () => {
  for (const text of ['ton', 'gal', 'cwt', 'st', 'tonf']) {
    for (const { unit: meant, size } of ambiguous(text)) {
      const [, times = '1', name = ''] = /^(?:\* (\d+) )?(.*)$/.exec(meant) ?? [];
      for (const side of size.split(' = ')) {
        const [, number = '', sideUnit = ''] = /^([\d,.]+) (.*)$/.exec(side) ?? [];
        expect(
          Math.abs((Number(number.replaceAll(',', '')) * factor(sideUnit)) / (Number(times) * factor(name)) - 1),
          `${meant}: ${side}`,
        ).toBeLessThan(6e-6);
      }
    }
  }
});

test.each([
  ['lbs', 'lb'],
  ['feet', 'ft'],
  ['MM', 'mm'],
  ['tonnes', 't'],
  ['kgs', 'kg'],
  ['Kg', 'kg'],
  ['inch', 'in'],
  ['in.', 'in'],
  ['metres', 'm'],
  ['KN', 'kN'],
  ['kpa', 'kPa'],
  ['sq. ft', 'ft2'],
  ['m^3', 'm3'],
  ['pcf', 'lb/ft3'],
  ['lbs/ft', 'lb/ft'],
  ['kg/m^3', 'kg/m3'],
  ['KG/M3', 'kg/m3'],
  ['short tons', 'short ton'],
  ['Short Ton', 'short ton'],
  ['lonf ton', 'long ton'],
  ['US gallons', 'US gal'],
  ['degrees', 'deg'],
  ['hours', 'h'],
  ['percent', '%'],
  ['kips', 'kip'],
])('%s is taken for %s', (text, meant) => {
  expect(joined(text)).toBeUndefined();
  expect(nearestUnits(text)[0]).toBe(meant);
});

test('nearest units fit the measure, are at most three, and never take the place of a unit of another size', () => {
  expect(nearestUnits('kn')).toEqual(['kN', 'knot']);
  expect(nearestUnits('kn', [dimensions.force])).toEqual(['kN']);
  expect(nearestUnits('feet', [dimensions.mass])).toEqual([]);
  for (const text of ['km', 'daN', 'hPa', 'mile', 'Nm', 'km/s', '__proto__', 'a/b/c', ''])
    expect(nearestUnits(text), text).toEqual([]);
  fc.assert(
    fc.property(fc.string({ maxLength: 8 }), (text) => {
      const found = nearestUnits(text, [dimensions.mass, dimensions.length]);
      expect(found.length).toBeLessThanOrEqual(3);
      for (const one of found)
        expect(
          [dimensions.mass, dimensions.length].some((dimension) => same(dimension, joined(one)?.dimension ?? [])),
        ).toBe(true);
    }),
  );
});

test('months and years are told from other times', () => {
  expect(wholeMonths(6 * factor('month'))).toBe(6);
  expect(wholeMonths(factor('year'))).toBe(12);
  for (const seconds of [0, 30 * factor('day'), 365 * factor('day'), 52 * factor('week'), 1, -factor('year')])
    expect(wholeMonths(seconds)).toBeNull();
});
