// Splits a line into words, texts, numbers, units and marks, each with its place and the sign it has in the grammar of values.
import { fractionSigns, hiddenIn, isDigit, isLetter, isQuote, isSpace, isWordPart, plain } from './characters.ts';
import { readNumber } from './numbers.ts';
import type { Language, LineProblem, Span } from './types.ts';

/** One word, number, unit, text or mark of a line. */
export interface Token extends Span {
  /** Its letter in the grammar of values: see "signs" in grammar/liftplan.ohm; `!` and `¡` for what is none of them. */
  readonly sign: string;
  /** A word as written; a text without its quotes; a unit in plain characters (`m2`, `deg`); else the characters themselves. */
  readonly text: string;
  /** White space or the line's start stands before it. */
  readonly spaced: boolean;
  readonly number: number | undefined;
  /** Of what no rule takes: what would be written instead, where that is clear. */
  readonly fix: string | null;
  /** Of what no rule takes: a problem that says more than "cannot be read". */
  readonly problem: LineProblem | null;
}

export interface Scanned {
  readonly text: string;
  /** Columns of white space before the first character, a tab counted as two. */
  readonly indent: number;
  readonly tokens: readonly Token[];
  readonly comment: Span | null;
  /** Characters that cannot be seen, wherever they stand. */
  readonly hidden: readonly Span[];
}

/** Signs of words: what may be part of a keyword or a name. */
export const isWordSign = (sign: string): boolean => sign === 'W' || (sign !== '' && 'xyzaob&0F'.includes(sign));

/** Splits a line. Never fails: what it does not know becomes a token with the sign `!` or `¡`. */
export function scan(text: string, language: Language): Scanned {
  const scanner = new Scanner(text, language);
  scanner.run();
  return { text, indent: indentOf(text), tokens: scanner.tokens, comment: scanner.comment, hidden: hiddenIn(text) };
}

/** Columns of white space a line begins with, a tab counted as two. */
export function indentOf(text: string): number {
  let columns = 0;
  for (let at = 0; isSpace(text.charCodeAt(at)); at++) columns += text.charCodeAt(at) === 9 ? 2 : 1;
  return columns;
}

const WORD_SIGNS = new Map(
  Object.entries({ x: 'x', y: 'y', z: 'z', about: 'a', to: 'o', and: '&', between: 'b', none: '0' }),
);
const CONNECTIVES = new Set(['x', 'and', 'about', 'to', 'or', 'between']);
const MARKS: Readonly<Record<string, string>> = {
  '(': '(',
  ')': ')',
  ';': ';',
  ':': ':',
  '?': '?',
  '±': '±',
  '<': '<',
  '>': '>',
  '=': '=',
  '≤': '≤',
  '≥': '≥',
};
const PAIRS: Readonly<Record<string, string>> = { '<=': '≤', '>=': '≥', '+-': '±', '..': '‥' };
const DOUBLING = '<>=';
const DAY = /\d{4}-\d\d-\d\d(?![\w-])/y;
const SLIPS: Readonly<Record<string, string>> = { '=<': '<=', '=>': '>=', '==': '=' };

class Scanner {
  readonly tokens: Token[] = [];
  comment: Span | null = null;
  private readonly line: string;
  private at = 0;
  private spaced = true;

  constructor(
    private readonly text: string,
    private readonly language: Language,
  ) {
    this.line = plain(text);
  }

  run(): void {
    const { line } = this;
    while (this.at < line.length && !this.comment) {
      const code = line.charCodeAt(this.at);
      if (code === 32) {
        this.at++;
        this.spaced = true;
        continue;
      }
      this.next(code);
      this.spaced = false;
    }
  }

  private next(code: number): void {
    if (code === 35) this.hash();
    else if (isLetter(code)) this.word();
    else if (isDigit(code) || (code > 127 && this.line.charAt(this.at) in fractionSigns)) this.number();
    else if (isQuote(code)) this.quoted();
    else if (code === 37 || code === 176) this.unitSign();
    else this.mark();
  }

  private last(): Token | undefined {
    return this.tokens[this.tokens.length - 1];
  }

  private push(sign: string, to: number, text: string, number?: number): void {
    this.tokens.push({ from: this.at, to, sign, text, spaced: this.spaced, number, fix: null, problem: null });
    this.at = to;
  }

