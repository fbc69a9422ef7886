// Holds every value worked out from a bound plan, and the facts found on the way. Must never know words for people, text or protocol.
// Read types.ts, then work-out.ts, load.ts, bodies.ts and rigging.ts.

export { type Basis, bases, basisOf, leavesOf, type Share, shares } from './basis.ts';
export type { Hold } from './breakout.ts';
export { subjectText } from './expect.ts';
export { nameOf as candidateName } from './governing.ts';
export type { LiftOff, Reading } from './lift-off.ts';
export { bodyRows } from './list.ts';
export { pipeworkOf, sizesWritten, writtenOf } from './pipework/read.ts';
export type { PipeworkName } from './pipework/types.ts';
export { type Weighed, weigh } from './pipework/weigh.ts';
export { limitOn } from './rules.ts';
export { type Spread, spread } from './spread.ts';
export type {
  Body,
  Candidate,
  Expectation,
  GearUse,
  LegUse,
  LoadResult,
  Result,
  ResultFacts,
  ResultProblem,
  Results,
  Rule,
  Subject,
  Working,
} from './types.ts';
export { workOut } from './work-out.ts';
