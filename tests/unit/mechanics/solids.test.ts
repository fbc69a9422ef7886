// Volumes and centres against random points, general theorems and tables.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boxOf,
  contains,
  containsMaterial,
  identity,
  interior,
  type Shape,
  solid,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { notShown } from './pipework-specimens.ts';
import { pointIn, randomFrom } from './random.ts';
import { hollowShapes, made, named, specimens } from './specimens.ts';

describe('random points in the box: the share in the material is its volume, their mean its centre', () => {
  const points = 40_000;
  test.each(named(specimens.filter((shape) => !notShown(shape))))('%s', (_, shape) => {
    const { volume, centre, box } = made(shape);
    const random = randomFrom(20);
    const whole = [0, 1, 2].reduce((product, axis) => product * (box.max[axis]! - box.min[axis]!), 1);
    let hits = 0;
    const sum = [0, 0, 0];
    for (let i = 0; i < points; i++) {
      const point = pointIn(box, random);
      if (!containsMaterial(shape, point, 0)) continue;
      hits++;
      for (const axis of [0, 1, 2] as const) sum[axis]! += point[axis];
    }
    const share = volume / whole;
    expect(hits).toBeGreaterThan(1000);
    expect(Math.abs(hits / points - share)).toBeLessThanOrEqual(4 * Math.sqrt((share * (1 - share)) / points) + 1e-12);
    for (const axis of [0, 1, 2] as const) {
      const spread = (box.max[axis] - box.min[axis]) / Math.sqrt(4 * hits);
      expect(Math.abs(sum[axis]! / hits - centre[axis])).toBeLessThan(4 * spread);
    }
  });
});

