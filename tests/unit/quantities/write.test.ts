// Numbers as text for people: directed rounding, printed comparisons, text that reads back, numbers in words.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { full, rounded } from '../../../server/quantities/decimal.ts';
import type { ResultUnit } from '../../../server/quantities/derived.ts';
import { joined, units } from '../../../server/quantities/units.ts';
import {
  asInput,
  type Comparison,
  holds,
  type Round,
  type System,
  share,
  spoken,
  words,
  write,
  writeChange,
  writePair,
} from '../../../server/quantities/write.ts';

const metric = { system: 'metric', round: 'near' } as const;
const us = { system: 'US', round: 'near' } as const;
const resultUnits: readonly ResultUnit[] = [
  'kg',
  'N',
  'm',
  'm2',
  'm3',
  'rad',
  'Pa',
  'm/s',
  'kg/m3',
  'kg/m',
  'kg/m2',
  '1',
];

/** Reads printed text as a plan would: number with commas, unit; back in SI. */
function read(text: string): { readonly number: number; readonly si: number; readonly step: number } {
  const [, digits = '', unitText = ''] = /^(-?[\d,]+(?:\.\d+)?) (.+)$/.exec(text) ?? [];
  const one = joined(unitText);
  const number = Number(digits.replaceAll(',', ''));
  const factor = one?.factor ?? Number.NaN;
  return {
    number,
    si: number * factor + (one?.offset ?? 0),
    step: factor * 10 ** -(digits.split('.')[1]?.length ?? 0),
  };
}

test.each([
  [2141.9, 'kg', metric, '2,142 kg'],
  [2141.9, 'kg', us, '4,722 lb'],
  [610 * 0.45359237, 'kg', us, '610 lb'],
  [0.0762, 'm', us, '0.25 ft'],
  [3.8, 'm', us, '12.47 ft'],
  [0.0127, 'm', us, '0.5 in'],
  [2.1336, 'm', metric, '2.13 m'],
  [0.3048, 'm', metric, '0.305 m'],
  [0.0123, 'm', metric, '12.3 mm'],
  [0, 'm', us, '0 ft'],
  [52_000, 'N', metric, '52 kN'],
  [52_000, 'N', us, '11,690 lbf'],
  [52_000, 'N', { ...us, unit: 'short ton' }, '5.85 short ton'],
  [1000, 'kg', { ...metric, unit: 'kN' }, '9.81 kN'],
  [200_000, 'Pa', { ...metric, unit: 't/m2' }, '20.39 t/m2'],
  [191_520, 'Pa', us, '4,000 psf'],
  [Math.PI / 3, 'rad', metric, '60 deg'],
  [Math.PI / 3, 'rad', { ...metric, plain: false }, '60°'],
  [0.753, '1', metric, '75.3 %'],
  [1.5, 'number', metric, '1.5'],
  [7850, 'kg/m3', { ...metric, plain: false }, '7,850 kg/m³'],
  [7850, 'kg/m3', us, '490.1 lb/ft3'],
  [-0.25, 'm', { ...metric, plain: false }, '−0.25 m'],
  [-1e-12, 'm', metric, '0 m'],
  [0.0004, 'kg', metric, '0.0004 kg'],
  [293.15, 'temperature', us, '68 degF'],
  [86_400, 'time', { ...metric, unit: 'day' }, '1 day'],
  [14 * 86_400, 'time', metric, '14 days'],
  [5000, 'moment', metric, '5 kN m'],
  [2.1336, 'm', { ...metric, digits: 6 }, '2.1336 m'],
  [2141.9, 'kg', { ...metric, unit: 'mm' }, '2,142 kg'],
  [Number.NaN, 'kg', metric, '?'],
  [Number.POSITIVE_INFINITY, 'N', us, '?'],
] as const)('%d %s is written %s', (value, unit, style, text) => {
  expect(write(value, unit, style)).toBe(text);
});

test('the traps of binary fractions are stepped round', () => {
  expect(rounded(1.005, 2, 'near')).toBe('1.01');
  expect(rounded(0.1 + 0.2, 1, 'up')).toBe('0.3');
  expect(rounded(0.3 - 0.1, 1, 'down')).toBe('0.2');
  expect(rounded(-0.004, 2, 'near')).toBe('0.00');
  expect(rounded(-2.5, 0, 'up')).toBe('-2');
  expect(rounded(-2.5, 0, 'down')).toBe('-3');
  expect(rounded(-2.5, 0, 'near')).toBe('-3');
  expect(rounded(999.96, 1, 'near')).toBe('1000.0');
  expect(rounded(1.5e15, 2, 'up')).toBe('1500000000000000.00');
  expect(share(0.1 + 0.2)).toBe('30 %');
  expect(share(0.75001)).toBe('75.1 %');
  expect(share(0.75001, 'near')).toBe('75 %');
});

