// Finding one's way: where a name is declared and used, in all files, and giving it another.
import {
  type DocumentHighlight,
  DocumentHighlightKind,
  type Location,
  type Range,
  ResponseError,
  type SymbolInformation,
  SymbolKind,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { definition, highlights, references } from '../../editor/definition.ts';
import { symbols } from '../../editor/outline.ts';
import { prepareRename, rename } from '../../editor/rename.ts';
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { locationOf, rangeIn, spotIn } from '../convert.ts';
import { workspaceEdit } from '../edits.ts';
import type { Session } from '../session.ts';

export function answerFinding(session: Session): void {
  const { connection } = session;
  const locations = (snapshots: readonly Snapshot[], places: readonly Place[]): Location[] =>
    places.flatMap(
      (place) =>
        snapshots
          .map((one) => locationOf(one, place, (file) => session.addresses.spelled(file)))
          .find((found) => found !== null) ?? [],
    );
  connection.onDefinition(
    session.answerAt<Asked, Location[]>('definition', [], (snapshot, { position }) => {
      const { row, offset } = spotIn(snapshot.tree, position);
      return locations([snapshot], definition(snapshot, row, offset));
    }),
  );
  connection.onReferences(
    session.answerAt('references', [], (snapshot, { position, context }) => {
      const { row, offset } = spotIn(snapshot.tree, position);
      const users = usersOf(session, snapshot);
      const found = references(snapshot, row, offset, users).filter(
        ({ declares }) => !declares || context.includeDeclaration,
      );
      return locations(
        [snapshot, ...users],
        found.map(({ at }) => at),
      );
    }),
  );
  connection.onDocumentHighlight(
    session.answerAt('highlights', [], (snapshot, { position }) => {
      const { row, offset } = spotIn(snapshot.tree, position);
      return highlights(snapshot, row, offset).map(
        ({ at, declares }): DocumentHighlight => ({
          range: rangeIn(snapshot.tree, at),
          kind: declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
        }),
      );
    }),
  );
  connection.onWorkspaceSymbol(session.answer('symbols', [], ({ query }) => symbolsNamed(session, query)));
  answerRenaming(session);
}

interface Asked {
  readonly textDocument: { readonly uri: string };
  readonly position: { readonly line: number; readonly character: number };
}

/** Plans that take this file in: a name declared here is used there. */
const usersOf = (session: Session, { file }: Snapshot): readonly Snapshot[] =>
  session.survey.plansWith(file).flatMap((plan) => session.workspace.snapshot(plan) ?? []);

/** A name that cannot be given is refused with a sentence: the editor shows it to the one who asked. */
function answerRenaming(session: Session): void {
  const { connection } = session;
  connection.onPrepareRename(
    session.answerAt<Asked, { range: Range; placeholder: string } | null | ResponseError<void>>(
      'renaming',
      null,
      (snapshot, { position }) => {
        const { row, offset } = spotIn(snapshot.tree, position);
        const found = prepareRename(snapshot, row, offset);
        if (found && 'refused' in found) return refusal(found.refused);
        return found && { range: rangeIn(snapshot.tree, found.at), placeholder: found.name };
      },
    ),
  );
  connection.onRenameRequest(
    session.answerAt<Asked & { readonly newName: string }, WorkspaceEdit | null | ResponseError<void>>(
      'renaming',
      null,
      (snapshot, { position, newName }) => {
        const { row, offset } = spotIn(snapshot.tree, position);
        const users = usersOf(session, snapshot);
        const made = rename(snapshot, row, offset, newName, users);
        return 'refused' in made
          ? refusal(made.refused)
          : workspaceEdit(
              session,
              [snapshot, ...users],
              made.edits.map(({ at, text }) => ({ kind: 'replace', at, text })),
            );
      },
    ),
  );
}

/** LSP's RequestFailed: the request was understood and cannot be done. */
const refusal = (sentence: string): ResponseError<void> => new ResponseError(-32803, sentence);

function symbolsNamed(session: Session, query: string): SymbolInformation[] {
  return session.survey.files
    .flatMap((file) => {
      const snapshot = session.workspace.snapshot(file);
      if (!snapshot) return [];
      return symbols([snapshot], query).map(({ name, keyword, detail, within, at }) => ({
        name: detail ? `${name} · ${detail}` : name,
        kind: SymbolKind.Object,
        location: { uri: session.addresses.spelled(file), range: rangeIn(snapshot.tree, at) },
        containerName: within || keyword,
      }));
    })
    .slice(0, 200);
}
