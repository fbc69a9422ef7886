// Collects the facts of all stages behind a plan: what reading, nesting, binding and reckoning found.
import { joined, keptAlong } from '../plan/index.ts';
import type { Item } from '../plan/types.ts';
import type { ResultProblem, Results } from '../results/types.ts';
import type { Place, Problem, ReadLine, Row, Tree, TreeNode } from '../syntax/types.ts';

/** All facts about a plan and the files it takes in; a fact that has not changed is the same object as before. */
export function problemsOf({ plan, problems }: Results): readonly ResultProblem[] {
  const found: ResultProblem[] = [];
  for (const file of plan.files) {
    ofTree(file.tree, found);
    for (const item of file.items) for (const problem of ofItem(item)) found.push(problem);
  }
  return found.concat(plan.problems, problems);
}

const speaking = { lines: keptAlong<ReadLine | null, boolean>(), nodes: keptAlong<TreeNode | null, boolean>() };

function ofTree({ rows, lines: read, nodeAt, problems }: Tree, found: ResultProblem[]): void {
  const [first] = rows;
  if (!first) return;
  const ofLines = speaking.lines(first, read, (line) => Boolean(line?.problems.length));
  const ofNodes = speaking.nodes(first, nodeAt, (node) => Boolean(node?.problems.length));
  for (let i = 0; i < rows.length; i++) {
    if (ofLines[i]) found.push(...ofLine(rows[i] as Row, read[i] as ReadLine));
    if (ofNodes[i]) found.push(...((nodeAt[i] as TreeNode).problems as readonly ResultProblem[]));
  }
  found.push(...(problems as readonly ResultProblem[]));
}

const lines = new WeakMap<Row, { readonly line: ReadLine; readonly problems: readonly ResultProblem[] }>();

/** A line read is shared by all rows of the same text: here its facts get the row as their place. */
function ofLine(row: Row, line: ReadLine): readonly ResultProblem[] {
  const known = lines.get(row);
  if (known?.line === line) return known.problems;
  const problems = line.problems.map(({ slug, span, facts }): Problem => {
    const at: Place = { row, from: span.from, to: span.to };
    return { slug, at, related: [], facts };
  }) as readonly Problem[] as readonly ResultProblem[];
  lines.set(row, { line, problems });
  return problems;
}

const within = keptAlong<Item, readonly ResultProblem[]>();

/** Its own facts and those of the statements under it. */
function ofItem({ node, problems, children }: Item): readonly ResultProblem[] {
  return children.length ? joined([problems, ...within(node.row, children, ofItem)]) : problems;
}