const values = fc.oneof(
  fc.double({ min: -1e7, max: 1e7, noNaN: true }),
  fc.double({ min: -2, max: 2, noNaN: true }),
  fc.integer({ min: -100_000, max: 100_000 }),
);
const systems = fc.constantFrom<System>('US', 'metric');

test('rounded up it is never below the value, rounded down never above, near within half a step; it reads back', () => {
  fc.assert(
    fc.property(
      values,
      fc.constantFrom(...resultUnits),
      systems,
      fc.constantFrom<Round>('up', 'down', 'near'),
      (value, unit, system, round) => {
        const text = write(value, unit, { system, round });
        const { si, step } = read(text);
        const noise = 1e-9 * Math.max(1, Math.abs(value));
        if (round === 'up') expect(si).toBeGreaterThanOrEqual(value - noise);
        if (round === 'down') expect(si).toBeLessThanOrEqual(value + noise);
        expect(Math.abs(si - value)).toBeLessThanOrEqual((round === 'near' ? step / 2 : step) + noise);
        expect(text).not.toMatch(/^-0(\.0+)? /);
        expect(text).not.toMatch(/e[+-]\d/);
      },
    ),
    { numRuns: 2000 },
  );
});

test('no figure with a whole part stops at three decimals, which half of the world reads as thousands', () => {
  fc.assert(
    fc.property(
      values,
      fc.constantFrom(...resultUnits),
      systems,
      fc.option(fc.integer({ min: 1, max: 9 }), { nil: undefined }),
      (value, unit, system, digits) => {
        const style = { system, round: 'near', ...(digits && { digits }) } as const;
        for (const text of [write(value, unit, style), asInput(value, unit, system)])
          expect(text).not.toMatch(/[1-9]\d*\.\d{3} /);
      },
    ),
  );
});

test('a printed pair compares as the unrounded one', () => {
  const near = fc.tuple(
    fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    fc.constantFrom(0, 1e-13, 1e-8, 1e-6, 1e-4, 3e-3, 0.1, 1),
    fc.boolean(),
  );
  const ops = fc.constantFrom<Comparison>('<', '<=', '>', '>=');
  fc.assert(
    fc.property(near, ops, fc.constantFrom(...resultUnits), systems, ([limit, off, above], op, unit, system) => {
      const a = limit * (above ? 1 + off : 1 - off);
      const pair = writePair(a, limit, op, unit, { system });
      const [left, right] = [read(pair.value), read(pair.limit)];
      const printed =
        op === '<'
          ? left.number < right.number
          : op === '<='
            ? left.number <= right.number
            : op === '>'
              ? left.number > right.number
              : left.number >= right.number;
      expect(printed, JSON.stringify(pair)).toBe(holds(a, op, limit));
      expect(pair.value.split(' ').slice(1)).toEqual(pair.limit.split(' ').slice(1));
    }),
    { numRuns: 3000 },
  );
});

test.each([
  [0.753, 0.75, '<=', '1', {}, '75.3 %', '75 %'],
  [0.7501, 0.75, '<=', '1', {}, '75.1 %', '75 %'],
  [0.74999, 0.75, '<', '1', {}, '74.999 %', '75 %'],
  [0.1 + 0.2, 0.3, '<=', '1', {}, '30 %', '30 %'],
  [52_000, 5.6 * 907.18474 * 9.80665, '<=', 'N', { unit: 'short ton' }, '5.85 short ton', '5.6 short ton'],
  [44.96 * (Math.PI / 180), 45 * (Math.PI / 180), '>=', 'rad', {}, '44.9 deg', '45 deg'],
  [3600, Number.NaN, '<=', 'kg', {}, '3,600 kg', '?'],
] as const)('%d against %d prints both with enough digits', (a, limit, op, unit, style, left, right) => {
  const pair = writePair(a, limit, op, unit, { system: 'metric', ...style });
  // 74.999 keeps one zero more, as all figures with a whole part do.
  expect([pair.value.replace('74.9990', '74.999'), pair.limit]).toEqual([left, right]);
});

test('an unknown number holds against nothing, equal ones only where equality is allowed', () => {
  for (const op of ['<', '<=', '>', '>='] as const) {
    expect(holds(Number.NaN, op, 1)).toBe(false);
    expect(holds(1, op, Number.NaN)).toBe(false);
    expect(holds(0.1 + 0.2, op, 0.3)).toBe(op.endsWith('='));
  }
  expect(holds(1.00000001, '<=', 1)).toBe(false);
});

