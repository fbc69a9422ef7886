// Completion: what may stand at the caret, in the order it is offered, each with its figure.
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type CompletionParams,
  InsertTextFormat,
  type TextEdit,
} from 'vscode-languageserver';
import { type Around, complete, type Trigger, wantsFiles } from '../../editor/complete.ts';
import type { Completion } from '../../editor/types.ts';
import { folderOf } from '../../report/index.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { rangeIn, spotIn, treeOf } from '../convert.ts';
import { textEdit } from '../edits.ts';
import type { Session } from '../session.ts';

const empty: CompletionList = { isIncomplete: false, items: [] };

export function answerCompleting(session: Session): void {
  const wants = session.answerAt<CompletionParams, boolean>('completion', false, (snapshot, { position }) => {
    const { row, offset } = spotIn(snapshot.tree, position);
    return wantsFiles(snapshot, row, offset);
  });
  const answer = session.answerAt<CompletionParams, CompletionList>('completion', empty, (snapshot, asked) => {
    const { row, offset } = spotIn(snapshot.tree, asked.position);
    const trigger = triggerOf(asked.context?.triggerCharacter);
    const found = complete(snapshot, row, offset, trigger, around(session, snapshot, wants(asked)));
    return {
      isIncomplete: found.incomplete,
      items: found.items
        .filter(({ snippet }) => !snippet || session.announced.snippets)
        .map((item, n) => itemOf(session, snapshot, item, n, found.items.length)),
    };
  });
  session.connection.onCompletion(async (asked) => {
    if (wants(asked)) await session.listFiles(); // what came a moment ago is offered too
    return answer(asked);
  });
}

const triggers: readonly string[] = [' ', '>', '"', '/'];
const triggerOf = (character: string | undefined): Trigger =>
  character !== undefined && triggers.includes(character) ? (character as Trigger) : null;

/** Libraries of the opened folders: a name taken from one brings its `use` line along. Looked at before, so that nothing is read while typing. */
function around({ survey, addresses, workspace }: Session, { file }: Snapshot, files: boolean): Around {
  const libraries = survey.libraries().flatMap((library) => {
    const snapshot = library === file ? null : workspace.snapshot(library);
    return snapshot ? [{ path: addresses.path(folderOf(file), library), plan: snapshot.plan }] : [];
  });
  return { libraries, files: files ? addresses.around(file) : [] };
}

const kinds: Readonly<Record<Completion['kind'], CompletionItemKind>> = {
  statement: CompletionItemKind.Keyword,
  clause: CompletionItemKind.Property,
  unit: CompletionItemKind.Unit,
  name: CompletionItemKind.Variable,
  word: CompletionItemKind.EnumMember,
  material: CompletionItemKind.Constant,
  text: CompletionItemKind.Text,
  snippet: CompletionItemKind.Snippet,
};

/** `sortText` keeps the order: an editor would sort by the alphabet. */
function itemOf(
  session: Session,
  snapshot: Snapshot,
  { label, detail, help, at, text, snippet, kind, edits }: Completion,
  n: number,
  of: number,
): CompletionItem {
  const range = rangeIn(snapshot.tree, at);
  return {
    label,
    kind: kinds[kind],
    sortText: String(n).padStart(String(of).length, '0'),
    filterText: filterOf(at.row.text.slice(at.from, at.to), label, text, snippet),
    textEdit: { range, newText: text },
    ...(detail && { detail }),
    ...(help && {
      documentation: session.announced.completionMarkdown ? { kind: 'markdown' as const, value: help } : help,
    }),
    ...(snippet && { insertTextFormat: InsertTextFormat.Snippet }),
    ...(edits.length > 0 && { additionalTextEdits: edits.flatMap((edit): TextEdit[] => additional(snapshot, edit)) }),
  };
}

/** What an editor compares with the characters typed: where a quote is typed already, the text that begins with one. */
const filterOf = (typed: string, label: string, text: string, snippet: boolean): string =>
  typed.startsWith('"') && !snippet ? text : label;

function additional(snapshot: Snapshot, edit: Completion['edits'][number]): TextEdit[] {
  const { file } = (edit.kind === 'replace' ? edit.at : edit.after).row;
  const tree = file === snapshot.file ? treeOf(snapshot, file) : null;
  return tree ? [textEdit(tree, edit)] : [];
}
