// What a plan says nothing about: not stated, so not checked.
import type { BoundPlan, Item } from '../plan/types.ts';

/** Subjects in a rigger's words, in the order of the sheet, of which the plan and what it takes in state nothing. */
export function notStated({ items }: BoundPlan): readonly string[] {
  const stated = new Set(items.flatMap(keywords));
  return subjects.filter(([keyword]) => !stated.has(keyword)).map(([, words]) => words);
}

const subjects: readonly (readonly [keyword: string, words: string])[] = [
  ['load', 'the load'],
  ['rig', 'how the load is slung'],
  ['crane', 'the crane'],
  ['chart', 'the crane’s chart'],
  ['position', 'where the crane lifts and sets down'],
  ['deduct', 'deductions (hoist rope, jib, idle hook)'],
  ['ground', 'the ground'],
  ['weather', 'wind and weather'],
  ['surroundings', 'surroundings'],
  ['power line', 'power lines'],
  ['set-down', 'where the load is set down'],
  ['role', 'people and their duties'],
  ['step', 'steps'],
  ['hazard', 'hazards'],
  ['approval', 'approvals'],
];

const keywords = (item: Item): readonly string[] => [item.keyword, ...item.children.flatMap(keywords)];
