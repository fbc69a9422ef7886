// Reads one line: the only file that knows Ohm. Ohm matches the signs of a value, not its characters, and each such shape only once.
import { makeRecipe } from 'ohm-js';
import { type CstNode, getCstRoot } from 'ohm-js/v18';
import { recipe } from './grammar.ts';
import type { MatchShape, Mismatch } from './reader.ts';
import { readText } from './text.ts';
import type { Language, ReadLine, Words } from './types.ts';
import type { Match } from './values.ts';

/**
 * The line as it reads under a parent with those words. Never fails: what cannot be read is in `problems`, and `opens` is true.
 * Lines are kept by their text and the words they were read by, so that equal lines of all files are read once.
 */
export function readLine(text: string, words: Words, language: Language): ReadLine {
  let kept = lines.get(language);
  if (!kept) {
    kept = new Map();
    lines.set(language, kept);
  }
  let block = kept.get(words.id);
  if (!block) {
    block = { young: new Map(), old: new Map() };
    kept.set(words.id, block);
  }
  const known = block.young.get(text);
  if (known) return known;
  const line = block.old.get(text) ?? readText(text, words, language, matchShape);
  if (block.young.size >= KEPT_LINES) {
    block.old = block.young;
    block.young = new Map();
  }
  block.young.set(line.text, line);
  return line;
}

// Two generations: a line asked for again moves to the young one, and a full young one becomes the old, whose rest is let go.
const KEPT_LINES = 1000;
const lines = new WeakMap<Language, Map<string, { young: Map<string, ReadLine>; old: Map<string, ReadLine> }>>();

/** Matches the signs of a value with a start rule of the grammar: what matched, or how far it went and what could have stood there. */
export const matchShape: MatchShape = (rule, shape) => {
  const key = `${rule} ${shape}`;
  let match = shapes.get(key);
  if (!match) {
    if (shapes.size >= KEPT_SHAPES) shapes.clear();
    match = tooDeep(shape) ?? matched(rule, shape);
    shapes.set(key, match);
  }
  return match;
};

/** Brackets and signs within one another, beyond which a value is not read: Ohm goes down a step for each. */
const DEEPEST_VALUE = 60;

/** Where a value is nested too deep; null where it is not. */
function tooDeep(shape: string): Mismatch | null {
  let brackets = 0;
  let signs = 0; // one right after the other
  for (let at = 0; at < shape.length; at++) {
    const sign = shape.charAt(at);
    if (sign === '(') brackets++;
    if (sign === ')') brackets--;
    signs = sign === '-' ? signs + 1 : 0;
    if (brackets + signs > DEEPEST_VALUE)
      return { failedAt: at, expected: `at most ${DEEPEST_VALUE} brackets or signs within one another` };
  }
  return null;
}

const KEPT_SHAPES = 4000;
const shapes = new Map<string, Match | Mismatch>();
const grammar = makeRecipe(recipe);

function matched(rule: string, shape: string): Match | Mismatch {
  const result = grammar.match(shape, rule);
  if (result.succeeded()) return matchOf(getCstRoot(result));
  const failures = result.getRightmostFailures().filter((failure) => !failure.isFluffy());
  return {
    failedAt: result.getRightmostFailurePosition(),
    expected: inWords(failures.map((failure) => failure.toString())),
  };
}

/** What could have stood there: everything an amount may begin with is one thing, and what ends the value comes last. */
function inWords(failures: readonly string[]): string {
  const amount = STARTS.every((start) => failures.includes(start));
  const rest = failures.filter(
    (text) => text !== 'end of input' && !(amount && [...STARTS, 'a name', '?', 'none'].includes(text)),
  );
  const all = [
    ...(amount ? ['an amount'] : []),
    ...rest,
    ...(failures.includes('end of input') ? ['a comma', 'the end of the line'] : []),
  ];
  return [all.slice(0, -1).join(', '), all.at(-1)].filter(Boolean).join(' or ');
}

const STARTS = ['a number', 'a function', 'an opening bracket', 'a minus'];

/** Our own copy of what matched: the rules and the places they took, without Ohm's lists, options and marks. */
function matchOf(node: CstNode): Match {
  return { rule: node.ctorName, at: node.source.startIdx, to: node.source.endIdx, parts: rulesIn(node) };
}

function rulesIn(node: CstNode): Match[] {
  return node.children.flatMap((child) => (child.isNonterminal() ? [matchOf(child)] : rulesIn(child)));
}
