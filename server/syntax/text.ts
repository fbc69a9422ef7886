// Makes the read line of a text: blank, comment, too long, the mark of an unfinished merge, or code.
import { readCode } from './code.ts';
import { coloursOf } from './colours.ts';
import type { MatchShape } from './reader.ts';
import { withReadings } from './repairs.ts';
import { indentOf, type Scanned, scan } from './scan.ts';
import type { ColouredSpan, Language, LineProblem, ReadLine, SyntaxFacts, Words } from './types.ts';

/** More characters than this in a line are not read. */
export const LONGEST_LINE = 2000;

/** Reads a line of that text under a parent with those words; `match` is the grammar of values. */
export function readText(text: string, words: Words, language: Language, match: MatchShape): ReadLine {
  if (text.length > LONGEST_LINE)
    return unreadable(text, words, { from: LONGEST_LINE, to: text.length }, 'at most 2,000 characters in a line');
  if (isMergeMark(text))
    return unreadable(
      text,
      words,
      { from: 0, to: text.trimEnd().length },
      'one side of the merge, once it is finished',
    );
  const scanned = scan(text, language);
  const hidden =
    scanned.hidden.length === 0
      ? NONE
      : scanned.hidden.map(
          (span): LineProblem => ({
            slug: 'hidden-character',
            span,
            facts: { character: text.slice(span.from, span.to) },
          }),
        );
  if (scanned.tokens.length === 0)
    return new Line(scanned, language, {
      kind: scanned.comment ? 'comment' : 'blank',
      opens: hidden.length > 0,
      problems: hidden,
    });
  const code = readCode(scanned, words, language, match);
  // A character that nobody sees is the cause of whatever else cannot be read.
  const problems = hidden.length
    ? [...hidden, ...code.problems.filter((problem) => !CAUSED.has(problem.slug))]
    : withReadings(code, scanned, (other) => readCode(scan(other, language), words, language, match).problems);
  return new Line(scanned, language, {
    kind: code.kind,
    statement: code.statement,
    clauses: code.clauses,
    meant: code.meant,
    opens: code.opens || hidden.length > 0,
    problems,
  });
}

/** Whether the line is a mark that an unfinished merge leaves behind. */
export const isMergeMark = (text: string): boolean =>
  '<=>|'.includes(text.charAt(0)) && /^(?:<{7}|={7}|>{7}|\|{7})(?: |$)/.test(text);

/** A line that says nothing and, by itself, reports nothing: what stands inside something that could not be read. */
export function silent(text: string, language: Language): ReadLine {
  const scanned: Scanned =
    text.length > LONGEST_LINE
      ? { text, indent: indentOf(text), tokens: [], comment: null, hidden: [] }
      : scan(text, language);
  const empty = scanned.tokens.length === 0 && text.length <= LONGEST_LINE;
  return new Line(
    scanned,
    language,
    empty
      ? { kind: scanned.comment ? 'comment' : 'blank', opens: false, problems: [] }
      : { kind: 'unread', opens: true, problems: [] },
  );
}

const NONE: readonly never[] = [];
const CAUSED = new Set(['line-unreadable', 'word-unknown', 'place-wrong']);

function unreadable(text: string, words: Words, span: { from: number; to: number }, expected: string): ReadLine {
  const facts: SyntaxFacts['line-unreadable'] = {
    text: text.slice(span.from, Math.min(span.to, span.from + 40)),
    expected,
    readings: [],
    parent: words.id,
  };
  const scanned: Scanned = { text, indent: indentOf(text), tokens: [], comment: null, hidden: [] };
  return new Line(scanned, null, { kind: 'unread', opens: true, problems: [{ slug: 'line-unreadable', span, facts }] });
}

/** A line as read. Its colours are worked out when asked for. */
class Line implements ReadLine {
  readonly text: string;
  readonly indent: number;
  readonly comment: ReadLine['comment'];
  readonly kind: ReadLine['kind'];
  readonly statement: ReadLine['statement'];
  readonly clauses: ReadLine['clauses'];
  readonly meant: string | null;
  readonly opens: boolean;
  readonly problems: readonly LineProblem[];
  readonly #language: Language | null;

  constructor(
    scanned: Scanned,
    language: Language | null,
    read: Pick<ReadLine, 'kind' | 'opens' | 'problems'> & Partial<ReadLine>,
  ) {
    this.text = scanned.text;
    this.indent = scanned.indent;
    this.comment = scanned.comment;
    this.kind = read.kind;
    this.statement = read.statement ?? null;
    this.clauses = read.clauses?.length ? read.clauses : NONE;
    this.meant = read.meant ?? null;
    this.opens = read.opens;
    this.problems = read.problems.length ? read.problems : NONE;
    this.#language = language;
  }

  get colours(): readonly ColouredSpan[] {
    return this.#language ? coloursOf(this, scan(this.text, this.#language)) : [];
  }
}
