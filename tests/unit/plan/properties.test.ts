// What must not change a weight: splitting, turning, a hole with its plug, the units it is written in. Exact geometry, no outside table needed.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { head, lift, loadOf, value } from '../../support/lift.ts';

const size = fc.integer({ min: 20, max: 4000 });
const place = fc.integer({ min: -5000, max: 5000 });
const angle = fc.integer({ min: -179, max: 180 });
const near = (a: number | null, b: number | null, rel = 1e-9): void => {
  expect(a).not.toBeNull();
  expect(b).not.toBeNull();
  expect(Math.abs((a as number) - (b as number))).toBeLessThanOrEqual(rel * Math.max(1, Math.abs(b as number)));
};
const results = ['calculated weight', 'volume', 'cog x', 'cog y', 'cog z', 'length', 'width', 'height'];

describe('weight and centre do not depend on how a part is written', () => {
  test('a block split into two weighs and balances the same', () => {
    fc.assert(
      fc.property(size, size, size, size, place, place, (a, b, y, z, x0, y0) => {
        const whole = loadOf(`  part "P": box ${a + b} x ${y} x ${z} mm, of carbon steel, at (${x0}, ${y0}, 0) mm`);
        const split = loadOf(
          `  part "P": box ${a} x ${y} x ${z} mm, of carbon steel, at (${x0 - b / 2}, ${y0}, 0) mm\n  part "Q": box ${b} x ${y} x ${z} mm, of carbon steel, against "P" x`,
        );
        for (const result of results) near(value(split, 'load', 'L', result), value(whole, 'load', 'L', result));
      }),
      { numRuns: 60 },
    );
  });

  test('turning changes no weight and no volume, and keeps the distance of the centre', () => {
    const shapes = [
      'wedge 2 x 1 x 0.5 m',
      'cone, base 1 m, height 2 m',
      'dished head, outside 2 m, wall 12 mm, form ellipsoidal, straight flange 40 mm',
      'elbow, outside 219 mm, wall 8 mm, bend radius 305 mm, angle 75 deg',
      'prism, outline (0, 0) (2, 0) (2, 1) (1, 2) m, length 3 m',
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        angle,
        angle,
        fc.constantFrom('x', '-x', 'y', '-y', 'z', '-z'),
        (shape, first, second, axis) => {
          const plain = loadOf(`  part "P": ${shape}, of carbon steel, at (0, 0, 0)\n    empty "seen"`);
          const turned = loadOf(
            `  part "P": ${shape}, of carbon steel, axis ${axis}, turn ${first} deg about x, turn ${second} deg about z, at (0, 0, 0)\n    empty "seen"`,
          );
          for (const result of ['calculated weight', 'volume'])
            near(value(turned, 'load', 'L', result), value(plain, 'load', 'L', result));
          const reach = (s: typeof plain) =>
            Math.hypot(...['cog x', 'cog y', 'cog z'].map((result) => value(s, 'load', 'L', result) as number));
          near(reach(turned), reach(plain), 1e-8);
        },
      ),
      { numRuns: 80 },
    );
  });

  test('a hole and its plug make the solid again', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 90 }),
        fc.integer({ min: -400, max: 400 }),
        fc.integer({ min: -150, max: 150 }),
        (d, x, y) => {
          const solid = loadOf('  part "P": plate 1,000 x 500 x 40 mm, of carbon steel, at (0, 0, 0)');
          const plugged = loadOf(
            `  part "P": plate 1,000 x 500 x 40 mm, of carbon steel, at (0, 0, 0)\n    less hole, diameter ${d} mm, at (${x}, ${y}, 0) mm\n  part "Plug": cylinder, diameter ${d} mm, length 40 mm, of carbon steel, at (${x}, ${y}, 0) mm`,
          );
          for (const result of results) near(value(plugged, 'load', 'L', result), value(solid, 'load', 'L', result));
        },
      ),
      { numRuns: 60 },
    );
  });

  test('copies by count are as many parts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 6 }), place, place, (n, dx, dy) => {
        const counted = loadOf(
          `  part "P": cylinder, diameter 200 mm, length 300 mm, of carbon steel, at (1, 2, 3) m, count ${n}, every (${dx}, ${dy}, 0) mm`,
        );
        const each = loadOf(
          Array.from(
            { length: n },
            (_, i) =>
              `  part "P${i}": cylinder, diameter 200 mm, length 300 mm, of carbon steel, at (${1000 + i * dx}, ${2000 + i * dy}, 3000) mm`,
          ).join('\n'),
        );
        for (const result of results) near(value(counted, 'load', 'L', result), value(each, 'load', 'L', result));
      }),
      { numRuns: 40 },
    );
  });

  test('metric and US writing of one plan come to the same', () => {
    fc.assert(
      fc.property(size, size, size, place, (x, y, z, at) => {
        const metric = loadOf(
          `  part "P": box ${x * 25.4} x ${y * 25.4} x ${z * 25.4} mm, density 7,850 kg/m3, at (${at * 25.4}, 0, 0) mm`,
        );
        const us = loadOf(`  part "P": box ${x} x ${y} x ${z} in, density 7,850 kg/m3, at (${at}, 0, 0) in`);
        for (const result of results) near(value(us, 'load', 'L', result), value(metric, 'load', 'L', result), 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test('an assembly placed and turned carries its parts along', () => {
    fc.assert(
      fc.property(place, place, fc.constantFrom(0, 90, 180, 270), (x, y, turn) => {
        const inside =
          '    part "P": box 2 x 1 x 0.5 m, of carbon steel, at (1, 0, 0) m\n    part "Q": box 1 x 1 x 1 m, of reinforced concrete, on "P"';
        const whole = loadOf(`  assembly "A": at (${x}, ${y}, 0) mm, turn ${turn} deg about z\n${inside}`);
        const alone = loadOf(`  assembly "A"\n${inside}`);
        near(value(whole, 'load', 'L', 'calculated weight'), value(alone, 'load', 'L', 'calculated weight'));
        const [cx, cy] = ['cog x', 'cog y'].map((result) => value(alone, 'load', 'L', result) as number) as [
          number,
          number,
        ];
        const a = (turn * Math.PI) / 180;
        near(value(whole, 'load', 'L', 'cog x'), x / 1000 + cx * Math.cos(a) - cy * Math.sin(a));
        near(value(whole, 'load', 'L', 'cog y'), y / 1000 + cx * Math.sin(a) + cy * Math.cos(a));
        near(value(whole, 'load', 'L', 'cog z'), value(alone, 'load', 'L', 'cog z'));
      }),
      { numRuns: 40 },
    );
  });

  test('tolerances only widen: the nominal figure lies between its ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 9 }), (mm, cm) => {
        const s = lift(
          `${head}load "L"\n  contingency 0 %\n  free "loose"\n  part "P": tube, outside 500 mm ± ${mm} mm, wall 20 mm ± ${Math.min(mm, 9)} mm, length 2 m, of carbon steel, at (0, 0, 0) ± ${cm} cm\n    empty "seen"\n`,
        );
        const weight = s.results.find('part', 'P', 'weight')?.value;
        const x = s.results.find('load', 'L', 'cog x')?.value;
        expect(weight?.low as number).toBeLessThan(weight?.value as number);
        expect(weight?.high as number).toBeGreaterThan(weight?.value as number);
        near(x?.high as number, cm / 100);
        near(value(s, 'load', 'L', 'weight'), weight?.high as number); // the tolerance is larger than no contingency
      }),
      { numRuns: 30 },
    );
  });
});
