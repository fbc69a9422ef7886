// Reads the words of a line: keyword, name, colon, value, clauses. What cannot be read costs only its own clause.
import { anyKeywordAt, clauseAt, keywordAt, nearestPhrases, type Phrase, spelled } from './phrases.ts';
import { type MatchShape, type Piece, spanOf, type ValueForm, ValueReader } from './reader.ts';
import type { Damage, Edit } from './repairs.ts';
import { isWordSign, type Scanned, type Token } from './scan.ts';
import { bareFigure, listedNames, listedPath, nameSlip, type Slip, slipSpan } from './slips.ts';
import type {
  ClauseText,
  Language,
  LineProblem,
  NameUse,
  ReadLine,
  Span,
  StatementForm,
  ValueType,
  Words,
} from './types.ts';

/** What the words of a line say. */
export interface Code {
  readonly kind: 'statement' | 'clauses' | 'unread';
  readonly statement: ReadLine['statement'];
  readonly clauses: readonly ClauseText[];
  readonly meant: string | null;
  readonly opens: boolean;
  readonly problems: readonly LineProblem[];
  /** Repairs to try, each beside the problem it belongs to. */
  readonly damages: ReadonlyMap<LineProblem, Damage> | null;
}

/** Reads the tokens of a line (at least one) by the words of its parent. */
export function readCode(line: Scanned, words: Words, language: Language, match: MatchShape): Code {
  const reader = new LineReader(line, words, language, match);
  reader.read();
  return reader;
}

/** Words that hold an expression together, beside `x`: no name of a value. */
const JOINING = new Set(['x', 'about', 'to', 'and', 'or', 'between', 'none']);

class LineReader extends ValueReader implements Code {
  kind: Code['kind'] = 'unread';
  statement: ReadLine['statement'] = null;
  readonly clauses: ClauseText[] = [];
  meant: string | null = null;
  /** A statement stands where a clause is due: what follows belongs to it, and says nothing more. */
  private displaced = false;
  /** More brackets are opened than closed. */
  private readonly unclosed: boolean;

  constructor(
    line: Scanned,
    private readonly words: Words,
    language: Language,
    match: MatchShape,
  ) {
    super(line, words.id, language, match);
    this.unclosed = this.hasUnclosed();
  }

  read(): void {
    const found = keywordAt(this.words, this.tokens, 0, this.tokens.length);
    if (found?.statement) return this.readStatement(found, found.statement);
    const pieces = this.pieces(this.words);
    if (!found) return this.strange(pieces);
    this.kind = 'clauses';
    for (const piece of pieces) this.readClause(this.words, piece);
  }

  // ---- pieces

  /** The line split at the commas that separate; a bracket that is never closed ends before the next clause of `words`. */
  private pieces(words: Words): Piece[] {
    const { tokens } = this;
    const pieces: Piece[] = [];
    let depth = 0;
    let at = 0;
    for (let n = 0; n < tokens.length; n++) {
      const sign = tokens[n]?.sign;
      if (sign === '(') depth++;
      else if (sign === ')') depth = Math.max(0, depth - 1);
      else if (sign === ',' && (depth === 0 || (this.unclosed && clauseAt(words, tokens, n + 1, tokens.length)))) {
        pieces.push({ at, to: n });
        at = n + 1;
        depth = 0;
      }
    }
    if (at < tokens.length || pieces.length === 0) pieces.push({ at, to: tokens.length });
    return pieces;
  }

  private hasUnclosed(): boolean {
    let depth = 0;
    for (const { sign } of this.tokens) depth += sign === '(' ? 1 : sign === ')' ? -1 : 0;
    return depth > 0;
  }

  // ---- statements

  private readStatement(found: Phrase, form: StatementForm): void {
    this.kind = 'statement';
    const inner = this.language.under(found.word);
    const pieces = this.pieces(inner);
    const head = pieces[0] ?? { at: 0, to: 0 };
    const keyword = this.keyword(found, head.at);
    const named = this.readName(form, inner, head.at + found.words.length, head);
    this.owner = this.line.text.slice(keyword.span.from, named.name?.span.to ?? keyword.span.to);
    const after = form.equals ? { colon: null, to: named.to } : this.colonAt(named.to);
    this.statement = { keyword, name: named.name, colon: after.colon, value: null, unread: named.unread };
    const slip = named.name ? this.slipOf(form, inner, head, { at: named.at, to: named.to }) : null;
    if (slip) {
      this.slipped(slip);
      if (form.value) this.statement = { ...this.statement, unread: true };
      for (const piece of pieces.slice(1)) if (piece.at > slip.to) this.readClause(inner, piece);
      return;
    }
    if (form.value) this.readOwnValue({ ...form, value: form.value }, inner, after.to, head);
    else if (after.to < head.to) this.readClause(inner, { at: after.to, to: head.to });
    const joined = form.value === 'path' ? listedPath(this.line, pieces, after.to, inner, this.language) : null;
    if (joined) this.slipped(joined);
    for (const piece of pieces.slice(1)) if (piece.at >= (joined?.to ?? 0)) this.readClause(inner, piece);
  }

