// Changes of text in the protocol's form: by document, with the version they were made for where the client can tell.
import type { TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Edit } from '../checks/index.ts';
import type { Tree } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/index.ts';
import { rangeIn, treeOf } from './convert.ts';
import type { Session } from './session.ts';

/** Stands in a text where the cursor goes afterwards. */
const cursorMark = '\uE000';

/** Changes of the files that some snapshots take in; `cursor` is an offset in the text of the first. */
export function workspaceEdit(
  session: Session,
  snapshots: readonly Snapshot[],
  edits: readonly Edit[],
  cursor: number | null = null,
): WorkspaceEdit {
  const byFile = new Map<string, TextEdit[]>();
  for (const [n, edit] of edits.entries()) {
    const { file } = (edit.kind === 'replace' ? edit.at : edit.after).row;
    const tree = snapshots.map((snapshot) => treeOf(snapshot, file)).find((one) => one !== null);
    const marked = n === 0 && cursor !== null && session.announced.snippetEdits ? withCursor(edit, cursor) : edit;
    if (tree) byFile.set(file, [...(byFile.get(file) ?? []), textEdit(tree, marked)]);
  }
  return editOf(session, byFile);
}

function withCursor(edit: Edit, cursor: number): Edit {
  const text = edit.kind === 'replace' ? edit.text : edit.lines.join('\n');
  const marked = text.slice(0, cursor) + cursorMark + text.slice(cursor);
  return edit.kind === 'replace' ? { ...edit, text: marked } : { ...edit, lines: marked.split('\n') };
}

/** Edits by file as one change. */
export function editOf(
  { announced, addresses, workspace }: Session,
  byFile: ReadonlyMap<string, readonly TextEdit[]>,
): WorkspaceEdit {
  const files = [...byFile];
  if (!announced.versionedEdits)
    return { changes: Object.fromEntries(files.map(([file, edits]) => [addresses.spelled(file), [...edits]])) };
  return {
    documentChanges: files.map(
      ([file, edits]): TextDocumentEdit => ({
        textDocument: { uri: addresses.spelled(file), version: workspace.live(file)?.version ?? null },
        edits: edits.map(({ range, newText }) =>
          newText.includes(cursorMark)
            ? { range, snippet: { kind: 'snippet', value: snippet(newText) } }
            : { range, newText },
        ),
      }),
    ),
  };
}

const snippet = (text: string): string => text.replace(/[\\$}]/g, '\\$&').replace(cursorMark, '$0');

/** One change of a text. Whole lines go in behind the line's own end, so that a last line without one gets it. */
export function textEdit(tree: Tree, edit: Edit): TextEdit {
  if (edit.kind === 'replace') return { range: rangeIn(tree, edit.at), newText: edit.text };
  const { row } = edit.after;
  const lines = edit.lines.join(tree.newline);
  if (edit.before) return { range: rangeIn(tree, { row, from: 0, to: 0 }), newText: lines + tree.newline };
  return { range: rangeIn(tree, { row, from: row.text.length, to: row.text.length }), newText: tree.newline + lines };
}
