// Weld metal, coils, heaps and hollow-core slabs against meshes of @jscad/modeling, quadrature, and pieces of other shapes.
import jscad from '@jscad/modeling';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closestPacking, fits, type Shape, solid, still, type Vec3, working } from '../../../server/mechanics/index.ts';
import { made } from './specimens.ts';

const { booleans, measurements, primitives, transforms } = jscad;
const size = fc.double({ min: 0.05, max: 4, noNaN: true });
const near = (a: number, b: number, rel = 1e-12): void => expect(Math.abs(a / b - 1)).toBeLessThan(rel);

describe('heaps', () => {
  test('a cone, whether by its height or its slope', () =>
    fc.assert(
      fc.property(size, size, (base, height) => {
        const cone = made({ kind: 'cone', base, height });
        const angle = Math.atan2(height, base / 2);
        for (const heap of [made({ kind: 'heap', base, height }), made({ kind: 'heap', base, angle })]) {
          near(heap.volume, cone.volume);
          near(heap.centre[2] + height, cone.centre[2] + height, 1e-9);
        }
      }),
      { seed: 1 },
    ));

  test('a ridge is a cone cut in two and the roof set between', () =>
    fc.assert(
      fc.property(size, size, size, (base, height, between) => {
        const heap = made({ kind: 'heap', base, height, length: base + between });
        const cone = made({ kind: 'cone', base, height });
        const roof = made({ kind: 'pyramid', base: [between, base], top: [between, 0], height });
        near(heap.volume, cone.volume + roof.volume, 1e-9);
        const moment = cone.volume * (cone.centre[2] + height) + roof.volume * (roof.centre[2] + height);
        near(heap.centre[2] + height, moment / heap.volume, 1e-9);
        expect(heap.box.max.map((x, i) => x - (heap.box.min[i] as number))).toEqual(
          [base + between, base, height].map((x) => expect.closeTo(x, 9)),
        );
      }),
      { seed: 2 },
    ));

  test('slices of a ridge, summed up', () => {
    const [base, height, length] = [1.3, 0.7, 3.1];
    const steps = 20_000;
    let [volume, moment] = [0, 0];
    for (let i = 0; i < steps; i++) {
      const z = ((i + 0.5) * height) / steps;
      const across = base * (1 - z / height);
      const area = (Math.PI / 4) * across ** 2 + across * (length - base);
      volume += (area * height) / steps;
      moment += (z * area * height) / steps;
    }
    const heap = made({ kind: 'heap', base, height, length });
    near(heap.volume, volume, 1e-7);
    near(heap.centre[2] + height / 2, moment / volume, 1e-7);
  });
});

describe('hollow-core slabs', () => {
  test('the mesh of a slab with holes through it', () => {
    const facets = 96;
    const shape = { kind: 'hollow core', x: 2, y: 1.2, z: 0.3, cores: 4, coreWidth: 0.2, coreHeight: 0.2 } as const;
    const core = transforms.rotateY(Math.PI / 2, primitives.cylinder({ radius: 0.1, height: 3, segments: facets }));
    const cores = [-1.5, -0.5, 0.5, 1.5].map((at) => transforms.translateY(at * 0.28, core));
    const mesh = booleans.subtract(primitives.cuboid({ size: [2, 1.2, 0.3] }), ...cores);
    const share = (facets * Math.sin((2 * Math.PI) / facets)) / (2 * Math.PI);
    const block = 2 * 1.2 * 0.3;
    expect((block - made(shape).volume) * share).toBeCloseTo(block - measurements.measureVolume(mesh as never), 6);
  });

  const slab: Shape = { kind: 'hollow core', x: 6, y: 1.2, z: 0.2, cores: 6, coreWidth: 0.14, coreHeight: 0.14 };
  const cut = (shape: Shape, at: Vec3) => fits({ shape, place: { R: still.R, t: at } }, slab);
  test('nothing is cut out of a core; the solid web, and the lips over the cores, may be', () => {
    expect(cut({ kind: 'opening', x: 0.3, y: 0.3, depth: 0.2 }, [0, 0, 0])).toBe('outside');
    expect(cut({ kind: 'opening', x: 0.3, y: 0.04, depth: 0.2 }, [0, 0, 0])).toBe(true); // in the middle web
    expect(cut({ kind: 'opening', x: 0.3, y: 0.3, depth: 0.02 }, [0, 0.1, 0.09])).toBe(true);
  });
});

