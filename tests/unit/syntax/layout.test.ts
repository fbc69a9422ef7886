// Formatting: what changes, and what never does.
import { describe, expect, test } from 'vitest';
import { format, formatText } from '../../../server/syntax/layout.ts';
import { allProblems, language, tree } from './reading.ts';

const formatted = (text: string) => formatText(text, language);

describe('formatting', () => {
  test.each([
    ['load  "Pump   skid"', 'load "Pump   skid"'],
    ['load "A"   ', 'load "A"'],
    ['power\tline "x"', 'power\tline "x"'],
    ['rig :crane  "Yard 2"', 'rig: crane "Yard 2"'],
    ['rig crane "Yard 2"', 'rig: crane "Yard 2"'],
    ['plan "X"  date 2026-05-18', 'plan "X": date 2026-05-18'],
    ['plan "X" , date 2026-05-18', 'plan "X", date 2026-05-18'],
    ['let deck=12ft', 'let deck = 12 ft'],
    ['let a =  ( 1 m+ 2 m )', 'let a =  ( 1 m+ 2 m )'],
    ['let a = ( 1 m + 2 m ) * -3', 'let a = (1 m + 2 m) * -3'],
    ['let a = max ( 1 m , 2 m )', 'let a = max(1 m, 2 m)'],
    ['let a = 1  1/2in', 'let a = 1 1/2 in'],
    ['let a = 5%', 'let a = 5 %'],
    ['let a = 60°', 'let a = 60°'],
    ['let a = 60 °', 'let a = 60 °'],
    ['let a = 3 m±1 mm', 'let a = 3 m ± 1 mm'],
    ['expect gross load<8,000 lb', 'expect gross load < 8,000 lb'],
    ['let a = 2 × 3', 'let a = 2 × 3'],
    ['load "A":', 'load "A":'],
    ['weather wind limit 9 m/s ,', 'weather: wind limit 9 m/s,'],
    ['# a   b  ', '# a   b'],
    ['   ', ''],
    ['load "A"    # why   so', 'load "A"    # why   so'],
  ])('%j becomes %j', (text, said) => expect(formatted(text)).toBe(said));

  test.each([
    ['load "A"\n  part "B" tube', 'load "A"\n  part "B": tube'],
    ['load "A"\n  held\tby "x"', 'load "A"\n  held by "x"'],
    [
      'load "A"\n  part "B": pipe NPS  1 1/2, section C8x11.5 , of  carbon   steel',
      'load "A"\n  part "B": pipe NPS 1 1/2, section C8x11.5, of carbon steel',
    ],
    ['load "A"\n  part "B": plate deck×4 ft x 1 in', 'load "A"\n  part "B": plate deck×4 ft x 1 in'],
    ['rig\n  leg "Main block">S1 > "Skid".NW', 'rig\n  leg "Main block" > S1 > "Skid".NW'],
    ['gear\n  sling S1 .. S4 wire rope', 'gear\n  sling S1..S4: wire rope'],
    ['load "A"\n  stated 3 t ,by marking', 'load "A"\n  stated 3 t ,by marking'],
    ['load "A"\n  part "B"\n    less hole, diameter 6in', 'load "A"\n  part "B"\n    less: hole, diameter 6 in'],
    ['chart "A"\n  radius 10 ft:60,000;  51,000 lb', 'chart "A"\n  radius 10 ft: 60,000; 51,000 lb'],
    ['load "A"\n  cog (0,0,0) m', 'load "A"\n  cog (0,0,0) m'],
    ['load "A"\n  cog ( 0 , 0 , -1)m', 'load "A"\n  cog (0, 0, -1) m'],
    ['load "A"\n  held by "x" released "y"', 'load "A"\n  held by "x": released "y"'],
  ])('%j becomes %j', (text, said) => expect(formatted(text)).toBe(said));

  test('two spaces a level, blank lines as they are, comments with the line they stand by', () => {
    expect(
      formatted(
        'load "A"\n    # of the deck\n    part "B": tube\n       # inner\n       length 3 m\n\n\n    # last of load\n# of gear\ngear\n block "C"  # hook',
      ),
    ).toBe(
      'load "A"\n  # of the deck\n  part "B": tube\n    # inner\n    length 3 m\n\n\n  # last of load\n# of gear\ngear\n  block "C"  # hook',
    );
  });

  test('line ends stay what they are, mixed ones too, and so does a byte-order mark', () =>
    expect(formatted('\ufeffload  "A"\r\n   datum  "x"\n\rgear ')).toBe('\ufeffload "A"\r\n  datum "x"\n\rgear'));

  test('a line that cannot be read keeps all but its indentation and the spaces at its end', () => {
    expect(formatted('load "A"\n    part  "B":  plate 2 m  x,  of steel  \n    datum   "x"')).toBe(
      'load "A"\n  part  "B":  plate 2 m  x,  of steel\n  datum "x"',
    );
    expect(formatted('laod  "A"\n    part  "B": tube')).toBe('laod  "A"\n  part "B": tube');
  });

  test('nothing is re-indented where the nesting is not clear', () => {
    const unclear = 'load "A"\n    datum  "x"\n      contingency 5 %';
    expect(formatted(unclear)).toBe('load "A"\n    datum "x"\n      contingency 5 %');
    expect(formatted(`${unclear}\nload "B"\n    datum "y"`)).toBe(
      'load "A"\n    datum "x"\n      contingency 5 %\nload "B"\n  datum "y"',
    );
    expect(formatted('load "A"\n\tdatum "x"')).toBe('load "A"\n\tdatum "x"');
    expect(allProblems(tree(formatted('load "A"\n    datum "x"\n   contingency 5 %\ngear\n    block "C"')))).toEqual([
      'indent-unclear',
    ]);
  });

  test('a character that cannot be seen is not taken away in silence', () =>
    expect(formatted('load  "A\u200b"\nload  "B" \u200b')).toBe('load  "A\u200b"\nload  "B" \u200b'));

  test('only rows that change are given', () => {
    expect(format(tree('load "A"\n   datum "x"\ngear\n'), language)).toEqual([{ row: 1, text: '  datum "x"' }]);
    expect(format(tree(''), language)).toEqual([]);
  });
});
