// How a finding stands on a terminal: sentence and slug, place, the marked line, ways out, related places.
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../server/checks/index.ts';
import { human } from '../../../server/command/formats/human.ts';
import type { Place } from '../../../server/syntax/types.ts';

const at = (text: string, words: string): Place => {
  const from = text.indexOf(words);
  return { row: { file: 'skid.liftplan', text }, from, to: from + words.length };
};
const finding = (place: Place, more: Partial<Finding> = {}): Finding => ({
  slug: 'unit-missing',
  severity: 'error',
  message: '4 of what?',
  at: place,
  related: [],
  fixes: [],
  waived: null,
  ...more,
});
const where = (place: Place) => ({ path: 'plans/skid.liftplan', line: 12, column: place.from + 1 });
const lines = (made: Finding, colour = false) => human(made, where, colour).split('\n');

describe('arrangement', () => {
  const fix = (title: string) => ({ title, preferred: false, edits: [], cursor: null });
  const line = '  part "Deck": plate 4 x 2 x 1 ft';

  test('everything there is, in its order', () => {
    const made = finding(at(line, '4 x'), {
      fixes: [fix('4 ft'), fix('4 in')],
      related: [{ at: at('let a = 4', 'a'), message: 'comes from here' }],
    });
    expect(lines(made)).toEqual([
      'error: 4 of what? [unit-missing]',
      '  plans/skid.liftplan:12:22',
      '    part "Deck": plate 4 x 2 x 1 ft',
      `    ${' '.repeat('part "Deck": plate '.length)}===`,
      '  Could be: 4 ft; 4 in',
      '  plans/skid.liftplan:12  comes from here',
      '',
    ]);
  });

  test('a finding set aside says by whom, and why', () =>
    expect(lines(finding(at(line, 'plate'), { waived: { reason: 'seen', approvedBy: 'the works' } }))).toEqual(
      expect.arrayContaining(['error, set aside: 4 of what? [unit-missing]', '  Set aside by the works: seen']),
    ));

  test('colour is weight and one tint, and is off unless asked for', () => {
    expect(human(finding(at(line, 'plate')), where, false)).not.toContain('\u001b');
    expect(lines(finding(at(line, 'plate')), true).slice(0, 2)).toEqual([
      '\u001b[1merror\u001b[0m: 4 of what? [unit-missing]',
      '  \u001b[36mplans/skid.liftplan:12:16\u001b[0m',
    ]);
  });
});

describe('the bar stands under the words', () => {
  const under = (text: string, words: string) => {
    const [, , line = '', bar = ''] = lines(finding(at(text, words)));
    return [line, bar].map((shown) => shown.slice(4));
  };

  test('wide letters take two columns, accents set on another letter none', () => {
    expect(under('part "吊具": box', 'box')).toEqual(['part "吊具": box', '             ===']);
    expect(under('part "e\u0301": box', 'box')).toEqual(['part "e\u0301": box', '          ===']);
  });

  test('characters that a terminal would obey are spelled out', () =>
    expect(under('part "\u001b[2J\u202E": box', 'box')).toEqual([
      'part "[U+001B][2J[U+202E]": box',
      `${' '.repeat(28)}===`,
    ]));

  test('of a long line the piece around the place is shown', () => {
    const [line = '', bar = ''] = under(`a${' b'.repeat(200)} here ${'c '.repeat(200)}`, 'here');
    expect(line.length).toBeLessThan(140);
    expect(line.slice(bar.indexOf('='), bar.length)).toBe('here');
    expect(line).toMatch(/^… .* …$/);
  });

  test('a place without width still has a mark', () => expect(under('part ', '')).toEqual(['part', '=']));
});
