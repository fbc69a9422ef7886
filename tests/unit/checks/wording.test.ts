// Small words of the sentences.
import { expect, test } from 'vitest';
import { figures } from '../../../server/checks/figures.ts';
import { list, named, nearestOf, unstopped, withArticle } from '../../../server/checks/wording.ts';

test('lists read as people say them', () => {
  expect(list([])).toBe('');
  expect(list(['S1'])).toBe('S1');
  expect(list(['S1', 'S2'])).toBe('S1 and S2');
  expect(list(['lb', 'kg', 't'], 'or')).toBe('lb, kg or t');
});

test('names of several words stand in quotes', () => {
  expect(named('S1')).toBe('S1');
  expect(named('Main block')).toBe('"Main block"');
  expect(named('"Pump skid".NW')).toBe('"Pump skid".NW');
});

test('nothing is said of nearest names where there are none', () => {
  expect(nearestOf(['a', 'b'])).toBe(' Nearest: a, b.');
  expect(nearestOf([])).toBe('');
});

test('kinds get an article, sentences lose a stop', () => {
  expect(withArticle('load')).toBe('a load');
  expect(withArticle('a sling')).toBe('a sling');
  expect(withArticle('assembly')).toBe('an assembly');
  expect(unstopped('It is not known.')).toBe('it is not known');
});

test('loads are rounded up', () => {
  expect(figures('metric').weight(3200.2)).toBe('3,201 kg');
});

test('printed pairs compare as the real ones do', () => {
  const [used, limit] = figures('metric').atMost('1', 0.75002, 0.75);
  expect(Number.parseFloat(used)).toBeGreaterThan(Number.parseFloat(limit));
  const [angle, least] = figures('metric').atLeast('rad', (44.98 * Math.PI) / 180, (45 * Math.PI) / 180);
  expect(Number.parseFloat(angle)).toBeLessThan(Number.parseFloat(least));
  const [light, heavy] = figures('metric').unlike('kg', 3200.001, 3200.002);
  expect(light).not.toBe(heavy);
});

test('two figures of one sentence stand in one unit, that of the smaller', () => {
  expect(figures('US').unlike('m', 0.0254, 0.1524)).toEqual(['1 in', '6 in']);
  expect(figures('metric').unlike('m', 1.5, 0.02)).toEqual(['1,500 mm', '20 mm']);
  expect(figures('metric').unlike('m', 0.406, 0.762)).toEqual(['0.406 m', '0.762 m']);
});
