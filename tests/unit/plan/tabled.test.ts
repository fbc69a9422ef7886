// Parts by the tables: rail and sheet pile, pipe that is not steel, rope and chain by the length, sheet by its kind.
import { expect, test } from 'vitest';
import { loadOf, message, slugs, value } from '../../support/lift.ts';

const part = (shape: string) => loadOf(`  part "P": ${shape}, at (0, 0, 0)`);
const weight = (shape: string) => value(part(shape), 'part', 'P', 'weight');

test.each([
  ['section A100, length 12 m', 74.3 * 12, 0.003],
  ['section AZ 26-700, length 14 m', 102.9 * 14, 0.001],
  // 8940 kg/m3 over a ring of 2.125 in outside and 0.07 in wall.
  ['pipe NPS 2, schedule L, length 6 m', 8940 * Math.PI * 2.055 * 0.07 * 0.0254 ** 2 * 6, 1e-9],
  ['pipe copper 28 mm, schedule 1.5, length 6 m', 8940 * Math.PI * 0.0265 * 0.0015 * 6, 1e-9],
  // EN 12385 factors: 0.427 kg per 100 m and mm2 of the diameter squared; chain 2.27.
  ['rope 20 mm, construction 6x36 IWRC, length 50 m', 0.00427 * 400 * 50, 1e-9],
  ['chain 13 mm, construction grade 80, length 10 m', 0.0227 * 169 * 10, 1e-9],
  ['rope 20 mm, unit weight 1.8 kg/m, length 50 m', 90, 1e-9],
  // Two layers of 10 mm wires 200 mm apart.
  ['sheet 2 x 4.8 m, kind A393', ((2 * (Math.PI / 4) * 0.01 ** 2) / 0.2) * 7850 * 9.6, 1e-9],
  ['sheet, area 9.6 m2, kind A393', ((2 * (Math.PI / 4) * 0.01 ** 2) / 0.2) * 7850 * 9.6, 1e-9],
  // The wall of a pile 700 mm wide.
  ['sheet 7 x 14 m, kind AZ 26-700', 102.9 * 10 * 14, 0.001],
])('%s weighs %d kg', (shape, kilograms, within) => {
  expect(Math.abs((weight(shape) ?? Number.NaN) / kilograms - 1)).toBeLessThanOrEqual(within);
});

test('without a construction the heaviest is taken', () => {
  expect(weight('rope 20 mm, length 50 m')).toBeCloseTo(0.00507 * 400 * 50, 9);
  expect(weight('chain 20 mm, length 50 m')).toBeCloseTo(0.0242 * 400 * 50, 9);
});

test('a pipe with its lining and socket is heavier than its barrel, and never lighter than the printed iron', () => {
  expect(weight('pipe DN 200, schedule K9, length 6 m')).toBeGreaterThan(194);
  expect(weight('pipe NPS 8, schedule PC350, length 18 ft')).toBeGreaterThan(0);
});

test('a ratio says nothing of the plastic: what it is of is asked for', () => {
  expect(slugs(part('pipe DN 110, schedule SDR11, length 6 m'))).toContain('clause-missing');
  expect(weight('pipe DN 110, schedule SDR11, length 6 m')).toBeNull();
  expect(weight('pipe DN 110, schedule SDR11, length 6 m, of HDPE')).toBeGreaterThan(18);
});

test.each([
  'section A101, length 6 m',
  'section AZ 99-700, length 6 m',
  'pipe NPS 2, schedule Q, length 6 m',
  'rope 20 mm, construction 6x99, length 6 m',
  'sheet 2 x 4 m, kind A999',
])('%s is not guessed', (shape) => {
  expect(slugs(part(shape))).toContain('size-unknown');
  expect(weight(shape)).toBeNull();
});

test('copper tube of a plastic and iron pipe of aluminium are slips, and never weighed the lighter for them', () => {
  for (const shape of [
    'pipe NPS 2, schedule L, length 6 m, of PVC',
    'pipe DN 200, schedule K9, length 6 m, of aluminium',
  ]) {
    expect(slugs(part(shape))).toContain('size-unknown');
    expect(weight(shape)).toBeNull();
  }
  expect(weight('pipe NPS 2, schedule L, length 6 m, of brass')).toBeGreaterThan(15);
});

test.each([
  ['rope 20 mm, construction 6x38, length 6 m', /Nearest: 6x36 IWRC /],
  ['chain 13 mm, construction grade 90, length 6 m', /Nearest: short link /],
  ['pipe NPS 2, schedule LL, length 6 m', /schedule L /],
  ['pipe NPS 2, schedule L, length 6 m, of PVC', /Nearest: schedule 40 /],
])('the nearest to what "%s" asks for are named', (shape, named) => {
  expect(message(part(shape), 'size-unknown')).toMatch(named);
});

// The class of an iron pipe stands for its lining and socket too: its sizes alone are some 20 % lighter (DN 200 K9: 37.9 against 30.7 kg/m).
test('iron pipe by class keeps its lining and socket whatever is said of its iron, and is of no other metal', () => {
  const pipe = 'pipe DN 200, schedule K9, length 1 m';
  const listed = weight(pipe) as number;
  expect(listed).toBeGreaterThan(37);
  for (const more of [', of ductile iron', ', of cast iron', ', density 7050 kg/m3'])
    expect(weight(pipe + more)).toBe(listed);
  expect(weight(`${pipe}, of carbon steel`)).toBeNull();
  expect(message(part(`${pipe}, of carbon steel`), 'size-unknown')).toContain('DN 200 schedule K9 of carbon steel');
});
