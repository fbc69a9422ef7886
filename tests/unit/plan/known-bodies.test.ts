// Bodies and supports of which weight and centre are known, written as plans: computed, two methods agree (formula and quadrature, or balance of
// moments). The same bodies as shapes alone stand in tests/unit/mechanics/composites.json.
import { describe, expect, test } from 'vitest';
import { errors, loadOf, value } from '../../support/lift.ts';

const g0 = 9.80665;

/** Weight in kg and centre in m of the load. */
function weighs(lines: string, kg: number, centre: readonly (number | null)[]): void {
  const s = loadOf(lines);
  expect(errors(s)).toEqual([]);
  expect(Math.abs((value(s, 'load', 'L', 'weight') as number) / kg - 1)).toBeLessThan(1e-9);
  centre.forEach((x, i) => {
    const found = value(s, 'load', 'L', `cog ${'xyz'[i]}`);
    if (x === null) expect(found).toBeNull();
    else expect(Math.abs((found as number) - x)).toBeLessThan(1e-9);
  });
}

describe('bodies put together', () => {
  test('a plate with two holes', () =>
    weighs(
      `  part "Plate": plate 2 x 1 x 0.03 m, of carbon steel, at (0, 0, 0.015 m)
    less: hole, diameter 0.4 m, at (0.6, 0.2, 0) m
    less: hole, diameter 0.2 m, at (-0.7, -0.3, 0) m`,
      434.0077465039802,
      [-0.028979589166230224, -0.00852340857830301, 0.015],
    ));

  test('a wall with a window and a door', () =>
    weighs(
      `  part "Wall": box 5 x 0.2 x 2.8 m, density 2,400 kg/m3, at (0, 0, 1.4 m)
    less: box 1.4 x 0.2 x 1.2 m, at (1.2, 0, 0.1) m
    less: box 0.9 x 0.2 x 2.1 m, at (-1.8, 0, -0.35) m`,
      5006.4,
      [0.13288590604026854, 0, 1.4473154362416105],
    ));

  test('a skid of two beams, a block, a tank full of something and a pump', () =>
    weighs(
      `  part "Beams": rectangular tube 0.1 x 0.2 m, wall 8 mm, length 6 m, of carbon steel, at (3, -1, 0) m, count 2, every (0, 2 m, 0)
    empty "ends open, seen"
  part "Block": box 1.2 x 0.9 x 1 m, density 2,600 kg/m3, at (1.5, 0.2, 0.6) m
  part "Tank": cylinder, diameter 0.8 m, length 1.1 m, density 1,800 kg/m3, at (4.4, -0.3, 0.65) m
  part "Pump": item 350 kg, by maker data, at (3, 0.6, 0.9) m`,
      4581.301352657247,
      [2.3847510544913213, 0.10325080098222815, 0.5777216025512187],
    ));

  test('a lying drum filled to 0.6 of 2 m: the liquid as what lies below its level', () => {
    const s = loadOf(
      '  part "Drum": tube, outside 2.02 m, wall 10 mm, length 5 m, axis x, of carbon steel, at (0, 0, 0)\n  part "Oil": liquid, level 1.4 m, of water, inside "Drum"',
    );
    // What lies above: a segment 0.6 m high has 3.963367 m3, its centre 0.647490 m off the axis.
    const [whole, above, off] = [Math.PI * 5, 3.9633671256547065, 0.6474904564263281];
    expect(value(s, 'part', 'Oil', 'volume')).toBeCloseTo(whole - above, 9);
    expect(value(s, 'part', 'Oil', 'cog z')).toBeCloseTo((-above * off) / (whole - above), 9);
    const low = loadOf(
      '  part "Drum": tube, outside 2.02 m, wall 10 mm, length 5 m, axis x, of carbon steel, at (0, 0, 0)\n  part "Oil": liquid, level 0.6 m, of water, inside "Drum"',
    );
    expect(value(low, 'part', 'Oil', 'weight')).toBeCloseTo(above * 1000, 6);
    expect(value(low, 'part', 'Oil', 'cog z')).toBeCloseTo(-off, 9);
  });
});

describe('a weight on its supports: the readings give it back, and where it sits', () => {
  const weighed = (supports: readonly (readonly [x: number, y: number, newtons: number])[]) =>
    `  weighed: by jack reading, dated 2026-02-20, tare 0 kg, accuracy 0 %, state "as lifted"\n${supports
      .map(([x, y, newtons], i) => `    support J${i + 1}: at (${x}, ${y}, 0) m, reads ${newtons.toFixed(9)} N`)
      .join('\n')}`;
  const square = [
    [3, 3],
    [-3, 3],
    [-3, -3],
    [3, -3],
  ] as const;
  const wide = [
    [4.1, 3.6],
    [-3.9, 3.6],
    [-3.9, -3.6],
    [4.1, -3.6],
  ] as const;
  const trapezoid = [
    [4, 3.5],
    [-3.5, 3],
    [-3.5, -3],
    [4, -2],
  ] as const;

  test.each([
    ['in the middle of a square', square, [150_000, 150_000, 150_000, 150_000], 600_000, [0, 0]],
    ['off along x', square, [190_000, 110_000, 110_000, 190_000], 600_000, [0.8, 0]],
    ['off along both', square, [205_000, 145_000, 95_000, 155_000], 600_000, [0.6, 0.5]],
    ['on a wide rectangle', wide, [207_000, 138_000, 253_000, 322_000], 920_000, [0.7, -0.9]],
    [
      'on a trapezoid',
      trapezoid,
      [191_869.1823899371, 156_342.13836477988, 272_991.19496855343, 298_797.4842767296],
      920_000,
      [0.5, -0.3],
    ],
    [
      'of a machine to one side',
      wide,
      [233_980.53984375, 146_027.14765625, 146_027.14765625, 233_980.53984375],
      760_015.375,
      [1.0258064516129033, 0],
    ],
  ] as const)('%s', (_, places, readings, newtons, [x, y]) =>
    weighs(weighed(places.map(([px, py], i) => [px, py, readings[i] as number] as const)), newtons / g0, [x, y, null]),
  );

  test('the lever: 50 kN 1 m from one support and 3 m from the other press 37.5 and 12.5 kN', () =>
    weighs(
      weighed([
        [0, 0, 37_500],
        [4, 0, 12_500],
      ]),
      50_000 / g0,
      [1, 0, null],
    ));

  test('a reading below zero is no reading', () => {
    const s = loadOf(
      weighed([
        [0, 0, 37_500],
        [4, 0, -12_500],
      ]),
    );
    expect(errors(s).length).toBeGreaterThan(0);
    expect(value(s, 'load', 'L', 'weight')).toBeNull();
  });
});
