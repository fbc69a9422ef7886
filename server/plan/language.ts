// Gives syntax the words it reads by: the vocabulary's tables and the units, in the form syntax asks for.
import { nearest } from '../quantities/nearest.ts';
import { unit } from '../quantities/units.ts';
import type { ClauseForm, Language, StatementForm, Words } from '../syntax/types.ts';
import { clausesOf, statements, statementsUnder } from '../vocabulary/index.ts';

const cache = new Map<string, Words>();

function under(block: string): Words {
  let words = cache.get(block);
  if (!words) {
    words = {
      id: block,
      statements: new Map(Object.entries(statementsUnder(block)).map(([key, row]) => [key, form(row)])),
      clauses: new Map(Object.entries(clausesOf(block)).map(([key, row]) => [key, clause(row)])),
    };
    cache.set(block, words);
  }
  return words;
}

const form = (row: (typeof statements)[string]): StatementForm => ({
  name: row.names,
  value: row.value?.takes ?? null,
  needed: row.value?.need === 'always',
  ...(row.value?.words && { words: row.value.words }),
  ...(row.equals && { equals: true }),
});
const clause = (row: { takes: ClauseForm['value']; words?: readonly string[] }): ClauseForm => ({
  value: row.takes,
  ...(row.words && { words: row.words }),
});

const keywords = [
  ...new Set([
    ...Object.keys(statements),
    ...['file', ...Object.keys(statements)].flatMap((block) => Object.keys(clausesOf(block))),
  ]),
];
const places = new Map(
  keywords.map((keyword) => [
    keyword,
    [...(statements[keyword]?.under ?? []), ...Object.keys(statements).filter((block) => keyword in clausesOf(block))],
  ]),
);

/** The language as its tables say it. */
export const language: Language = {
  under,
  placesOf: (keyword) => places.get(keyword) ?? [],
  keywords,
  isUnit: (word) => unit(word) !== undefined,
  functions: ['sqrt', 'min', 'max', 'sin', 'cos', 'tan'],
  nearest: (word, candidates) => nearest(word, candidates),
};
