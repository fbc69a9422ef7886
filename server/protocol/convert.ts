// Places of the text as the protocol writes them: a line and a UTF-16 character, both from 0, and the document's address.
import type { Location, Position, Range } from 'vscode-languageserver';
import type { Stretch } from '../editor/types.ts';
import type { Place, Row, Tree } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/index.ts';

/** A place in a tree; a row that is not of this tree counts as its first. */
export function rangeIn(tree: Tree, { row, from, to }: Place): Range {
  const line = Math.max(tree.rowNumber(row), 0);
  return { start: { line, character: from }, end: { line, character: to } };
}

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

/** A stretch of whole or part lines. */
export const rangeOfStretch = ({ first, from, last, to }: Stretch): Range => ({
  start: { line: first, character: from },
  end: { line: last, character: to },
});

/** Row and offset that a position means in a tree. */
export function spotIn(tree: Tree, position: Position): { readonly row: number; readonly offset: number } {
  const row = Math.min(Math.max(position.line, 0), tree.rows.length - 1);
  const { length } = (tree.rows[row] as Row).text;
  return { row, offset: position.line > row ? length : Math.min(Math.max(position.character, 0), length) };
}
