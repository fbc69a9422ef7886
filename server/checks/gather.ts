// Collects the facts of all stages behind a plan: what reading, nesting, binding and reckoning found.
import type { Item } from '../plan/types.ts';
import type { ResultProblem, Results } from '../results/types.ts';
import type { Place, Problem, ReadLine, Row, Tree } from '../syntax/types.ts';

/** All facts about a plan and the files it takes in; a fact that has not changed is the same object as before. */
export function problemsOf({ plan, problems }: Results): readonly ResultProblem[] {
  const found: ResultProblem[] = [];
  for (const file of plan.files) {
    ofTree(file.tree, found);
    for (const item of file.items) found.push(...ofItem(item));
  }
  found.push(...plan.problems, ...problems);
  return found;
}

function ofTree(tree: Tree, found: ResultProblem[]): void {
  tree.rows.forEach((row, i) => {
    const line = tree.lines[i];
    if (line?.problems.length) found.push(...ofLine(row, line));
    const nesting = tree.nodeAt[i]?.problems;
    if (nesting?.length) found.push(...(nesting as readonly ResultProblem[]));
  });
  found.push(...(tree.problems as readonly ResultProblem[]));
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

const items = new WeakMap<Item, readonly ResultProblem[]>();

/** Its own facts and those of the statements under it; items keep their identity while nothing in them changes. */
function ofItem(item: Item): readonly ResultProblem[] {
  let problems = items.get(item);
  if (!problems) {
    problems = [...item.problems, ...item.children.flatMap(ofItem)];
    items.set(item, problems);
  }
  return problems;
}
