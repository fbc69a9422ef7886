// Figures put into printed formulas: what stands there can be typed into a calculator as it is.
import { describe, expect, test } from 'vitest';
import { writeIn } from '../../../server/quantities/index.ts';

const style = { system: 'metric', round: 'near', digits: 6 } as const;

describe('a figure in a formula', () => {
  test('a share is a plain number, a count too', () => {
    expect(writeIn('weight * share', 'share', 0.05, '1', style)).toBe('0.05');
    expect(writeIn('each * count', 'count', 12, '1', style)).toBe('12');
  });

  test('a volume has the unit of densities', () => {
    expect(writeIn('volume * density', 'volume', 0.0430303, 'm3', style)).toBe('0.0430303 m3');
    expect(writeIn('volume * density', 'volume', 0.028316846592, 'm3', { ...style, system: 'US' })).toBe('1 ft3');
  });

  test('an angle is in radians where it is multiplied, in degrees where only a sine, cosine or tangent takes it', () => {
    const angle = Math.PI / 3;
    expect(writeIn('radius * angle', 'angle', angle, 'rad', style)).toBe('1.0472 rad');
    expect(writeIn('pull / sin(angle)', 'angle', angle, 'rad', style)).toBe('60 deg');
    expect(writeIn('arc - sin(arc)', 'arc', angle, 'rad', style)).toBe('1.0472 rad');
  });
});
