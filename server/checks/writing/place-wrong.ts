// A statement or clause under a parent that does not take it.
import type { TreeNode } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { remove, statementAt, treeOf } from '../edits.ts';
import type { Asked, Fix } from '../types.ts';
import { list } from '../wording.ts';

export const placeWrong = check({
  slug: 'place-wrong',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `"${facts.keyword}" cannot stand under ${facts.parent}; it belongs under ${list(facts.parents, 'or')}.`,
  fixes: ({ at, facts }, asked) => {
    const own = statementAt(asked, at);
    if (!own || own.row !== at.row || own.line.indent !== at.from || own.children.length) return [];
    const fitting = nearestFitting(asked, own, facts.parents);
    return fitting ? [moveUnder(own, fitting)] : [];
  },
});

/** The nearest statement above the line under which it may stand, else the nearest below. */
function nearestFitting(asked: Asked, own: TreeNode, parents: readonly string[]): TreeNode | null {
  const tree = treeOf(asked, own.row);
  if (!tree) return null;
  const start = tree.rowNumber(own.row);
  const fits = (node: TreeNode | null | undefined) => node && node !== own && parents.includes(node.line.statement?.keyword.word ?? '');
  for (let i = start - 1; i >= 0; i--) if (fits(tree.nodeAt[i])) return tree.nodeAt[i] ?? null;
  for (let i = start + 1; i < tree.rows.length; i++) if (fits(tree.nodeAt[i])) return tree.nodeAt[i] ?? null;
  return null;
}

/** Its text goes right under that statement; its own line stays behind, empty. */
function moveUnder(own: TreeNode, parent: TreeNode): Fix {
  const indent = parent.children.find((child) => child !== own)?.line.indent ?? parent.line.indent + 2;
  const text = own.row.text.trim();
  const title = `Move it under ${parent.row.text.trim()}`;
  const { edits } = remove({ row: own.row, from: 0, to: own.row.text.length }, title, false);
  const after = { row: parent.row, from: 0, to: parent.row.text.length };
  return { title, preferred: false, edits: [{ kind: 'insert', after, lines: [' '.repeat(indent) + text] }, ...edits], cursor: null };
}
