// Puts a plan together: its files, its items, its names. The same trees give the same objects.
import { attach, withLists } from './attached.ts';
import { bindItem, misplaced } from './bind.ts';
import { cite } from './cited.ts';
import { type Source, type Taken, takeFiles } from './files.ts';
import { environmentOf } from './lets.ts';
import { buildNames } from './names.ts';
import { allOpen, lostLines } from './read.ts';
import type { BoundPlan, Item, Place, PlanFile, PlanProblem } from './types.ts';

/** A plan or library bound with all it takes in. */
export function bindPlan(file: string, source: Source): BoundPlan {
  const taken = takeFiles(file, source);
  const lets = environmentOf(
    file,
    taken.files.map((part) => part.tree),
  );
  const bound = taken.files.map((part): PlanFile => ({ ...part, items: itemsOf(part, lets.environment) }));
  const { attached, problems: unattached } = attach(bound, source);
  const { cited, problems: changed } = cite(bound, source);
  const files = bound.map(
    (part): PlanFile => ({ ...part, items: part.items.map((item) => withLists(item, attached)) }),
  );
  const { names, problems } = buildNames(files);
  const own = files[0]?.items ?? [];
  const head = own.find((item) => item.keyword === 'plan') ?? null;
  const items = files.flatMap((part, i) =>
    i === 0 ? part.items : part.items.filter((item) => item.keyword !== 'plan' && item.keyword !== 'expect'),
  );
  return {
    file,
    files,
    head,
    units: unitsOf(head),
    names,
    attached,
    cited,
    items,
    problems: [...taken.problems, ...unattached, ...changed, ...lets.problems, ...problems, ...once(own)],
    opens: [
      ...files.flatMap((part) => opensOf(part)),
      ...taken.problems.filter((problem) => problem.slug === 'file-missing').map((problem) => problem.at),
    ],
  };
}

const itemsOf = (part: Taken, environment: Parameters<typeof bindItem>[1]): readonly Item[] =>
  part.tree.nodes.filter((node) => node.line.kind === 'statement').map((node) => bindItem(node, environment, 'file'));

/** Results are shown in the units the plan names; metric where it names none. */
function unitsOf(head: Item | null): 'US' | 'metric' {
  const value = head?.clauses.get('units')?.[0]?.value;
  return value?.kind === 'word' && value.word === 'US' ? 'US' : 'metric';
}

/** Lines at file level that nothing can be made of. */
function opensOf({ tree, items }: PlanFile): readonly Place[] {
  const lines = tree.nodes
    .filter(
      (node) =>
        node.line.kind === 'unread' ||
        (node.line.kind === 'clauses' && node.line.opens) ||
        node.problems.length > 0 ||
        misplaced(node),
    )
    .map((node): Place => ({ row: node.row, from: node.line.indent, to: node.row.text.length }));
  return [...lines, ...items.flatMap(opensOfItem), ...tree.problems.map((problem) => problem.at)];
}

/** Loads, gear, rigs and cranes open their own sums. A rule or a used file that cannot be read, or a line lost under anything else, opens the plan's. */
function opensOfItem(item: Item): readonly Place[] {
  if (item.keyword === 'load' || item.keyword === 'gear' || item.keyword === 'rig' || item.keyword === 'crane')
    return [];
  return item.keyword === 'rules' || item.keyword === 'use' ? allOpen(item) : lostLines(item.node);
}

/** Statements that may stand only once under their parent. */
function once(items: readonly Item[]): readonly PlanProblem[] {
  const problems: PlanProblem[] = [];
  const first = new Map<string, Item>();
  for (const item of items) {
    if (!item.row.once) continue;
    const other = first.get(item.keyword);
    if (other)
      problems.push({
        slug: 'stated-twice',
        at: item.at,
        related: [{ at: other.at, says: 'stated here' }],
        facts: { name: `"${item.keyword}"`, place: 'this file' },
      });
    else first.set(item.keyword, item);
  }
  return problems;
}
