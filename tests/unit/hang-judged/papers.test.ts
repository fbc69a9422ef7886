// Dates by the calendar, numbers that stand twice, temperatures, and capacities that are hardly for one straight leg.
import { describe, expect, test } from 'vitest';
import { greatestRating, temperatureRange } from '../../../server/catalog/index.ts';
import { joined } from '../../../server/quantities/units.ts';
import { after } from '../../../server/results/papers.ts';
import { openWhy } from '../../support/hanging.ts';
import { errors, lift, message, slugs } from '../../support/lift.ts';
import { mayCarry, rated, rope } from '../../support/rated.ts';

const seconds = (unit: string, n: number): number => n * (joined(unit)?.factor ?? Number.NaN);

describe('dates', () => {
  test.each([
    ['2025-05-18', 'month', 12, '2026-05-18'],
    ['2025-08-31', 'month', 6, '2026-02-28'],
    ['2023-08-31', 'month', 6, '2024-02-29'],
    ['2024-02-29', 'year', 1, '2025-02-28'],
    ['2025-12-15', 'month', 1, '2026-01-15'],
    ['2026-03-01', 'day', 90, '2026-05-30'],
    ['2026-03-01', 'week', 2, '2026-03-15'],
  ])('%s and %s × %d is %s', (from, unit, n, to) => {
    expect(after(from, seconds(unit, n))).toBe(to);
  });

  /** The same lift on several days. */
  const on = (date: string, clauses: string) =>
    lift(`plan "P"${date && `: date ${date}`}
load "L"
  stated 1 t, by drawing, from "D"
  pick A: at (0, 0, 1 m), capacity 5 t
gear
  hook H: weight 10 kg, capacity 5 t
  sling S1: ${rope}, length 3 m${clauses}
rig
  leg H > S1 > A, direct "so"
`);
  const inspected = ', inspected 2025-03-02, interval 12 month';

  test('it holds the day before, and on the day it has run out', () => {
    expect(slugs(on('2026-03-01', inspected))).not.toContain('date-passed');
    expect(message(on('2026-03-02', inspected), 'date-passed')).toBe(
      'Inspection of S1 ran out on 2026-03-02; the lift is on 2026-03-02.',
    );
  });

  test('without a date of the lift it cannot be judged; without an interval or an inspection there is nothing to judge', () => {
    expect(message(on('', inspected), 'date-passed')).toContain('cannot be judged');
    expect(slugs(on('2030-01-01', ', inspected 2025-03-02'))).not.toContain('date-passed');
    expect(slugs(on('2030-01-01', ', interval 12 month'))).not.toContain('date-passed');
  });

  test('`like` takes the interval over and never the inspection', () => {
    const text = (second: string) => `plan "P": date 2026-06-01
load "L"
  stated 1 t, by drawing, from "D"
  pick A: at (0, 0, 1 m), capacity 5 t
gear
  hook H: weight 10 kg, capacity 5 t
  sling S0: ${rope}, length 3 m, inspected 2025-03-02, interval 12 month, spare
  sling S1: like S0${second}
rig
  leg H > S1 > A, direct "so"
`;
    const told = (s: ReturnType<typeof lift>) =>
      s.findings.filter((one) => one.slug === 'date-passed').map((one) => one.message.slice(0, 16));
    expect(told(lift(text('')))).toEqual(['Inspection of S0']);
    expect(told(lift(text(', inspected 2025-04-01')))).toEqual(['Inspection of S0', 'Inspection of S1']);
    expect(told(lift(text(', inspected 2026-04-01')))).toEqual(['Inspection of S0']);
  });

  test('cranes and permits have dates as well', () => {
    const s =
      on('2026-03-02', '')
        .plan.files[0]?.tree.rows.map((row) => row.text)
        .join('\n') ?? '';
    const more = lift(
      `${s}crane C: kind mobile, capacity 20 t, inspected 2024-01-01, interval 12 month\npermit "Hot work": until 2026-03-01\npermit "Road": until 2026-03-02\n`,
    );
    expect(more.findings.filter((one) => one.slug === 'date-passed').map((one) => one.message)).toEqual([
      'Inspection of C ran out on 2025-01-01; the lift is on 2026-03-02.',
      'Permit of "Hot work" ran out on 2026-03-01; the lift is on 2026-03-02.',
    ]);
  });
});

