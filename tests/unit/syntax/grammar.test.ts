// The grammar of values: read over signs and read over characters, it says the same.
import { readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { grammars } from 'ohm-js';
import { type CstNode, getCstRoot } from 'ohm-js/v18';
import { describe, expect, test, vi } from 'vitest';
import { grammarFile } from '../../../.build/grammar.mjs';
import { matchShape } from '../../../server/syntax/line.ts';
import { scan } from '../../../server/syntax/scan.ts';
import type { Match } from '../../../server/syntax/values.ts';
import { clausesOf, statements } from '../../../server/vocabulary/index.ts';
import { language } from './reading.ts';

vi.setConfig({ testTimeout: 60_000 });

const source = await readFile('grammar/liftplan.ohm', 'utf8');
const { Values, Characters } = grammars(source) as { Values: { rules: object } & Grammar; Characters: Grammar };
type Grammar = ReturnType<typeof grammars>[string];
const shared = new Set(Object.keys(Values.rules));

type Tree = readonly [rule: string, text: string, parts: readonly Tree[]];

/** What the signs of the scanned text match. */
function bySigns(rule: string, text: string): Tree | null {
  const { tokens, comment } = scan(text, language);
  if (comment) return null;
  const match = matchShape(rule, tokens.map((token) => token.sign).join(''));
  const tree = ({ rule: name, at, to, parts }: Match): Tree => [
    name,
    text.slice(tokens[at]?.from, tokens[to - 1]?.to),
    parts.filter((part) => part.to > part.at).map(tree),
  ];
  return 'failedAt' in match ? null : tree(match);
}

/** What the characters match, without the rules that only spell out a sign. */
function byCharacters(rule: string, text: string): Tree | null {
  const result = Characters.match(text.trimEnd(), rule);
  const rules = (node: CstNode): CstNode[] =>
    node.children.flatMap((child) =>
      child.isNonterminal() && shared.has(child.ctorName) ? [child] : child.isNonterminal() ? [] : rules(child),
    );
  const tree = (node: CstNode): Tree => {
    const { startIdx, endIdx } = node.source;
    const isSign = SIGNS.has(node.ctorName);
    return [
      node.ctorName,
      text.slice(startIdx, endIdx).trim(),
      isSign
        ? []
        : rules(node)
            .filter((part) => part.source.endIdx > part.source.startIdx)
            .map(tree),
    ];
  };
  return result.succeeded() ? tree(getCstRoot(result)) : null;
}

// Rules whose own text is a sign: what lies in them is spelling.
const SIGNS = new Set(
  /\/\/ ---- signs([\s\S]*?)\n}/
    .exec(source)?.[1]
    ?.match(/^ {2}\w+/gm)
    ?.map((name) => name.trim()),
);

const RULES = [
  'amount',
  'size',
  'sizeOrAmount',
  'point',
  'points',
  'line',
  'name',
  'names',
  'path',
  'axis',
  'turn',
  'side',
  'tilt',
  'circle',
  'row',
  'compare',
  'subject',
  'trigger',
  'text',
  'date',
  'label',
  'words',
  'wordsAndAmount',
];

const examples: readonly (readonly [rule: string, text: string])[] = [
  ['amount', '?'],
  ['amount', 'none'],
  ['amount', '12 ft 6 1/2 in'],
  ['amount', '3 lb 4 oz'],
  ['amount', '14 ft ± 1 in'],
  ['amount', '4 * 55 ft * 1.1 lb/ft'],
  ['amount', '-pipe-od'],
  ['amount', '-(18 in + 7 ft)'],
  ['amount', 'sqrt(a * a + b * b)'],
  ['amount', 'max(1 m, 2 m, 3 m) / 2'],
  ['amount', '1-1/2in'],
  ['amount', '9,850.5 kg'],
  ['amount', '1½ in'],
  ['amount', '55 US gal'],
  ['amount', '12 imperial gal/ft2'],
  ['amount', '5%'],
  ['amount', '60°'],
  ['amount', '30 °C'],
  ['amount', '149 bar * 71 cm²'],
  ['amount', '3 short ton +- 5 %'],
  ['amount', '2 − 1'],
  ['amount', '2·1'],
  ['amount', '2 · 1'],
  ['size', 'deck x 4 ft x 1/2 in'],
  ['size', '4 x 2 x 2 ft'],
  ['size', '250 × 1,800 × 700 mm'],
  ['size', '(10 ft / 2) x 3 ft'],
  ['size', '2 m x 1 m ± 5 mm'],
  ['point', '(0, -2 ft, 4 in)'],
  ['point', '(5, 2, 8/12) ft'],
  ['point', '(2.1 m, 0, ?)'],
  ['point', '(0.4, 0, -1.5) m ± (0.2, 0.1, 0.2) m'],
  ['point', '(1, 2, 3) m ± 10 mm'],
  ['point', '(1,200, 3, 0) mm'],
  ['point', '(-(18 in + 7 ft), 0, 0)'],
  ['points', '(0, 0) (2, 0) (2, 1) m'],
  ['line', '(0, 0, 0) (2, 0, 0) (2, 1, 0.5) m'],
  ['line', '(0, 0, 0) (2 m, 0, 0) ± 10 mm'],
  ['names', '"Shell" and "East head" and S1..S4'],
  ['name', '"Pump skid".NW'],
  ['path', '"Main block" > S1 > K1 > "Bar 4.4".TW'],
  ['path', 'A>B'],
  ['axis', '-x'],
  ['axis', '+y'],
  ['turn', '30 deg about z'],
  ['turn', 'a + 5 deg about -x'],
  ['side', '"Shell" -x'],
  ['tilt', 'x 0 deg to 90 deg'],
  ['tilt', 'x -10 deg'],
  ['circle', '17 in about y'],
  ['row', '10 ft: 60,000; 51,000 lb; none'],
  ['row', '35; 50 ft'],
  ['compare', 'gross load < 8,000 lb'],
  ['compare', 'load "Pump skid" calculated weight between 7.3 t and 7.5 t'],
  ['compare', 'rigging weight = 1,168 kg ± 1 kg'],
  ['compare', 'sling S1..S4 angle ≥ 45 deg'],
  ['subject', 'approval "Person in charge"'],
  ['trigger', 'people lifted'],
  ['trigger', 'crane capacity used > 75 %'],
  ['text', '"say ""stop"""'],
  ['date', '2026-05-18'],
  ['label', '40'],
  ['label', '10S'],
  ['label', 'C'],
  ['words', 'shipping paper'],
  ['wordsAndAmount', 'load cell 3 %'],
];

