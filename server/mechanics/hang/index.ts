// Hanging equilibrium: rigid bodies on tension-only elastic slings, their tensions, tilt, stability and worst sharing.
// It must never know: text, plans, units other than SI, capacities, the clock, or what was solved before.
// Read model.ts first, then solve.ts, energy.ts, classify.ts; envelope, sweep, beam, tandem and level stand on those.
export { type Peak, type Sections, sectionForces } from './beam.ts';
export { describe } from './describe.ts';
export { diagonalPairs } from './diagonals.ts';
export { boxCorners, type Envelope, envelope, envelopeOverBox, extremeSharings, withTensions } from './envelope.ts';
export { follow } from './follow.ts';
export { type Adjustable, type LevelLengths, type Levelled, levelByLengths, levelOneHook } from './level.ts';
export type * from './model.ts';
export { type Hung, hang, solve } from './solve.ts';
export { type Range, type Swept, sweep, type Tolerances } from './sweep.ts';
export { type NoShares, plumbShares, type TandemLoad, type TandemShares, type Upending, upending } from './tandem.ts';