  /** The slip that a name is part of: what else stands before the colon, in its own piece or in the next ones. */
  private slipOf(form: StatementForm, inner: Words, head: Piece, name: Piece): Slip | null {
    const listed = listedNames(this.line, name, form, inner, this.language);
    return listed ?? nameSlip(this.line, name, head.to, form, inner, this.language);
  }

  private slipped(found: Slip): void {
    const span = slipSpan(this.tokens, found);
    this.problem('line-unreadable', span, {
      text: this.line.text.slice(span.from, span.to),
      expected: found.slip === 'path' ? '>' : 'a name',
      readings: found.reading === null ? [] : [found.reading],
      parent: this.owner,
      slip: found.slip,
    });
  }

  private colonAt(at: number): { colon: Span | null; to: number } {
    const token = this.tokens[at];
    return token?.sign === ':' ? { colon: spanOf(token), to: at + 1 } : { colon: null, to: at };
  }

  /** The name behind the keyword, as far as the statement takes one. */
  private readName(
    form: StatementForm,
    inner: Words,
    at: number,
    piece: Piece,
  ): { name: NameUse | null; at: number; to: number; unread: boolean } {
    if (form.name === 'none') return { name: null, at, to: at, unread: false };
    const first = this.tokens[at];
    const isName = first !== undefined && at < piece.to && (first.sign === 'T' || isWordSign(first.sign));
    if (form.name === 'optional' && (!isName || (first.sign !== 'T' && this.isKeyword(inner, at, piece))))
      return { name: null, at, to: at, unread: false };
    if (!isName) {
      this.unreadable(at, piece, 'a name', { type: 'name', at, to: at });
      return { name: null, at, to: at, unread: true };
    }
    const dots = this.tokens[at + 1];
    const last = this.tokens[at + 2];
    const ranges =
      form.name === 'range' &&
      dots?.sign === '‥' &&
      last !== undefined &&
      at + 2 < piece.to &&
      (last.sign === 'T' || isWordSign(last.sign));
    const name = { text: first.text, span: spanOf(first) };
    const until = ranges ? { text: last.text, span: spanOf(last) } : null;
    if (form.equals) this.checkReserved(first);
    return {
      name: { span: { from: first.from, to: (until ?? name).span.to }, parts: [name], until },
      at,
      to: at + (until ? 3 : 1),
      unread: false,
    };
  }

  private isKeyword(inner: Words, at: number, piece: Piece): boolean {
    return Boolean(
      keywordAt(inner, this.tokens, at, piece.to) ?? anyKeywordAt(this.language, this.tokens, at, piece.to),
    );
  }

  /** A name of a value may not look like anything else that stands in an expression, or like the start of a statement. */
  private checkReserved({ text, from, to, sign }: Token): void {
    const { language } = this;
    const as = language.isUnit(text)
      ? 'unit'
      : language.functions.includes(text)
        ? 'function'
        : JOINING.has(text) || isStatement(language, text)
          ? 'keyword'
          : null;
    if (as && sign !== 'T') this.problem('name-reserved', { from, to }, { name: text, as });
  }

  /** The statement's own value, and the clause that may follow it without a comma. */
  private readOwnValue(form: StatementForm & ValueForm, inner: Words, from: number, head: Piece): void {
    let at = from;
    if (form.equals) {
      if (this.tokens[at]?.sign === '=' && at < head.to) at++;
      else
        return this.unreadOwn(() =>
          this.unreadable(at, head, '=', { type: form.value, at, to: head.to, more: this.missingEquals(at) }),
        );
    }
    if (at >= head.to && !form.needed) return;
    if (!form.needed && clauseAt(inner, this.tokens, at, head.to)) return this.readClause(inner, { at, to: head.to });
    const to = this.ownValueEnd(form.value, at, head.to);
    const read = this.readValue(form, at, to, head, inner);
    this.statement = this.statement && {
      ...this.statement,
      value: read.value,
      unread: this.statement.unread || read.unread,
    };
    if (to >= head.to) return;
    const { colon, to: next } = this.statement?.colon ? { colon: this.statement.colon, to } : this.colonAt(to);
    this.statement = this.statement && { ...this.statement, colon };
    if (next < head.to) this.readClause(inner, { at: next, to: head.to });
  }

  private unreadOwn(tell: () => void): void {
    tell();
    this.statement = this.statement && { ...this.statement, unread: true };
  }

