// Shapes against each other: pieces that make a whole, one solid written in two ways, turns and units. Exact geometry, no outside table needed.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadOf, slugs, value } from '../../support/lift.ts';
import { alike, boxes, near, type Part, results, size, steel } from '../../support/shapes.ts';

const angle = fc.integer({ min: -179, max: 180 }); // deg

describe('one solid written in two ways', () => {
  test('an ellipsoid of three equal sides is a ball', () =>
    fc.assert(
      fc.property(size, (d) =>
        alike(
          [[`ellipsoid ${d} x ${d} x ${d} mm`, 'at (1, 2, 3) m']],
          [[`sphere, diameter ${d} mm`, 'at (1, 2, 3) m']],
        ),
      ),
      { numRuns: 20 },
    ));

  test('a turned rectangle is a cylinder, away from the axis a tube, a turned trapezium a frustum', () =>
    fc.assert(
      fc.property(size, size, size, fc.integer({ min: 1, max: 90 }), (d, l, top, share) => {
        const r = d / 2;
        const bore = (d * share) / 100;
        const at = `at (0, 0, ${-l / 2} mm)`;
        alike(
          [[`turned, outline (0, 0) (${r}, 0) (${r}, ${l}) (0, ${l}) mm`, at]],
          [[`cylinder, diameter ${d} mm, length ${l} mm`, 'at (0, 0, 0)']],
        );
        alike(
          [[`turned, outline (${bore / 2}, 0) (${r}, 0) (${r}, ${l}) (${bore / 2}, ${l}) mm`, at]],
          [[`tube, outside ${d} mm, bore ${bore} mm, length ${l} mm`, 'at (0, 0, 0)']],
        );
        alike(
          [[`turned, outline (0, 0) (${r}, 0) (${top / 2}, ${l}) (0, ${l}) mm`, at]],
          [[`frustum, base ${d} mm, top ${top} mm, height ${l} mm`, 'at (0, 0, 0)']],
        );
      }),
      { numRuns: 30 },
    ));

  test('a stepped shaft is its steps', () =>
    fc.assert(
      fc.property(size, size, size, size, (d1, l1, d2, l2) => {
        fc.pre(d1 !== d2 + 1); // no step is no corner
        alike(
          [
            [
              `turned, outline (0, 0) (${d1 / 2}, 0) (${d1 / 2}, ${l1}) (${d2 / 2 + 0.5}, ${l1}) (${d2 / 2 + 0.5}, ${l1 + l2}) (0, ${l1 + l2}) mm`,
              'axis x, at (0, 0, 0)',
            ],
          ],
          [
            [`cylinder, diameter ${d1} mm, length ${l1} mm`, `axis x, at (${l1 / 2}, 0, 0) mm`],
            [`cylinder, diameter ${d2 + 1} mm, length ${l2} mm`, `axis x, at (${l1 + l2 / 2}, 0, 0) mm`],
          ],
        );
      }),
      { numRuns: 30 },
    ));

  test('a member from point to point is one of that length laid there', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(
          'section HEB200',
          'pipe DN 100, schedule 40',
          'bar 30 mm',
          'rectangular tube 100 x 200 mm, wall 8 mm',
          'tube, outside 200 mm, wall 10 mm',
          'cylinder, diameter 90 mm',
        ),
        fc.constantFrom('x', 'y', 'z'),
        size,
        size,
        (shape, axis, length, at) => {
          const point = (along: number) => ['x', 'y', 'z'].map((one) => (one === axis ? along : at)).join(', ');
          alike(
            [[shape, `start (${point(at)}) mm, end (${point(at + length)}) mm`]],
            [[`${shape}, length ${length} mm`, `axis ${axis}, at (${point(at + length / 2)}) mm`]],
            [...results, ...boxes].filter((result) => result !== 'volume'), // a section shows none
          );
        },
      ),
      { numRuns: 40 },
    ));

  test('from either end it is the same', () =>
    fc.assert(
      fc.property(size, size, size, size, (x, y, z, d) =>
        alike(
          [['bar 40 mm', `start (${d}, 0, 0) mm, end (${x}, ${y}, ${z + d}) mm`]],
          [['bar 40 mm', `start (${x}, ${y}, ${z + d}) mm, end (${d}, 0, 0) mm`]],
        ),
      ),
      { numRuns: 30 },
    ));
});