describe('numbers', () => {
  const two = (first: string, second: string) =>
    rated({
      gear: [`shackle K1: weight 0 kg, capacity 3 t${first}`, `shackle K2: weight 0 kg, capacity 3 t${second}`],
      joined: 'K# > ',
    });

  test('the same number on two items opens both', () => {
    const s = two(', serial "A-7"', ', serial "a-7"');
    expect(message(s, 'serial-repeated')).toContain('K1 and K2');
    for (const name of ['K1', 'K2'])
      expect(openWhy(s, 'shackle', name, 'capacity used').join()).toContain('stands on K1 and on K2');
    expect(mayCarry(two(', serial "A-7"', ', serial "A-8"'), 'shackle', 'K1')).toBe(3000);
  });

  test('`like` and ranges copy no number', () => {
    expect(
      slugs(
        rated({
          gear: ['shackle K1: weight 0 kg, capacity 3 t, serial "A-7"', 'shackle K2: like K1'],
          joined: 'K# > ',
        }),
      ),
    ).not.toContain('serial-repeated');
    expect(
      slugs(rated({ gear: ['shackle K1..K2: weight 0 kg, capacity 3 t, serial "A-7"'], joined: 'K# > ' })),
    ).not.toContain('serial-repeated');
  });
});

describe('temperature', () => {
  const at = (degrees: string, sling: string) => rated({ sling, more: [`weather: temperature ${degrees}`] });

  test.each([
    ['wire rope', 'wire rope, diameter 20 mm', -51, 93],
    ['chain', 'chain, diameter 13 mm', -40, 200],
    ['web', 'web', -29, 82],
    ['fibre rope', 'fibre rope', -29, 82],
  ])('%s (29 CFR 1910.184, EN 818-4): inside its range judged, outside open', (of, words, low, high) => {
    expect(temperatureRange(of)).toMatchObject({ from: low, to: high });
    const sling = `${words}, weight 0 kg, capacity 3 t`;
    for (const inside of [low, high]) expect(mayCarry(at(`${inside} degC`, sling)), `${inside}`).toBe(3000);
    for (const outside of [low - 1, high + 1]) {
      expect(errors(at(`${outside} degC`, sling)), `${outside}`).toContain('temperature-outside');
      expect(openWhy(at(`${outside} degC`, sling), 'sling', 'S1', 'capacity used')).toEqual([
        'S1 is not for this temperature.',
      ]);
    }
  });

  test('degrees Fahrenheit are degrees too, and a tolerance counts at its worse end', () => {
    expect(slugs(at('180 degF', 'web, weight 0 kg, capacity 3 t'))).toContain('temperature-outside'); // 82.2 degC
    expect(slugs(at('179 degF', 'web, weight 0 kg, capacity 3 t'))).not.toContain('temperature-outside');
    expect(slugs(at('70 degC ± 10 degC', 'web, weight 0 kg, capacity 3 t'))).not.toContain('temperature-outside');
    expect(message(at('70 degC ± 20 degC', 'web, weight 0 kg, capacity 3 t'), 'temperature-outside')).toContain(
      'the plan states 90 degC',
    );
  });

  test('temperature alone leaves no wind to judge', () => {
    expect(errors(at('20 degC', rope))).toEqual([]);
  });
});