  private missingEquals(at: number): Edit[][] {
    const token = this.tokens[at];
    if (!token) return [];
    return token.sign === ':'
      ? [[{ from: token.from, to: token.to, text: ' =' }]]
      : [[{ from: token.from, to: token.from, text: '= ' }]];
  }

  /** A text or label ends itself, and a clause may follow behind a colon; any other value goes on to the comma. */
  private ownValueEnd(type: ValueType, at: number, end: number): number {
    if (type !== 'text' && type !== 'label') return end;
    const first = this.tokens[at];
    if (first && (first.sign === 'T' || first.sign === '?' || type === 'label')) {
      const unit = first.sign === 'N' && this.tokens[at + 1]?.sign === 'U' && this.tokens[at + 1]?.spaced === false;
      return Math.min(end, at + (unit ? 2 : 1));
    }
    for (let n = at; n < end; n++) if (this.tokens[n]?.sign === ':') return n;
    return end;
  }

  // ---- clauses

  private readClause(words: Words, piece: Piece): void {
    const found = clauseAt(words, this.tokens, piece.at, piece.to);
    if (!found?.clause) return this.strangeClause(words, piece);
    const keyword = this.keyword(found, piece.at);
    const read = this.readValue(found.clause, piece.at + found.words.length, piece.to, piece, words);
    const last = this.tokens[piece.to - 1];
    this.clauses.push({
      keyword,
      span: { from: keyword.span.from, to: last?.to ?? keyword.span.to },
      value: read.value,
      unread: read.unread,
    });
  }

  /** No clause of this parent begins here. */
  private strangeClause(words: Words, piece: Piece): void {
    this.opens = true;
    if (this.displaced || piece.to <= this.saidUntil) return;
    const first = this.tokens[piece.at];
    if (!first || piece.at >= piece.to || !isWordSign(first.sign)) {
      return this.unreadable(piece.at, piece, 'a keyword', {
        type: 'nothing',
        at: piece.at,
        to: piece.to,
        clauses: words,
        more: bareFigure(this.line, piece, words),
      });
    }
    const elsewhere = this.elsewhere(piece, [...words.clauses.keys()]);
    if (!elsewhere) {
      this.unknown([...words.clauses.keys()], piece);
      return;
    }
    this.displaced = isStatement(this.language, elsewhere.word);
    this.misplaced(elsewhere, words.id, piece.at);
  }

  // ---- what does not belong

  /** A line whose first words are no keyword of its parent. */
  private strange(pieces: readonly Piece[]): void {
    const piece = pieces[0] ?? { at: 0, to: 0 };
    this.opens = true;
    const first = this.tokens[piece.at];
    if (!first || piece.at >= piece.to || !isWordSign(first.sign))
      return this.unreadable(piece.at, piece, 'a keyword', { type: 'nothing', at: piece.at, to: piece.to });
    const candidates = [...this.words.statements.keys(), ...this.words.clauses.keys()];
    const elsewhere = this.elsewhere(piece, candidates);
    if (elsewhere) {
      this.misplaced(elsewhere, this.words.id, piece.at);
      const form = statementForm(this.language, elsewhere.word);
      if (form) this.readStatement(elsewhere, form);
      return;
    }
    const [nearest] = this.unknown(candidates, piece);
    if (!nearest) return;
    if (this.words.statements.has(nearest)) this.meant = nearest;
    else {
      this.kind = 'clauses';
      for (let n = 1; n < pieces.length; n++) this.readClause(this.words, pieces[n] as Piece);
    }
  }

  /** A keyword of another parent, unless more words than it has are nearly one of `candidates`: `wind limt`. */
  private elsewhere(piece: Piece, candidates: readonly string[]): Phrase | null {
    const found = anyKeywordAt(this.language, this.tokens, piece.at, piece.to);
    if (!found) return null;
    const { to, nearest } = nearestPhrases(this.language, candidates, this.tokens, piece.at, piece.to);
    return nearest.length && to > piece.at + found.words.length ? null : found;
  }

  private misplaced(found: Phrase, parent: string, at: number): void {
    this.problem('place-wrong', this.keyword(found, at).span, {
      keyword: found.word,
      parent,
      parents: this.language.placesOf(found.word),
    });
  }

  private unknown(candidates: readonly string[], piece: Piece): readonly string[] {
    const { to, nearest } = nearestPhrases(this.language, candidates, this.tokens, piece.at, piece.to);
    this.wordUnknown({ at: piece.at, to }, spelled(this.tokens, piece.at, to), nearest, candidates);
    return nearest;
  }
}

function statementForm(language: Language, keyword: string): StatementForm | null {
  for (const place of language.placesOf(keyword)) {
    const form = language.under(place).statements.get(keyword);
    if (form) return form;
  }
  return null;
}

const isStatement = (language: Language, word: string): boolean => statementForm(language, word) !== null;
