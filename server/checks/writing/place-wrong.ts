// A statement or clause under a parent that does not take it.
import type { Place, TreeNode } from '../../syntax/types.ts';
import { shapeNames } from '../../vocabulary/index.ts';
import { check } from '../check.ts';
import { addBefore, addUnder, here, rewrite, statementAt, treeOf, withMore } from '../edits.ts';
import type { Asked, Edit, Fix } from '../types.ts';
import { list } from '../wording.ts';

export const placeWrong = check({
  slug: 'place-wrong',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `"${facts.keyword}" cannot stand ${facts.parent === 'file' ? margin : `under ${facts.parent}`}; it belongs ${where(facts.parents)}.`,
  fixes: ({ at, facts }, asked) => {
    const own = statementAt(asked, at);
    if (!own || own.row !== at.row) return [];
    if (own.line.indent !== at.from)
      return facts.parents.includes(own.line.statement?.keyword.word ?? '') ? [ownLine(asked, own, at)] : [];
    if (bodies.includes(facts.parent) && (shapeNames as readonly string[]).includes(facts.keyword))
      return [rewrite(at, `part "${here}": ${facts.keyword}`, { title: 'Make it a part: its name' })];
    if (own.children.length) return [];
    const fitting = nearestFitting(asked, own, facts.parents);
    if (fitting) return [moveUnder(own, fitting)];
    return facts.parents.includes('file') ? [moveOut(asked, own)] : [];
  },
});

/** What takes parts: a shape right under it lacks one. */
const bodies = ['load', 'assembly'];
const margin = 'at the left margin';
const most = 5; // as many parents are named as a reader can take in

function where(parents: readonly string[]): string {
  const blocks = parents.filter((parent) => parent !== 'file');
  const named = blocks.length > most ? `${blocks.slice(0, most).join(', ')} and others` : list(blocks, 'or');
  return [...(blocks.length ? [`under ${named}`] : []), ...(parents.includes('file') ? [margin] : [])].join(' or ');
}

/** The nearest statement above the line under which it may stand, else the nearest below. */
function nearestFitting(asked: Asked, own: TreeNode, parents: readonly string[]): TreeNode | null {
  const tree = treeOf(asked, own.row);
  if (!tree) return null;
  const start = tree.rowNumber(own.row);
  const fits = (node: TreeNode | null | undefined) =>
    node && node !== own && parents.includes(node.line.statement?.keyword.word ?? '');
  for (let i = start - 1; i >= 0; i--) if (fits(tree.nodeAt[i])) return tree.nodeAt[i] ?? null;
  for (let i = start + 1; i < tree.rows.length; i++) if (fits(tree.nodeAt[i])) return tree.nodeAt[i] ?? null;
  return null;
}

/** Its text goes right under that statement; its own line stays behind, empty. */
function moveUnder(own: TreeNode, parent: TreeNode): Fix {
  const indent = parent.children.find((child) => child !== own)?.line.indent ?? parent.line.indent + 2;
  const text = own.row.text.trim();
  const title = `Move it under ${parent.row.text.trim()}`;
  const after = { row: parent.row, from: 0, to: parent.row.text.length };
  return {
    title,
    preferred: false,
    edits: [{ kind: 'insert', after, lines: [' '.repeat(indent) + text] }, emptied(own)],
    cursor: null,
  };
}

/** A statement written behind a comma gets a line of its own under the one it stands in. */
function ownLine(asked: Asked, own: TreeNode, at: Place): Fix {
  const text = own.row.text.slice(0, own.line.comment?.from ?? own.row.text.length).trimEnd();
  const before = text.slice(0, at.from).replace(/[,:]?\s*$/, '');
  const child = addUnder(asked, at, [text.slice(at.from)], 'Put it on a line of its own');
  return withMore(child, [{ kind: 'replace', at: { row: own.row, from: before.length, to: text.length }, text: '' }]);
}

const moveOut = (asked: Asked, own: TreeNode): Fix =>
  withMore(addBefore(asked, emptied(own).at, [own.row.text.trim()], 'Move it to the left margin'), [emptied(own)]);

const emptied = ({ row }: TreeNode): Extract<Edit, { kind: 'replace' }> => ({
  kind: 'replace',
  at: { row, from: 0, to: row.text.length },
  text: '',
});
