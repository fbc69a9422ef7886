// What fits into a part's material and clear of other cut-outs: exact where lines are parallel, never too generous elsewhere.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  add,
  apply,
  axisRotation,
  boxOf,
  containsMaterial,
  fits,
  identity,
  inCircle,
  inverse,
  overlap,
  type PlacedShape,
  type Shape,
  throughDepth,
  turn,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { placementFrom, pointIn, randomFrom } from './random.ts';
import { made, specimens } from './specimens.ts';

const at = (shape: Shape, t: Vec3, R = identity): PlacedShape => ({ shape, place: { R, t } });
const hole = (diameter: number, depth: number): Shape => ({ kind: 'hole', diameter, depth });
const opening = (x: number, y: number, depth: number): Shape => ({ kind: 'opening', x, y, depth });
const plate: Shape = { kind: 'plate', x: 2, y: 1, z: 0.02 };
const tube: Shape = { kind: 'tube', outside: 1.2, wall: 0.2, length: 0.5 };

describe('in a plate', () => {
  test.each([
    ['through', at(hole(0.3, 0.02), [0.5, 0.1, 0]), true],
    ['touching an edge', at(hole(0.3, 0.02), [0.85, 0, 0]), true],
    ['a hair over the edge', at(hole(0.3, 0.02), [0.85001, 0, 0]), 'outside'],
    ['blind, from the top', at(hole(0.3, 0.01), [0, 0, 0.005]), true],
    ['sticking out of the top', at(hole(0.3, 0.02), [0, 0, 0.001]), 'outside'],
    ['sticking out below', at(hole(0.3, 0.02), [0, 0, -0.001]), 'outside'],
    ['deeper than the plate', at(hole(0.3, 0.03), [0, 0, 0]), 'larger'],
    ['wider than the plate', at(hole(1.1, 0.02), [0, 0, 0]), 'larger'],
    ['all of it', at(opening(2, 1, 0.02), [0, 0, 0]), true],
    ['turned on its corner', at(opening(0.5, 0.5, 0.02), [0, 0, 0], turn(Math.PI / 4, 'z')), true],
    ['turned on its corner, too far out', at(opening(0.5, 0.5, 0.02), [0.7, 0, 0], turn(Math.PI / 4, 'z')), 'outside'],
    ['along the plate', at(hole(0.01, 2), [0, 0, 0], axisRotation('x')), true],
    ['along the plate, too thick', at(hole(0.03, 2), [0, 0, 0], axisRotation('x')), 'larger'],
    ['across the plate, near an end', at(hole(0.01, 1), [0.99, 0, 0], axisRotation('y')), true],
    ['across the plate, out of its top', at(hole(0.01, 1), [0, 0, 0.006], axisRotation('y')), 'outside'],
    ['leaning, inside', at(hole(0.004, 0.01), [0, 0, 0], turn(0.5, 'x')), true],
    ['a ball', at({ kind: 'sphere', diameter: 0.02 }, [0.3, 0, 0]), true],
    ['a cone', at({ kind: 'cone', base: 0.1, height: 0.02 }, [0.3, 0, 0]), true],
  ] as const)('%s', (_, cut, expected) => expect(fits(cut, plate)).toBe(expected));
});

describe('in round parts', () => {
  const disc: Shape = { kind: 'cylinder', diameter: 1.2, length: 0.1 };
  test.each([
    ['a bolt hole in a disc', at(hole(0.1, 0.1), [0.55, 0, 0]), disc, true],
    ['over the rim', at(hole(0.1, 0.1), [0.5501, 0, 0]), disc, 'outside'],
    ['an opening up to the rim', at(opening(0.72, 0.96, 0.1), [0, 0, 0]), disc, true],
    ['an opening over the rim', at(opening(0.73, 0.96, 0.1), [0, 0, 0]), disc, 'outside'],
    ['a bolt hole in a flange', at(hole(0.1, 0.5), [0.5, 0, 0]), tube, true],
    ['touching bore and rim', at(hole(0.2, 0.5), [0.5, 0, 0]), tube, true],
    ['into the bore', at(hole(0.1, 0.5), [0.4, 0, 0]), tube, 'outside'],
    ['in the bore', at(hole(0.1, 0.5), [0, 0, 0]), tube, 'outside'],
    ['a wider bore, as a tube', at({ kind: 'tube', outside: 0.9, bore: 0.8, length: 0.2 }, [0, 0, 0.15]), tube, true],
    [
      'a wider bore, as a cylinder',
      at({ kind: 'cylinder', diameter: 0.9, length: 0.2 }, [0, 0, 0.15]),
      tube,
      'outside',
    ],
    ['drilled right through a wall', at(hole(0.1, 0.2), [0.5, 0, 0], axisRotation('x')), tube, 'outside'],
    ['drilled into a wall', at(hole(0.05, 0.1), [0.5, 0, 0], axisRotation('x')), tube, true],
    [
      'along a pipe wall',
      at(hole(0.02, 1), [0, 0.17, 0], axisRotation('x')),
      { kind: 'pipe', length: 1, outside: 0.4, wall: 0.06 },
      true,
    ],
    ['out of a ball', at(hole(0.2, 0.9), [0, 0, 0]), { kind: 'sphere', diameter: 1 }, true],
    ['out of a ball, over its face', at(hole(0.2, 1), [0, 0, 0]), { kind: 'sphere', diameter: 1 }, 'outside'],
    [
      'down the middle of a frustum',
      at(hole(0.2, 1), [0, 0, 0]),
      { kind: 'frustum', base: 2, top: 1, height: 1 },
      true,
    ],
    [
      'through the side of a frustum',
      at(hole(0.2, 1), [0.45, 0, 0]),
      { kind: 'frustum', base: 2, top: 1, height: 1 },
      'outside',
    ],
    [
      'a ring',
      at({ kind: 'sphere', diameter: 0.2 }, [0.5, 0, 0]),
      { kind: 'torus', meanDiameter: 1, sectionDiameter: 0.3 },
      true,
    ],
    [
      'the middle of a ring',
      at({ kind: 'sphere', diameter: 0.2 }, [0, 0, 0]),
      { kind: 'torus', meanDiameter: 1, sectionDiameter: 0.3 },
      'outside',
    ],
  ] as const)('%s', (_, cut, part, expected) => expect(fits(cut, part)).toBe(expected));
});