  /** Something that no rule takes, or only a designation (`!`): with what would be written instead, or a problem of its own. */
  private flaw(to: number, text: string, fix: string | null, problem: LineProblem | null = null, sign = '!'): void {
    this.tokens.push({ from: this.at, to, sign, text, spaced: this.spaced, number: undefined, fix, problem });
    this.at = to;
  }

  // ---- words and units

  private wordEnd(from: number): number {
    const { line } = this;
    let to = from;
    for (;;) {
      const code = line.charCodeAt(to);
      if (isWordPart(code) || (code === 45 && to > from && isWordPart(line.charCodeAt(to + 1)))) to++;
      else return to;
    }
  }

  private word(): void {
    const to = this.wordEnd(this.at);
    const before = this.last();
    if (before && (before.sign === 'N' || before.sign === ')') && this.unit(to)) return;
    const text = this.line.slice(this.at, to);
    if (text === 'x' && ((before?.sign === 'U' && !this.spaced) || '(½¼¾⅛⅜⅝⅞'.includes(this.line.charAt(to) || ' ')))
      return this.flaw(to, text, ' x ');
    if (before?.sign === 'T' && !this.spaced) return this.flaw(to, text, `.${text}`);
    this.push(WORD_SIGNS.get(text) ?? (this.language.functions.includes(text) ? 'F' : 'W'), to, text);
  }

  /** The unit after a number or a closing bracket; false where the word is no unit. */
  private unit(wordTo: number): boolean {
    const { line } = this;
    const word = line.slice(this.at, wordTo);
    if (/^x\d/.test(word) || (word === 'x' && !this.spaced)) {
      this.flaw(this.at + 1, 'x', ' x ');
      return true;
    }
    if (CONNECTIVES.has(word)) return false;
    let { to, text } = this.unitAt(this.at);
    if (line.charCodeAt(to) === 47) {
      const second = this.unitAt(to + 1, false);
      if (second.text && !CONNECTIVES.has(second.text))
        ({ to, text } = { to: second.to, text: `${text}/${second.text}` });
    }
    this.push('U', to, text);
    return true;
  }

  /** One unit: two words where these make a known one, `ft` of `ft6in`, else the whole word. */
  private unitAt(from: number, splits = true): { to: number; text: string } {
    const { line, language } = this;
    const sign = line.charAt(from);
    if (sign === '%') return { to: from + 1, text: '%' };
    if (sign === '°') {
      const scale = line.charAt(from + 1);
      return (scale === 'C' || scale === 'F') && !isWordPart(line.charCodeAt(from + 2))
        ? { to: from + 2, text: `deg${scale}` }
        : { to: from + 1, text: 'deg' };
    }
    if (!isLetter(line.charCodeAt(from))) return { to: from, text: '' };
    let to = this.wordEnd(from);
    while (line.charAt(to) === '²' || line.charAt(to) === '³') to++;
    const raw = line.slice(from, to);
    const text = raw.endsWith('²') || raw.endsWith('³') ? raw.replace(/²/g, '2').replace(/³/g, '3') : raw;
    if (line.charCodeAt(to) === 32) {
      let next = to;
      while (line.charCodeAt(next) === 32) next++;
      const end = isLetter(line.charCodeAt(next)) ? this.wordEnd(next) : next;
      const both = `${text} ${line.slice(next, end)}`;
      if (end > next && language.isUnit(both)) return { to: end, text: both };
    }
    if (!splits || language.isUnit(text)) return { to, text };
    const inner = /^([A-Za-z]+)\d+([A-Za-z]+)$/.exec(text);
    return inner?.[1] && language.isUnit(inner[1]) && language.isUnit(inner[2] ?? '')
      ? { to: from + inner[1].length, text: inner[1] }
      : { to, text };
  }

  private unitSign(): void {
    const before = this.last();
    if (before?.sign === 'N' || before?.sign === ')') this.unit(this.at);
    else this.flaw(this.at + 1, this.line.charAt(this.at), null);
  }

  // ---- numbers and texts

  private number(): void {
    const { line, at } = this;
    if (line.charCodeAt(at + 4) === 45) {
      DAY.lastIndex = at;
      if (DAY.test(line)) return this.push('D', at + 10, line.slice(at, at + 10));
    }
    const read = readNumber(line, at);
    if (read.number !== undefined) return this.push('N', read.to, line.slice(at, read.to), read.number);
    const problem = read.slug ? { slug: read.slug, span: { from: at, to: read.to }, facts: read.facts } : null;
    this.flaw(read.to, line.slice(at, read.to), read.fix ?? null, problem);
  }

