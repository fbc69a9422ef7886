// The evaluator of printed formulas against mathjs, a general expression library.
import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { evaluateFormula, pretty } from '../../../server/quantities/formula.ts';

const inputs = { length: 2.5, width: 1.2, load: 10_000, n: 4, angle: Math.PI / 3, a_1: 0.3 };

test.each([
  'length * width * 0.01 * 7850',
  'load / (n * sin(angle))',
  'length - width - a_1',
  'load / n / width',
  '-length + width * -a_1',
  'sqrt(length * length + width * width)',
  'max(length, width, a_1) - min(length, 2)',
  'pi / 4 * (length * length - width * width) * cos(angle) / tan(angle)',
  '((length))',
])('%s', (text) => {
  expect(evaluateFormula(text, inputs)).toBeCloseTo(evaluate(text, inputs) as number, 12);
});

const expression: fc.Arbitrary<string> = fc.letrec<{ sum: string }>((tie) => ({
  sum: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom('length', 'width', 'n', 'pi', '2', '0.75'),
    fc.tuple(tie('sum'), fc.constantFrom('+', '-', '*', '/'), tie('sum')).map((parts) => parts.join(' ')),
    tie('sum').map((inner) => `(${inner})`),
    tie('sum').map((inner) => `-${inner}`),
    fc.tuple(fc.constantFrom('sin', 'cos'), tie('sum')).map(([name, inner]) => `${name}(${inner})`),
    fc.tuple(fc.constantFrom('min', 'max'), tie('sum'), tie('sum')).map(([name, a, b]) => `${name}(${a}, ${b})`),
  ),
})).sum;

test('any formula comes to what mathjs makes of it', () => {
  fc.assert(
    fc.property(expression, (text) => {
      const [ours, theirs] = [evaluateFormula(text, inputs), evaluate(text, inputs) as number];
      if (Number.isFinite(theirs))
        expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(theirs)));
      else expect(Number.isFinite(ours)).toBe(false);
    }),
    { numRuns: 1000 },
  );
});

test.each([
  'length * height',
  'length width',
  '(length',
  'length *',
  '',
  'log(2)',
  'sin',
  'length ^ 2',
  'constructor',
  'min()',
])('%s is refused', (text) => {
  expect(() => evaluateFormula(text, inputs)).toThrow(/cannot be worked out/);
});

test('for people it carries the signs of arithmetic', () => {
  expect(pretty('load / (n * sin(angle)) - sqrt(2) * pi')).toBe('load ÷ (n × sin(angle)) − √(2) × π');
});
