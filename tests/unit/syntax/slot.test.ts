// What may stand at the cursor, which is written as | in these lines.
import { describe, expect, test } from 'vitest';
import { slotAt } from '../../../server/syntax/slot.ts';
import { language } from './reading.ts';

function slot(block: string, marked: string) {
  const at = marked.indexOf('|');
  const found = slotAt(marked.replace('|', ''), at, language.under(block), language);
  return { ...found, replaces: marked.replace('|', '').slice(found.from, found.to) };
}

describe('what may stand here', () => {
  test.each([
    ['file', '|', 'keyword', 'file', null],
    ['file', 'lo|', 'keyword', 'file', null],
    ['load', '  held b|', 'keyword', 'load', null],
    ['load', 'part |', 'name', 'part', null],
    ['load', 'part "A": |', 'keyword', 'part', null],
    ['load', 'part "A": tu|', 'keyword', 'part', null],
    ['load', 'part "A": tube, |', 'keyword', 'part', null],
    ['load', 'part "A": tube, rectangular t|', 'keyword', 'part', null],
    ['part', 'tube, len|', 'keyword', 'part', null],
    ['part', 'at (0, 1 m, |', 'value', 'part', 'at'],
    ['part', 'at (0, 1 |', 'unit', 'part', 'at'],
    ['part', 'at (0, 1, 2) |', 'unit', 'part', 'at'],
    ['part', 'length 3|', 'value', 'part', 'length'],
    ['part', 'length 3 |', 'unit', 'part', 'length'],
    ['part', 'length 3 f|', 'unit', 'part', 'length'],
    ['part', 'length |', 'value', 'part', 'length'],
    ['part', 'on |', 'name', 'part', 'on'],
    ['part', 'on "De|', 'name', 'part', 'on'],
    ['part', 'on A and |', 'name', 'part', 'on'],
    ['rig', 'leg "Main block" > |', 'name', 'leg', null],
    ['load', 'stated 3 t, by |', 'value', 'stated', 'by'],
    ['load', 'stated 3 t, by ma|', 'value', 'stated', 'by'],
    ['file', 'plan "X|"', 'text', 'plan', null],
    ['file', 'plan "X": |', 'keyword', 'plan', null],
    ['plan', 'site |', 'text', 'plan', 'site'],
    ['file', 'load "A" # no|', 'comment', 'file', null],
    ['file', 'let deck = |', 'value', 'let', null],
    ['file', 'expect |', 'value', 'expect', null],
    ['file', 'rig: |', 'keyword', 'rig', null],
    ['file', 'rig |', 'keyword', 'rig', null],
    ['file', 'rig: crane |', 'name', 'rig', 'crane'],
    ['part', 'at (0, 1, 2, cou|', 'value', 'part', 'at'],
    ['part', 'length 10 ft/2, wall |', 'value', 'part', 'wall'],
    ['crane', 'deduct "Jib": 3 |', 'unit', 'deduct', null],
    ['gear', 'sling S1..S4: wi|', 'keyword', 'sling', null],
  ])('%s: %s: %s', (block, marked, kind, of, clause) =>
    expect(slot(block, marked)).toMatchObject({ kind, block: of, clause }),
  );

  test('what it would replace and what is typed', () => {
    expect(slot('load', '  held b|, released')).toMatchObject({ replaces: 'held b', typed: 'held b' });
    expect(slot('part', 'length 3 f|t, wall 3 mm')).toMatchObject({ replaces: 'ft', typed: 'f' });
    expect(slot('part', 'length |3 ft')).toMatchObject({ replaces: '', typed: '' });
    expect(slot('part', 'on "De|ck", at')).toMatchObject({ replaces: '"Deck"', typed: '"De' });
  });

  test('how the value is written, and the words listed for it', () => {
    expect(slot('pick', 'kind |')).toMatchObject({
      type: 'word',
      words: ['lug', 'eye', 'anchor', 'trunnion', 'edge', 'round'],
      statement: null,
    });
    expect(slot('load', 'part "A": at |')).toMatchObject({ type: 'point', statement: 'part' });
    expect(slot('load', 'part "A": |')).toMatchObject({ type: null, words: [] });
  });
});