describe('in hollow and cornered parts', () => {
  const rhs: Shape = { kind: 'rectangular tube', y: 0.2, z: 0.3, wall: 0.02, length: 2 };
  const angle: Shape = {
    kind: 'prism',
    outline: [
      [0, 0],
      [1, 0],
      [1, 0.2],
      [0.2, 0.2],
      [0.2, 1],
      [0, 1],
    ],
    holes: [
      [
        [0.5, 0.05],
        [0.7, 0.05],
        [0.7, 0.15],
        [0.5, 0.15],
      ],
    ],
    length: 0.5,
  };
  const wedge: Shape = { kind: 'wedge', x: 2, y: 1, z: 1 };
  test.each([
    ['through one wall of a box section', at(hole(0.05, 0.02), [0.3, 0.09, 0], axisRotation('y')), rhs, true],
    ['past one wall of it', at(hole(0.05, 0.03), [0.3, 0.085, 0], axisRotation('y')), rhs, 'outside'],
    ['right across it', at(hole(0.05, 0.2), [0.3, 0, 0], axisRotation('y')), rhs, 'outside'],
    ['in a leg of an angle', at(hole(0.1, 0.5), [0.1, 0.6, 0]), angle, true],
    ['over the heel into the air', at(hole(0.1, 0.5), [0.22, 0.22, 0]), angle, 'outside'],
    ['where it has a hole', at(hole(0.06, 0.5), [0.6, 0.1, 0]), angle, 'outside'],
    ['a slot beside its hole', at(opening(0.2, 0.1, 0.5), [0.4, 0.1, 0]), angle, true],
    ['a slot into its hole', at(opening(0.2, 0.1, 0.5), [0.41, 0.1, 0]), angle, 'outside'],
    ['through a leg of it', at(opening(0.1, 0.1, 0.1), [0.1, 0.6, 0], axisRotation('x')), angle, true],
    ['in the full end of a wedge', at(opening(0.4, 0.4, 0.4), [-0.7, 0, -0.2]), wedge, true],
    ['out of its slope', at(opening(0.4, 0.4, 0.4), [0.3, 0, 0.2]), wedge, 'outside'],
    ['in a pyramid', at(hole(0.2, 0.5), [0, 0, -0.2]), { kind: 'pyramid', base: [1, 1], height: 1 }, true],
    ['out of a pyramid', at(hole(0.2, 0.9), [0, 0, 0]), { kind: 'pyramid', base: [1, 1], height: 1 }, 'outside'],
    [
      'in a section, whose metal is not known',
      at(hole(0.01, 0.01), [0, 0, 0]),
      { kind: 'section', length: 2, depth: 0.3, width: 0.2, massPerLength: 40 },
      'outside',
    ],
    ['in a sheet', at(hole(0.1, 0.01), [0, 0, 0]), { kind: 'sheet', x: 2, y: 1, massPerArea: 30 }, 'outside'],
  ] as const)('%s', (_, cut, part, expected) => expect(fits(cut, part)).toBe(expected));
});