describe('theorems', () => {
  test('material and the space inside make up the outside, whatever the sizes', () => {
    fc.assert(
      fc.property(hollowShapes, (shape) => {
        const outer = outsideOf(shape);
        const space = interior(shape)!.volume;
        expect(Math.abs((made(shape).volume + space) / outer - 1)).toBeLessThan(1e-10);
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  test('a hole and its plug make the whole', () => {
    const plug = made({ kind: 'cylinder', diameter: 0.3, length: 0.9 }).volume;
    const bored = made({ kind: 'tube', outside: 1.2, bore: 0.3, length: 0.9 }).volume;
    expect(bored + plug).toBeCloseTo(made({ kind: 'cylinder', diameter: 1.2, length: 0.9 }).volume, 13);
    expect(made({ kind: 'hole', diameter: 0.3, depth: 0.9 }).volume).toBe(plug);
  });

  test('a cone cut in two is a frustum and a smaller cone', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (at) => {
        const whole = made({ kind: 'cone', base: 1.4, height: 2 });
        const low = made({ kind: 'frustum', base: 1.4, top: 1.4 * (1 - at), height: 2 * at });
        const high = made({ kind: 'cone', base: 1.4 * (1 - at), height: 2 * (1 - at) });
        expect(low.volume + high.volume).toBeCloseTo(whole.volume, 12);
        const moment = low.volume * (low.centre[2] + at - 1) + high.volume * (high.centre[2] + at);
        expect(moment).toBeCloseTo(whole.volume * whole.centre[2], 12);
      }),
      { seed: 2 },
    );
  });

  test('two caps make a sphere', () => {
    const [radius, height] = [0.7, 0.4];
    const base = 2 * Math.sqrt(height * (2 * radius - height));
    const low = made({ kind: 'spherical cap', base, height }).volume;
    const high = made({ kind: 'spherical cap', base, height: 2 * radius - height }).volume;
    expect(low + high).toBeCloseTo(made({ kind: 'sphere', diameter: 2 * radius }).volume, 13);
  });

  test('a pyramid is the wedge-shaped half of a block cut twice; a wedge half a block', () => {
    expect(made({ kind: 'wedge', x: 2, y: 1, z: 0.6 }).volume).toBeCloseTo(0.6, 15);
    expect(made({ kind: 'pyramid', base: [1, 1], height: 0.5 }).volume).toBeCloseTo(1 / 6, 15);
  });

  test('an elbow in two pieces weighs and hangs as in one', () => {
    const bend = (angle: number): Shape => ({ kind: 'elbow', outside: 0.4, wall: 0.05, bendRadius: 0.6, angle });
    const fromBend = (angle: number): Vec3 => {
      const { centre } = made(bend(angle));
      return [centre[0] + 0.6 * Math.tan(angle / 2), centre[1] - 0.6, centre[2]];
    };
    const [a, b, whole] = [fromBend(0.7), fromBend(0.5), fromBend(1.2)];
    const turned = [b[0] * Math.cos(0.7) - b[1] * Math.sin(0.7), b[0] * Math.sin(0.7) + b[1] * Math.cos(0.7)];
    expect((0.7 * a[0] + 0.5 * turned[0]!) / 1.2).toBeCloseTo(whole[0], 13);
    expect((0.7 * a[1] + 0.5 * turned[1]!) / 1.2).toBeCloseTo(whole[1], 13);
    expect(made(bend(0.7)).volume + made(bend(0.5)).volume).toBeCloseTo(made(bend(1.2)).volume, 14);
  });

  test('outline either way round, holes likewise, far from zero: the same volume and centre', () => {
    const outline = [
      [0, 0],
      [3, 0],
      [3, 1],
      [1, 2],
      [0, 1.5],
    ] as const;
    const hole = [
      [0.5, 0.5],
      [1, 0.5],
      [0.7, 1],
    ] as const;
    const prism = (shift: number, back: boolean): Shape => {
      const moved = (points: readonly (readonly [number, number])[]) =>
        points.map(([x, y]) => [x + shift, y - shift] as const);
      const [o, h] = [moved(outline), moved(hole)];
      return { kind: 'prism', outline: back ? [...o].reverse() : o, holes: [h], length: 2 };
    };
    const plain = made(prism(0, false));
    const far = made(prism(1000, true));
    expect(far.volume).toBeCloseTo(plain.volume, 9);
    expect(far.centre[0] - 1000).toBeCloseTo(plain.centre[0], 9);
    expect(far.centre[1] + 1000).toBeCloseTo(plain.centre[1], 9);
  });
});

/** Volume of the outer body alone, by closed forms or by the same shape without a wall. */
function outsideOf(shape: Shape): number {
  switch (shape.kind) {
    case 'tube':
    case 'pipe':
      return (Math.PI / 4) * shape.outside ** 2 * shape.length;
    case 'rectangular tube':
      return shape.y * shape.z * shape.length;
    case 'hollow sphere':
      return (Math.PI / 6) * shape.outside ** 3;
    case 'tapered tube':
    case 'conical head':
      return (Math.PI / 12) * shape.height * (shape.base ** 2 + shape.base * shape.top + shape.top ** 2);
    case 'elbow':
      return (Math.PI / 4) * shape.outside ** 2 * shape.bendRadius * shape.angle;
    case 'hemispherical head':
      return (Math.PI / 12) * shape.outside ** 3 + (Math.PI / 4) * shape.outside ** 2 * (shape.straightFlange ?? 0);
    case 'dished head':
      return domeVolume(shape);
    default:
      throw new Error(shape.kind);
  }
}

/** Outer face of a dished head turned about its axis: Simpson's rule along the arc, independent of the closed forms. */
function domeVolume(shape: Extract<Shape, { kind: 'dished head' }>): number {
  const { outside, wall, straightFlange = 0 } = shape;
  const radius = outside / 2 - wall;
  const flange = (Math.PI / 4) * outside ** 2 * straightFlange;
  if (shape.form === 'ellipsoidal') {
    return (
      flange +
      turned(
        (at) => {
          const [across, up] = [radius * Math.cos(at), (radius / 2) * Math.sin(at)];
          const [nx, nz] = [Math.cos(at), 2 * Math.sin(at)];
          const length = Math.hypot(nx, nz);
          return [across + (wall * nx) / length, up + (wall * nz) / length];
        },
        0,
        Math.PI / 2,
      )
    );
  }
  const [crown, knuckle, ring] = [shape.crownRadius + wall, shape.knuckleRadius + wall, radius - shape.knuckleRadius];
  const middle = -Math.sqrt((crown - knuckle) ** 2 - ring ** 2);
  const meet = Math.atan2(-middle, ring);
  const arc = (x: number, z: number, r: number) => (at: number) =>
    [x + r * Math.cos(at), z + r * Math.sin(at)] as const;
  return flange + turned(arc(ring, 0, knuckle), 0, meet) + turned(arc(0, middle, crown), meet, Math.PI / 2);
}

/** Volume under a curve (radius, height) turned about the axis. */
function turned(curve: (at: number) => readonly [number, number], from: number, to: number): number {
  const n = 2000;
  const step = (to - from) / n;
  const rise = (at: number): number => (curve(at + 1e-5)[1] - curve(at - 1e-5)[1]) / 2e-5;
  let sum = 0;
  for (let i = 0; i <= n; i++) {
    const at = from + i * step;
    sum += (i === 0 || i === n ? 1 : i % 2 ? 4 : 2) * Math.PI * curve(at)[0] ** 2 * rise(at);
  }
  return (sum * step) / 3;
}

describe('tables', () => {
  // Machinery's Handbook, "Mensuration" and "Volumes of solids" (from memory): a half cylinder's centre lies 4r/3pi from the
  // flat, a hemisphere's 3r/8, a cone's h/4 from the base.
  test('centres of simple solids', () => {
    expect(made({ kind: 'cone', base: 1, height: 2 }).centre[2] + 1).toBeCloseTo(0.5, 15);
    expect(made({ kind: 'spherical cap', base: 2, height: 1 }).centre[2] + 0.5).toBeCloseTo(3 / 8, 14);
    expect(made({ kind: 'hemispherical head', outside: 2, wall: 0.9999999 }).centre[2] + 0.5).toBeCloseTo(3 / 8, 6);
  });

  // DIN 28011 and DIN 28013 (figures from memory): depth 0.1935 Da - 0.455 s and 0.255 Da - 0.635 s with the straight flange
  // apart; contents 0.1 and 0.1298 (Da - 2s)3. Printed to two or three digits.
  test.each([
    ['Klöpper form', 1, 0.1, 0.1935, 0.455, 0.1, 0.015],
    ['Korbbogen form', 0.8, 0.154, 0.255, 0.635, 0.1298, 0.015],
  ])('%s', (_, crown, knuckle, depth, less, contents, near) => {
    const [outside, wall] = [2, 0.01];
    const [crownRadius, knuckleRadius] = [crown * outside, knuckle * outside];
    const shape: Shape = { kind: 'dished head', form: 'torispherical', outside, wall, crownRadius, knuckleRadius };
    const { box } = made(shape);
    expect(box.max[2] - box.min[2] - wall).toBeCloseTo(depth * outside - less * wall, 2);
    expect(interior(shape)!.volume / (contents * (outside - 2 * wall) ** 3)).toBeCloseTo(1, 1);
    expect(Math.abs(interior(shape)!.volume / (contents * (outside - 2 * wall) ** 3) - 1)).toBeLessThan(near);
  });

  // Contents of a 2:1 ellipsoidal head: pi D3 / 24 (standard mensuration).
  test('2:1 ellipsoidal head', () => {
    const shape: Shape = { kind: 'dished head', form: 'ellipsoidal', outside: 2.04, wall: 0.02 };
    expect(interior(shape)!.volume).toBeCloseTo((Math.PI * 8) / 24, 12);
  });

  // Pappus: pi2 D d2 / 4 for a ring, the area of a ring section times its way for a pipe bend. A bend of 457.2 mm centre-line
  // radius, 219 mm outside, 8.2 mm wall, 90 deg, weighs 30.61 kg at 7,850 kg/m3, its centre 422.6 mm from the bend centre
  // (worked by hand from the theorem).
  test('pipe bend', () => {
    const elbow: Shape = { kind: 'elbow', outside: 0.219, wall: 0.0082, bendRadius: 0.4572, angle: Math.PI / 2 };
    const { volume, centre } = made(elbow);
    expect(volume * 7850).toBeCloseTo(30.61, 2);
    expect(Math.hypot(centre[0] + 0.4572, centre[1] - 0.4572)).toBeCloseTo(0.4226, 4);
  });
});

describe('axes and datum points', () => {
  test('an elbow comes in along +x below its bend centre and turns towards +y', () => {
    const elbow: Shape = { kind: 'elbow', outside: 0.2, bendRadius: 0.6, angle: Math.PI / 2 };
    expect(contains(elbow, [-0.599, 0, 0], 0)).toBe(true);
    expect(contains(elbow, [-0.601, 0, 0], 0)).toBe(false);
    expect(contains(elbow, [0, 0.599, 0], 0)).toBe(true);
    expect(contains(elbow, [0, 0.601, 0], 0)).toBe(false);
    const half: Shape = { ...elbow, angle: Math.PI };
    expect(contains(half, [0.001, -0.6, 0], 0)).toBe(true);
    expect(contains(half, [0.001, 0.6, 0], 0)).toBe(true);
    expect(contains(half, [-0.001, 0.6, 0], 0)).toBe(false);
  });

  test('a wedge is full at low x, a head open at low z, a prism measured from its outline', () => {
    expect(contains({ kind: 'wedge', x: 2, y: 1, z: 1 }, [-0.99, 0, 0.49], 0)).toBe(true);
    expect(contains({ kind: 'wedge', x: 2, y: 1, z: 1 }, [0.99, 0, 0.49], 0)).toBe(false);
    const head: Shape = { kind: 'dished head', form: 'ellipsoidal', outside: 2, wall: 0.1 };
    expect(containsMaterial(head, [0, 0, made(head).box.min[2] + 0.01], 0)).toBe(false);
    expect(containsMaterial(head, [0, 0, made(head).box.max[2] - 0.01], 0)).toBe(true);
    const box = boxOf(
      {
        kind: 'prism',
        outline: [
          [1, 1],
          [2, 1],
          [2, 3],
        ],
        holes: [],
        length: 4,
      },
      identity,
    );
    expect(box).toEqual({ min: [1, 1, -2], max: [2, 3, 2] });
  });
});

test('what has a mass per length or area has no volume unless its sizes give one', () => {
  expect(solid({ kind: 'section', length: 6, depth: 0.3, width: 0.2, massPerLength: 40 })).toEqual({
    mass: 240,
    centre: [0, 0, 0],
    box: { min: [-3, -0.1, -0.15], max: [3, 0.1, 0.15] },
  });
  expect(solid({ kind: 'sheet', x: 2, y: 1, area: 1.5, massPerArea: 30 })).toMatchObject({ mass: 45 });
  const pipe = solid({ kind: 'pipe', length: 2, outside: 0.2, wall: 0.01, massPerLength: 42 });
  expect(pipe).toMatchObject({ mass: 84, volume: Math.PI * 0.19 * 0.01 * 2 });
  expect(solid({ kind: 'bar', length: 2, diameter: 0.1 })).not.toHaveProperty('mass');
});
