// Every printed formula worked out by a small reader of expressions and compared with the code beside it.
import { expect, test } from 'vitest';
import { formulas, type Shape, working } from '../../../server/mechanics/index.ts';
import { randomFrom } from './random.ts';
import { made, named, specimens } from './specimens.ts';

const functions: Readonly<Record<string, (...values: number[]) => number>> = {
  sqrt: Math.sqrt,
  min: Math.min,
  max: Math.max,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
};

/** Reads sums, products, brackets, functions, numbers and names; an operator has a space on both sides. */
function evaluate(text: string, inputs: Readonly<Record<string, number>>): number {
  const words = text.match(/ [-+*/] |[A-Za-z][A-Za-z0-9]*|[0-9.]+|, |[()]/g) ?? [];
  if (words.join('') !== text) throw new Error(`not in the grammar: ${text}`);
  let at = 0;
  const sum = (): number => {
    let value = product();
    while (words[at] === ' + ' || words[at] === ' - ') value += words[at++] === ' + ' ? product() : -product();
    return value;
  };
  const product = (): number => {
    let value = factor();
    while (words[at] === ' * ' || words[at] === ' / ') value *= words[at++] === ' * ' ? factor() : 1 / factor();
    return value;
  };
  const factor = (): number => {
    const word = words[at++]!;
    if (word === '(') return close(sum());
    if (/^[0-9.]/.test(word)) return Number(word);
    if (word === 'pi') return Math.PI;
    if (words[at] !== '(') return inputs[word] ?? Number.NaN;
    at++;
    const values = [sum()];
    while (words[at] === ', ') {
      at++;
      values.push(sum());
    }
    return close(functions[word]!(...values));
  };
  const close = (value: number): number => {
    if (words[at++] !== ')') throw new Error(`bracket missing: ${text}`);
    return value;
  };
  const value = sum();
  if (at !== words.length) throw new Error(`left over: ${text}`);
  return value;
}

test('the reader of expressions reads', () => {
  expect(evaluate('2 * (a - 3) / 4 + max(a, sqrt(16), 1)', { a: 5 })).toBe(6);
  expect(evaluate('a - b - 2 / 4 / 2', { a: 3, b: 1 })).toBe(1.75);
  expect(() => evaluate('a-b', { a: 1, b: 1 })).toThrow();
});

test.each(formulas.map((one) => [one.text, one] as const))('%s', (text, one) => {
  const random = randomFrom(7);
  for (let round = 0; round < 50; round++) {
    const inputs = Object.fromEntries(one.names.map((name) => [name, 0.5 + random()]));
    const printed = evaluate(text, inputs);
    expect(Number.isFinite(printed)).toBe(true);
    expect(Math.abs(one(inputs) - printed)).toBeLessThan(1e-12 * Math.max(1, Math.abs(printed)));
  }
});

test('there are as many formulas as closed forms', () => expect(formulas.length).toBeGreaterThanOrEqual(24));

/** Weld metal and coils, whose box is not full of what they are made of. */
const partly: readonly Shape[] = [
  { kind: 'weld', length: 3, excess: 0.5, leg: [0.01, 0.007] },
  { kind: 'weld', length: 3, excess: 0.1, thickness: 0.02, gap: 0.003, rootFace: 0.002, bevel: 0.6, prepared: 0.5 },
  { kind: 'coil', outside: 1, bore: 0.4, width: 0.3, fillFactor: 0.9, wire: 0.004 },
  { kind: 'coil', outside: 1, bore: 0.4, width: 0.3, fillFactor: 0.9, wire: 0.004, length: 900 },
];

test.each(named([...specimens, ...partly]))('what is shown for %s is what was worked out', (_, shape) => {
  const shown = working(shape)!;
  expect(shown.gives).toBe('volume');
  expect(Math.abs(evaluate(shown.formula, shown.inputs) / made(shape).volume - 1)).toBeLessThan(1e-12);
});

test('a mass from a table is shown instead of a volume', () => {
  expect(working({ kind: 'section', length: 6, depth: 0.3, width: 0.2, massPerLength: 40 })).toEqual({
    gives: 'mass',
    formula: 'massPerLength * length',
    inputs: { massPerLength: 40, length: 6 },
  });
  expect(working({ kind: 'pipe', length: 2, outside: 0.2, wall: 0.01, massPerLength: 42 })!.gives).toBe('mass');
  expect(working({ kind: 'sheet', x: 2, y: 3, massPerArea: 30 })!.inputs).toEqual({ massPerArea: 30, area: 6 });
  expect(working({ kind: 'sphere', diameter: 0 })).toBeUndefined();
});
