// Hover on a word of the language: its one-line help from the vocabulary, with an example.
import type { Item } from '../../plan/types.ts';
import type { Row, Span } from '../../syntax/types.ts';
import {
  type ClauseRow,
  clausesOf,
  type Evidence,
  evidenceHelp,
  resultsOf,
  type ShapeName,
  type ShapeRow,
  shapes,
  statements,
  statementsUnder,
} from '../../vocabulary/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { itemAt, ownFile, statementAt } from '../items.ts';
import type { Hover } from '../types.ts';
import { boundLines } from './bodies.ts';
import { hoverOf, type Line, type Note, note } from './page.ts';

export function hoverWord(s: Snapshot, row: number, offset: number): Hover | null {
  const line = s.tree.lines[row];
  const where = s.tree.rows[row];
  if (!line || !where) return null;
  const within = ({ from, to }: Span) => offset >= from && offset <= to;
  const over = (span: Span, made: Note | null) =>
    made && hoverOf(s.plan, { row: where, from: span.from, to: span.to }, made);
  const block = statementAt(s.tree, row)?.line.statement?.keyword.word ?? 'file';
  if (line.statement && within(line.statement.keyword.span))
    return over(
      line.statement.keyword.span,
      statementNote(line.statement.keyword.word, s.tree.nodeAt[row]?.block ?? 'file'),
    );
  const clause = line.clauses.find(({ keyword }) => within(keyword.span));
  if (clause) return over(clause.keyword.span, withBound(clauseNote(clause.keyword.word, block), s, row));
  const word =
    line.clauses.find(({ value }) => value?.kind === 'word' && within(value.span))?.value ?? line.statement?.value;
  if (word?.kind === 'word' && within(word.span)) return over(word.span, evidenceNote(word.word));
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  return item ? resultWord(s, item, where, offset) : null;
}

function statementNote(word: string, block: string): Note | null {
  const row = statementsUnder(block)[word] ?? statements[word];
  if (!row) return null;
  const needs = Object.entries(row.clauses)
    .filter(([, clause]) => clause.need === 'always')
    .map(([name]) => name);
  return note(word, {
    working: [
      { says: row.help },
      ...(needs.length ? [{ says: `needs ${needs.join(', ')}` }] : []),
      { says: `such as ${row.example}` },
    ],
  });
}

function clauseNote(word: string, block: string): Note | null {
  const row: ClauseRow | undefined = clausesOf(block)[word];
  if (!row) return null;
  const shape: ShapeRow | undefined = word in shapes ? shapes[word as ShapeName] : undefined;
  const lines: readonly Line[] = [
    { says: shape?.help || row.help },
    ...(shape ? [{ says: `own axis; datum point: ${shape.axis}` }] : []),
    ...(row.words ? [{ says: `one of ${row.words.join(', ')}` }] : []),
    ...(row.example ? [{ says: `such as ${row.example}` }] : []),
  ];
  return note(word, { working: lines });
}

/** The help on `envelope` says how much of the load rests on bounds. */
function withBound(made: Note | null, s: Snapshot, row: number): Note | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  return made?.head === 'envelope' && item ? { ...made, rests: boundLines(item, s.results) } : made;
}

const evidenceNote = (word: string): Note | null =>
  word in evidenceHelp ? note(word, { working: [{ says: evidenceHelp[word as Evidence] }] }) : null;

/** The words of a result in `limit`, `when` and their like. */
function resultWord({ plan }: Snapshot, item: Item, where: Row, offset: number): Hover | null {
  for (const clause of [item.value, ...[...item.clauses.values()].flat()]) {
    if (clause?.value?.kind !== 'compare' || !clause.value.compare) continue;
    const { text, compare } = clause.value;
    const row = resultsOf[compare.subject.kind]?.[compare.result];
    if (!row || clause.at.row !== where || offset < text.subjectSpan.from || offset > text.subjectSpan.to) continue;
    return hoverOf(
      plan,
      { row: clause.at.row, from: text.subjectSpan.from, to: text.subjectSpan.to },
      note(`${compare.subject.kind === 'plan' ? '' : `${compare.subject.kind} `}${compare.result}`, {
        working: [{ says: row.help }],
      }),
    );
  }
  return null;
}
