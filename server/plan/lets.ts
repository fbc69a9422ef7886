// Values given with `let`: worked out when asked, in any order, over all files of a plan.

import { nearest } from '../quantities/nearest.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { Place, Tree, TreeNode } from '../syntax/types.ts';
import type { Environment } from './bind.ts';
import { evaluate, type Sheet } from './evaluate.ts';
import { fold } from './fold.ts';
import type { PlanProblem } from './types.ts';

interface Let {
  readonly node: TreeNode;
  readonly name: string;
}

const kept = new Map<
  string,
  { readonly nodes: readonly TreeNode[]; readonly environment: Environment; readonly problems: readonly PlanProblem[] }
>();
const most = 64; // plans whose environment is kept

/** The environment statements are typed in. The same object as last time for this plan while its `let` lines are the same. */
export function environmentOf(
  file: string,
  trees: readonly Tree[],
): { readonly environment: Environment; readonly problems: readonly PlanProblem[] } {
  const nodes = trees.flatMap((tree) => tree.nodes.filter((node) => node.line.statement?.keyword.word === 'let'));
  const known = kept.get(file);
  if (known && known.nodes.length === nodes.length && known.nodes.every((node, i) => node === nodes[i])) return known;
  const made = { nodes, ...build(nodes) };
  kept.delete(file);
  kept.set(file, made);
  if (kept.size > most) kept.delete(kept.keys().next().value as string);
  return made;
}

function build(nodes: readonly TreeNode[]): {
  readonly environment: Environment;
  readonly problems: readonly PlanProblem[];
} {
  const table = new Map<string, Let[]>();
  for (const node of nodes) {
    const name = node.line.statement?.name?.parts.at(-1)?.text;
    if (!name) continue;
    const key = fold(name);
    table.set(key, [...(table.get(key) ?? []), { node, name }]);
  }
  const names = [...table.values()].flatMap((lets) => lets.slice(0, 1).map((let_) => let_.name));
  const values = new Map<string, Quantity | 'open'>();
  const problems: PlanProblem[] = [];
  const running: string[] = [];
  const lets = (key: string): Quantity | 'open' | null => {
    const found = table.get(key);
    if (!found) return null;
    const value = values.get(key);
    if (value !== undefined) return value;
    if (running.includes(key)) {
      circle(running.slice(running.indexOf(key)), table, problems);
      return 'open';
    }
    running.push(key);
    const result = found.length > 1 ? 'open' : valueOf((found[0] as Let).node, lets, names);
    running.pop();
    if (!values.has(key)) values.set(key, result);
    return values.get(key) as Quantity | 'open';
  };
  for (const key of table.keys()) lets(key);
  return { environment: { lets, names }, problems };
}

/** Its problems are found again, and said, when the statement itself is bound. */
function valueOf(node: TreeNode, lets: Environment['lets'], names: readonly string[]): Quantity | 'open' {
  const value = node.line.statement?.value;
  if (node.line.opens || value?.kind !== 'amount' || value.amount.kind !== 'sum') return 'open';
  const sheet: Sheet = { row: node.row, lets, nearest: (name) => nearest(name, names), problems: [] };
  const result = evaluate(value.amount.value, sheet, 'let', 'any');
  return result ?? 'open';
}

function circle(keys: readonly string[], table: ReadonlyMap<string, readonly Let[]>, problems: PlanProblem[]): void {
  const lets = keys.map((key) => table.get(key)?.[0] as Let);
  const at = (node: TreeNode): Place => {
    const span = node.line.statement?.name?.span ?? { from: 0, to: 0 };
    return { row: node.row, from: span.from, to: span.to };
  };
  const [first, ...others] = lets;
  if (!first || problems.some((problem) => problem.slug === 'definition-circle' && problem.at.row === first.node.row))
    return;
  problems.push({
    slug: 'definition-circle',
    at: at(first.node),
    related: others.map((other) => ({ at: at(other.node), says: 'in the same circle' })),
    facts: { names: [...lets, first].map((let_) => let_.name) },
  });
}