describe('pieces that make a whole', () => {
  test('curved plates round a circle are a tube', () =>
    fc.assert(
      fc.property(size, size, fc.integer({ min: 2, max: 48 }), fc.constantFrom(2, 3, 4, 5, 6, 8), (d, l, share, n) => {
        const sizes = `outside ${d} mm, wall ${(d * share) / 100} mm`;
        alike(
          Array.from(
            { length: n },
            (_, i): Part => [
              `curved plate, ${sizes}, angle 360 deg / ${n}, length ${l} mm`,
              `turn ${i} * 360 deg / ${n} about z, at (0, 0, 0)`,
            ],
          ),
          [[`tube, ${sizes}, length ${l} mm`, 'at (0, 0, 0)']],
          results,
        );
      }),
      { numRuns: 30 },
    ));

  test('what a cut along its axis leaves of a round and what it takes are the round', () =>
    fc.assert(
      fc.property(size, size, fc.integer({ min: 5, max: 95 }), (d, l, share) => {
        const low = (d * share) / 100;
        const sizes = (height: number) => `cylinder segment, diameter ${d} mm, height ${height} mm, length ${l} mm`;
        alike(
          [
            [sizes(low), `turn 180 deg about z, at (0, ${-(d - low) / 2}, 0) mm`],
            [sizes(d - low), `at (0, ${low / 2}, 0) mm`],
          ],
          [[`cylinder, diameter ${d} mm, length ${l} mm`, 'at (0, 0, 0)']],
        );
      }),
      { numRuns: 40 },
    ));

  test('two caps and the slice between them are a ball', () =>
    fc.assert(
      fc.property(size, fc.integer({ min: 5, max: 45 }), fc.integer({ min: 55, max: 95 }), (d, a, b) => {
        const [low, high] = [(d * a) / 100, (d * b) / 100];
        const across = (h: number) => 2 * Math.sqrt(h * (d - h));
        alike(
          [
            [`spherical cap, base ${across(low)} mm, height ${low} mm`, `axis -z, at (0, 0, ${low / 2}) mm`],
            [
              `spherical cap, base ${across(low)} mm, top ${across(high)} mm, height ${high - low} mm`,
              `at (0, 0, ${(low + high) / 2}) mm`,
            ],
            [`spherical cap, base ${across(high)} mm, height ${d - high} mm`, `at (0, 0, ${(d + high) / 2}) mm`],
          ],
          [[`sphere, diameter ${d} mm`, `at (0, 0, ${d / 2}) mm`]],
        );
      }),
      { numRuns: 40 },
    ));

  test('a block with a ridge is a roof: two wedges back to back', () =>
    fc.assert(
      fc.property(size, size, size, (x, y, z) =>
        alike(
          [[`pyramid, base ${y} x ${2 * x} mm, top ${y} x 0 mm, height ${z} mm`, 'at (0, 0, 0)']],
          [
            [`wedge ${x} x ${y} x ${z} mm`, `turn 90 deg about z, at (0, ${x / 2}, 0) mm`],
            [`wedge ${x} x ${y} x ${z} mm`, `turn -90 deg about z, at (0, ${-x / 2}, 0) mm`],
          ],
        ),
      ),
      { numRuns: 30 },
    ));

  test('a paraboloid is half the cylinder round it (Archimedes), its centre a third up', () =>
    fc.assert(
      fc.property(size, size, (d, h) => {
        const bowl = steel([[`paraboloid, base ${d} mm, height ${h} mm`, `at (0, 0, ${h / 2} mm)`]]);
        const round = steel([[`cylinder, diameter ${d} mm, length ${h} mm`, 'at (0, 0, 0)']]);
        near(value(bowl, 'load', 'L', 'volume'), (value(round, 'load', 'L', 'volume') as number) / 2);
        near(value(bowl, 'load', 'L', 'cog z'), h / 3000);
      }),
      { numRuns: 30 },
    ));

  test('concrete and its reinforcement weigh as both apart', () =>
    fc.assert(
      fc.property(size, size, size, fc.integer({ min: 1, max: 80 }), (x, y, z, tenths) => {
        const mixed = loadOf(
          `  part "P": box ${x} x ${y} x ${z} mm, density 2,320 kg/m3, reinforcement ${tenths / 10} %, at (0, 0, 0)`,
        );
        const volume = (x * y * z) / 1e9;
        const share = tenths / 1000;
        near(value(mixed, 'part', 'P', 'weight'), volume * (2320 * (1 - share) + 7850 * share));
      }),
      { numRuns: 30 },
    ));
});

