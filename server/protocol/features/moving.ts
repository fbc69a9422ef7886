// Files that are moved or given another name: the paths of `use` lines follow, their own and those of whoever takes them in.
import type { FileRename, WorkspaceEdit } from 'vscode-languageserver';
import type { Edit } from '../../checks/index.ts';
import { inQuotes } from '../../editor/spelling.ts';
import { folderOf } from '../../report/index.ts';
import { editOf, textEdit } from '../edits.ts';
import type { Session } from '../session.ts';

export function answerMoving(session: Session): void {
  session.connection.workspace.onWillRenameFiles(
    session.answer<{ readonly files: readonly FileRename[] }, WorkspaceEdit | null>(
      'moving files',
      null,
      ({ files }) => {
        const moved = movedFiles(session, files);
        const concerned = new Set([...moved.keys()].flatMap((file) => [file, ...session.survey.takersOf(file)]));
        const byFile = new Map(
          [...concerned]
            .map((file) => [file, editsIn(session, file, moved)] as const)
            .filter(([, edits]) => edits.length > 0),
        );
        return byFile.size ? editOf(session, byFile) : null;
      },
    ),
  );
}

/** Every known file that gets another address, with that address; what lies in a folder goes with it. */
function movedFiles(session: Session, files: readonly FileRename[]): ReadonlyMap<string, string> {
  const moved = new Map<string, string>();
  for (const { oldUri, newUri } of files) {
    const [from, to] = [session.addresses.of(oldUri), session.addresses.of(newUri)];
    for (const file of session.survey.files)
      if (file === from || file.startsWith(`${from}/`)) moved.set(file, to + file.slice(from.length));
  }
  return moved;
}

function editsIn(session: Session, file: string, moved: ReadonlyMap<string, string>) {
  const snapshot = session.workspace.snapshot(file);
  const uses = snapshot?.plan.files[0]?.uses ?? [];
  const folder = folderOf(moved.get(file) ?? file);
  return uses.flatMap(({ at, path, file: target }) => {
    if (!snapshot || target === null) return [];
    const after = session.addresses.path(folder, moved.get(target) ?? target);
    const edit: Edit = { kind: 'replace', at, text: inQuotes(after) };
    return after === session.addresses.path(folderOf(file), target) || after === path
      ? []
      : [textEdit(snapshot.tree, edit)];
  });
}
