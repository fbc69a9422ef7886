// Names of cranes, charts and stages that clauses use: each must be in the plan or its libraries.

import type { BoundPlan } from '../plan/index.ts';
import { fold, type Item, type TableKind } from '../plan/index.ts';
import { nearest } from '../quantities/nearest.ts';
import type { Notes } from './notes.ts';

const kinds: readonly TableKind[] = ['crane', 'chart', 'stage'];

/** Notes every such name that stands for nothing. */
export function unknownNames(plan: BoundPlan, notes: Notes): void {
  const visit = (item: Item): void => {
    for (const list of item.clauses.values())
      for (const clause of list) {
        const kind = kinds.find((one) => one === clause.row.names);
        if (!kind || item.keyword === 'expect' || clause.value?.kind !== 'names') continue;
        for (const use of clause.value.names) {
          const name = use.parts.at(-1)?.text ?? '';
          if (plan.names.find(kind, fold(name)).length) continue;
          const known = plan.names.things.filter((thing) => thing.kind === kind).map((thing) => thing.name);
          const at = { row: clause.at.row, from: use.span.from, to: use.span.to };
          const facts = { name, nearest: nearest(name, known), wanted: `a ${kind}`, is: null, declare: null };
          notes.add('name-unknown', at, facts, '');
        }
      }
    for (const child of item.children) visit(child);
  };
  for (const item of plan.items) visit(item);
}
