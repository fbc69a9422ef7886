// Evidence as it is met: accuracy of a reading, what hung on it, net and gross, figures older than the load, dates after the lift.
import { describe, expect, test } from 'vitest';
import { head, lift, loadOf, message, slugs, value } from '../../support/lift.ts';

const total = (s: ReturnType<typeof loadOf>) => s.results.loads[0]?.candidates[0]?.total.value;
const full = 'dated 2026-02-20, state "as lifted"';

describe('how accurate a reading is', () => {
  // An indicator that shows 5 % less than hangs shows 19,000 kg where 20,000 kg hang.
  test('an indicator 5 % low: 19,000 kg may be 20,000 kg, whatever of it is taken off again', () => {
    expect(total(loadOf(`  stated 19,000 kg, by load cell, ${full}, tare 0 kg, accuracy 5 %`))).toBeCloseTo(20_000, 6);
    const block = loadOf(`  stated 19,000 kg, by load cell, ${full}, tare 3,000 kg, accuracy 5 %`);
    expect(total(block)).toBeCloseTo(17_000, 6);
    expect(value(block, 'load', 'L', 'stated weight')).toBe(16_000);
  });

  test('the larger of accuracy, tolerance and contingency counts, never their sum', () => {
    const of = (more: string) => total(loadOf(`  stated 1,900 kg ± 60 kg, by load cell, ${full}, tare 0 kg${more}`));
    expect(of('')).toBe(1960);
    expect(of(', accuracy 5 %')).toBeCloseTo(2000, 9);
    expect(of(', accuracy 5 %, contingency 10 %')).toBeCloseTo(2090, 9);
  });

  // 1,000 kg shown 5 % low is 1,052.6 kg; of that at least 50 kg is tare.
  test('a tare within so much is taken off at its least where the reading is at its most', () => {
    expect(total(loadOf(`  stated 1,000 kg, by load cell, ${full}, tare 100 kg ± 50 kg, accuracy 5 %`))).toBeCloseTo(
      1000 / 0.95 - 50,
      9,
    );
  });

  test('of a weighing on supports it is of the readings; of all that was read where much is taken off again', () => {
    const of = (tare: string) =>
      total(
        loadOf(
          `  weighed: by weighbridge, ${full}, tare ${tare}, accuracy 2 %\n    support A: at (0, 0, 0), reads 6 t\n    support B: at (4 m, 0, 0), reads 4 t`,
        ),
      );
    expect(of('100 kg')).toBeCloseTo(9900 * 1.02, 9);
    expect(of('7,000 kg')).toBeCloseTo(3000 + 0.02 * 10_000, 9);
  });

  test('it is a share below one half, and not known where it is `?`', () => {
    const s = loadOf(`  stated 19 t, by load cell, ${full}, tare 0 kg, accuracy 60 %`);
    expect(message(s, 'value-outside')).toContain('it cannot be more than 50 %');
    expect(total(loadOf(`  stated 19 t, by load cell, ${full}, tare 0 kg, accuracy ?`))).toBeNull();
  });

  test('a reading that says it may govern downwards', () => {
    const s = loadOf(
      `  stated 5 t, by drawing, from "D-1"\n  stated 4.8 t, by load cell, ${full}, tare 0 kg, accuracy 1 %\n  cog (0, 0, 0), by drawing, from "D-1"`,
    );
    expect(slugs(s)).toEqual([]);
    expect(value(s, 'load', 'L', 'weight')).toBeCloseTo(4800 / 0.99, 6);
  });
});

describe('what hung on it (by hand)', () => {
  test('a reading on the crane with block and slings: only what the line says is taken off', () => {
    const s = loadOf(`  stated 5,460 kg ± 30 kg, by load cell, ${full}, tare 285 kg + 4 * 12 kg, from "indicator"`);
    expect(value(s, 'load', 'L', 'stated weight')).toBe(5460 - 333);
    const unsaid = loadOf('  stated 5,460 kg ± 30 kg, by load cell, dated 2026-02-20, state "as lifted"');
    expect(value(unsaid, 'load', 'L', 'stated weight')).toBe(5460);
    expect(message(unsaid, 'reading-unclear')).toContain('what hung on it or stood with it (`tare`)');
  });
});

