// Door to the units: look-up, spelling help, the usual units of a measure, and the one place where mass and force meet.
import { type Dimension, dimensions, same } from './dimension.ts';
import type { Quantity } from './quantity.ts';
import { g0 } from './unit-table.ts';

export { ambiguous, type Meaning, nearestUnits } from './spelling.ts';
export { g0, joined, type Unit, unit, units, wholeMonths } from './unit-table.ts';

/** Usual units for what a clause measures, the usual ones first, US and metric; none for plain numbers and measures not known here. */
export const unitsFor = (measure: string): readonly string[] => usual[measure] ?? [];

const weights = ['lb', 'kg', 't', 'short ton', 'kip', 'long ton', 'oz', 'g'];
const forces = ['lbf', 'kN', 'kipf', 'N', 'kgf', 'tf', 'MN'];
const massDensities = ['lb/ft3', 'kg/m3', 't/m3', 'g/cm3', 'lb/US gal', 'kg/L', 'lb/in3', 'lb/yd3'];
const massPerLength = ['lb/ft', 'kg/m', 't/m', 'kip/ft', 'lb/in', 'lb/yd'];
const massPerArea = ['lb/ft2', 'kg/m2', 't/m2', 'kip/ft2', 'lb/in2', 'kg/cm2', 'short ton/ft2'];
const forcePerLength = ['lbf/ft', 'kN/m', 'N/m', 'N/mm', 'kipf/ft'];
const forceDensities = ['kN/m3', 'lbf/ft3', 'N/m3'];
const pressures = [
  'psf',
  'kPa',
  'psi',
  'kN/m2',
  'MPa',
  'bar',
  'ksi',
  'Pa',
  'N/mm2',
  'lbf/ft2',
  'kipf/ft2',
  'tf/m2',
  'kgf/cm2',
];

const usual: Readonly<Record<string, readonly string[]>> = {
  length: ['ft', 'in', 'm', 'mm', 'cm', 'yd'],
  area: ['ft2', 'm2', 'in2', 'cm2', 'mm2'],
  volume: ['ft3', 'm3', 'US gal', 'L', 'imperial gal', 'yd3', 'in3', 'bbl', 'cm3', 'mm3'],
  mass: weights,
  weight: [...weights, ...forces],
  'mass per length': massPerLength,
  'weight per length': [...massPerLength, ...forcePerLength],
  'mass per area': massPerArea,
  'weight per area': [...massPerArea, ...pressures],
  'mass density': massDensities,
  density: [...massDensities, ...forceDensities],
  'force density': forceDensities,
  'force per length': forcePerLength,
  force: [...forces, ...weights],
  pressure: [...pressures, ...massPerArea],
  angle: ['deg', 'rad'],
  time: ['day', 'week', 'month', 'year', 'h', 'min', 's'],
  speed: ['mph', 'm/s', 'km/h', 'ft/s', 'knot'],
  voltage: ['kV', 'V'],
  temperature: ['degF', 'degC'],
  percent: ['%'],
};

/** Mass in kg: a mass as it is, a force ÷ g0. Null for anything else; a bare zero fits. */
export const asMass = (q: Quantity): Quantity | null => taken(q, dimensions.mass, dimensions.force, 1 / g0);

/** Force in N: a force as it is, a mass × g0. */
export const asForce = (q: Quantity): Quantity | null => taken(q, dimensions.force, dimensions.mass, g0);

/** Density in kg/m3: from mass or force per volume. */
export const asDensity = (q: Quantity): Quantity | null =>
  taken(q, dimensions['mass density'], dimensions['force density'], 1 / g0);

/** Mass per length in kg/m: from mass or force per length. */
export const asMassPerLength = (q: Quantity): Quantity | null =>
  taken(q, dimensions['mass per length'], dimensions['force per length'], 1 / g0);

/** Mass per area in kg/m2: from mass per area or a pressure. */
export const asMassPerArea = (q: Quantity): Quantity | null =>
  taken(q, dimensions['mass per area'], dimensions.pressure, 1 / g0);

/** Pressure in Pa: a pressure as it is, a mass per area × g0 (`20 t/m2`). */
export const asPressure = (q: Quantity): Quantity | null =>
  taken(q, dimensions.pressure, dimensions['mass per area'], g0);

function taken(q: Quantity, kept: Dimension, converted: Dimension, factor: number): Quantity | null {
  if (q.percent) return null;
  if (same(q.dimension, kept)) return q;
  if (q.bare && q.value === 0 && q.low === 0 && q.high === 0) return { ...q, dimension: kept };
  return same(q.dimension, converted)
    ? { ...q, value: q.value * factor, low: q.low * factor, high: q.high * factor, dimension: kept }
    : null;
}