describe('every new shape', () => {
  const shapes: readonly ((k: number, unit: string) => string)[] = [
    (k, u) => `ellipsoid ${2 * k} x ${1.2 * k} x ${0.8 * k} ${u}`,
    (k, u) => `paraboloid, base ${1.5 * k} ${u}, height ${0.4 * k} ${u}`,
    (k, u) => `spherical cap, base ${1.5 * k} ${u}, top ${0.7 * k} ${u}, height ${0.4 * k} ${u}`,
    (k, u) => `turned, outline (0, 0) (${k}, 0) (${k}, ${0.2 * k}) (${0.3 * k}, ${0.5 * k}) (0, ${2 * k}) ${u}`,
    (k, u) => `curved plate, outside ${3 * k} ${u}, wall ${0.1 * k} ${u}, angle 70 deg, length ${2 * k} ${u}`,
    (k, u) => `cylinder segment, diameter ${1.2 * k} ${u}, height ${0.3 * k} ${u}, length ${2 * k} ${u}`,
    (k, u) => `pyramid, base ${2 * k} x ${k} ${u}, top ${0.7 * k} x 0 ${u}, height ${k} ${u}`,
    (k, u) => `heap, base ${2 * k} ${u}, angle 35 deg`,
    (k, u) => `heap, base ${2 * k} ${u}, length ${5 * k} ${u}, height ${0.6 * k} ${u}`,
    (k, u) => `hollow core ${6 * k} x ${1.2 * k} x ${0.2 * k} ${u}, cores 6, core ${0.14 * k} ${u}`,
    (k, u) => `hollow core ${6 * k} x ${1.2 * k} x ${0.3 * k} ${u}, cores 4, core ${0.14 * k} x ${0.2 * k} ${u}`,
    (k, u) => `coil, outside ${1.4 * k} ${u}, bore ${0.5 * k} ${u}, width ${1.2 * k} ${u}, fill factor 95 %`,
    (k, u) => `coil, outside ${1.4 * k} ${u}, bore ${0.5 * k} ${u}, width ${1.2 * k} ${u}, wire ${0.02 * k} ${u}`,
    (k, u) => `weld fillet, leg length ${0.2 * k} x ${0.1 * k} ${u}, length ${6 * k} ${u}`,
    (k, u) => `weld single V butt, thickness ${0.4 * k} ${u}, gap ${0.1 * k} ${u}, bevel 30 deg, length ${6 * k} ${u}`,
  ];
  const anyShape = fc.constantFrom(...shapes);

  test('weighs the same however it is turned, its centre as far from the datum point', () =>
    fc.assert(
      fc.property(anyShape, angle, angle, fc.constantFrom('x', '-x', 'y', '-y', 'z', '-z'), (shape, a, b, axis) => {
        const plain = steel([[shape(1, 'm'), 'at (0, 0, 0)']]);
        const turned = steel([
          [shape(1, 'm'), `axis ${axis}, turn ${a} deg about x, turn ${b} deg about z, at (0, 0, 0)`],
        ]);
        for (const result of ['calculated weight', 'volume'])
          near(value(turned, 'load', 'L', result), value(plain, 'load', 'L', result));
        const reach = (s: typeof plain) =>
          Math.hypot(...['cog x', 'cog y', 'cog z'].map((result) => value(s, 'load', 'L', result) as number));
        near(reach(turned), reach(plain), 1e-8);
      }),
      { numRuns: 80 },
    ));

  test('grows with the cube of its sizes, whatever unit they are written in', () =>
    fc.assert(
      fc.property(anyShape, fc.integer({ min: 2, max: 40 }), fc.constantFrom('mm', 'in', 'ft'), (shape, k, unit) => {
        const factor = { mm: 0.001, in: 0.0254, ft: 0.3048 }[unit] as number;
        const one = steel([[shape(1, 'm'), 'at (0, 0, 0)']]);
        const many = steel([[shape(k, unit), 'at (0, 0, 0)']]);
        near((value(many, 'load', 'L', 'volume') as number) / (k * factor) ** 3, value(one, 'load', 'L', 'volume'));
        for (const box of boxes)
          near((value(many, 'load', 'L', box) as number) / (k * factor), value(one, 'load', 'L', box));
      }),
      { numRuns: 60 },
    ));

  test('with a tolerance is heavier at one end and lighter at the other', () => {
    for (const shape of [
      'ellipsoid 2 x 1 x 1 m ± 5 mm',
      'paraboloid, base 1 m ± 5 mm, height 400 mm ± 5 mm',
      'spherical cap, base 1 m ± 5 mm, top 700 mm, height 400 mm',
      'curved plate, outside 3 m ± 5 mm, wall 12 mm ± 1 mm, angle 60 deg ± 1 deg, length 2 m',
      'cylinder segment, diameter 1.2 m ± 5 mm, height 400 mm ± 5 mm, length 2 m',
      'heap, base 3 m ± 100 mm, angle 35 deg ± 3 deg',
      'heap, base 3 m, length 8 m ± 200 mm, height 1 m ± 100 mm',
      'hollow core 6 x 1.2 x 0.2 m, cores 6, core 140 mm ± 3 mm',
      'coil, outside 1.4 m ± 5 mm, bore 508 mm ± 2 mm, width 1.2 m, fill factor 95 % ± 2 %',
      'coil, outside 1.4 m, bore 508 mm, width 1.2 m, wire 8 mm ± 0.1 mm, length 5,000 m ± 100 m',
      'weld fillet, leg length 10 mm ± 1 mm, length 6 m, excess 20 % ± 10 %',
      'weld double bevel butt, thickness 30 mm, gap 3 mm ± 1 mm, bevel 30 deg ± 2 deg, length 6 m',
    ]) {
      const weight = steel([[shape, 'at (0, 0, 0)']]).results.find('part', 'P0', 'weight')?.value;
      expect(weight?.low as number, shape).toBeLessThan(weight?.value as number);
      expect(weight?.high as number, shape).toBeGreaterThan(weight?.value as number);
    }
  });
});

