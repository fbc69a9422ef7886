// Reads values out of the tokens of a line, and keeps what is to be said where they cannot be read.
import { FORMS } from './forms.ts';
import { doubtful } from './numbers.ts';
import { type Phrase, phraseOf } from './phrases.ts';
import type { Damage } from './repairs.ts';
import { isWordSign, type Scanned, type Token } from './scan.ts';
import { bareCoordinates } from './slips.ts';
import type { KeywordUse, Language, LineProblem, Span, SyntaxFacts, Value, ValueType, Words } from './types.ts';
import { type Match, valueOf } from './values.ts';

/** How far a shape could be read, as an index of its signs, and what could have stood there. */
export interface Mismatch {
  readonly failedAt: number;
  readonly expected: string;
}
/** Matches signs with a start rule of the grammar of values. */
export type MatchShape = (rule: string, shape: string) => Match | Mismatch;

/** The tokens between two separating commas. */
export interface Piece {
  readonly at: number;
  readonly to: number;
}
export interface ValueForm {
  readonly value: ValueType;
  readonly words?: readonly string[];
}
export interface ValueRead {
  readonly value: Value | null;
  readonly unread: boolean;
}

/** Kinds of values whose digits are no quantities: nothing to doubt about them. */
const UNCOUNTED = new Set<Value['kind']>(['designation', 'label', 'text', 'date']);

export class ValueReader {
  opens = false;
  readonly problems: LineProblem[] = [];
  damages: Map<LineProblem, Damage> | null = null;
  /** What stands before this token belongs to what was said already. */
  protected saidUntil = 0;
  protected readonly tokens: readonly Token[];

  constructor(
    protected readonly line: Scanned,
    /** What a line that cannot be read leaves open, in its own words. */
    protected owner: string,
    protected readonly language: Language,
    private readonly match: MatchShape,
  ) {
    this.tokens = line.tokens;
  }

  // ---- values

  protected readValue(form: ValueForm, at: number, to: number, piece: Piece, inner: Words): ValueRead {
    let shape = '';
    for (let n = at; n < to; n++) shape += this.tokens[n]?.sign ?? '';
    const match = this.match(FORMS[form.value].rule, shape);
    if ('failedAt' in match) {
      const first = form.words && form.value !== 'trigger' ? oneOf(form.words) : FORMS[form.value].wanted;
      const expected = match.failedAt === 0 && form.value !== 'nothing' ? first : match.expected;
      const bare = form.value === 'point' && match.failedAt === 0 ? bareCoordinates(this.line, at) : null;
      const more = bare ? { more: [[bare.edit]] } : {};
      this.unreadable(at + match.failedAt, piece, expected, { type: form.value, at, to, clauses: inner, ...more });
      this.saidUntil = bare?.to ?? 0;
      return { value: null, unread: true };
    }
    const value = valueOf(match, { tokens: this.tokens, offset: at, text: this.line.text, last: NOWHERE });
    if (this.tell(at, to, form.value)) return { value: null, unread: true };
    if (value?.kind === 'word' && form.words && !this.isWord(form.words, value, at, to))
      return { value: null, unread: true };
    if (value && !UNCOUNTED.has(value.kind)) this.doubt(at, to);
    return { value, unread: false };
  }

  /** Tells the problems that tokens bring along; false if there are none. */
  private tell(at: number, to: number, type: ValueType): boolean {
    let told = false;
    for (let n = at; n < to; n++) {
      const problem = this.tokens[n]?.problem;
      if (problem) this.problems.push(coordinatesOnly(problem, this.tokens, n, type));
      told ||= Boolean(problem);
    }
    this.opens ||= told;
    return told;
  }

  private isWord(words: readonly string[], value: Value & { kind: 'word' }, at: number, to: number): boolean {
    let end = at;
    while (end < to && isWordSign(this.tokens[end]?.sign ?? '')) end++;
    if (phraseOf(words, this.tokens, at, end)) return true;
    this.wordUnknown({ at, to: end }, value.word, this.language.nearest(value.word, words), words);
    return false;
  }