describe('net and gross', () => {
  const said = (clauses: string) =>
    message(loadOf(`  stated 2 t, ${clauses}\n  cog (0, 0, 0), by drawing, from "D"`), 'reading-unclear');

  test.each(['net', 'gross'])('a %s weight says what of packing and carriage is lifted', (kind) => {
    for (const by of ['shipping paper', 'marking', 'drawing'])
      expect(said(`by ${by}, state "${kind}"`)).toContain(`what packing or carriage is in the ${kind} weight`);
    expect(said(`by shipping paper, state "${kind}", tare 120 kg`)).toBe('');
  });

  test('the parts that are lifted and not in it may be named instead', () => {
    const s = loadOf(
      '  stated 2 t, by shipping paper, state "net", without "Cradle"\n  cog (0, 0, 0), by drawing, from "D"\n  part "Cradle": item 150 kg, by drawing, from "D", at (0, 0, 0)',
    );
    expect(slugs(s)).not.toContain('reading-unclear');
    expect(value(s, 'load', 'L', 'stated weight')).toBe(2150);
  });

  test('other states are not asked', () => expect(said('by shipping paper, state "as shipped, with oil"')).toBe(''));
});

describe('older than the last change of the load', () => {
  const of = (stated: string) =>
    loadOf(
      `  modified 2026-01-15\n  stated 2 t, ${stated}\n  cog (0, 0, 0), by drawing, from "D"\n  part "Motor": item 150 kg, by drawing, from "D", at (0, 0, 0)`,
    ).findings.filter(({ slug }) => slug === 'reading-unclear');

  test('a marking of before says nothing of the change: worse than one of nobody knows when', () => {
    const [older] = of('by marking, dated 2019-05-01');
    expect(older?.severity).toBe('error');
    expect(older?.message).toContain(
      'whether the change of 2026-01-15 is in it, for it is dated 2019-05-01 (`without`)',
    );
    const [undated] = of('by marking');
    expect(undated?.severity).toBe('warning');
    expect(undated?.message).toContain('whether it is older than the change of 2026-01-15 (`dated`)');
  });

  test.each([
    'by marking, dated 2026-01-15',
    'by marking, dated 2019-05-01, without "Motor"',
    'by drawing, dated 2026-02-01',
  ])('asked nothing: %s', (stated) => expect(of(stated)).toEqual([]));
});

describe('dates after the lift', () => {
  // The head of these plans says 2 March 2026.
  const dated = (line: string) =>
    slugs(lift(`${head}load "L"\n  contingency 0 %\n  free "loose"\n${line}\n`)).filter(
      (slug) => slug === 'date-ahead',
    );

  test.each([
    '  stated 2 t, by marking, dated 2026-03-03',
    '  cog (0, 0, 0), by drawing, dated 2026-04-01',
    '  weighed: by jack reading, dated 2026-12-01\n    support A: at (0, 0, 0), reads 5 kN',
    '  modified 2026-03-04',
  ])('%s', (line) => {
    expect(dated(line)).toHaveLength(1);
    expect(dated(line.replace(/2026-\d\d-\d\d/, '2026-03-02'))).toEqual([]);
  });

  const sling = (clauses: string) =>
    lift(
      `${head}load "L"\n  contingency 0 %\n  free "loose"\n  stated 1 t, by drawing, from "D"\n  cog (0, 0, 0), by drawing, from "D"\n  pick P: at (0, 0, 1 m), capacity 3 t\ngear\n  hook H: weight 60 kg, capacity 5 t\n  sling S: wire rope, diameter 20 mm, length 3 m, weight 8 kg, capacity 4 t, ${clauses}\nrig\n  leg H > S > P, direct "x"\n`,
    );

  test('an inspection after the lift, and an interval without an inspection', () => {
    expect(message(sling('inspected 2026-03-20'), 'date-ahead')).toContain(
      'The inspection of S is dated 2026-03-20, after the lift on 2026-03-02',
    );
    expect(slugs(sling('inspected 2026-03-02, interval 6 months'))).toEqual([]);
    expect(message(sling('interval 6 months'), 'clause-missing')).toContain('S needs inspected');
  });
});

test('a load in a library is lifted by nobody, so the gross load is not known; in another plan it is in a lift of its own', () => {
  const plan = (library: string) =>
    lift(
      `${head}use "more.liftplan"\nload "L"\n  contingency 0 %\n  free "loose"\n  stated 1 t, by drawing, from "D"\n  cog (0, 0, 0), by drawing, from "D"\n`,
      {
        'more.liftplan': library,
      },
    );
  const load = 'load "Other"\n  stated 3 t, by drawing, from "D", contingency 5 %\n  free "loose"\n';
  const s = plan(load);
  expect(message(s, 'not-judged')).toContain('The load Other of a used file');
  expect(s.results.find('plan', null, 'load weight')?.value.because.map(({ what }) => what)).toEqual([
    'Other stands in a used file, and is not lifted here.',
  ]);
  const other = plan(`plan "Other lift": date 2026-03-02\n${load}`);
  expect(slugs(other)).not.toContain('not-judged');
  expect(value(other, 'plan', null, 'load weight')).toBe(1000);
  expect(other.results.notJudged).toContain('the load Other of a used file');
});
