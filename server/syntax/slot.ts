// Says what may stand at a place of a line, for completion; works on lines that cannot be read.
import { clauseAt, keywordAt } from './phrases.ts';
import { isWordSign, scan, type Token } from './scan.ts';
import type { ClauseForm, Language, Span, StatementForm, ValueType, Words } from './types.ts';

export interface Slot extends Span {
  /** `keyword`: of `block`; `name`: of a thing, a new one where no clause and no value is due; `unit`: straight after a number. */
  readonly kind: 'keyword' | 'value' | 'unit' | 'name' | 'text' | 'comment';
  /** The parent whose keywords may stand here. */
  readonly block: string;
  readonly statement: string | null; // keyword of the statement on this line
  readonly clause: string | null; // keyword of the clause the place is in
  /** How the value here is written; null: no value is due. */
  readonly type: ValueType | null;
  readonly words: readonly string[]; // the phrases that may stand here, if they are listed
  readonly typed: string; // what stands between `from` and the place
}

/** What may stand at `offset` of a line under a parent with those words; `from` and `to` enclose what it would replace. */
export function slotAt(text: string, offset: number, words: Words, language: Language): Slot {
  const { tokens, comment } = scan(text, language);
  const none = { block: words.id, statement: null, clause: null, type: null, words: [] };
  if (comment && offset > comment.from)
    return { kind: 'comment', ...none, from: comment.from, to: comment.to, typed: text.slice(comment.from, offset) };
  const current = tokens.find((token) => token.from < offset && offset <= token.to && isTyped(token));
  const before = tokens.filter((token) => token.to <= (current?.from ?? offset) && token !== current);
  const found = new Finder(before, words, language).find();
  const from = found.start ?? current?.from ?? offset;
  const quoted =
    current && (current.sign === 'T' || current.text.startsWith('"')) && (offset < current.to || current.sign === '¡');
  const { start: _start, ...slot } = found;
  return {
    ...slot,
    ...(quoted && slot.kind !== 'name' && { kind: 'text' as const }),
    from,
    to: current?.to ?? offset,
    typed: text.slice(from, offset),
  };
}

const isTyped = ({ sign, text }: Token): boolean =>
  'NUTD'.includes(sign) || isWordSign(sign) || ('!¡'.includes(sign) && /^["\w]/.test(text));

type Found = Omit<Slot, 'from' | 'to' | 'typed'> & { readonly start?: number };

class Finder {
  private statement: string | null = null;

  constructor(
    private readonly before: readonly Token[],
    private readonly words: Words,
    private readonly language: Language,
  ) {}

  find(): Found {
    const end = this.before.length;
    const head = keywordAt(this.words, this.before, 0, end);
    if (!head?.statement) return this.inClause(this.words, this.pieceStart(this.words));
    this.statement = head.word;
    const inner = this.language.under(head.word);
    const start = this.pieceStart(inner);
    return start > 0 ? this.inClause(inner, start) : this.inHead(head.statement, inner, head.words.length);
  }

  /** First token of the piece the place is in; a comma in an open bracket separates only before a clause. */
  private pieceStart(words: Words): number {
    let start = 0;
    let depth = 0;
    this.before.forEach(({ sign }, n) => {
      if (sign === '(') depth++;
      else if (sign === ')') depth = Math.max(0, depth - 1);
      else if (sign === ',' && (depth === 0 || clauseAt(words, this.before, n + 1, this.before.length))) {
        start = n + 1;
        depth = 0;
      }
    });
    return start;
  }

  /** In the statement's first piece: its name, its own value, or its first clause. */
  private inHead(form: StatementForm, inner: Words, at: number): Found {
    const { before } = this;
    let next = at;
    if (form.name === 'required' || form.name === 'range') {
      if (next >= before.length) return this.slot('name', inner, null, null);
      next += before[next + 1]?.sign === '‥' ? 3 : 1;
      if (next > before.length) return this.slot('name', inner, null, null);
    } else if (
      form.name === 'optional' &&
      next < before.length &&
      (before[next]?.sign === 'T' || !clauseAt(inner, before, next, before.length))
    ) {
      if (before[next]?.sign !== ':') next++;
    }
    if (before[next]?.sign === ':') next++;
    if (form.equals) {
      if (before[next]?.sign !== '=') return this.slot('value', inner, null, null);
      next++;
    }
    if (!form.value) return this.inClause(inner, next);
    const ends = form.value === 'text' || form.value === 'label';
    if (!ends || next >= before.length)
      return this.inValue({ value: form.value, ...(form.words && { words: form.words }) }, inner, null, next);
    next++;
    if (before[next]?.sign === ':') next++;
    return this.inClause(inner, next);
  }

  private inClause(words: Words, at: number): Found {
    const { before } = this;
    const found = clauseAt(words, before, at, before.length);
    if (found?.clause) return this.inValue(found.clause, words, found.word, at + found.words.length);
    const first = before[at];
    return {
      ...this.slot('keyword', words, null, null),
      ...(first && isWordSign(first.sign) && { start: first.from }),
    };
  }

  private inValue(form: ClauseForm, words: Words, clause: string | null, at: number): Found {
    const last = this.before.length > at ? this.before.at(-1) : undefined;
    const { value } = form;
    if (last?.sign === 'N' || (last?.sign === ')' && (value === 'point' || value === 'points' || value === 'line')))
      return this.slot('unit', words, clause, form);
    if (value === 'text') return this.slot('text', words, clause, form);
    const named = value === 'name' || value === 'names' || value === 'path' || value === 'side';
    return this.slot(named ? 'name' : 'value', words, clause, form);
  }

  private slot(kind: Slot['kind'], words: Words, clause: string | null, form: ClauseForm | null): Found {
    return {
      kind,
      block: words.id,
      statement: this.statement,
      clause,
      type: form?.value ?? null,
      words: form?.words ?? [],
    };
  }
}
