// Lift-off: what is read at each stage, where the lift stops, and what breaking the load free puts on everything in its path.
import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Derived } from '../../../server/quantities/derived.ts';
import type { Snapshot } from '../../../server/workspace/types.ts';
import { figure, g, hang, hook, openWhy, sling } from '../../support/hanging.ts';
import { message, slugs } from '../../support/lift.ts';

interface Lift {
  readonly load?: readonly string[];
  readonly cell?: 'whole' | 'leg' | 'none';
  readonly more?: readonly string[];
  readonly gear?: readonly string[];
  readonly ring?: string;
}

const held: readonly string[] = ['held by "grout", released "wedges, step 1", breakout 900 kg'];

/** Two like legs of 2 m to picks 2 m apart: 60 deg from horizontal. Contingency 5 % on 4,000 kg. */
const two = ({ load = [], cell = 'whole', more = [], gear = [], ring = '' }: Lift = {}): Snapshot =>
  hang({
    weight: '4,000 kg, contingency 5 %',
    cog: '(0, 0, -1 m)',
    load,
    more,
    picks: { W: '(-1, 0, 0) m, capacity 10 t', E: '(1, 0, 0) m, capacity 10 t' },
    gear: [
      'block Block: weight 300 kg, capacity 20 t',
      'load cell Cell: weight 20 kg, capacity 10 t',
      `master link Ring: weight 10 kg, capacity 10 t${ring}`,
      'sling S1: length 2 m, stiffness 400 MN, weight 15 kg, capacity 10 t',
      'sling S2: length 2 m, stiffness 400 MN, weight 15 kg, capacity 10 t',
      ...gear,
    ].map((line) => (cell === 'none' && line.startsWith('load cell') ? line.replace(/$/, ', spare') : line)),
    legs:
      cell === 'leg'
        ? ['Block > Ring > Cell > S1 > W', 'Block > Ring > S2 > E']
        : cell === 'whole'
          ? ['Block > Cell > Ring > S1 > W', 'Block > Cell > Ring > S2 > E']
          : ['Block > Ring > S1 > W', 'Block > Ring > S2 > E'],
  });

const reading = (s: Snapshot, cell: string | null = null) => {
  const found = s.results.liftOff.readings.find((one) => (one.on?.name ?? null) === cell);
  if (!found) throw new Error(`There is no reading of ${cell ?? 'the indicator'}`);
  return found;
};
const ends = ({ low, value, high }: Derived) => [low, value, high];

