// Lines: characters, keywords, names, the colon, clauses, and what is said of those that cannot be read.
import { describe, expect, test } from 'vitest';
import type { SyntaxFacts } from '../../../server/syntax/types.ts';
import { clausesOf, statements } from '../../../server/vocabulary/index.ts';
import { amount, problemsOf, read, under, value } from './reading.ts';

const clauses = (block: string, text: string) => read(block, text).clauses.map((clause) => clause.keyword.word);
const unreadable = (block: string, text: string) =>
  problemsOf(block, text).filter(
    (problem) => problem.slug === 'line-unreadable',
  ) as unknown as (SyntaxFacts['line-unreadable'] & { at: string })[];

describe('characters', () => {
  test.each([
    ['a tab', '\t'],
    ['a no-break space', '\u00a0'],
    ['a thin space', '\u2009'],
    ['a wide space', '\u3000'],
    ['several', ' \u00a0\t '],
  ])('%s between words reads as a space', (_, space) => {
    const text = ['  part "Plate": plate', '2', 'm', 'x', '1 m x 10 mm, of', 'carbon', 'steel'].join(space);
    expect([problemsOf('load', text), clauses('load', text)]).toEqual([[], ['plate', 'of']]);
  });

  test.each([
    '\u0000',
    '\u0007',
    '\u001b',
    '\u007f',
    '\u0085',
    '\u00ad',
    '\u200b',
    '\u200d',
    '\u2060',
    '\ufeff',
    '\u202e',
    '\u2066',
    '\u200f',
    '\u061c',
    '\u2028',
    '\u2029',
    '\u000b',
    '\u000c',
    '\u3164',
    '\u2800',
    '\u{e0041}',
    '\ufe0f',
  ])('%j cannot be seen, wherever it stands', (hidden) => {
    for (const text of [
      `stated 3 t, by${hidden} marking`,
      `stated 3 t, by marking, from "plate${hidden}"`,
      `stated 3 t, by marking # seen${hidden}`,
      `${hidden}stated 3 t`,
      `# ${hidden}`,
    ]) {
      expect(problemsOf('load', text)).toEqual([{ slug: 'hidden-character', at: hidden, character: hidden }]);
      expect(read('load', text).opens).toBe(true);
    }
  });

  test('several in a row are one finding; letters with accents, emoji and other scripts are none in a text', () => {
    expect(problemsOf('load', 'free "a\u200b\u200bb"').length).toBe(1);
    expect(problemsOf('load', 'free "Größe, 重さ, вес, 👷"')).toEqual([]);
    expect(clauses('load', 'part Träger: box 1 x 1 x 1 m')).toEqual(['box']);
  });

  test('a letter of another script is no word', () =>
    expect(unreadable('load', 'part Маст: box 1 x 1 x 1 m')[0]?.at).toBe('М'));

  test('comments begin at the start or after a space, outside quotes', () => {
    const text = '  free "No. #4 is loose" # seen "4 May"';
    const line = read('load', text);
    expect([line.comment && under(text, line.comment), line.problems]).toEqual(['# seen "4 May"', []]);
    expect([read('load', '# all').kind, read('load', '   ').kind, read('load', '').kind]).toEqual([
      'comment',
      'blank',
      'blank',
    ]);
  });

  test('a comment straight after a digit or a word', () => {
    expect(problemsOf('load', 'stated 4850#, by marking')).toEqual([
      { slug: 'hash-after-number', at: '#', rest: ', by marking' },
    ]);
    expect(problemsOf('load', 'stated 4850 lb# by marking')).toMatchObject([
      { slug: 'hash-after-number', rest: 'by marking' },
    ]);
    expect([read('load', 'stated 4850#').opens, read('load', 'stated 4850#').statement?.unread]).toEqual([true, true]);
    expect(problemsOf('load', 'free "loose"# seen')).toMatchObject([
      { slug: 'line-unreadable', at: '#', readings: [' #'] },
    ]);
  });

  test.each([
    ['length 6"', '6"', '6 in'],
    ["length 5'", "5'", '5 ft'],
    ['length 5′ 6″', '5′ 6″', '5 ft 6 in'],
    ['length 5\'-6 1/2"', '5\'-6 1/2"', '5 ft 6 1/2 in'],
    ["length 6''", "6''", '6 in'],
    ['length 6½"', '6½"', '6½ in'],
    ['length 6 ″', '6 ″', '6 in'],
    ['length 6”', '6”', '6 in'],
  ])('%s: marks for feet and inches', (text, at, rewrite) =>
    expect(problemsOf('part', text)).toEqual([{ slug: 'foot-inch-marks', at, rewrite }]),
  );

  test('a mark for inches opens no text', () => {
    const text = 'diameter 6", length 3", from "drawing # 4" # note';
    expect([
      clauses('part', text),
      read('part', text).comment && under(text, read('part', text).comment ?? { from: 0, to: 0 }),
    ]).toEqual([['diameter', 'length', 'from'], '# note']);
  });

  test('a text that is not closed takes the rest; it could end there or earlier', () => {
    expect(unreadable('plan', 'site "Mill, date 2026-05-18')).toMatchObject([
      { at: '"Mill, date 2026-05-18', readings: ['"Mill, date 2026-05-18"', '"Mill", date 2026-05-18'] },
    ]);
  });

  test('more than 2,000 characters are not read', () => {
    expect(problemsOf('load', `free "${'x'.repeat(2000)}"`)).toMatchObject([
      { slug: 'line-unreadable', expected: 'at most 2,000 characters in a line' },
    ]);
    expect(problemsOf('load', `free "${'x'.repeat(1993)}"`)).toEqual([]);
  });

  test.each(['<<<<<<< HEAD', '=======', '>>>>>>> branch', '||||||| base'])('%s is left by a merge', (text) => {
    expect(problemsOf('file', text)).toMatchObject([
      { slug: 'line-unreadable', at: text, expected: 'one side of the merge, once it is finished' },
    ]);
  });
});

