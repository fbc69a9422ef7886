// Identities of statements that stay while lines move: they tie rows of the sheet to lines of the text.
import { isListed } from '../plan/index.ts';
import type { Item } from '../plan/types.ts';
import type { Place, TreeNode } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { firstColumn, ownFile, spotOf, statementAt, topOf } from './items.ts';

/** The identity of the statement at a place, one word; null for a place of no file of the plan. */
export function idOf(s: Snapshot, place: Place): string | null {
  const spot = spotOf(s.plan, place);
  const node = spot && (statementAt(spot.tree, spot.row) ?? topOf(spot.tree, spot.row));
  if (!spot || !node) return null;
  const ids = idsOf(s);
  return ids.byNode.get(node) ?? null;
}

/** The identities at a row of the file asked about, innermost first: its statement, then what that stands in. */
export function marksAt(s: Snapshot, row: number): readonly string[] {
  const { byNode } = idsOf(s);
  const found: string[] = [];
  for (
    let node: TreeNode | null = statementAt(s.tree, row) ?? s.tree.parentAt[row] ?? null;
    node;
    node = s.tree.parentAt[s.tree.rowNumber(node.row)] ?? null
  ) {
    const id = byNode.get(node);
    if (id) found.push(id);
  }
  return found;
}

/** Where the statement with that identity stands: its whole line, without the indentation; null where there is none. */
export function placeOf(s: Snapshot, id: string): Place | null {
  const item = idsOf(s).byId.get(id);
  return item ? { row: item.node.row, from: firstColumn(item.node.row.text), to: item.node.row.text.length } : null;
}

/** The item with that identity. */
export const itemOf = (s: Snapshot, id: string): Item | null => idsOf(s).byId.get(id) ?? null;

interface Ids {
  readonly byNode: ReadonlyMap<TreeNode, string>;
  readonly byId: ReadonlyMap<string, Item>;
}

const kept = new WeakMap<Snapshot, Ids>();

/** `load:Pumpskid/part:Rails`: keyword and name on the way down; what has no name, or a name given twice, is counted. */
function idsOf(s: Snapshot): Ids {
  const known = kept.get(s);
  if (known) return known;
  const byNode = new Map<TreeNode, string>();
  const byId = new Map<string, Item>();
  const name = (items: readonly Item[], prefix: string): void => {
    const counts = new Map<string, number>();
    for (const item of items) {
      if (isListed(item)) continue; // the list's own line stands for it
      const own = word(`${item.keyword}${item.names.length ? `:${item.names[0]}` : ''}`.replace(/\s+/g, '')).replaceAll(
        '%3A',
        ':',
      );
      const n = (counts.get(own) ?? 0) + 1;
      counts.set(own, n);
      const id = `${prefix}${own}${n > 1 ? `~${n}` : ''}`;
      byNode.set(item.node, id);
      byId.set(id, item);
      name(item.children, `${id}/`);
    }
  };
  const own = ownFile(s);
  const bases: string[] = [];
  for (const file of s.plan.files) {
    const base = encodeURIComponent(file.file.slice(file.file.lastIndexOf('/') + 1));
    const same = bases.filter((one) => one === base).length;
    name(file.items, file === own ? '' : `${base}${same ? `~${same + 1}` : ''}!`);
    bases.push(base);
  }
  const ids = { byNode, byId };
  kept.set(s, ids);
  return ids;
}

/** One word of any text; half a character, which a text may hold, becomes the sign for one that is missing. */
const word = (text: string): string => encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'));
