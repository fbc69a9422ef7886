// Places of the text as the protocol writes them: a line and a UTF-16 character, both from 0, and the document's address.
import type { Location, Position, Range } from 'vscode-languageserver-types';
import type { Place, Row, Span, Tree, TreeNode } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/index.ts';

/** A place in a tree; a row that is not of this tree counts as its first. */
export function rangeIn(tree: Tree, { row, from, to }: Place): Range {
  return rangeOf(Math.max(tree.rowNumber(row), 0), { from, to });
}

export const rangeOf = (line: number, { from, to }: Span): Range => ({ start: { line, character: from }, end: { line, character: to } });

/** The tree of one of the files that a snapshot takes in. */
export function treeOf(snapshot: Snapshot, file: string): Tree | null {
  if (file === snapshot.file) return snapshot.tree;
  return snapshot.plan.files.find((part) => part.file === file)?.tree ?? null;
}

/** Where a place of a snapshot stands, in the client's spelling of the address. Null where its file is not of the snapshot. */
export function locationOf(snapshot: Snapshot, place: Place, spelled: (file: string) => string): Location | null {
  const tree = treeOf(snapshot, place.row.file);
  return tree && { uri: spelled(place.row.file), range: rangeIn(tree, place) };
}

/** The place between two characters that a position of the protocol means: beyond a line's end its end, beyond the text the last. */
export function placeAt(tree: Tree, { line, character }: Position): Place {
  const row = tree.rows[Math.min(Math.max(line, 0), tree.rows.length - 1)] as Row;
  const at = line >= tree.rows.length ? row.text.length : Math.min(Math.max(character, 0), row.text.length);
  return { row, from: at, to: at };
}

/** The statement or clause line at a row and those it belongs to, innermost first. */
export function nodesAt(tree: Tree, line: number): readonly TreeNode[] {
  const found: TreeNode[] = [];
  let node = tree.nodeAt[line] ?? tree.parentAt[line] ?? null;
  while (node) {
    found.push(node);
    node = tree.parentAt[tree.rowNumber(node.row)] ?? null;
  }
  return found;
}
