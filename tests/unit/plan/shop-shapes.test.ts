// Weld metal, coils, heaps and members along a line, as a plan writes them: against closed forms and pieces of other shapes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadOf, slugs, value } from '../../support/lift.ts';

const size = fc.integer({ min: 20, max: 4000 }); // mm
const results = ['calculated weight', 'volume', 'cog x', 'cog y', 'cog z'];
const boxes = ['length', 'width', 'height'];

const near = (a: number | null, b: number | null, rel = 1e-9): void => {
  expect(a).not.toBeNull();
  expect(b).not.toBeNull();
  expect(Math.abs((a as number) - (b as number))).toBeLessThanOrEqual(rel * Math.max(1, Math.abs(b as number)));
};

type Part = readonly [shape: string, place: string];
const steel = (parts: readonly Part[]) =>
  loadOf(
    parts
      .map(([shape, place], i) => `  part "P${i}": ${shape}, of carbon steel, ${place}\n    empty "seen"`)
      .join('\n'),
  );
const alike = (a: readonly Part[], b: readonly Part[], which: readonly string[] = [...results, ...boxes]): void => {
  const [first, second] = [steel(a), steel(b)];
  expect(slugs(first)).toEqual([]);
  for (const result of which) near(value(first, 'load', 'L', result), value(second, 'load', 'L', result), 2e-9);
};

describe('what shops make and heap up', () => {
  const each = (shape: string) => value(steel([[shape, 'at (0, 0, 0)']]), 'part', 'P0', 'weight') as number;
  const rho = 7850;

  test('a fillet by its throat is one by its legs; nothing said, half as much again is counted', () => {
    near(each('weld fillet, throat 7 mm, length 2 m, excess 0 %'), 0.007 ** 2 * 2 * rho);
    near(each('weld fillet, leg 10 mm, length 2 m'), 1.5 * each('weld fillet, leg 10 x 10 mm, length 2 m, excess 0 %'));
  });

  test.each([
    ['square butt, thickness 6 mm, gap 2 mm', 6 * 2],
    ['single V butt, thickness 20 mm, gap 3 mm, root face 2 mm, bevel 30 deg', 20 * 3 + 18 ** 2 / Math.sqrt(3)],
    ['single bevel butt, thickness 20 mm, gap 3 mm, bevel 45 deg', 20 * 3 + 20 ** 2 / 2],
    ['double V butt, thickness 20 mm, gap 3 mm, bevel 45 deg', 20 * 3 + 2 * 10 ** 2],
    ['double bevel butt, thickness 20 mm, gap 0, bevel 45 deg', 10 ** 2],
  ])('a %s', (groove, square) => near(each(`weld ${groove}, length 4 m, excess 10 %`), square * 1e-6 * 1.1 * 4 * rho));

  test('a weld runs along a line, and round a ring once', () => {
    const ring = loadOf(
      '  part "W": weld fillet, leg 8 mm, along (0, 0, 0) (1, 0, 0) (1, 0.5, 0) (0, 0.5, 0) (0, 0, 0) m',
    );
    near(value(ring, 'part', 'W', 'weight'), 1.5 * 0.5 * 0.008 ** 2 * 3 * rho);
    near(value(ring, 'load', 'L', 'cog x'), 0.5);
    near(value(ring, 'load', 'L', 'cog y'), 0.25);
    expect(slugs(ring)).toEqual([]);
  });

  test('a coil counts as solid, of wire as hexagons, until something is said', () => {
    const ring = 'coil, outside 1.4 m, bore 500 mm, width 1 m';
    const solid = (Math.PI / 4) * (1.4 ** 2 - 0.5 ** 2) * rho;
    near(each(ring), solid);
    near(each(`${ring}, wire 8 mm`), (Math.PI / Math.sqrt(12)) * solid);
    near(each(`${ring}, wire 8 mm, fill factor 78.5 %`), 0.785 * solid);
    near(each(`${ring}, wire 8 mm, length 9,000 m`), (Math.PI / 4) * 0.008 ** 2 * 9000 * rho);
  });

  test.each([
    ['weld fillet, length 1 m', 'clause-missing'],
    ['weld fillet, leg 8 mm, throat 6 mm, length 1 m', 'stated-twice'],
    ['weld fillet, leg 8 mm, gap 2 mm, length 1 m', 'place-wrong'],
    ['weld single V butt, thickness 10 mm, gap 2 mm, length 1 m', 'clause-missing'],
    ['weld square butt, thickness 10 mm, gap 2 mm, bevel 30 deg, length 1 m', 'place-wrong'],
    ['weld square butt, thickness 10 mm, gap 2 mm, leg 8 mm, length 1 m', 'place-wrong'],
    ['weld square butt, thickness 10 mm, gap 0, length 1 m', 'geometry-impossible'],
    ['weld single V butt, thickness 10 mm, gap 2 mm, root face 10 mm, bevel 30 deg, length 1 m', 'geometry-impossible'],
    ['weld single V butt, thickness 10 mm, gap 2 mm, bevel 95 deg, length 1 m', 'value-outside'],
    ['heap, base 3 m', 'clause-missing'],
    ['heap, base 3 m, angle 30 deg, height 1 m', 'stated-twice'],
    ['heap, base 3 x 2 m, angle 30 deg', 'dimension-mismatch'],
    ['heap, base 3 m, angle 90 deg', 'geometry-impossible'],
    ['heap, base 3 m, length 2 m, height 1 m', 'geometry-impossible'],
    ['coil, outside 1 m, bore 1 m, width 1 m', 'geometry-impossible'],
    ['coil, outside 1 m, bore 0.5 m, width 1 m, wire 8 mm, fill factor 95 %', 'geometry-impossible'],
    ['hollow core 6 x 1.2 x 0.2 m, cores 9, core 140 mm', 'geometry-impossible'],
    ['hollow core 6 x 1.2 x 0.2 m, cores 4, core 140 x 200 mm', 'geometry-impossible'],
    ['hollow core 6 x 1.2 x 0.2 m, cores 4', 'clause-missing'],
  ])('%s: %s', (shape, slug) => {
    const s = loadOf(`  part "P": ${shape}${shape.startsWith('weld') ? '' : ', of carbon steel'}, at (0, 0, 0)`);
    expect(slugs(s)).toContain(slug);
    expect(value(s, 'part', 'P', 'weight')).toBeNull();
  });
});

