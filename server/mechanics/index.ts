// Holds the engineering of solids: shapes, volumes, centres, boxes, placing, cutting out, and liquids in hollow parts.
// Must never know text, units, plans, files or the clock: SI numbers go in, numbers come out; the only words are formulas.
// Read shapes.ts, then solids.ts, body.ts, bodies.ts and extent.ts, then sweep.ts, cutouts.ts and interiors.ts; hang/ has a door of its own.
export { centreOf, centreRange, type MassRange, type PointMass } from './centre.ts';
export { fits, type Misfit, overlap, type PlacedShape, throughDepth } from './cutouts.ts';
export { contains, containsMaterial } from './depth.ts';
export { type Box, boxOf, extent } from './extent.ts';
export { type Formula, formula, formulas } from './formula.ts';
export { angleBetween, bendEfficiency, doubledShare, lengthWithin } from './hardware.ts';
export {
  below,
  closed,
  enclosed,
  type Filling,
  fill,
  type Interior,
  interior,
  levelFor,
  levels,
  type Space,
} from './interiors.ts';
export { laid } from './laying.ts';
export { type MeshOpen, type MeshSolid, measureMesh } from './mesh/measure.ts';
export { type MeshFault, mostTriangles, readMesh } from './mesh/read.ts';
export {
  type Axis,
  apply,
  axisRotation,
  axisVector,
  compose,
  inCircle,
  inSteps,
  inverse,
  type Placement,
  shifted,
  still,
  turn,
  unionOf,
} from './placement.ts';
export type { Member, Shape, ShapeKind } from './shapes.ts';
export { closestPacking } from './solids/shop.ts';
export { type Fault, type Impossible, type Solid, solid, type Working, working } from './solids.ts';
export { directed } from './sweep.ts';
export { mostMoisture, timberDensity } from './timber.ts';
export {
  add,
  cross,
  dot,
  identity,
  type Mat3,
  mean,
  multiply,
  norm,
  rotate,
  scale,
  subtract,
  transpose,
  type Vec2,
  type Vec3,
} from './vector.ts';
