// Formatting: the whole text, a range of lines, or the one line just left; edits as small as they can be.
import type { TextEdit } from 'vscode-languageserver';
import { language } from '../../plan/index.ts';
import { format } from '../../syntax/index.ts';
import type { Snapshot } from '../../workspace/index.ts';
import type { Session } from '../session.ts';

export function answerLayout(session: Session): void {
  const { connection } = session;
  const within = (uri: string, first: number, last: number): TextEdit[] => {
    const snapshot = session.snapshot(uri);
    return snapshot ? layout(snapshot, first, last) : [];
  };
  connection.onDocumentFormatting(
    session.answer('formatting', [], ({ textDocument: { uri } }) => within(uri, 0, Number.POSITIVE_INFINITY)),
  );
  connection.onDocumentRangeFormatting(
    session.answer('formatting a range', [], ({ textDocument: { uri }, range: { start, end } }) =>
      within(uri, start.line, end.character === 0 && end.line > start.line ? end.line - 1 : end.line),
    ),
  );
  // Enter leaves the line above the caret: nothing else is touched.
  connection.onDocumentOnTypeFormatting(
    session.answer('formatting on type', [], ({ textDocument: { uri }, position: { line } }) =>
      line > 0 ? within(uri, line - 1, line - 1) : [],
    ),
  );
}

/** The changes of layout from a line to another, of each line only the characters that change. */
export function layout({ tree }: Pick<Snapshot, 'tree'>, first: number, last: number): TextEdit[] {
  return format(tree, language)
    .filter(({ row }) => row >= first && row <= last)
    .map(({ row, text }) => smallest(row, tree.rows[row]?.text ?? '', text));
}

/** The edit between what two texts of a line share at their ends. */
function smallest(line: number, before: string, after: string): TextEdit {
  const least = Math.min(before.length, after.length);
  let start = 0;
  while (start < least && before[start] === after[start]) start++;
  let end = 0;
  while (end < least - start && before.at(-1 - end) === after.at(-1 - end)) end++;
  return {
    range: { start: { line, character: start }, end: { line, character: before.length - end } },
    newText: after.slice(start, after.length - end),
  };
}