  private quoted(): void {
    const { line, at } = this;
    const curly = line.charCodeAt(at) !== 34;
    const closes = (code: number) => code === 34 || (curly && isQuote(code));
    let to = at + 1;
    while (to < line.length && !(closes(line.charCodeAt(to)) && !closes(line.charCodeAt(to + 1))))
      to += closes(line.charCodeAt(to)) ? 2 : 1;
    if (to >= line.length) return this.flaw(line.length, line.slice(at), `${line.slice(at).trimEnd()}"`, null, '¡');
    const written = this.text.slice(at + 1, to);
    const text = curly
      ? written.replace(/(["“”„])["“”„]/g, '$1')
      : written.includes('"')
        ? written.replace(/""/g, '"')
        : written;
    const before = this.last();
    if (this.spaced || (before && '(),:;.‥><=≤≥'.includes(before.sign))) this.push('T', to + 1, text);
    else this.flaw(to + 1, text, ` ${line.slice(at, to + 1)}`, null, '¡');
  }

  // ---- marks

  private hash(): void {
    const { line, at } = this;
    this.comment = { from: at, to: line.length };
    const before = this.last();
    if (this.spaced) return;
    const glued = before && (before.sign === 'N' || before.sign === 'U' || isWordSign(before.sign));
    const rest = line.slice(at + 1).trim();
    this.flaw(
      at + 1,
      '#',
      glued ? null : ' #',
      glued ? { slug: 'hash-after-number', span: { from: at, to: at + 1 }, facts: { rest } } : null,
    );
  }

  private mark(): void {
    const { line, at } = this;
    const sign = line.charAt(at);
    const spaceAfter = at + 1 >= line.length || line.charCodeAt(at + 1) === 32;
    const known = MARKS[sign];
    if (known && (spaceAfter || !DOUBLING.includes(sign))) return this.push(known, at + 1, sign);
    if (sign === ',')
      return spaceAfter
        ? this.push(',', at + 1, sign)
        : this.flaw(at + 1, sign, this.isBetweenDigits(at) ? '.' : ', ', null, '¡');
    const pair = line.slice(at, at + 2);
    if (PAIRS[pair]) return this.push(PAIRS[pair], at + 2, pair);
    if (SLIPS[pair]) return this.flaw(at + 2, pair, SLIPS[pair]);
    if (known) return this.push(known, at + 1, sign);
    if ('+-−*·/'.includes(sign)) return this.arithmetic(sign === '−' ? '-' : sign === '·' ? '*' : sign, spaceAfter);
    if (sign === '.') return this.point();
    if (sign === '×') return this.spaced && spaceAfter ? this.push('×', at + 1, sign) : this.flaw(at + 1, sign, ' x ');
    const length = (line.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
    this.flaw(at + length, line.slice(at, at + length), '–—‐‑'.includes(sign) ? '-' : null);
  }

  private isBetweenDigits(at: number): boolean {
    return isDigit(this.line.charCodeAt(at - 1)) && isDigit(this.line.charCodeAt(at + 1));
  }

  private arithmetic(sign: string, spaceAfter: boolean): void {
    const before = this.last();
    const open = this.spaced || (before !== undefined && '(;:<>=≤≥±'.includes(before.sign));
    if (this.spaced && spaceAfter) return this.push(sign, this.at + 1, sign);
    if (open && !spaceAfter && (sign === '-' || sign === '+'))
      return this.push(sign === '-' ? '~' : '^', this.at + 1, sign);
    this.flaw(this.at + 1, sign, ` ${sign} `);
  }

  private point(): void {
    const { line, at } = this;
    const before = this.last();
    const tight = !this.spaced && before && (before.sign === 'T' || before.sign === 'U' || isWordSign(before.sign));
    const next = line.charCodeAt(at + 1);
    if (isDigit(next) && !tight) {
      let to = at + 1;
      while (isDigit(line.charCodeAt(to))) to++;
      return this.flaw(to, line.slice(at, to), `0${line.slice(at, to)}`);
    }
    if (tight && (isLetter(next) || isDigit(next) || isQuote(next))) this.push('.', at + 1, '.');
    else this.flaw(at + 1, '.', null);
  }
}
