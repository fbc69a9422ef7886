// Finds the statements at rows of a text: the typed item of a line, those in a range of lines, and what stands around them.
import { isListed } from '../plan/index.ts';
import type { BoundClause, BoundPlan, Item, PlanFile } from '../plan/types.ts';
import type { Place, Tree, TreeNode } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import type { Stretch } from './types.ts';

/** The file asked about, as the plan took it in. */
export const ownFile = ({ plan, file }: Snapshot): PlanFile | undefined => plan.files.find((one) => one.file === file);

/** The statement node of a row: of a clause line the statement it belongs to; null on blank lines and comments. */
export function statementAt(tree: Tree, row: number): TreeNode | null {
  const node = tree.nodeAt[row] ?? null;
  return node?.line.kind === 'clauses' ? (tree.parentAt[row] ?? null) : node;
}

/** The item of a row: the statement on it, or the one whose clauses stand on it; null where none could be read. */
export function itemAt(file: PlanFile, row: number): Item | null {
  const trail: TreeNode[] = [];
  const { tree } = file;
  for (let node = statementAt(tree, row); node; node = tree.parentAt[tree.rowNumber(node.row)] ?? null)
    trail.unshift(node);
  let items = file.items;
  let found: Item | null = null;
  for (const node of trail) {
    found = items.find((item) => item.node === node) ?? null;
    if (!found) return null;
    items = found.children;
  }
  return found;
}

/** The items whose statements begin in those rows, from the top down; work grows with the rows asked for, not with the file. */
export function itemsIn({ tree, items }: PlanFile, first: number, last: number): readonly Item[] {
  const found: Item[] = [];
  const rowOf = (item: Item) => tree.rowNumber(item.node.row);
  const within = (list: readonly Item[]): void => {
    for (let i = lastBefore(list, first, rowOf); i < list.length; i++) {
      const item = list[i] as Item;
      const row = rowOf(item);
      if (row > last) return;
      if (row >= first && !isListed(item)) found.push(item);
      if (item.children.length) within(item.children);
    }
  };
  within(items);
  return found;
}

/** Where the last item stands that begins before a row, among items in the order of the text; 0 where none does. */
function lastBefore(list: readonly Item[], row: number, rowOf: (item: Item) => number): number {
  let [low, high] = [0, list.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (rowOf(list[middle] as Item) < row) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The top-level statement a row is in. */
export function topOf(tree: Tree, row: number): TreeNode | null {
  let node = tree.nodeAt[row] ?? tree.parentAt[row] ?? null;
  for (let above = node; above; above = tree.parentAt[tree.rowNumber(above.row)] ?? null) node = above;
  return node;
}

/** Every item written in a file, each before what stands under it. */
export const allItems = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item) => (isListed(item) ? [] : [item, ...allItems(item.children)]));

/** The clause of an item at an offset of a row, its own value (keyword '') among them; null between clauses. */
export function clauseAt(item: Item, place: Pick<Place, 'row'>, offset: number): BoundClause | null {
  const own = item.value ? [item.value] : [];
  const all = [...[...item.clauses.values()].flat(), ...own];
  return all.find(({ at }) => at.row === place.row && offset >= at.from && offset <= at.to) ?? null;
}

/** The last row of a node and of all that stands under it. */
export function lastRow(tree: Tree, node: TreeNode): number {
  const last = node.children.at(-1);
  return last ? lastRow(tree, last) : tree.rowNumber(node.row);
}

/** A node with all that stands under it. */
export function wholeOf(tree: Tree, node: TreeNode): Stretch {
  const last = lastRow(tree, node);
  return {
    first: tree.rowNumber(node.row),
    from: firstColumn(node.row.text),
    last,
    to: (tree.rows[last]?.text ?? '').trimEnd().length,
  };
}

export const firstColumn = (text: string): number => text.length - text.trimStart().length;

/** Comment lines right above a row that stand as deep as it, from the top down, without their `#`. */
export function commentAbove(tree: Tree, row: number): readonly string[] {
  const indent = tree.lines[row]?.indent;
  const lines: string[] = [];
  for (let above = row - 1; above >= 0; above--) {
    const line = tree.lines[above];
    if (line?.kind !== 'comment' || line.indent !== indent) break;
    lines.unshift(line.text.trim().replace(/^#\s?/, ''));
  }
  return lines;
}

/** The tree of a place, and its row's number there. */
export function spotOf(plan: BoundPlan, at: Pick<Place, 'row'>): { readonly tree: Tree; readonly row: number } | null {
  const tree = plan.files.find(({ file }) => file === at.row.file)?.tree;
  const row = tree?.rowNumber(at.row) ?? -1;
  return tree && row >= 0 ? { tree, row } : null;
}

/** Whether two places are the same stretch of the same row. */
export const samePlace = (a: Place, b: Place): boolean => a.row === b.row && a.from === b.from && a.to === b.to;