describe('what a capacity is for', () => {
  const doubted = (sling: string) =>
    slugs(rated({ sling: `${sling}, weight 0 kg` })).includes('capacity-basis-missing');

  test.each([
    ['wire rope, diameter 3/4 in, capacity 5.6 short ton', 'US tables'],
    ['wire rope, diameter 20 mm, capacity 4.6 t', 'EN 13414-1'],
    ['wire rope, diameter 1/2 in, capacity 2 short ton', 'rule of thumb 8 D² of US training pages'],
    ['chain, diameter 13 mm, capacity 5.3 t', 'EN 818-4 grade 8'],
    ['chain, diameter 3/8 in, capacity 7,100 lb', 'grade 80 tables'],
    ['web, capacity 50 t', 'no size is kept for web slings'],
  ])('%s is one straight leg (%s)', (sling) => {
    expect(doubted(sling)).toBe(false);
  });

  test.each([
    ['wire rope, diameter 20 mm, capacity 9.8 t', 'four legs, EN 13414-1'],
    ['wire rope, diameter 3/4 in, capacity 11.2 short ton', 'basket, US tables'],
    ['chain, diameter 13 mm, capacity 11.2 t', 'three or four legs, EN 818-4'],
  ])('%s is the figure of %s and is asked about', (sling) => {
    expect(doubted(sling)).toBe(true);
    const s = rated({ sling: `${sling}, weight 0 kg` });
    expect(openWhy(s, 'sling', 'S1', 'capacity used').join()).toContain('is for is not clear');
    const fixes = s.findings.find((one) => one.slug === 'capacity-basis-missing')?.fixes.map((fix) => fix.title) ?? [];
    expect(fixes.map((title) => title.replace(/capacity .*/, 'capacity'))).toEqual([
      'Write basket capacity',
      'Write choker capacity',
    ]);
  });

  test('a slipped comma is told of as that, and once', () => {
    const found = slugs(rated({ sling: 'wire rope, diameter 20 mm, capacity 4,600 t, weight 0 kg' }));
    expect(found).toContain('gear-implausible');
    expect(found).not.toContain('capacity-basis-missing');
    expect(greatestRating('web', 0.1)).toBeNull();
  });
});

describe('lines that cannot be read never leave more capacity', () => {
  const used = (text: string) => lift(text).results.find('sling', 'S1', 'capacity used')?.value.value ?? null;
  const plan = (pick: string, leg: string, more: string) =>
    `plan "P": date 2026-03-02
load "L"
  contingency 0 %
  stated 1 t, by drawing, from "D"
  cog (0, 0, 0), by drawing, from "D"
  pick A: at (0, 0, 1 m), ${pick}
gear
  hook H: weight 10 kg, capacity 5 t
  sling S1: web, length 3 m, weight 4 kg, capacity 2 t
${more}`.replace('\nweather', `\nrig\n  leg H > S1 > A, ${leg}\nweather`);
  const hot = 'weather: temperature 20 degC\n';

  test('as it stands it is judged', () => {
    expect(used(plan('kind round', 'direct "so"', hot))).toBeCloseTo(1004 / 2000, 6);
  });

  test.each([
    ['a temperature that is not known', plan('kind round', 'direct "so"', 'weather: temperature ?\n')],
    ['a kind of pick that is misspelt', plan('kind edg', 'direct "so"', hot)],
    ['edge protection without its text', plan('kind edge', 'edge protection', hot)],
    [
      'a bridle whose items are lost',
      plan('kind round', 'direct "so"', `  bridle B: items, capacity 9 t, least angle 30 deg\n${hot}`),
    ],
    [
      'a bridle whose items are misspelt',
      plan('kind round', 'direct "so"', `  bridle B: itms S1, capacity 9 t, least angle 30 deg\n${hot}`),
    ],
    [
      'a bridle whose own word is misspelt',
      plan('kind round', 'direct "so"', `  bridel B: items S1, capacity 9 t, least angle 30 deg\n${hot}`),
    ],
    ['weather whose own word is misspelt', plan('kind round', 'direct "so"', hot).replace('weather:', 'wether:')],
    ['a choke angle in kilograms', plan('kind round', 'hitch choker, around 100 mm, choke angle 3 kg', hot)],
  ])('%s opens it', (_, text) => {
    expect(errors(lift(text)).length + (text.includes('temperature ?') ? 1 : 0)).toBeGreaterThan(0);
    expect(used(text)).toBeNull();
  });
});