describe('clear of each other', () => {
  test.each([
    ['holes that touch', at(hole(0.2, 1), [0, 0, 0]), at(hole(0.4, 1), [0.3, 0, 0]), false],
    ['holes that meet', at(hole(0.2, 1), [0, 0, 0]), at(hole(0.4, 1), [0.2999, 0, 0]), true],
    ['one above the other', at(hole(0.2, 1), [0, 0, 0]), at(hole(0.2, 1), [0, 0, 1]), false],
    ['one in the other', at(hole(0.2, 1), [0, 0, 0]), at(hole(0.8, 1), [0, 0, 0.2]), true],
    ['the same twice', at(opening(1, 1, 1), [0, 0, 0]), at(opening(1, 1, 1), [0, 0, 0]), true],
    ['openings side by side', at(opening(1, 1, 1), [0, 0, 0]), at(opening(1, 1, 1), [1, 0.3, 0]), false],
    ['a hole in a corner of two openings', at(opening(1, 1, 1), [0, 0, 0]), at(hole(0.2, 1), [0.58, 0.58, 0]), false],
    ['a hole over the corner', at(opening(1, 1, 1), [0, 0, 0]), at(hole(0.2, 1), [0.565, 0.565, 0]), true],
    [
      'a ring round a hole',
      at({ kind: 'tube', outside: 1, bore: 0.5, length: 1 }, [0, 0, 0]),
      at(hole(0.5, 1), [0, 0, 0]),
      false,
    ],
    ['crossing holes', at(hole(0.2, 1), [0, 0, 0]), at(hole(0.2, 1), [0, 0, 0], axisRotation('x')), true],
    [
      'holes that pass each other',
      at(hole(0.2, 1), [0, 0, 0]),
      at(hole(0.2, 1), [0, 0.2, 0], axisRotation('x')),
      false,
    ],
    ['holes that leave a skin', at(hole(0.2, 1), [0, 0, 0]), at(hole(0.2, 1), [0, 0.3, 0], turn(0.7, 'y')), false],
    [
      'balls',
      at({ kind: 'sphere', diameter: 1 }, [0, 0, 0]),
      at({ kind: 'sphere', diameter: 1 }, [0.6, 0.6, 0.6]),
      false,
    ],
    [
      'balls that meet',
      at({ kind: 'sphere', diameter: 1 }, [0, 0, 0]),
      at({ kind: 'sphere', diameter: 1 }, [0.5, 0.5, 0.5]),
      true,
    ],
  ] as const)('%s', (_, a, b, shared) => {
    expect(overlap(a, b)).toBe(shared);
    expect(overlap(b, a)).toBe(shared);
  });

  test('a bolt circle fits; the same hole twice is taken', () => {
    const places = inCircle({ R: identity, t: [0, 0, 0] }, 1, 'z', 16);
    const bolts = places.map((place): PlacedShape => ({ shape: hole(0.15, 0.5), place }));
    for (const [i, bolt] of bolts.entries()) expect(fits(bolt, tube, bolts.slice(0, i))).toBe(true);
    expect(fits(bolts[0]!, tube, bolts)).toBe('taken');
  });
});

test('what runs through needs the length of a block or cylinder along own z', () => {
  expect(throughDepth(plate, identity)).toBe(0.02);
  expect(throughDepth(plate, axisRotation('-z'))).toBe(0.02);
  expect(throughDepth(plate, turn(0.4, 'z'))).toBe(0.02);
  expect(throughDepth(plate, axisRotation('x'))).toBeUndefined();
  expect(throughDepth({ kind: 'cylinder', diameter: 1, length: 3 }, identity)).toBe(3);
  expect(throughDepth(tube, identity)).toBeUndefined();
});

describe('never too generous', () => {
  const cuts: readonly Shape[] = [
    hole(0.12, 0.1),
    opening(0.1, 0.15, 0.08),
    { kind: 'sphere', diameter: 0.12 },
    { kind: 'tube', outside: 0.2, bore: 0.1, length: 0.1 },
  ];
  const seed = fc.integer({ min: 0, max: 1e9 });

  /** Points of a placed shape's material. */
  function pointsOf({ shape, place }: PlacedShape, random: () => number): readonly Vec3[] {
    const box = boxOf(shape, identity);
    const points = Array.from({ length: 300 }, () => pointIn(box, random));
    return points.filter((point) => containsMaterial(shape, point, 0)).map((point) => apply(place, point));
  }

  test('all of a cut-out that fits lies in the material', () => {
    let [fitting, all] = [0, 0];
    fc.assert(
      fc.property(fc.constantFrom(...specimens), fc.constantFrom(...cuts), seed, (part, shape, start) => {
        const random = randomFrom(start);
        const cut: PlacedShape = { shape, place: { ...placementFrom(random), t: pointIn(made(part).box, random) } };
        all++;
        if (fits(cut, part) !== true) return;
        fitting++;
        for (const point of pointsOf(cut, random)) expect(containsMaterial(part, point, 1e-9)).toBe(true);
      }),
      { numRuns: 600, seed: 1 },
    );
    expect(fitting).toBeGreaterThan(all / 20);
  });

  test('two that are clear share no point', () => {
    let clear = 0;
    fc.assert(
      fc.property(fc.constantFrom(...cuts), fc.constantFrom(...specimens), seed, (shape, other, start) => {
        const random = randomFrom(start);
        const second: PlacedShape = { shape: other, place: placementFrom(random) };
        const first: PlacedShape = {
          shape,
          place: {
            ...placementFrom(random),
            t: add(second.place.t, pointIn({ min: [-1, -1, -1], max: [1, 1, 1] }, random)),
          },
        };
        if (overlap(first, second)) return;
        clear++;
        for (const point of pointsOf(first, random))
          expect(containsMaterial(other, apply(inverse(second.place), point), -1e-9)).toBe(false);
      }),
      { numRuns: 300, seed: 2 },
    );
    expect(clear).toBeGreaterThan(50);
  });
});