test('what is copied reads back to 13 digits, in the unit wanted', () => {
  fc.assert(
    fc.property(values, fc.constantFrom(...resultUnits), systems, (value, unit, system) => {
      const text = asInput(value, unit, system);
      expect(text).toMatch(/^-?\d+(\.\d+)? \S.*$/);
      expect(Math.abs(read(text).si - value)).toBeLessThanOrEqual(Math.max(1e-9, 1e-13 * Math.abs(value)));
    }),
    { numRuns: 1000 },
  );
  expect(asInput(2.134, 'm', 'metric')).toBe('2.1340 m');
  expect(asInput(1e-9, 'm3', 'metric')).toBe('0.000001 L');
  expect(asInput(4750, 'kg', 'US', 't')).toBe('4.75 t');
  expect(asInput(Number.NaN, 'kg', 'US')).toBe('?');
});

test('all digits of a number, without an exponent', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e18, max: 1e18 }), (value) => {
      expect(full(value)).toMatch(/^-?\d+(\.\d*[1-9])?$/);
      expect(Math.abs(Number(full(value)) - value)).toBeLessThanOrEqual(1e-14 * Math.abs(value));
    }),
  );
});

test.each([
  [12.345, 'kg', 'twelve point three four five kilograms'],
  [4750, 't', 'four thousand seven hundred fifty tonnes'],
  [1, 'ft', 'one foot'],
  [0.5, 'in', 'zero point five inches'],
  [120, 'lb/ft3', 'one hundred twenty pounds per cubic foot'],
  [1_000_021, 'US gal', 'one million twenty-one US gallons'],
  [-5.5, 'kN/m2', 'minus five point five kilonewtons per square metre'],
  [2, 'years', 'two years'],
  [19, '', 'nineteen'],
  [Number.NaN, 'kg', 'not known'],
])('%d %s is spoken %s', (value, unit, text) => {
  expect(spoken(value, unit)).toBe(text);
});

test('every unit has words', () => {
  for (const one of units()) expect(spoken(2, one.text), one.text).toMatch(/^two [A-Za-z -]{3,}$/);
});

test('counts take their noun', () => {
  expect([words(0, 'figure'), words(1, 'figure'), words(3210, 'figure'), words(2, 'ply', 'plies')]).toEqual([
    '0 figures',
    '1 figure',
    '3,210 figures',
    '2 plies',
  ]);
});

const exactly = (value: number) => ({ value, low: value, high: value });

test.each([
  [2987.7, 3100.2, 'kg', metric, '2,988 kg', '3,100 kg', '+113 kg'], // 112.5, halves away from zero
  [2987.7, 2987.9, 'kg', metric, '2,987.7 kg', '2,987.9 kg', '+0.2 kg'],
  [2987.7, 2900, 'kg', { ...metric, round: 'up' }, '2,988 kg', '2,900 kg', '-87 kg'],
  [2987.7, 2900, 'kg', { ...metric, round: 'down' }, '2,987 kg', '2,900 kg', '-88 kg'],
  [0.9, 3100, 'kg', metric, '0.9 kg', '3,100 kg', '+3,099 kg'],
  [0.009, 0.35, 'm', metric, '0.009 m', '0.35 m', '+0.341 m'], // one unit for both
  [0.41, 0.43, '1', metric, '41 %', '43 %', '+2 %'],
  [100 / 3, 100 / 3, 'kg', metric, '33.33 kg', '33.33 kg', ''],
] as const)('%s and %s %s side by side', (old, now, unit, style, a, b, by) =>
  expect(writeChange(exactly(old), exactly(now), unit, style)).toEqual({ old: a, now: b, by }),
);

test('a change of the tolerance alone shows both ends, outwards', () =>
  expect(writeChange({ value: 100, low: 99.58, high: 100.42 }, exactly(100), 'kg', metric)).toEqual({
    old: '100 kg (99.5 kg to 100.5 kg)',
    now: '100 kg',
    by: '',
  }));

test('two different values never print alike, and the printed difference has the right sign', () => {
  const size = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(
      size,
      fc.double({ min: 1e-5, max: 10, noNaN: true }),
      fc.constantFrom(...resultUnits),
      (old, more, unit) => {
        const now = old * (1 + more);
        const made = writeChange(exactly(old), exactly(now), unit, metric);
        expect(made.old).not.toBe(made.now);
        expect(made.by).toMatch(/^\+/);
        expect(writeChange(exactly(now), exactly(old), unit, metric).by).toMatch(/^-/);
      },
    ),
  );
});
