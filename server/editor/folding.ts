// What can be folded: what stands under a statement, runs of `use` lines and of comments, and stretches between # region and # endregion.
import type { Tree, TreeNode } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { lastRow } from './items.ts';

export interface Fold {
  readonly first: number;
  readonly last: number;
  readonly kind: 'block' | 'imports' | 'comment' | 'region';
}

export function folding({ tree }: Snapshot): readonly Fold[] {
  return [...blocks(tree, tree.nodes), ...uses(tree), ...comments(tree), ...regions(tree)]
    .filter(({ first, last }) => last > first)
    .sort((a, b) => a.first - b.first || b.last - a.last);
}

const blocks = (tree: Tree, nodes: readonly TreeNode[]): readonly Fold[] =>
  nodes.flatMap((node) =>
    node.children.length
      ? [
          { first: tree.rowNumber(node.row), last: lastRow(tree, node), kind: 'block' as const },
          ...blocks(tree, node.children),
        ]
      : [],
  );

const uses = (tree: Tree): readonly Fold[] =>
  runs(tree, 'imports', (row) => tree.lines[row]?.statement?.keyword.word === 'use');

const comments = (tree: Tree): readonly Fold[] =>
  runs(
    tree,
    'comment',
    (row) => tree.lines[row]?.kind === 'comment' && !/#\s*(?:end)?region\b/.test(tree.rows[row]?.text ?? ''),
  );

/** Stretches of rows, one right under the other, for which it holds. */
function runs(tree: Tree, kind: Fold['kind'], holds: (row: number) => boolean | undefined): readonly Fold[] {
  const found: Fold[] = [];
  for (let row = 0; row < tree.rows.length; row++) {
    if (!holds(row)) continue;
    const first = row;
    while (row + 1 < tree.rows.length && holds(row + 1)) row++;
    found.push({ first, last: row, kind });
  }
  return found;
}

function regions(tree: Tree): readonly Fold[] {
  const open: number[] = [];
  const found: Fold[] = [];
  tree.rows.forEach(({ text }, row) => {
    const [, end] = /^\s*#\s*(end)?region\b/.exec(text) ?? [null, null];
    if (end === null) return;
    if (end === undefined) open.push(row);
    else {
      const first = open.pop();
      if (first !== undefined) found.push({ first, last: row, kind: 'region' });
    }
  });
  return found;
}
