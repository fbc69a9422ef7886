// Holds a quantity against what its clause measures: the SI value in the clause's own unit, or the words for what does not fit.
import { type Dimension, dimensions, nameOf, none, same } from '../quantities/dimension.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { asDensity, asForce, asMass, asMassPerArea, asMassPerLength, asPressure } from '../quantities/units.ts';
import type { Measure } from '../vocabulary/index.ts';

const conversions: Partial<Record<Measure, (q: Quantity) => Quantity | null>> = {
  weight: asMass,
  'weight per length': asMassPerLength,
  'weight per area': asMassPerArea,
  density: asDensity,
  force: asForce,
  pressure: asPressure,
};

/** The dimension a clause is kept in; null: any. */
export function dimensionOf(measure: Measure): Dimension | null {
  switch (measure) {
    case 'any':
      return null;
    case 'whole':
    case 'number':
    case 'percent':
      return none;
    case 'weight':
      return dimensions.mass;
    case 'weight per length':
      return dimensions['mass per length'];
    case 'weight per area':
      return dimensions['mass per area'];
    case 'density':
      return dimensions['mass density'];
    default:
      return dimensions[measure];
  }
}

/** In plain words: "a weight", "a length". */
export function measureName(measure: Measure): string {
  switch (measure) {
    case 'any':
      return 'a value with its unit';
    case 'whole':
      return 'a whole number';
    case 'number':
      return 'a plain number';
    case 'percent':
      return 'a share in %';
    case 'weight':
      return 'a weight';
    case 'weight per length':
      return 'a weight per length';
    case 'weight per area':
      return 'a weight per area';
    case 'density':
      return 'a weight per volume';
    default:
      return nameOf(dimensions[measure]);
  }
}

/** The quantity as the clause keeps it (mass for weights, and so on); `missing` where it lacks a unit; null where it does not fit. */
export function fit(q: Quantity, measure: Measure): Quantity | 'missing' | null {
  if (measure === 'any') return q;
  if (measure === 'percent')
    return q.percent || (q.bare && q.value === 0) ? q : q.bare && same(q.dimension, none) ? 'missing' : null;
  if (q.percent) return null;
  if (measure === 'whole' || measure === 'number') return same(q.dimension, none) ? q : null;
  const dimension = dimensionOf(measure) ?? none;
  if (q.bare) return q.value === 0 && q.low === 0 && q.high === 0 ? { ...q, dimension } : 'missing';
  const convert = conversions[measure];
  return convert ? convert(q) : same(q.dimension, dimension) ? q : null;
}
