// What this version reads but does not work out: each leaves its result open, and the sheet's head says so.
import { type BoundPlan, type Item, keptAlong } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { gearKinds } from '../vocabulary/index.ts';
import { because, type Notes } from './notes.ts';

/** Notes each thing whose result stays open because nothing here judges it; returns them in words. */
export function notJudged(plan: BoundPlan, notes: Notes): readonly string[] {
  const said = new Set<string>();
  const say = (at: Parameters<Notes['add']>[1], thing: string, result: string, words: string): void => {
    notes.add('not-judged', at, { thing, result }, '');
    said.add(words);
  };
  for (const item of plan.items) {
    if (item.keyword === 'rules') {
      for (const words of ofRules(item)) said.add(words);
      for (const child of item.children)
        if (child.keyword === 'limit' && !isHeld(child) && !isOfCrane(child))
          say(child.at, `The limit on ${limited(child)}`, 'whether the limit holds', `the limit on ${limited(child)}`);
    }
    if (item.keyword === 'load' && item.file !== plan.file) {
      const words = `the load ${item.names[0] ?? ''} of a used file`;
      if (ofLibrary(item, plan)) say(item.nameAt, words.replace('the', 'The'), 'the gross load', words);
      else said.add(words);
    }
    if (item.file !== plan.file) continue;
    for (const words of silent(item)) said.add(words);
    if (item.keyword === 'crane') ofCrane(item, say);
    if (item.keyword === 'ground') say(item.at, 'The ground', 'the pressure on it', 'ground pressure');
    if (item.keyword === 'weather' && (item.clauses.has('wind limit') || item.clauses.has('sail area')))
      say(item.at, 'Wind', 'the wind limit for this load', 'wind on the load');
  }
  return [...said];
}

/** Whether a load stands in a used file that is no plan of its own, so that it is in no lift. */
const ofLibrary = (item: Item, plan: BoundPlan): boolean =>
  item.file !== plan.file &&
  !plan.files.find(({ file }) => file === item.file)?.items.some(({ keyword }) => keyword === 'plan');

/** Why the weight of all loads is not known: loads of used files that nothing here lifts. */
export const loadsElsewhere = (plan: BoundPlan): readonly Cause[] =>
  plan.items
    .filter((item) => item.keyword === 'load' && ofLibrary(item, plan))
    .map((item) => because(`${item.names[0] ?? 'A load'} stands in a used file, and is not lifted here.`, item.nameAt));

type Say = (at: Parameters<Notes['add']>[1], thing: string, result: string, words: string) => void;

/** Nothing holds the gross load against a chart or a crane's capacity yet. */
function ofCrane(crane: Item, say: Say): void {
  const used = "the crane's capacity used";
  for (const position of crane.children)
    if (position.keyword === 'position')
      say(position.at, `The chart at ${position.names[0] ?? 'this position'}`, used, 'crane capacity at each position');
  const capacity = crane.clauses.get('capacity')?.[0];
  if (capacity) say(capacity.at, `The capacity of ${crane.names[0] ?? 'this crane'}`, used, 'capacity of the crane');
}

/** Rules that nothing here asks for. */
function ofRules(rules: Item): readonly string[] {
  return rules.children.flatMap((child) =>
    child.keyword === 'require'
      ? ['what the rules require of a plan']
      : child.keyword === 'category'
        ? ['categories of lift under the rules']
        : child.keyword === 'limit' && !isHeld(child)
          ? [`the limit on ${limited(child)}`]
          : [],
  );
}

/** Limits that a plan is held against: capacity used, flattest angle, tilt, headroom. */
function isHeld(limit: Item): boolean {
  const compare = limit.value?.value?.kind === 'compare' ? limit.value.value.compare : null;
  if (!compare || compare.subject.names.length) return false;
  const { kind } = compare.subject;
  const most = compare.op === '<' || compare.op === '<=';
  const gear = kind === 'gear' || (gearKinds as readonly string[]).includes(kind);
  if (compare.result === 'capacity used') return most && (gear || kind === 'pick');
  if (compare.result === 'angle') return !most && compare.op !== 'between' && (kind === 'sling' || kind === 'gear');
  if (compare.result === 'headroom')
    return !most && compare.op !== 'between' && (kind === 'position' || kind === 'crane');
  return compare.result === 'tilt' && most && kind === 'load';
}

/** Limits on cranes: each position already says that its capacity is not judged. */
const isOfCrane = (limit: Item): boolean => {
  const kind = limit.value?.value?.kind === 'compare' ? limit.value.value.compare?.subject.kind : null;
  return kind === 'crane' || kind === 'position';
};

function limited(limit: Item): string {
  const value = limit.value?.value;
  if (value?.kind !== 'compare') return 'something that could not be read';
  const { row, from, to } = { row: limit.at.row, ...value.text.subjectSpan };
  return row.text.slice(from, to);
}

const loosePicks = 'the tolerance of where picks sit';
const within = keptAlong<Item, boolean>();

/** Whether a pick of the load stands with a tolerance, which is held against nothing. */
const hasLoosePicks = ({ node, children }: Item): boolean =>
  within(node.row, children, (child) => picksOf(child).some(isLoose)).some(Boolean);

const picksOf = (item: Item): readonly Item[] => (item.keyword === 'pick' ? [item] : item.children.flatMap(picksOf));

function isLoose(item: Item): boolean {
  const at = item.clauses.get('at')?.[0]?.value;
  return at?.kind === 'point' && at.at.some((cell) => cell && typeof cell !== 'string' && cell.low < cell.high);
}

/** Statements that are shown as written and held against nothing. */
function silent(item: Item): readonly string[] {
  const words: string[] = [];
  if (item.keyword === 'approval' || item.keyword === 'record') words.push('approvals and records against the plan');
  if (item.keyword === 'surroundings')
    for (const child of item.children)
      words.push(
        child.keyword === 'power line'
          ? 'distance to power lines'
          : child.keyword === 'set-down'
            ? 'what the load is set down on'
            : 'distance to obstructions',
      );
  if (item.keyword === 'load' && hasLoosePicks(item)) words.push(loosePicks);
  if (item.keyword === 'gear' && item.children.some((gear) => isLoose(gear) || gear.children.some(isLoose)))
    words.push('the tolerance of where hooks and points of beams sit');
  return words;
}
