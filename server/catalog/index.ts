// The catalog's door: figures of the trade that are looked up by name, each with its source.
// Holds: densities, masses of sections, pipes, bars, sheets, ropes and chains, dimensions of flanges, fittings and bolts, and what hitches, bends and angles leave of a rating, as data files beside small readers. SI, temperatures in degC.
// Must never know: text of a plan, places, units as written, mechanics, findings. Where sources differ the heavier governs, and the range is kept.
// Read in this order: materials.ts, woods.ts, sections.ts, pipes.ts, pipes-other.ts, bars.ts, sheets.ts, ropes.ts, flanges.ts, pipe-fittings.ts, bolts.ts, hitches.ts, fittings.ts; names.ts says which spellings are one name.
export { type Bar, bar, bars, nearestBars } from './bars.ts';
export { type BoltSize, boltOf, boltSize, boltSizes, type HexagonSize, nearestBolts } from './bolts.ts';
export {
  barredBeyond,
  designFactor,
  eyeboltFactor,
  greatestRating,
  shackleFactor,
  straight,
  temperatureRange,
} from './fittings.ts';
export {
  type FlangeForm,
  type FlangeSize,
  flangeClasses,
  flangeDesignations,
  flangeSize,
  nearestFlanges,
} from './flanges.ts';
export {
  type Construction,
  chainBendFactor,
  chokeAngleFactor,
  chokerFactor,
  constructions,
  type Factor,
  leastBend,
  ropeBendOnCurve,
  ropeBendSource,
} from './hitches.ts';
export { type Material, material, materials, nearestMaterials } from './materials.ts';
export { designationKey } from './names.ts';
export {
  type FittingSize,
  fittingDesignations,
  fittingSize,
  nearestFittings,
  reducerDesignations,
} from './pipe-fittings.ts';
export { nearestPipes, nearestSchedules, type Pipe, pipe, pipeSchedules, pipeSizes, pipes } from './pipes.ts';
export { ductileIron, isPlastic } from './pipes-other.ts';
export {
  type Construction as LineConstruction,
  construction,
  constructionsOf,
  type Line,
  nearestConstructions,
} from './ropes.ts';
export { nearestSections, type Section, section, sections } from './sections.ts';
export { nearestSheets, type Sheet, sheet, sheets } from './sheets.ts';
export { nearestWoods, type Wood, wood, woods } from './woods.ts';
