// From some place on, a line cannot be read.
import type { NameSlip, SyntaxFacts } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { capital } from '../wording.ts';

export const lineUnreadable = check({
  slug: 'line-unreadable',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${facts.slip ? slips[facts.slip](facts) : `Cannot be read from "${facts.text}" on; here can stand ${facts.expected}.`} ${capital(facts.parent)} stays open until it is put right.`,
  fixes: ({ at, facts }) => facts.readings.map((reading) => rewrite(at, reading)),
});

/** What is said of a slip with names, with the way to write it where there is one. */
const slips: Readonly<Record<NameSlip, (facts: SyntaxFacts['line-unreadable']) => string>> = {
  words: ({ readings }) => `A name of several words stands in quotes: ${readings[0]}.`,
  range: ({ text, readings }) => `A range of names is written with two dots: ${readings[0]}, not ${text}.`,
  names: ({ text }) => `Several names, ${text}, but one is due here. Give each a line of its own.`,
  'names or range': ({ text, readings: [range] }) =>
    `Several names, ${text}, but one is due here. ${range ? `Write them as a range, ${range}, or give each a line of its own.` : 'Give each a line of its own; only names that count up without a gap can be a range, such as K1..K4.'}`,
  path: ({ text, readings }) => `The items of a leg are joined by >, from the hook down: ${readings[0]}, not ${text}.`,
};