describe('members along a line', () => {
  const run = 'along (0, 0, 0) (0, 0, 1.1) (2, 0, 1.1) (3.5, 0, 2.2) m';

  test('a line of two corners is a member from point to point', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(
          'section HEB200',
          'pipe DN 100, schedule 40',
          'bar 30 mm',
          'prism, outline (0, 0) (60, 0) (0, 90) mm',
        ),
        fc.tuple(size, size, size),
        fc.tuple(size, size, size),
        (shape, from, way) => {
          const to = from.map((x, i) => x + (way[i] as number));
          const [a, b] = [from.join(', '), to.join(', ')];
          const section = shape.startsWith('section');
          alike(
            [[shape, `along (${a}) (${b}) mm`]],
            [[shape, `start (${a}) mm, end (${b}) mm`]],
            [...results, ...boxes].filter((result) => !(section && result === 'volume')),
          );
        },
      ),
      { numRuns: 40 },
    ));

  test('a pipe run weighs what its straights and elbows weigh', () => {
    const elbow = 'elbow, outside 114.3 mm, wall 6.02 mm, bend radius 152 mm, angle 90 deg';
    const pipe = 'tube, outside 114.3 mm, wall 6.02 mm';
    alike(
      [[`${pipe}, bend radius 152 mm`, 'along (0, 0, 0) (2, 0, 0) (2, 1.5, 0) m']],
      [
        [`${pipe}, length 1,848 mm`, 'axis x, at (924, 0, 0) mm'],
        [elbow, 'at (2 m, 0, 0)'],
        [`${pipe}, length 1,348 mm`, 'axis y, at (2,000, 826, 0) mm'],
      ],
    );
  });

  test('a frame of a listed section weighs its table times its line, round the ring once', () => {
    const s = loadOf('  part "P": section UPN 120, along (0, 0, 0) (2, 0, 0) (2, 1, 0) (0, 1, 0) (0, 0, 0) m');
    const straight = loadOf('  part "P": section UPN 120, length 6 m, at (0, 0, 0)');
    near(value(s, 'part', 'P', 'weight'), value(straight, 'part', 'P', 'weight'));
    for (const [axis, at] of [
      ['x', 1],
      ['y', 0.5],
      ['z', 0],
    ] as const)
      near(value(s, 'load', 'L', `cog ${axis}`), at);
  });

  test('corners may stand on several lines, and the tolerance of a bend widens the weight', () => {
    const one = loadOf(`  part "P": bar 40 mm, ${run}`);
    const two = loadOf(
      '  part "P": bar 40 mm\n    along (0, 0, 0) (0, 0, 1.1) m\n    along (2, 0, 1.1) (3.5, 0, 2.2) m',
    );
    near(value(two, 'part', 'P', 'weight'), value(one, 'part', 'P', 'weight'));
    const bent = loadOf(`  part "P": bar 40 mm, bend radius 200 mm ± 20 mm, ${run}`).results.find(
      'part',
      'P',
      'weight',
    );
    expect(bent?.value.low as number).toBeLessThan(bent?.value.value as number);
    expect(bent?.value.high as number).toBeGreaterThan(bent?.value.value as number);
  });

  test.each([
    ['with an end', `${run}, start (0, 0, 0)`, 'stated-twice'],
    ['with a length', `${run}, length 3 m`, 'stated-twice'],
    ['with a place', `${run}, at (0, 0, 0)`, 'stated-twice'],
    ['turned', `${run}, turn 5 deg about x`, 'stated-twice'],
    ['a bend radius without a line', 'length 3 m, bend radius 1 m, at (0, 0, 0)', 'place-wrong'],
    ['one corner', 'along (0, 0, 0) m', 'geometry-impossible'],
    ['corners too near', 'along (0, 0, 0) (1, 0, 0) (1, 0.01, 0) (0, 0.01, 0) m', 'geometry-impossible'],
    ['two coordinates', 'along (0, 0) (1, 0) m', 'line-unreadable'],
  ])('%s', (_, clauses, slug) => {
    const s = loadOf(`  part "P": bar 40 mm, ${clauses}`);
    expect(slugs(s)).toContain(slug);
    expect(value(s, 'part', 'P', 'weight')).toBeNull();
  });

  test('a line that is not known yet leaves the weight open', () =>
    expect(value(loadOf('  part "P": bar 40 mm, along ?'), 'part', 'P', 'weight')).toBeNull());

  test('what a bent run holds lies in it', () => {
    const s = loadOf(
      `  part "P": tube, outside 114.3 mm, wall 6.02 mm, bend radius 152 mm, ${run}\n  part "W": liquid, fill 100 %, of water, inside "P"`,
    );
    const bore = 0.1143 - 2 * 0.00602;
    const bends = [Math.PI / 2, Math.atan2(1.1, 1.5)];
    const line = 1.1 + 2 + Math.hypot(1.5, 1.1) - bends.reduce((off, t) => off + 0.152 * (2 * Math.tan(t / 2) - t), 0);
    near(value(s, 'part', 'W', 'volume'), (Math.PI / 4) * bore ** 2 * line, 1e-9);
  });
});
