// What can be done about a finding or a figure: ways out, all certain ones at once, and holding a result with `expect`.
import { type CodeAction, CodeActionKind, type CodeActionParams, type Diagnostic } from 'vscode-languageserver';
import { fixAll, fixes } from '../../editor/fixes.ts';
import { hold } from '../../editor/hold.ts';
import { level } from '../../editor/level.ts';
import { markSeen } from '../../editor/seen.ts';
import type { QuickFix, Stretch } from '../../editor/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { rangeIn, rangeOfStretch } from '../convert.ts';
import { editOf, workspaceEdit } from '../edits.ts';
import type { Session } from '../session.ts';

const everything = `${CodeActionKind.SourceFixAll}.liftplan`;
export const actionKinds = [CodeActionKind.QuickFix, CodeActionKind.Refactor, everything] as const;

/** What a "fix all of this kind" needs once it is chosen. */
interface Chosen {
  readonly uri: string;
  readonly slug: string;
}

export function answerActing(session: Session): void {
  const { connection, announced } = session;
  connection.onCodeAction(session.answerAt('actions', [], (snapshot, params) => actionsFor(session, snapshot, params)));
  if (announced.resolvedActions) connection.onCodeActionResolve((action) => resolved(session, action));
}

function actionsFor(session: Session, snapshot: Snapshot, { range, context }: CodeActionParams): CodeAction[] {
  const wanted = (kind: string): boolean =>
    !context.only || context.only.some((only) => only === '' || kind === only || kind.startsWith(`${only}.`));
  const actions: CodeAction[] = [];
  if (wanted(CodeActionKind.QuickFix)) {
    const found = fixes(snapshot, range.start.line, range.end.line);
    actions.push(...found.map((fix) => quickFix(session, snapshot, fix, context.diagnostics)));
    if (session.announced.resolvedActions) actions.push(...ofOneKind(session, snapshot, found));
  }
  // Only for those who ask: an editor that fixes on save names the kind, a list of ways out does not.
  if (context.only && wanted(everything)) actions.push(...inOneStep(session, snapshot));
  if (wanted(CodeActionKind.Refactor)) {
    const held = hold(snapshot, range.start.line);
    for (const { title, edits, cursor } of level(snapshot, range.start.line, range.end.line))
      actions.push({ title, kind: CodeActionKind.Refactor, edit: workspaceEdit(session, [snapshot], edits, cursor) });
    for (const { title, edits } of markSeen(snapshot, range.start.line, range.end.line))
      actions.push({ title, kind: CodeActionKind.Refactor, edit: workspaceEdit(session, [snapshot], edits) });
    if (held && 'edits' in held)
      actions.push({
        title: held.title,
        kind: CodeActionKind.Refactor,
        edit: workspaceEdit(session, [snapshot], held.edits),
      });
  }
  return actions;
}

function quickFix(
  session: Session,
  snapshot: Snapshot,
  { title, slug, preferred, finding, edits, cursor }: QuickFix,
  known: readonly Diagnostic[],
): CodeAction {
  const { start, end } = rangeIn(snapshot.tree, finding);
  const diagnostics = known.filter(
    ({ code, range }) =>
      code === slug &&
      range.start.line === start.line &&
      range.start.character <= end.character &&
      range.end.character >= start.character,
  );
  return {
    title,
    kind: CodeActionKind.QuickFix,
    ...(diagnostics.length > 0 && { diagnostics }),
    ...(session.announced.preferredActions && preferred && { isPreferred: true }),
    edit: workspaceEdit(session, [snapshot], edits, cursor),
  };
}

/** For each kind of finding that has a certain way out here and stands elsewhere in the file too. */
function ofOneKind(session: Session, { own, file }: Snapshot, found: readonly QuickFix[]): readonly CodeAction[] {
  const slugs = new Set(found.filter(({ preferred, cursor }) => preferred && cursor === null).map(({ slug }) => slug));
  return [...slugs]
    .filter((slug) => own.filter((finding) => finding.slug === slug).length > 1)
    .map((slug) => ({
      title: `Put right all of ${slug} in this file`,
      kind: CodeActionKind.QuickFix,
      data: { uri: session.addresses.spelled(file), slug } satisfies Chosen,
    }));
}

function resolved(session: Session, action: CodeAction): CodeAction {
  const { uri, slug } = action.data as Chosen;
  try {
    const snapshot = session.snapshot(uri);
    const change = snapshot && fixAll(snapshot, (text) => session.workspace.imagined(snapshot.file, text), slug);
    return snapshot && change ? { ...action, edit: oneEdit(session, snapshot, change) } : action;
  } catch (error) {
    session.log('fixing all of a kind', error);
    return action;
  }
}

/** Every certain way out, to the end, as one change. */
function inOneStep(session: Session, snapshot: Snapshot): readonly CodeAction[] {
  const change = fixAll(snapshot, (text) => session.workspace.imagined(snapshot.file, text));
  return change
    ? [{ title: 'Put right all that has one reading only', kind: everything, edit: oneEdit(session, snapshot, change) }]
    : [];
}

const oneEdit = (session: Session, { file }: Snapshot, { at, text }: { readonly at: Stretch; readonly text: string }) =>
  editOf(session, new Map([[file, [{ range: rangeOfStretch(at), newText: text }]]]));