describe('keywords', () => {
  test('the longest that fits under this parent, at word ends', () => {
    expect(read('gear', 'load cell "Cell": weight 17 kg').statement?.keyword.word).toBe('load cell');
    expect(read('file', 'load cell').statement).toMatchObject({
      keyword: { word: 'load' },
      name: { parts: [{ text: 'cell' }] },
    });
    expect(clauses('part', 'rectangular tube 100 x 200 mm, wall 8 mm')).toEqual(['rectangular tube', 'wall']);
    expect(clauses('crane', 'chart wind 9 m/s, chart "A"')).toEqual(['chart wind', 'chart']);
    expect(read('gear', 'master  link "Ring"').statement?.keyword.word).toBe('master link');
    expect(read('gear', 'linkage "Ring"').kind).toBe('unread');
  });

  test('every statement reads its own example without a finding', () => {
    for (const [keyword, row] of Object.entries(statements)) {
      const block = row.under[0] ?? 'file';
      expect([keyword, problemsOf(block, row.example), read(block, row.example).statement?.keyword.word]).toEqual([
        keyword,
        [],
        keyword,
      ]);
    }
  });

  test('every clause reads its own example', () => {
    let seen = 0;
    for (const block of Object.keys(statements)) {
      for (const [keyword, row] of Object.entries(clausesOf(block))) {
        if (!row.example) continue;
        expect([block, keyword, problemsOf(block, row.example)]).toEqual([block, keyword, []]);
        expect(clauses(block, row.example)[0]).toBe(keyword);
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  test.each([
    ['laod "X"', 'laod', 'load'],
    ['Load "X"', 'Load', 'load'],
    ['LOAD "X"', 'LOAD', 'load'],
    ['power lin "N"', 'power', ''],
  ])('%s', (text, at, nearest) => {
    const [problem] = problemsOf('file', text) as unknown as (SyntaxFacts['word-unknown'] & {
      slug: string;
      at: string;
    })[];
    expect([problem?.slug, problem?.at, problem?.nearest[0] ?? '', read('file', text).opens]).toEqual([
      'word-unknown',
      at,
      nearest,
      true,
    ]);
  });

  test('a misspelt phrase is one word of the finding; at most three are near', () => {
    expect(problemsOf('weather', 'wind limt 9 m/s')).toEqual([
      { slug: 'word-unknown', at: 'wind limt', word: 'wind limt', nearest: ['wind limit'] },
    ]);
    expect(problemsOf('part', 'lenght 3 m, colour red')).toMatchObject([
      { slug: 'word-unknown', at: 'lenght', nearest: ['length', 'height'] },
      { slug: 'word-unknown', at: 'colour' },
    ]);
    expect(clauses('part', 'lenght 3 m, wall 3 mm')).toEqual(['wall']);
    for (const word of ['a', 'bx', 'wal', 'tubee'])
      expect(
        (problemsOf('part', `${word} 3 m`)[0] as unknown as { nearest: string[] }).nearest.length,
      ).toBeLessThanOrEqual(3);
  });

  test('a listed word that is not on the list', () => {
    expect(problemsOf('load', 'stated 3 t, by markign')).toEqual([
      { slug: 'word-unknown', at: 'markign', word: 'markign', nearest: ['marking'] },
    ]);
    expect(problemsOf('load', 'stated 3 t, by Marking')).toMatchObject([
      { slug: 'word-unknown', nearest: ['marking'] },
    ]);
    expect(problemsOf('rules', 'contingency guess 10 %')).toMatchObject([{ slug: 'word-unknown', at: 'guess' }]);
    expect(unreadable('load', 'stated 3 t, by "marking"')[0]?.expected).toContain('marking, drawing, shipping paper');
  });

  test('a keyword under the wrong parent', () => {
    expect(problemsOf('file', 'shackle K1: weight 5 lb')).toEqual([
      { slug: 'place-wrong', at: 'shackle', keyword: 'shackle', parent: 'file', parents: ['gear'] },
    ]);
    expect(problemsOf('gear', 'outside 30 in')).toMatchObject([
      { slug: 'place-wrong', at: 'outside', parent: 'gear', parents: expect.arrayContaining(['part', 'less']) },
    ]);
    expect(problemsOf('pick', 'at (0, 0, 0), voltage 3 kV')).toMatchObject([
      { slug: 'place-wrong', at: 'voltage', parents: ['power line', 'obstruction'] },
    ]);
  });

  test('a statement under the wrong parent is still read as what it is, and opens', () => {
    const line = read('file', 'shackle K1: weight 5 lb');
    expect([line.kind, line.statement?.keyword.word, line.clauses.length, line.opens]).toEqual([
      'statement',
      'shackle',
      1,
      true,
    ]);
  });

  test('a statement cannot stand where a clause is due, and takes what follows with it', () => {
    expect(problemsOf('file', 'load "P": stated 3 t, by drawing')).toEqual([
      { slug: 'place-wrong', at: 'stated', keyword: 'stated', parent: 'load', parents: ['load'] },
    ]);
    expect(
      problemsOf('file', 'load "P", contingency 5 %, stated 3 t, by drawing').map((problem) => problem.at),
    ).toEqual(['stated']);
  });
});

describe('names of statements', () => {
  const name = (block: string, text: string) => {
    const found = read(block, text).statement?.name;
    return found
      ? [found.parts.map((part) => part.text).join('.'), found.until?.text ?? ''].filter(Boolean).join('..')
      : null;
  };

  test.each([
    ['file', 'load "Pump skid"', 'Pump skid'],
    ['gear', 'sling S1..S4: wire rope', 'S1..S4'],
    ['crane', 'position pick: radius 3 m', 'pick'],
    ['crane', 'position radius: radius 3 m', 'radius'],
    ['crane', 'position "a ""b"""', 'a "b"'],
    ['file', 'rig', null],
    ['file', 'rig: crane "Yard 2"', null],
    ['file', 'rig crane "Yard 2"', null],
    ['file', 'rig "crane"', 'crane'],
    ['file', 'rig North', 'North'],
    ['load', 'weighed by jack reading', null],
    ['load', 'weighed "On jacks": by jack reading', 'On jacks'],
    ['file', 'ground: bearing 150 kPa', null],
    ['file', 'ground bearing 150 kPa', null],
    ['file', 'rules "Works"', 'Works'],
    ['file', 'let deck = 12 ft', 'deck'],
  ])('%s: %s', (block, text, said) => expect([name(block, text), problemsOf(block, text)]).toEqual([said, []]));

  test('where a name may be missing, a keyword is none', () =>
    expect(problemsOf('file', 'rig load')).toMatchObject([{ slug: 'place-wrong', at: 'load' }]));

  test.each([
    ['part: box 1 x 1 x 1 m', ':'],
    ['part', 'part'],
    ['part 3 m', '3'],
  ])('%s: a name is missing', (text, at) => {
    expect(unreadable('load', text)[0]).toMatchObject({ at, expected: 'a name' });
    expect(read('load', text).statement?.unread).toBe(true);
  });

  test('ranges are declared for gear only', () =>
    expect(unreadable('load', 'pick P1..P4: at (0, 0, 0)')[0]?.at).toBe('..'));

  test.each([
    ['m', 'unit'],
    ['in', 'unit'],
    ['sqrt', 'function'],
    ['x', 'keyword'],
    ['and', 'keyword'],
    ['load', 'keyword'],
    ['point', 'keyword'],
  ])('%s is no name for a value: it is a %s', (word, as) => {
    expect(problemsOf('file', `let ${word} = 3 m`)).toEqual([{ slug: 'name-reserved', at: word, name: word, as }]);
  });

  test.each(['wall', 'deck', 'od', 'y', 'high', 'count'])('%s is one', (word) =>
    expect(problemsOf('file', `let ${word} = 3 m`)).toEqual([]),
  );

  test.each([
    ['let deck 12 ft', 'let deck = 12 ft'],
    ['let deck: 12 ft', 'let deck = 12 ft'],
  ])('%s could be %s', (text, whole) => {
    const [problem] = unreadable('file', text);
    expect(problem?.readings.map((reading) => text.replace(problem.at, reading))).toEqual([whole]);
  });
});

describe('the colon and the value', () => {
  test.each([
    ['load', 'part "A": box 1 x 1 x 1 m'],
    ['load', 'part "A" box 1 x 1 x 1 m'],
    ['load', 'part "A" : box 1 x 1 x 1 m'],
    ['load', 'part "A", box 1 x 1 x 1 m'],
  ])('%s: %s', (block, text) => expect([problemsOf(block, text), clauses(block, text)]).toEqual([[], ['box']]));

  test.each([
    ['file', 'plan "X": date 2026-05-18', ['date']],
    ['file', 'plan "X", date 2026-05-18', ['date']],
    ['file', 'plan "X" date 2026-05-18', ['date']],
    ['load', 'held by "grout", released "broken out"', ['released']],
    ['steps', 'step "Raise", hold', ['hold']],
    ['part', 'less hole, diameter 6 in', ['hole', 'diameter']],
    ['part', 'less: hole, diameter 6 in', ['hole', 'diameter']],
    ['file', 'weather: wind limit 9 m/s', ['wind limit']],
    ['file', 'waive hang-tilted, on "Skid", reason "so"', ['on', 'reason']],
    ['load', 'stated: 4,850 lb, by marking', ['by']],
    ['file', 'load "X":', []],
    ['gear', 'sling S1: wire rope, length 3 m,', ['wire rope', 'length']],
  ])('%s: %s', (block, text, said) => expect([problemsOf(block, text), clauses(block, text)]).toEqual([[], said]));

  test('a value after the colon, and a colon inside a value', () => {
    expect(amount(value('crane', 'deduct "Stowed jib": 1,100 lb, from "note 5"'))).toBe('1100 lb');
    expect(amount(value('crane', 'deduct "Stowed jib" 1,100 lb'))).toBe('1100 lb');
    expect(value('chart', 'radius 10 ft: 60,000; 51,000 lb')?.kind).toBe('row');
  });

  test.each([
    ['load', 'stated'],
    ['load', 'stated, by marking'],
    ['file', 'plan: date 2026-05-18'],
    ['file', 'let deck ='],
    ['crane', 'deduct "Jib"'],
    ['rig', 'leg'],
    ['part', 'length'],
    ['part', 'length, wall 3 mm'],
  ])('%s: %s: the value is missing', (block, text) => {
    expect(problemsOf(block, text).map((problem) => problem.slug)).toEqual(['line-unreadable']);
    expect(read(block, text).opens).toBe(true);
  });

  test('a value that may be missing', () =>
    expect([problemsOf('part', 'liquid, of water'), problemsOf('part', 'spare 3')[0]?.slug]).toEqual([
      [],
      'place-wrong',
    ]));
});

describe('a line that cannot be read', () => {
  test('keeps the clauses before and after the bad one', () => {
    const text = 'part "Rails": section C8x11.5, length 12 ft/2, count 2, of carbon steel';
    const line = read('load', text);
    expect(line.clauses.map((clause) => [clause.keyword.word, clause.unread])).toEqual([
      ['section', false],
      ['length', true],
      ['count', false],
      ['of', false],
    ]);
    expect([line.opens, line.problems.length, line.statement?.unread]).toEqual([true, 1, false]);
  });

  test('a bracket that is never closed ends before the next clause', () => {
    expect(
      read('part', 'at (0, 1 m, 2 m, count 3, every (0, 1, 0) m').clauses.map((clause) => [
        clause.keyword.word,
        clause.unread,
      ]),
    ).toEqual([
      ['at', true],
      ['count', false],
      ['every', false],
    ]);
    expect(clauses('part', 'at (0, wall, 2 m), count 3')).toEqual(['at', 'count']);
  });

  test('says what can stand there, in plain words, and what stays open', () => {
    expect(unreadable('load', 'part "A": plate 2 m x 1 m x, of steel')[0]).toMatchObject({
      at: 'x',
      expected: 'an amount',
      parent: 'part "A"',
    });
    expect(unreadable('part', 'length 3 m 4')[0]).toMatchObject({ at: '4', expected: 'a unit' });
    expect(unreadable('part', 'length 3 m (')[0]).toMatchObject({
      at: '(',
      expected: 'a comma or the end of the line',
      parent: 'part',
    });
    expect(unreadable('part', 'count')[0]).toMatchObject({ at: 'count', expected: 'an amount with its unit' });
    expect(unreadable('sling', 'chain 3')[0]).toMatchObject({ at: '3', expected: 'a comma or the end of the line' });
    expect(unreadable('load', '17 m')[0]).toMatchObject({ at: '17', expected: 'a keyword', parent: 'load' });
    expect(unreadable('file', 'plan: "X": date 2026-05-18')[0]).toMatchObject({
      at: ': date 2026-05-18',
      readings: [', date 2026-05-18'],
    });
    expect(unreadable('part', 'length 3 m, , wall 3 mm')[0]).toMatchObject({ expected: 'a keyword' });
  });

  test.each([
    ['part', 'count 2 every (0, 1 m, 0)', 'count 2, every (0, 1 m, 0)'],
    ['part', 'length 3 m wall 3 mm', 'length 3 m, wall 3 mm'],
    ['load', 'stated 4,850 lb: by marking', 'stated 4,850 lb, by marking'],
    ['plan', 'site Mill Creek, revision C', 'site "Mill Creek", revision C'],
    ['part', 'bar #5', 'bar "#5"'],
    ['part', 'length 3 m ,wall 3 mm', 'length 3 m , wall 3 mm'],
    ['file', 'expect gross load =< 3 t', 'expect gross load <= 3 t'],
    ['part', 'length 5–3 m', 'length 5 - 3 m'],
  ])('%s: %s could be %s', (block, text, whole) => {
    const [problem] = unreadable(block, text);
    expect(problem?.readings.map((reading) => text.replace(problem.at, reading))).toContain(whole);
    expect(problemsOf(block, whole)).toEqual([]);
  });

  test('a designation takes nearly anything, but no comma without its space and no open quotation mark', () => {
    expect(unreadable('part', 'of carbon steel,count 2')).toMatchObject([
      { at: 'carbon steel,count 2', readings: ['carbon steel, count 2'] },
    ]);
    expect(unreadable('part', 'of "carbon steel, count 2')).toMatchObject([
      { at: '"carbon steel, count 2', readings: ['"carbon steel, count 2"', '"carbon steel", count 2'] },
    ]);
    expect(unreadable('part', 'section C8x11,5')).toMatchObject([{ at: 'C8x11,5', readings: ['C8x11.5'] }]);
    expect(problemsOf('part', 'section 2L4x4x1/2 - A.5')).toEqual([]);
  });

  test('equal lines under one parent are read once', () => {
    expect(read('part', 'length 3 m # once')).toBe(read('part', 'length 3 m # once'));
    expect(read('sling', 'length 3 m # once')).not.toBe(read('part', 'length 3 m # once'));
  });
});

describe('colours', () => {
  test('every word of a line has its class', () => {
    const text = '  part "Rails": section C8x11.5, length 12 ft - deck, by drawing # note';
    expect(read('load', text).colours.map((span) => `${under(text, span)} ${span.class}`)).toEqual([
      'part keyword',
      '"Rails" text',
      'section clause',
      'C8x11.5 word',
      'length clause',
      '12 number',
      'ft unit',
      '- operator',
      'deck name',
      'by clause',
      'drawing word',
      '# note comment',
    ]);
  });
});
