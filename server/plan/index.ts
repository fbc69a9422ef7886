// Holds a plan whose names are resolved and whose values are typed. Must never know what a value is used for, nor words for people.
// Read types.ts, then plan.ts, bind.ts and evaluate.ts.
export { joined, keptAlong } from './along.ts';
export { type Attachment, endings, filesOf, isListed, lostLists } from './attached.ts';
export { described } from './bind.ts';
export { type Citation, isMark, type Paper, paperEndings, paperOf, pathIn, seenMark } from './cited.ts';
export type { Source } from './files.ts';
export { fold } from './fold.ts';
export { language } from './language.ts';
export { fit, measureName } from './measure.ts';
export { bindPlan } from './plan.ts';
export { rangeMeant, rangeNames } from './range.ts';
export {
  allOpen,
  childrenOf,
  clauseOf,
  type Given,
  given,
  givenBy,
  has,
  lostCauses,
  namesOf,
  openLines,
  textOf,
} from './read.ts';
export type {
  BoundClause,
  BoundPlan,
  BoundValue,
  Cell,
  Compare,
  Item,
  Names,
  PlanFacts,
  PlanFile,
  PlanProblem,
  TableKind,
  Thing,
} from './types.ts';