describe('the grammar of values', () => {
  test('the recipe that is shipped was made from it', async () => {
    expect(await readFile('server/syntax/grammar.ts', 'utf8')).toBe(await grammarFile());
  });

  test.each(examples)('%s reads over signs as over characters: %s', (rule, text) => {
    const found = bySigns(rule, text);
    expect(found === null).toBe(rule === 'amount' && text === '2·1'); // no spaces: nothing to read
    expect(byCharacters(rule, text)).toEqual(found);
  });

  const pieces = [
    '12',
    '1/2',
    '1 1/2',
    '4,850',
    '3.5',
    '½',
    '1½',
    'ft',
    'in',
    'kg/m3',
    'short ton',
    'US gal',
    '%',
    '°',
    'm²',
    'S1',
    'W14-1',
    'pipe-od',
    'x',
    'y',
    'z',
    'about',
    'to',
    'and',
    'between',
    'none',
    'sqrt',
    'max',
    '?',
    '"Pump skid"',
    '"a ""b"" c"',
    '(',
    ')',
    ',',
    ', ',
    ';',
    ':',
    '.',
    '..',
    '<',
    '<=',
    '>=',
    '=',
    '±',
    '+-',
    '+',
    '-',
    '−',
    '*',
    '/',
    '×',
    '2026-05-18',
  ];
  const texts = fc
    .array(fc.tuple(fc.constantFrom(' ', ' ', ' ', '', '  '), fc.constantFrom(...pieces)), { maxLength: 9 })
    .map((parts) => parts.map(([space, piece]) => space + piece).join(''));

  test('on random texts too', () => {
    let matched = 0;
    fc.assert(
      fc.property(fc.constantFrom(...RULES), texts, (rule, text) => {
        // Units glued to a number of their own (`14ft6in`) need the table of units, which the grammar does not have.
        fc.pre(!/[A-Za-z]\d+[A-Za-z]/.test(text));
        const found = bySigns(rule, text);
        matched += found ? 1 : 0;
        expect(byCharacters(rule, text)).toEqual(found);
      }),
      { numRuns: 1000, seed: 20260518 },
    );
    expect(matched).toBeGreaterThan(10);
  });

  test('on examples with one piece taken out, doubled or put elsewhere', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.nat(60),
        fc.nat(3),
        fc.constantFrom(...pieces),
        ([rule, text], at, cut, piece) => {
          const changed = `${text.slice(0, at)}${cut === 3 ? piece : ''}${text.slice(at + cut)}`;
          fc.pre(!/[A-Za-z]\d+[A-Za-z]/.test(changed));
          expect(byCharacters(rule, changed)).toEqual(bySigns(rule, changed));
        },
      ),
      { numRuns: 1000, seed: 20260518 },
    );
  });

  test('spells no keyword of the language', () => {
    const keywords = new Set(
      ['file', ...Object.keys(statements)].flatMap((block) => [block, ...Object.keys(clausesOf(block))]),
    );
    const spelled = [...source.matchAll(/"([A-Za-z ]{2,})"/g)].map((found) => found[1] ?? '');
    expect(spelled.length).toBeGreaterThan(10);
    expect(spelled.filter((word) => keywords.has(word))).toEqual([]);
  });
});
