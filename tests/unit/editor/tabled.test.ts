// The tables under the caret: hover shows figure, range, source and why this end; completion shows what each entry weighs.
import { expect, test } from 'vitest';
import { hoverAt, offered, offers } from '../../support/draw.ts';
import { withCursor } from './plans.ts';

const load = (line: string, units = 'metric') =>
  `plan "x": date 2026-01-05\n  units ${units}\nload "L"\n  datum "d"\n  contingency 5 %\n${line}`;
const at = (words: string, line: string, units = 'metric') =>
  hoverAt(withCursor(`\n${load(line, units)}`, words))
    .split('\n')
    .slice(2);
const labels = (line: string) => offers(load(line)).map(({ label }) => label);

test.each([
  ['A100', 'part "R": section A100, length 12 m', 'A100: 74.3 kg/m', 'DIN 536'],
  ['60E1', 'part "R": section 60E1, length 12 m', '60E1: 60.34 kg/m', 'EN 13674-1'],
  ['AZ 26-700', 'part "P": section AZ 26-700, length 12 m', 'AZ 26-700: 102.9 kg/m', 'EN 10248-1'],
  ['A393', 'part "M": sheet 2 x 4.8 m, kind A393', 'A393: 6.17 kg/m²', 'BS 4483'],
  ['6x36', 'part "W": rope 20 mm, construction 6x36 IWRC, length 50 m', 'rope 6x36 IWRC: 1.71 kg/m', 'EN 12385-4'],
  ['L, length', 'part "T": pipe NPS 2, schedule L, length 6 m', 'NPS 2 schedule L: 2.61 kg/m', 'ASTM B88'],
])('hover on %s of "%s" shows %s and its source', (words, line, figure, source) => {
  const said = at(words, `  ${line}, at (0, 0, 0)`);
  expect(said[0]).toBe(figure);
  expect(said.at(-1)).toContain(source);
});

test('a range is shown with the end that is taken, and why', () => {
  expect(at('60E1', '  part "R": section 60E1, length 12 m, at (0, 0, 0)')).toContain(
    'Its sources and sizes give 60.21 kg/m to 60.34 kg/m; the heavier is used, so that a doubt never makes the load lighter.',
  );
});

test('a pipe of ductile iron says what its weight counts beside the barrel', () => {
  const said = at('K9', '  part "M": pipe DN 200, schedule K9, length 6 m, at (0, 0, 0)').join('\n');
  expect(said).toMatch(/Counted .*socket.*lining/);
});

test('a pipe whose schedule is not written yet shows what its schedules weigh', () => {
  const said = at('NPS 2', '  part "T": pipe NPS 2, length 6 m, at (0, 0, 0)', 'US');
  expect(said[0]).toBe('NPS 2 by its schedule');
  expect(said[1]).toContain('40 3.66 lb/ft');
  expect(said[1]).toContain('L 1.76 lb/ft');
});

test('completion shows the weight of every entry in the units of the plan', () => {
  expect(offered(load('  part "R": section 60E|'), 1)).toEqual(['60E1 · 60.34 kg/m']);
  expect(offered(load('  part "P": section PZ 3|', 'US'), 1)).toEqual(['PZ 35 · 66 lb/ft']);
  expect(offered(load('  part "M": sheet 2 x 4.8 m, kind A39|'), 1)).toEqual(['A393 · 6.17 kg/m2']);
  expect(offered(load('  part "W": rope 20 mm, construction 6x36 I|'), 1)).toEqual(['6x36 IWRC · 1.71 kg/m']);
  expect(offered(load('  part "T": pipe NPS 2, schedule |'), 50)).toContain('L · 2.61 kg/m, copper');
  expect(offered(load('  part "T": pipe copper 2|'), 1)).toEqual(['copper 2 in · 2.18 kg/m to 3.08 kg/m']);
});

test('constructions of a chain are not offered for a rope', () => {
  expect(labels('  part "W": rope 20 mm, construction |')).toContain('35x7');
  expect(labels('  part "W": rope 20 mm, construction |')).not.toContain('stud link');
  expect(labels('  part "C": chain 20 mm, construction |')).toContain('stud link');
});
