// The `waive` lines of a plan: which findings they set aside, and why others stay.
import { fold, namesOf, rangeNames, textOf } from '../plan/index.ts';
import type { BoundPlan, Item } from '../plan/types.ts';
import type { ResultProblem, Results } from '../results/types.ts';
import type { NameUse, Place, TreeNode } from '../syntax/types.ts';
import type { Effect, Finding, Severity } from './types.ts';

/** What the waivers make of one finding: set aside, or refused by a line that names it; null where no line does. */
export type Ruling =
  | { readonly waived: NonNullable<Finding['waived']> }
  | { readonly refused: { readonly at: Place; readonly message: string } }
  | null;

/** Judges findings by the waivers of the plan's own file; a library's waivers set nothing aside in the plans that use it. */
export function waivers(results: Results): (problem: ResultProblem, severity: Severity, effect: Effect) => Ruling {
  const lines = (results.plan.files[0]?.items ?? [])
    .filter((item) => item.keyword === 'waive')
    .map((item) => waiver(item, results.plan));
  return (problem, severity, effect) => {
    const fitting = lines.filter((line) => line.slug === problem.slug && isAbout(line, problem, results));
    const [first] = fitting;
    if (!first) return null;
    const barred = notWaivable(problem, severity, effect);
    const good = barred === null ? fitting.find((line) => line.flaw === null) : undefined;
    if (good) return { waived: { reason: good.reason, approvedBy: good.approvedBy } };
    return { refused: { at: first.at, message: `This does not set it aside: ${barred ?? first.flaw}.` } };
  };
}

interface Waiver {
  readonly slug: string;
  readonly names: ReadonlySet<string> | null; // folded; null: wherever it is found
  readonly reason: string;
  readonly approvedBy: string;
  readonly flaw: string | null; // why it counts for nothing
  readonly at: Place;
}

function waiver(item: Item, plan: BoundPlan): Waiver {
  const [reason, approvedBy] = [textOf(item, 'reason')?.trim() ?? '', textOf(item, 'approved by')?.trim() ?? ''];
  const on = item.clauses.has('on') ? new Set(namesOf(item, 'on').flatMap(everyName).map(fold)) : null;
  return {
    slug: textOf(item, '') ?? '',
    names: on,
    reason,
    approvedBy,
    flaw: flawOf(item, plan, reason, approvedBy),
    at: item.at,
  };
}

function flawOf(item: Item, plan: BoundPlan, reason: string, approvedBy: string): string | null {
  if (item.opens.length) return 'part of this line cannot be read';
  if (!reason || !approvedBy) return 'no person or no reason is named';
  if (!item.clauses.has('until')) return null;
  const [until, day] = [textOf(item, 'until'), plan.head && textOf(plan.head, 'date')];
  if (until === null || !day) return 'whether it has ended cannot be told without a date of the plan';
  return day > until ? `it ended on ${until}` : null;
}

/** Why a finding can never be set aside; null where a named person may. */
function notWaivable({ slug, facts }: ResultProblem, severity: Severity, effect: Effect): string | null {
  if (effect === 'open' || effect === 'opens centre' || slug === 'hang-unstable') return 'it is not known';
  if (slug === 'leg-overloaded') return 'it is above what the item may carry, or above a limit on that';
  if (slug === 'pull-barred' || (slug === 'bend-tight' && facts.least !== null))
    return 'what is left of its capacity is not known';
  if (slug === 'expect-failed' && facts.value === null) return 'it is not known';
  if (slug === 'expect-failed' && facts.result === 'capacity used' && (facts.value ?? 0) > 1)
    return 'it is above what may be carried';
  return severity === 'error' && effect !== 'stands' ? 'its figures are at odds with each other' : null;
}

/** Whether a waiver's `on` names what a finding is about: the thing itself, what its line declares or uses in a leg, or what it stands in. */
function isAbout({ names }: Waiver, problem: ResultProblem, results: Results): boolean {
  return names === null || subjects(problem, results).some((name) => names.has(fold(name)));
}

function subjects(problem: ResultProblem, { plan, legs }: Results): readonly string[] {
  const tree = plan.files.find((part) => part.file === problem.at.row.file)?.tree;
  const nodes: TreeNode[] = [];
  for (
    let node = tree?.nodeAt[tree.rowNumber(problem.at.row)];
    tree && node;
    node = tree.parentAt[tree.rowNumber(node.row)]
  )
    nodes.push(node);
  const declared = plan.names.things.filter((thing) => nodes.includes(thing.item.node)).map((thing) => thing.name);
  const used = legs
    .filter((leg) => nodes.includes(leg.item.node))
    .flatMap((leg) => leg.steps.map((step) => step.thing.name));
  const said = Object.entries(problem.facts).flatMap(([key, value]) =>
    about.has(key) && typeof value === 'string' ? [value] : [],
  );
  return [...said, ...declared, ...used];
}
const about: ReadonlySet<string> = new Set([
  'item',
  'load',
  'part',
  'leg',
  'a',
  'b',
  'material',
  'reading',
  'subject',
  'name',
]);

/** A name as used, or all names of a range. */
function everyName({ parts, until }: NameUse): readonly string[] {
  const name = parts.at(-1)?.text ?? '';
  const range = until ? rangeNames(name, until.text) : [name];
  return typeof range === 'string' ? [name] : range;
}
