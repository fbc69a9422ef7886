// Figures put into printed formulas: what stands there can be typed into a calculator as it is.
import { describe, expect, test } from 'vitest';
import { filledIn, type Input, known, mostAddends, type ResultUnit } from '../../../server/quantities/index.ts';

const input = (label: string, value: number, unit: ResultUnit): Input => ({ label, value: known(value, unit) });
const filled = (formula: string, inputs: readonly Input[], system: 'US' | 'metric' = 'metric') =>
  filledIn(known(1, 'kg', { formula, inputs }), () => ({ system, round: 'near' }));

describe('a figure in a formula', () => {
  test('a share is a plain number, a count too', () => {
    expect(filled('weight * (1 + share)', [input('weight', 20, 'kg'), input('share', 0.05, '1')])).toBe(
      'weight × (1 + share) = 20 kg × (1 + 0.05)',
    );
    expect(filled('each * count', [input('each', 2, 'kg'), input('count', 12, '1')])).toBe('each × count = 2 kg × 12');
  });

  test('lengths and volumes have the unit of densities, whatever their size', () => {
    const box = [input('length', 1.5, 'm'), input('wall', 0.006, 'm')];
    expect(filled('length * wall', box)).toBe('length × wall = 1.5 m × 0.006 m');
    expect(filled('length * wall', [input('length', 0.3048, 'm'), input('wall', 0.0127, 'm')], 'US')).toBe(
      'length × wall = 1 ft × 0.0416667 ft',
    );
    const volume = [input('volume', 0.028316846592, 'm3'), input('density', 7850, 'kg/m3')];
    expect(filled('volume * density', volume)).toBe('volume × density = 0.0283168 m³ × 7,850 kg/m³');
    expect(filled('volume * density', volume, 'US')).toMatch(/^volume × density = 1 ft³ × 490\.0595 lb\/ft³$/);
  });

  test('an angle is in radians where it is multiplied, in degrees where only a sine, cosine or tangent takes it', () => {
    const angle = [input('angle', Math.PI / 3, 'rad')];
    expect(filled('2 * angle', angle)).toBe('2 × angle = 2 × 1.0472 rad');
    expect(filled('1 / sin(angle)', angle)).toBe('1 ÷ sin(angle) = 1 ÷ sin(60°)');
    expect(filled('angle - sin(angle)', angle)).toBe('angle − sin(angle) = 1.0472 rad − sin(1.0472 rad)');
  });

  test('of labels that begin alike the longest counts, and a label may be a name of the plan', () => {
    expect(filled('massPerLength * mass', [input('mass', 2, 'kg'), input('massPerLength', 3, 'kg/m')])).toBe(
      'mass per length × mass = 3 kg/m × 2 kg',
    );
    expect(filled('pull / Lug A-1', [input('Lug A-1', 4, 'kg'), input('pull', 3, 'kg')])).toBe(
      'pull ÷ Lug A−1 = 3 kg ÷ 4 kg',
    );
  });
});

describe('sums and means', () => {
  const parts = [input('A', 2, 'kg'), input('B', 3, 'kg')];

  test('a sum shows its addends, so long as a person would add them up', () => {
    expect(filled('sum of parts', parts)).toBe('sum of parts = 2 kg + 3 kg');
    const many = Array.from({ length: mostAddends + 1 }, (_, i) => input(`P${i}`, 1, 'kg'));
    expect(filled('sum of parts', many)).toBe('sum of parts, 41 figures');
  });

  test('a mean of places shows weights times places over their sum; without the places it stays in words', () => {
    const mean = 'sum of weight * place / sum of weight';
    const placed = [...parts, input('place of A', -1, 'm'), input('place of B', 0, 'm')];
    expect(filled(mean, placed)).toBe('sum of weight × place ÷ sum of weight = (2 kg × −1 m) ÷ 5 kg');
    expect(filled(mean, parts)).toBe('sum of weight × place ÷ sum of weight');
  });
});

test('words that stand for no figure are left, with the figures behind them', () =>
  expect(filled('share of the inside below the level', [input('level', 0.2, 'm')])).toBe(
    'share of the inside below the level; level 0.2 m',
  ));
