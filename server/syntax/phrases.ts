// Finds keywords, which may have several words, in the tokens of a line: the longest phrase that fits, at word ends.
import { isWordSign, type Token } from './scan.ts';
import type { ClauseForm, Language, StatementForm, Words } from './types.ts';

export interface Phrase {
  readonly word: string;
  readonly words: readonly string[];
  readonly statement: StatementForm | null;
  readonly clause: ClauseForm | null;
}

/** The longest keyword of `words` that stands at token `at`; null: none. A statement comes before a clause of the same spelling. */
export const keywordAt = (words: Words, tokens: readonly Token[], at: number, end: number): Phrase | null =>
  longest(indexOf(words).all, tokens, at, end);

/** The longest clause keyword of `words` at token `at`; null: none. */
export const clauseAt = (words: Words, tokens: readonly Token[], at: number, end: number): Phrase | null =>
  longest(indexOf(words).clauses, tokens, at, end);

/** The longest keyword of the whole language at token `at`; null: none. */
export const anyKeywordAt = (language: Language, tokens: readonly Token[], at: number, end: number): Phrase | null =>
  longest(allOf(language), tokens, at, end);

/** The one of `phrases` that the tokens spell, all of them; null: none. */
export function phraseOf(phrases: readonly string[], tokens: readonly Token[], at: number, end: number): string | null {
  const text = spelled(tokens, at, end);
  return phrases.includes(text) ? text : null;
}

/** The words from token `at` to `end`, joined by one space. */
export const spelled = (tokens: readonly Token[], at: number, end: number): string =>
  tokens
    .slice(at, end)
    .map((token) => token.text)
    .join(' ');

/** Keywords nearest to the words at token `at`, and the token behind the words they would replace. */
export function nearestPhrases(
  language: Language,
  candidates: readonly string[],
  tokens: readonly Token[],
  at: number,
  end: number,
): { to: number; nearest: readonly string[] } {
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
type PhraseIndex = ReadonlyMap<string, readonly Phrase[]>;

function longest(index: PhraseIndex, tokens: readonly Token[], at: number, end: number): Phrase | null {
  const first = tokens[at];
  if (!first || at >= end || !isWordSign(first.sign)) return null;
  const phrases = index.get(first.text);
  if (!phrases) return null;
  for (const phrase of phrases) if (at + phrase.words.length <= end && fits(phrase.words, tokens, at)) return phrase;
  return null;
}

function fits(words: readonly string[], tokens: readonly Token[], at: number): boolean {
  for (let n = 1; n < words.length; n++) {
    const token = tokens[at + n];
    if (!token?.spaced || !isWordSign(token.sign) || token.text !== words[n]) return false;
  }
  return true;
}

const indexes = new WeakMap<Words, { all: PhraseIndex; clauses: PhraseIndex }>();
function indexOf(words: Words): { all: PhraseIndex; clauses: PhraseIndex } {
  let index = indexes.get(words);
  if (!index) {
    const clauses = [...words.clauses].map(([word, clause]) => phrase(word, null, clause));
    const statements = [...words.statements].map(([word, statement]) => phrase(word, statement, null));
    index = { all: indexed([...statements, ...clauses]), clauses: indexed(clauses) };
    indexes.set(words, index);
  }
  return index;
}

const languages = new WeakMap<Language, PhraseIndex>();
function allOf(language: Language): PhraseIndex {
  let index = languages.get(language);
  if (!index) {
    index = indexed(language.keywords.map((word) => phrase(word, null, null)));
    languages.set(language, index);
  }
  return index;
}

const phrase = (word: string, statement: StatementForm | null, clause: ClauseForm | null): Phrase => ({
  word,
  words: word.split(' '),
  statement,
  clause,
});

/** Phrases by their first word, longest first; of two alike the one that comes first. */
function indexed(phrases: readonly Phrase[]): PhraseIndex {
  const index = new Map<string, Phrase[]>();
  for (const one of phrases) {
    const first = one.words[0] ?? '';
    index.set(first, [...(index.get(first) ?? []), one]);
  }
  for (const list of index.values()) list.sort((a, b) => b.words.length - a.words.length);
  return index;
}