describe('weld metal', () => {
  const flat = { kind: 'weld', length: 2, excess: 0 } as const;

  test('a fillet is a triangle of its legs, half as much again heavier with that excess', () => {
    const fillet = made({ ...flat, leg: [0.01, 0.008] });
    near(fillet.volume, made({ kind: 'wedge', x: 0.01, y: 2, z: 0.008 }).volume);
    near(made({ ...flat, leg: [0.01, 0.008], excess: 0.5 }).volume / fillet.volume, 1.5);
  });

  /** Section of a groove as an outline: each prepared edge leans back from the root face. */
  const outlines = {
    'single V': [
      1,
      (t: number, g: number, f: number, w: number) => [
        [g, 0],
        [g, f],
        [g + w, t],
        [-w, t],
        [0, f],
        [0, 0],
      ],
    ],
    'single bevel': [
      0.5,
      (t: number, g: number, f: number, w: number) => [
        [g, 0],
        [g, f],
        [g + w, t],
        [0, t],
        [0, 0],
      ],
    ],
    'double V': [
      0.5,
      (t: number, g: number, f: number, w: number) => {
        const [low, high] = [(t - f) / 2, (t + f) / 2];
        return [
          [g + w / 2, 0],
          [g, low],
          [g, high],
          [g + w / 2, t],
          [-w / 2, t],
          [0, high],
          [0, low],
          [-w / 2, 0],
        ];
      },
    ],
    'double bevel': [
      0.25,
      (t: number, g: number, f: number, w: number) => {
        const [low, high] = [(t - f) / 2, (t + f) / 2];
        return [
          [g + w / 2, 0],
          [g, low],
          [g, high],
          [g + w / 2, t],
          [0, t],
          [0, 0],
        ];
      },
    ],
  } as const;
  test.each(Object.entries(outlines))('a %s is the prism of its groove', (_, [prepared, outline]) => {
    const [thickness, gap, rootFace, bevel] = [0.03, 0.004, 0.002, 0.5];
    const corners = outline(thickness, gap, rootFace, (thickness - rootFace) * Math.tan(bevel));
    const groove = made({ kind: 'prism', outline: corners as never, holes: [], length: 2 });
    const weld = made({ ...flat, thickness, gap, rootFace, bevel, prepared });
    near(weld.volume, groove.volume);
    const [width] = [0, 1].map((axis) => groove.box.max[axis]! - groove.box.min[axis]!);
    expect(weld.box.max[1] - weld.box.min[1]).toBeCloseTo(width!, 12);
  });

  test('nothing is cut out of one', () =>
    expect(
      fits({ shape: { kind: 'hole', diameter: 0.001, depth: 0.001 }, place: still }, { ...flat, leg: [0.01, 0.01] }),
    ).toBe('outside'));
});

describe('coils', () => {
  const ring = { kind: 'coil', outside: 1.2, bore: 0.6, width: 0.5 } as const;
  test('strip is a tube, or its share of one', () => {
    const tube = made({ kind: 'tube', outside: 1.2, bore: 0.6, length: 0.5 });
    near(made({ ...ring, fillFactor: 1 }).volume, tube.volume);
    near(made({ ...ring, fillFactor: 0.93 }).volume, 0.93 * tube.volume);
  });

  test('wires in hexagons of their own fill what is called the closest packing; square ones pi / 4 of it', () => {
    const d = 0.008;
    const hexagon = (Math.sqrt(3) / 2) * d * d;
    near(closestPacking, ((Math.PI / 4) * d * d) / hexagon);
    expect(Math.PI / 4).toBeLessThan(closestPacking);
  });

  test('a known length of wire counts instead, as long as it fits', () => {
    const wire = { ...ring, wire: 0.01, fillFactor: closestPacking };
    near(made({ ...wire, length: 1000 }).volume, (Math.PI / 4) * 1e-4 * 1000);
    const most = made(wire).volume / ((Math.PI / 4) * 1e-4);
    expect(solid({ ...wire, length: most * 0.999 })).not.toHaveProperty('impossible');
    expect(solid({ ...wire, length: most * 1.001 })).toMatchObject({ reason: 'coil-too-full' });
  });
});

const impossible: readonly (readonly [string, Shape, readonly string[]])[] = [
  ['heap-too-short', { kind: 'heap', base: 2, length: 1.9, height: 1 }, ['length', 'base']],
  ['angle-too-steep', { kind: 'heap', base: 2, angle: Math.PI / 2 }, ['angle']],
  ['not-above-zero', { kind: 'heap', base: 2, height: 0 }, ['height']],
  [
    'cores-too-wide',
    { kind: 'hollow core', x: 6, y: 1, z: 0.2, cores: 5, coreWidth: 0.2, coreHeight: 0.1 },
    ['cores', 'core'],
  ],
  ['cores-too-high', { kind: 'hollow core', x: 6, y: 1, z: 0.2, cores: 3, coreWidth: 0.1, coreHeight: 0.2 }, ['core']],
  ['bore-not-inside', { kind: 'coil', outside: 1, bore: 1, width: 1, fillFactor: 1 }, ['bore', 'outside']],
  [
    'wound-too-tight',
    { kind: 'coil', outside: 1, bore: 0.5, width: 1, wire: 0.01, fillFactor: 0.91 },
    ['fillFactor', 'wire'],
  ],
  [
    'root-face-too-large',
    { kind: 'weld', length: 1, excess: 0, thickness: 0.01, gap: 0, rootFace: 0.01, bevel: 0.5, prepared: 1 },
    ['rootFace', 'thickness'],
  ],
  [
    'angle-too-steep',
    { kind: 'weld', length: 1, excess: 0, thickness: 0.01, gap: 0, rootFace: 0, bevel: 1.6, prepared: 1 },
    ['bevel'],
  ],
  [
    'not-above-zero',
    { kind: 'weld', length: 1, excess: 0, thickness: 0.01, gap: 0, rootFace: 0, bevel: 0, prepared: 0 },
    ['gap'],
  ],
  ['below-zero', { kind: 'weld', length: 1, excess: -0.1, leg: [0.01, 0.01] }, ['excess']],
];
test.each(impossible)('%s: %o', (reason, shape, clauses) => {
  expect(solid(shape)).toMatchObject({ impossible: true, reason, clauses });
  expect(working(shape)).toBeUndefined();
});
