// Names of cranes, charts and stages that clauses use: each must be in the plan or its libraries.
import { type BoundClause, type BoundPlan, fold, type Item, joined, keptAlong, type TableKind } from '../plan/index.ts';
import { nearest } from '../quantities/nearest.ts';
import type { Notes } from './notes.ts';

const kinds: readonly TableKind[] = ['crane', 'chart', 'stage'];

/** Notes every such name that stands for nothing. */
export function unknownNames(plan: BoundPlan, notes: Notes): void {
  for (const { clause, kind } of plan.items.flatMap(uses)) {
    if (clause.value?.kind !== 'names') continue;
    for (const use of clause.value.names) {
      const name = use.parts.at(-1)?.text ?? '';
      if (plan.names.find(kind, fold(name)).length) continue;
      const known = plan.names.kind(kind).map((thing) => thing.name);
      const at = { row: clause.at.row, from: use.span.from, to: use.span.to };
      const facts = { name, nearest: nearest(name, known), wanted: `a ${kind}`, is: null, declare: null };
      notes.add('name-unknown', at, facts, '');
    }
  }
}

interface Use {
  readonly clause: BoundClause;
  readonly kind: TableKind;
}

const within = keptAlong<Item, readonly Use[]>();

/** The clauses in and under an item that name such a thing. */
function uses(item: Item): readonly Use[] {
  const own = item.keyword === 'expect' ? [] : [...item.clauses.values()].flat().flatMap(useIn);
  return item.children.length ? joined([own, ...within(item.node.row, item.children, uses)]) : own;
}

function useIn(clause: BoundClause): readonly Use[] {
  const kind = kinds.find((one) => one === clause.row.names);
  return kind ? [{ clause, kind }] : [];
}