describe('what is read (by hand: sums of what hangs below)', () => {
  test('a cell above all legs shows the load and the gear below it; the indicator the block as well', () => {
    const s = two();
    const [cell, indicator] = [reading(s, 'Cell'), reading(s)];
    expect(ends(cell.slack as Derived)).toEqual([40, 40, 40]);
    expect(ends(cell.expected)).toEqual([4040, 4040, 4240]);
    expect(ends(cell.stop)).toEqual([4240, 4240, 4240]);
    expect(cell.breaking).toBeNull();
    expect(ends(indicator.slack as Derived)).toEqual([360, 360, 360]);
    expect(ends(indicator.expected)).toEqual([4360, 4360, 4560]);
    expect(s.results.find('plan', null, 'expected reading')?.value).toBe(indicator.expected);
    expect(s.results.find('load cell', 'Cell', 'stop reading')?.value).toBe(cell.stop);
  });

  test('the block takes what the indicator reads at most, with or without lengths of what hangs in it', () => {
    for (const length of ['', ', length 300 mm']) {
      const s = two({ ring: length });
      expect(figure(s, 'block', 'Block', 'load')).toBeCloseTo(reading(s).expected.high as number, 4);
      expect(figure(s, 'load cell', 'Cell', 'load')).toBeGreaterThanOrEqual(4240 - 1e-6);
    }
  });

  test('deductions of the crane are in no reading', () => {
    const s = two({ more: ['crane "C": kind mobile', '  deduct "Jib": 500 kg'] });
    expect(figure(s, 'plan', null as never, 'gross load')).toBeCloseTo(4200 + 360 + 500, 9);
    expect(reading(s).stop.value).toBeCloseTo(4200 + 360, 9);
  });

  test('the tolerance of gear is in both ends, and gear of which nothing says where it hangs only in the high one', () => {
    const s = two({ gear: ['other "Tags": weight 30 kg ± 10 kg', 'other "Net": weight 8 kg, hangs from "Load"'] });
    expect(ends(reading(s, 'Cell').expected)).toEqual([4048, 4078, 4288]); // 40 + 8, then 30, then 10 more
    expect(ends(reading(s).slack as Derived)).toEqual([388, 398, 408]);
  });

  test('a cell in one leg shows its share: from what it is without allowance to the worst of the sharing', () => {
    const s = two({ cell: 'leg' });
    const { expected, slack, stop } = reading(s, 'Cell');
    expect(slack).toBeNull();
    const share = (kg: number) => kg / 2 / Math.sin(Math.PI / 3);
    expect(expected.value).toBeGreaterThan(share(4000) * 0.99);
    expect(expected.value).toBeLessThan(share(4000) * 1.02); // the cell has no length, gear weighs a little
    expect(expected.high).toBeCloseTo(figure(s, 'load cell', 'Cell', 'tension') / g, 6);
    expect(stop.value).toBeCloseTo(expected.high as number, 9);
  });

  test('several hooks share what hangs: each shows its own part, and no one reading is that of all (by hand: levers)', () => {
    const rig = (load: readonly string[] = []) =>
      hang({
        weight: '4,000 kg, contingency 5 %',
        cog: '(0.5 m, 0, -1 m)',
        load,
        picks: { W: '(-1, 0, 0) m, capacity 10 t', E: '(1, 0, 0) m, capacity 10 t' },
        gear: [hook('A'), hook('B'), sling('S1', 2), sling('S2', 2)],
        legs: ['A > S1 > W', 'B > S2 > E'],
      });
    const s = rig();
    // 1.5 m of 2 m from W: a quarter on A, three quarters on B; 4,000 kg without allowance, 4,200 kg with it.
    expect(ends(reading(s, 'A').expected).map((kg) => Math.round(kg as number))).toEqual([1000, 1000, 1050]);
    expect(ends(reading(s, 'B').expected).map((kg) => Math.round(kg as number))).toEqual([3000, 3000, 3150]);
    expect(reading(rig(held), 'A').stop.value).toBeCloseTo(1050 + 900, 0);
    expect(openWhy(s, 'plan', null as never, 'expected reading')).toEqual([
      'Several hooks share what hangs: each shows its own part of it.',
    ]);
    expect(rig(['stop at 9 t']).results.notJudged).toContain('the stop value of a load on several hooks');
  });

  test('a dynamic factor is in the pulls and in no reading', () => {
    const s = two({ load: ['dynamic factor 1.2'] });
    expect(reading(s, 'Cell').stop.value).toBe(4240);
    const [with_, without] = [
      reading(two({ cell: 'leg', load: ['dynamic factor 1.2'] }), 'Cell'),
      reading(two({ cell: 'leg' }), 'Cell'),
    ];
    expect((with_.expected.value as number) / (without.expected.value as number)).toBeCloseTo(1, 2);
  });

  test('what is not known leaves the reading open', () => {
    const s = two({ gear: ['other "Tags": weight ?'] });
    expect(openWhy(s, 'plan', null as never, 'expected reading')).toEqual(['weight is not known yet (?).']);
    expect(openWhy(s, 'load cell', 'Cell', 'stop reading')).toEqual(['weight is not known yet (?).']);
    expect(openWhy(two({ cell: 'none' }), 'load cell', 'Cell', 'expected reading')).toEqual(['Cell is in no leg.']);
  });

  test('every formula, worked out by another program with the figures put in, gives the figure', () => {
    const plans = [two(), two({ cell: 'leg', load: held }), two({ load: ['stop at 4,300 kg', ...held] })];
    let checked = 0;
    for (const s of plans)
      for (const { expected, stop } of s.results.liftOff.readings)
        for (const { formula, inputs, value } of [expected, stop]) {
          if (!formula || !inputs.every(({ label }) => formula.includes(label))) continue;
          const put = [...inputs]
            .sort((a, b) => b.label.length - a.label.length)
            .reduce((text, one) => text.replaceAll(one.label, `(${one.value.value})`), formula);
          expect(evaluate(put), formula).toBeCloseTo(value as number, 6);
          checked++;
        }
    expect(checked).toBeGreaterThan(8);
  });
});

