// Finds keywords, which may have several words, in the tokens of a line: the longest phrase that fits, at word ends.
import { type Token, isWordSign } from './scan.ts';
import type { ClauseForm, Language, StatementForm, Words } from './types.ts';

export interface Phrase {
  readonly word: string;
  /** Index of the token behind it. */
  readonly to: number;
  readonly statement: StatementForm | null;
  readonly clause: ClauseForm | null;
}

/** The longest keyword of `words` that stands at token `at`; null: none. A statement comes before a clause of the same spelling. */
export function keywordAt(words: Words, tokens: readonly Token[], at: number, end: number): Phrase | null {
  const found = longest(indexOf(words), tokens, at, end);
  if (!found) return null;
  const statement = words.statements.get(found.word) ?? null;
  return { ...found, statement, clause: statement ? null : (words.clauses.get(found.word) ?? null) };
}

/** The longest clause keyword of `words` at token `at`; null: none. */
export function clauseAt(words: Words, tokens: readonly Token[], at: number, end: number): Phrase | null {
  const found = longest(clausesOf(words), tokens, at, end);
  return found && { ...found, statement: null, clause: words.clauses.get(found.word) ?? null };
}

/** The longest keyword of the whole language at token `at`; null: none. */
export const anyKeywordAt = (language: Language, tokens: readonly Token[], at: number, end: number) => longest(allOf(language), tokens, at, end);

/** The one of `phrases` that the tokens spell, all of them; null: none. */
export function phraseOf(phrases: readonly string[], tokens: readonly Token[], at: number, end: number): string | null {
  const text = spelled(tokens, at, end);
  return phrases.includes(text) ? text : null;
}

/** The words from token `at` to `end`, joined by one space. */
export const spelled = (tokens: readonly Token[], at: number, end: number): string => tokens.slice(at, end).map((token) => token.text).join(' ');

/** Keywords nearest to the words at token `at`, and the token behind the words they would replace. */
export function nearestPhrases(language: Language, candidates: readonly string[], tokens: readonly Token[], at: number, end: number): { to: number; nearest: readonly string[] } {
  let run = at;
  while (run < end && run < at + 3 && isWordSign(tokens[run]?.sign ?? '')) run++;
  for (let to = run; to > at + 1; to--) {
    const alike = candidates.filter((candidate) => candidate.split(' ').length === to - at);
    const nearest = language.nearest(spelled(tokens, at, to), alike);
    if (nearest.length) return { to, nearest };
  }
  return { to: at + 1, nearest: language.nearest(tokens[at]?.text ?? '', candidates) };
}

/** Every word by which a phrase may begin, with the phrases that begin so, longest first. */
type PhraseIndex = ReadonlyMap<string, readonly (readonly string[])[]>;

function longest(index: PhraseIndex, tokens: readonly Token[], at: number, end: number): { word: string; to: number } | null {
  const first = tokens[at];
  if (!first || at >= end || !isWordSign(first.sign)) return null;
  for (const phrase of index.get(first.text) ?? []) {
    const to = at + phrase.length;
    if (to > end) continue;
    let fits = true;
    for (let n = 1; fits && n < phrase.length; n++) {
      const token = tokens[at + n];
      fits = token !== undefined && isWordSign(token.sign) && token.spaced && token.text === phrase[n];
    }
    if (fits) return { word: phrase.length === 1 ? first.text : phrase.join(' '), to };
  }
  return null;
}

const indexes = new WeakMap<object, PhraseIndex>();
const remembered = (key: object, phrases: () => Iterable<string>): PhraseIndex => {
  let index = indexes.get(key);
  if (!index) {
    index = indexed(phrases());
    indexes.set(key, index);
  }
  return index;
};
const indexOf = (words: Words) => remembered(words, () => [...words.statements.keys(), ...words.clauses.keys()]);
const clausesOf = (words: Words) => remembered(words.clauses, () => words.clauses.keys());
const allOf = (language: Language) => remembered(language, () => language.keywords);

function indexed(phrases: Iterable<string>): PhraseIndex {
  const index = new Map<string, string[][]>();
  for (const phrase of new Set(phrases)) {
    const words = phrase.split(' ');
    const first = words[0] ?? '';
    index.set(first, [...(index.get(first) ?? []), words]);
  }
  for (const list of index.values()) list.sort((a, b) => b.length - a.length);
  return index;
}