  protected wordUnknown(piece: Piece, word: string, nearest: readonly string[], all: readonly string[]): void {
    const facts = nearest.length || all.length === 0 ? { word, nearest } : { word, nearest, all };
    this.problem('word-unknown', this.spanFrom(piece.at, piece.to), facts);
  }

  /** A decimal point before just three digits is read as such, and said aloud. */
  private doubt(at: number, to: number): void {
    for (let n = at; n + 1 < to; n++) {
      const [number, unit] = [this.tokens[n], this.tokens[n + 1]];
      if (number?.sign !== 'N' || unit?.sign !== 'U') continue;
      const found = doubtful(number.text, unit.text);
      const span = { from: number.from, to: unit.to };
      if (found)
        this.problems.push({
          slug: 'number-doubtful',
          span,
          facts: { text: this.line.text.slice(span.from, span.to), ...found },
        });
    }
  }

  // ---- problems

  protected problem<S extends keyof SyntaxFacts>(slug: S, span: Span, facts: SyntaxFacts[S]): LineProblem {
    const problem: LineProblem<S, SyntaxFacts[S]> = { slug, span, facts };
    this.problems.push(problem);
    this.opens = true;
    return problem;
  }

  /** Says that the line cannot be read from token `at` on, unless a token has something better to say. */
  protected unreadable(at: number, piece: Piece, expected: string, damage: Omit<Damage, 'failedAt'>): void {
    if (this.tell(damage.at, Math.max(damage.to, Math.min(at + 1, piece.to)), damage.type)) return;
    const failedAt = Math.min(at, this.tokens.length);
    const place = this.tokens[at < piece.to ? at : Math.max(piece.to - 1, 0)];
    const span = place ? spanOf(place) : { from: 0, to: 0 };
    const text = this.line.text.slice(span.from, span.to);
    const problem = this.problem('line-unreadable', span, { text, expected, readings: [], parent: this.owner });
    this.damages ??= new Map();
    this.damages.set(problem, { ...damage, failedAt });
  }

  protected keyword(found: Phrase, at: number): KeywordUse {
    return { word: found.word, span: this.spanFrom(at, at + found.words.length) };
  }

  protected spanFrom(at: number, to: number): Span {
    return { from: this.tokens[at]?.from ?? 0, to: this.tokens[to - 1]?.to ?? 0 };
  }
}

/** Of a doubtful comma in a bracket of coordinates: the one reading that gives it as many as are due; both where that does not tell. */
function coordinatesOnly(problem: LineProblem, tokens: readonly Token[], at: number, type: ValueType): LineProblem {
  const due = type === 'point' || type === 'line' ? 3 : type === 'points' ? 2 : 0;
  if (problem.slug !== 'decimal-comma' || due === 0) return problem;
  const [from, to] = [
    tokens.slice(0, at).findLastIndex(isBracket),
    tokens.findIndex((one, n) => n > at && isBracket(one)),
  ];
  const outer = tokens.slice(0, Math.max(from, 0)).filter(isBracket);
  const inner = outer.filter(({ sign }) => sign === '(').length * 2 > outer.length; // of a sum or a function
  if (inner || tokens[from]?.sign !== '(' || tokens[to]?.sign !== ')') return problem;
  const commas = tokens.slice(from, to).filter(({ sign }) => sign === ',').length;
  const { text, a, b } = problem.facts as SyntaxFacts['decimal-comma'];
  const [only, other] = [a, b].filter((reading) => reading !== null && commas + reading.split(', ').length === due);
  return only === undefined || only === null || other !== undefined
    ? problem
    : { ...problem, facts: { text, a: only, b: null } satisfies SyntaxFacts['decimal-comma'] };
}

const isBracket = ({ sign }: Token): boolean => sign === '(' || sign === ')';

const NOWHERE: Span = { from: -1, to: -1 };

export const spanOf = ({ from, to }: Span): Span => ({ from, to });

const oneOf = (words: readonly string[]): string =>
  [words.slice(0, -1).join(', '), words.at(-1)].filter(Boolean).join(' or ');