describe('members from point to point', () => {
  const member = (clauses: string) => loadOf(`  part "P": bar 40 mm, ${clauses}`);
  const twice = 'stated-twice';
  test.each([
    ['one end alone', 'start (0, 0, 0)', 'clause-missing'],
    ['with a length', 'start (0, 0, 0), end (1 m, 0, 0), length 1 m', twice],
    ['with a place', 'start (0, 0, 0), end (1 m, 0, 0), at (0, 0, 0)', twice],
    ['with a turn', 'start (0, 0, 0), end (1 m, 0, 0), turn 5 deg about x', twice],
  ])('%s', (_, clauses, slug) => {
    const s = member(clauses);
    expect(slugs(s)).toContain(slug);
    expect(value(s, 'part', 'P', 'weight')).toBeNull();
  });

  test('both ends in one point, or an end that is not known, give no weight', () => {
    expect(value(member('start (1 m, 0, 0), end (1 m, 0, 0)'), 'part', 'P', 'weight')).toBeNull();
    expect(value(member('start (1 m, 0, 0), end (?, 0, 0)'), 'part', 'P', 'weight')).toBeNull();
  });

  test('a shape that does not run straight has no ends', () => {
    const s = loadOf('  part "P": box 1 x 1 x 1 m, of carbon steel, start (0, 0, 0), end (1 m, 0, 0)');
    expect(slugs(s)).toContain('place-wrong');
    expect(value(s, 'part', 'P', 'weight')).toBeNull();
  });

  test('copies stand in steps, and tolerances of the ends widen length and place', () => {
    const s = member('start (0, 0, 0) ± 5 mm, end (3, 0, 4) m ± 5 mm, count 2, every (0, 1 m, 0)');
    const weight = s.results.find('part', 'P', 'weight')?.value;
    near(weight?.value ?? null, (2 * 5 * 0.04 ** 2 * Math.PI * 7850) / 4);
    near((weight?.high as number) / (weight?.value as number), (5 + 2 * 0.005 * Math.sqrt(3)) / 5, 1e-9);
    near(value(s, 'part', 'P', 'cog y'), 0.5);
    expect(s.results.find('part', 'P', 'cog x')?.value.high).toBeCloseTo(1.505, 9);
  });

  test('a truss by its members: every one from node to node, the centre in its plane of symmetry', () => {
    const s = loadOf(
      [
        ['Bottom', '0, 0, 0', '6, 0, 0'],
        ['Top', '1.5, 0, 1.2', '4.5, 0, 1.2'],
        ['D1', '0, 0, 0', '1.5, 0, 1.2'],
        ['D2', '1.5, 0, 1.2', '3, 0, 0'],
        ['D3', '3, 0, 0', '4.5, 0, 1.2'],
        ['D4', '4.5, 0, 1.2', '6, 0, 0'],
      ]
        .map(([name, from, to]) => `  part "${name}": pipe NPS 3, schedule 40, start (${from}) m, end (${to}) m`)
        .join('\n'),
    );
    const metres = 6 + 3 + 4 * Math.hypot(1.5, 1.2);
    const each = (value(s, 'part', 'Bottom', 'weight') as number) / 6;
    near(value(s, 'load', 'L', 'calculated weight'), each * metres);
    near(value(s, 'load', 'L', 'cog x'), 3);
    near(value(s, 'load', 'L', 'cog z'), (3 * 1.2 + 4 * Math.hypot(1.5, 1.2) * 0.6) / metres);
  });
});
