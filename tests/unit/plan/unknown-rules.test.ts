// What a rule or a factor leaves unsaid or loose: it opens the figure, or counts at its heavy end.
import { describe, expect, test } from 'vitest';
import { check } from '../../../server/workspace/memory.ts';
import { figure, g, hang, hook, sling } from '../../support/hanging.ts';

const weightBy = (rule: string, contingency: string) => {
  const text = [
    'plan "Block": date 2026-10-02, units metric',
    'rules "Works rules"',
    `  ${rule}`,
    'load "Block"',
    `  contingency ${contingency}`,
    '  free "stands loose, seen"',
    '  part "Block": box 1 x 1 x 1 m, density 7,850 kg/m3, at (0, 0, 0)',
    '',
  ].join('\n');
  return check({ 'a.liftplan': text }, 'a.liftplan').results.find('load', 'Block', 'weight')?.value;
};

describe('a contingency', () => {
  test('that a rule asks for and does not know leaves the weight open', () => {
    const open = weightBy('contingency calculation ?', '10 %');
    expect(open?.value).toBeNull();
    expect(open?.because[0]?.what).toBe('The contingency that Works rules asks for is not known.');
    expect(weightBy('contingency calculation 5', '10 %')?.value).toBeNull(); // 5 of what?
  });

  test('of another evidence asks for nothing here', () => {
    expect(weightBy('contingency weighbridge ?', '10 %')?.value).toBeCloseTo(7850 * 1.1, 6);
  });

  test('with a tolerance counts at its high end', () => {
    expect(weightBy('contingency calculation 5 %', '10 % ± 5 %')?.value).toBeCloseTo(7850 * 1.15, 6);
    expect(weightBy('contingency calculation 15 % ± 5 %', '10 %')?.value).toBeCloseTo(7850 * 1.2, 6);
  });
});

test('a dynamic factor with a tolerance multiplies pulls by its high end', () => {
  const s = hang({
    weight: 1000,
    cog: '(0, 0, 0) m',
    picks: { W: '(-1, 0, 1) m', E: '(1, 0, 1) m' },
    load: ['dynamic factor 1.2 ± 0.2'],
    gear: [hook(), sling('S1', 2), sling('S2', 2)],
    legs: ['Hook > S1 > W', 'Hook > S2 > E'],
  });
  expect(figure(s, 'hook', 'Hook', 'tension') / g).toBeCloseTo(1400, 4);
});