describe('what holds the load', () => {
  test('breakout is in the stop reading, not in what is read hanging free', () => {
    const s = two({ load: held });
    const cell = reading(s, 'Cell');
    expect(ends(cell.expected)).toEqual([4040, 4040, 4240]);
    expect(cell.breaking?.value).toBe(5140);
    expect(cell.stop.value).toBe(5140);
    expect(reading(s).stop.value).toBe(5460);
  });

  test('what is released before, and says no breakout, adds nothing; two that hold add both', () => {
    expect(reading(two({ load: ['held by "bolts", released "nuts off, step 1"'] }), 'Cell').stop.value).toBe(4240);
    expect(reading(two({ load: [...held, 'held by "ice", breakout 100 kg ± 20 kg'] }), 'Cell').stop.value).toBe(5260);
  });

  test('each item in the path is held against it, legs along their own line (by hand: one leg may take all of it)', () => {
    const [free, stuck] = [two(), two({ load: held })];
    const more = (kind: string, name: string, capacity: number) =>
      (figure(stuck, kind, name, 'capacity used') - figure(free, kind, name, 'capacity used')) * capacity;
    expect(more('block', 'Block', 20_000)).toBeCloseTo(900, 6);
    expect(more('load cell', 'Cell', 10_000)).toBeCloseTo(900, 6);
    expect(more('master link', 'Ring', 10_000)).toBeCloseTo(900, 6);
    for (const name of ['S1', 'S2']) expect(more('sling', name, 10_000)).toBeCloseTo(900 / Math.sin(Math.PI / 3), 0);
    for (const name of ['W', 'E']) expect(more('pick', name, 10_000)).toBeCloseTo(900 / Math.sin(Math.PI / 3), 0);
    for (const result of ['tension', 'elastic tension', 'load'])
      expect(figure(stuck, 'sling', 'S1', result)).toBe(figure(free, 'sling', 'S1', result));
  });

  test('a beam carries it straight down, and is pressed together as one top sling leans', () => {
    const rig = (load: readonly string[]) =>
      hang({
        weight: 4000,
        cog: '(0, 0, -1 m)',
        load,
        picks: { W: '(-1, 0, 0) m', E: '(1, 0, 0) m' },
        gear: [
          hook(),
          'spreader Bar: weight 0 kg, capacity 10 t, compression capacity 100 kN, least angle 45 deg',
          '  point TW: at (-1, 0, 0) m, capacity 10 t',
          '  point TE: at (1, 0, 0) m, capacity 10 t',
          ...['T1', 'T2', 'S1', 'S2'].map((name) => sling(name, 2)),
        ],
        legs: ['Hook > T1 > TW', 'Hook > T2 > TE', 'TW > S1 > W', 'TE > S2 > E'],
      });
    const [free, stuck] = [rig([]), rig(held)];
    const used = (s: Snapshot) => s.results.find('spreader', 'Bar', 'capacity used')?.value;
    // 4,900 kg of 10 t; pressed by 2,000 / tan 60 deg and by all of 900 / tan 60 deg: 16.4 of 100 kN. The points carry more.
    expect(used(free)?.value).toBeCloseTo(0.4, 3);
    expect(used(stuck)?.value).toBeCloseTo(0.49, 3);
  });

  test('a tag over several slings is held against it once', () => {
    const rig = (load: readonly string[]) =>
      two({ load, cell: 'none', gear: ['bridle "Set": items S1..S2, capacity 9 t, least angle 45 deg'] });
    const tag = (s: Snapshot) => (figure(s, 'sling', 'S1', 'capacity used') as number) * 9000;
    expect(tag(rig(held)) - tag(rig([]))).toBeCloseTo(900, 0);
  });

  test('after lift-off, in a stage, nothing holds it any more', () => {
    const s = two({ load: held, more: ['stage "Up"'] });
    expect(figure(s, 'block', 'Block', 'capacity used', 'Up')).toBeCloseTo(
      figure(two(), 'block', 'Block', 'capacity used'),
      9,
    );
  });

  test('an item over what it may carry says what of it is there to break the load free', () => {
    const s = two({ load: ['held by "suction", breakout 7 t'] });
    expect(message(s, 'leg-overloaded')).toMatch(
      /takes 11\.26 t, 7,000 kg of it to break the load free, and may carry 10 t/,
    );
  });

  test('nothing says how it lets go, or how much it takes: the stop reading and all capacities used are open', () => {
    const s = two({ load: ['held by "grout"'] });
    expect(slugs(s)).toContain('release-unstated');
    const why = [expect.stringContaining('Nothing says how “grout” lets go of Load')];
    expect(openWhy(s, 'load cell', 'Cell', 'stop reading')).toEqual(why);
    for (const [kind, name] of [
      ['block', 'Block'],
      ['sling', 'S1'],
      ['pick', 'W'],
      ['load cell', 'Cell'],
    ] as const)
      expect(openWhy(s, kind, name, 'capacity used')).toEqual(why);
    expect(figure(s, 'sling', 'S1', 'tension')).toBeGreaterThan(0);
    expect(ends(reading(s, 'Cell').expected)).toEqual([4040, 4040, 4240]);
    const asked = two({ load: ['held by "grout", breakout ?'] });
    expect(slugs(asked)).not.toContain('release-unstated');
    expect(openWhy(asked, 'plan', null as never, 'stop reading')).toEqual(['breakout is not known yet (?).']);
  });
});

describe('stop at', () => {
  test('is the reading of the cell over all of the load; the indicator stops at as much more as hangs between', () => {
    const s = two({ load: ['stop at 4,230 kg'] });
    expect(reading(s, 'Cell').stop.value).toBe(4230);
    expect(reading(s).stop.value).toBe(4230 + 320);
    expect(reading(two({ cell: 'none', load: ['stop at 4,500 kg'] })).stop.value).toBe(4500);
    expect(reading(two({ cell: 'leg', load: ['stop at 4,500 kg'] })).stop.value).toBe(4500);
    expect(openWhy(two({ load: ['stop at ?'] }), 'plan', null as never, 'stop reading')).toEqual([
      'stop at is not known yet (?).',
    ]);
  });

  const said = (stop: string, more: Lift = {}) =>
    two({ ...more, load: [`stop at ${stop}`, ...(more.load ?? [])] }).findings.filter(
      ({ slug }) => slug === 'stop-doubtful',
    );

  test('below what hangs as planned, it ends every lift', () => {
    expect(said('4,030 kg').map(({ severity }) => severity)).toEqual(['warning']);
    expect(said('4,030 kg')[0]?.message).toContain('less than the 4,040 kg that Cell shows');
    expect(said('4,040 kg')).toEqual([]);
  });

  test('above the heaviest that is credible, by more than a step of an indicator, it lets more pass', () => {
    expect(said('4,280 kg')).toEqual([]); // 1 % over 4,240 kg
    expect(said('4,300 kg')[0]?.message).toContain('heavier than the plan knows of');
    expect(said('5,100 kg', { load: held })).toEqual([]);
    expect(said('4,300 kg', { load: ['held by "grout"'] })).toEqual([]); // nothing to hold it against
  });

  test('within so much, each end is asked by itself', () => {
    expect(said('4,200 kg ± 100 kg')[0]?.message).toContain('Stop at 4,300 kg is more than');
    expect(said('4,100 kg ± 100 kg')[0]?.message).toContain('Stop at 4,000 kg is less than');
    expect(said('4,150 kg ± 50 kg')).toEqual([]);
  });

  test('where an item would be above its capacity, it is an error, and the item is named', () => {
    const [one] = said('11 t');
    expect(one?.severity).toBe('error');
    expect(one?.message).toMatch(/and (Cell|Ring) would be at 11\d(\.\d)? % of its capacity there/);
  });
});

test('a larger breakout never makes an item look less used, nor the stop reading smaller', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 5000 }), (small, more) => {
      const at = (kg: number) => two({ load: [`held by "ice", breakout ${kg} kg`] });
      const [a, b] = [at(small), at(small + more)];
      for (const [kind, name] of [
        ['block', 'Block'],
        ['load cell', 'Cell'],
        ['sling', 'S1'],
        ['pick', 'E'],
      ] as const)
        expect(figure(b, kind, name, 'capacity used')).toBeGreaterThan(figure(a, kind, name, 'capacity used'));
      expect(reading(b).stop.value as number).toBeGreaterThan(reading(a).stop.value as number);
    }),
    { numRuns: 15, seed: 20260511 },
  );
});
