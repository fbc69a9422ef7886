// One or more shapes of every kind that can be made, and ways to make many of them.
import fc from 'fast-check';
import { type Shape, type Solid, solid, type Vec2, type Vec3 } from '../../../server/mechanics/index.ts';
import { pipeworkSpecimens } from './pipework-specimens.ts';

export const specimens: readonly Shape[] = [
  { kind: 'box', x: 2, y: 1, z: 0.5 },
  { kind: 'plate', x: 2, y: 1, z: 0.1 },
  { kind: 'envelope', x: 0.6, y: 0.8, z: 1.1 },
  { kind: 'wedge', x: 1.5, y: 0.7, z: 0.9 },
  { kind: 'cylinder', diameter: 0.8, length: 1.3 },
  { kind: 'tube', outside: 1.2, wall: 0.2, length: 0.9 },
  { kind: 'tube', outside: 1.2, bore: 0.5, length: 0.9 },
  { kind: 'rectangular tube', y: 0.5, z: 0.8, wall: 0.1, length: 1.4 },
  { kind: 'sphere', diameter: 1.1 },
  { kind: 'hollow sphere', outside: 1.1, wall: 0.15 },
  { kind: 'cone', base: 1.2, height: 0.9 },
  { kind: 'frustum', base: 0.7, top: 1.3, height: 0.8 },
  { kind: 'spherical cap', base: 1.2, height: 0.3 },
  { kind: 'spherical cap', base: 0.8, height: 1 },
  { kind: 'spherical cap', base: 1.2, top: 0.7, height: 0.4 },
  { kind: 'spherical cap', base: 0.6, top: 1.1, height: 0.9 },
  { kind: 'ellipsoid', x: 1.4, y: 0.9, z: 0.5 },
  { kind: 'paraboloid', base: 1.2, height: 0.7 },
  { kind: 'paraboloid', base: 0.5, height: 1.4 },
  { kind: 'curved plate', outside: 1.6, wall: 0.15, angle: 1.9, length: 0.8 },
  { kind: 'curved plate', outside: 1.2, wall: 0.2, angle: Math.PI, length: 0.7 },
  { kind: 'cylinder segment', diameter: 1.2, height: 0.35, length: 0.9 },
  { kind: 'cylinder segment', diameter: 1.2, height: 0.95, length: 0.9 },
  {
    kind: 'turned',
    outline: [
      [0, 0],
      [0.6, 0],
      [0.6, 0.2],
      [0.25, 0.3],
      [0.2, 1.1],
      [0, 1.4],
    ],
  },
  {
    kind: 'turned',
    outline: [
      [0.3, -0.4],
      [0.8, -0.4],
      [0.8, -0.1],
      [0.5, 0.1],
      [0.5, 0.6],
      [0.3, 0.6],
    ],
  },
  { kind: 'tapered tube', base: 1.4, top: 0.8, wall: 0.12, height: 0.9 },
  { kind: 'conical head', base: 1.4, top: 0, wall: 0.12, height: 0.9 },
  { kind: 'pyramid', base: [1.2, 0.8], height: 0.9 },
  { kind: 'pyramid', base: [1.2, 0.8], top: [0.4, 0.9], height: 0.9 },
  { kind: 'pyramid', base: [1.6, 0.8], top: [0.7, 0], height: 0.6 },
  {
    kind: 'prism',
    outline: [
      [0, 0],
      [2, 0],
      [2, 0.4],
      [0.5, 0.4],
      [0.5, 1.5],
      [0, 1.5],
    ],
    holes: [
      [
        [0.1, 0.1],
        [0.4, 0.1],
        [0.25, 0.3],
      ],
      [
        [1, 0.1],
        [1, 0.3],
        [1.8, 0.3],
        [1.8, 0.1],
      ],
    ],
    length: 0.6,
  },
  { kind: 'torus', meanDiameter: 1.2, sectionDiameter: 0.5 },
  { kind: 'elbow', outside: 0.5, bendRadius: 0.6, angle: Math.PI / 2 },
  { kind: 'elbow', outside: 0.5, wall: 0.1, bendRadius: 0.6, angle: 2.2 },
  { kind: 'elbow', outside: 0.5, wall: 0.1, bendRadius: 0.25, angle: Math.PI },
  { kind: 'dished head', form: 'ellipsoidal', outside: 1.6, wall: 0.12, straightFlange: 0.1 },
  { kind: 'dished head', form: 'ellipsoidal', outside: 1.6, wall: 0.2 },
  { kind: 'dished head', form: 'torispherical', outside: 1.6, wall: 0.1, crownRadius: 1.4, knuckleRadius: 0.2 },
  {
    kind: 'dished head',
    form: 'torispherical',
    outside: 1.6,
    wall: 0.1,
    crownRadius: 0.7,
    knuckleRadius: 0.7,
    straightFlange: 0.2,
  },
  { kind: 'hemispherical head', outside: 1.2, wall: 0.15, straightFlange: 0.2 },
  { kind: 'pipe', length: 1.5, outside: 0.6, wall: 0.1 },
  { kind: 'bar', length: 1.5, diameter: 0.4 },
  ...ledAlong(),
  { kind: 'coil', outside: 1.2, bore: 0.5, width: 0.7, fillFactor: 1 },
  { kind: 'heap', base: 1.6, height: 0.5 },
  { kind: 'heap', base: 1.6, angle: 0.6 },
  { kind: 'heap', base: 1.2, length: 2.1, height: 0.5 },
  { kind: 'heap', base: 1.2, length: 1.5, angle: 0.7 },
  { kind: 'hollow core', x: 1.6, y: 1.2, z: 0.4, cores: 3, coreWidth: 0.28, coreHeight: 0.28 },
  { kind: 'hollow core', x: 1.6, y: 1.2, z: 0.4, cores: 4, coreWidth: 0.2, coreHeight: 0.3 },
  { kind: 'hole', diameter: 0.4, depth: 0.7 },
  { kind: 'opening', x: 0.4, y: 0.3, depth: 0.7 },
  ...pipeworkSpecimens,
];

/** Members led along lines: mitred and bent, in a plane and out of it, a ring, one with its centre beside the line. */
function ledAlong(): readonly Shape[] {
  const corner: readonly Vec3[] = [
    [0, 0, 0],
    [1.5, 0, 0],
    [1.5, 1.2, 0.4],
    [0.6, 1.2, 1.4],
  ];
  const frame: readonly Vec3[] = [
    [0, 0, 0],
    [1.4, 0, 0],
    [1.4, 1, 0],
    [0, 1, 0],
    [0, 0, 0],
  ];
  const angle: readonly Vec2[] = [
    [0, 0],
    [0.3, 0],
    [0.3, 0.08],
    [0.08, 0.08],
    [0.08, 0.4],
    [0, 0.4],
  ];
  const length = 1;
  return [
    { kind: 'swept', of: { kind: 'rectangular tube', y: 0.3, z: 0.2, wall: 0.04, length }, corners: corner },
    { kind: 'swept', of: { kind: 'rectangular tube', y: 0.3, z: 0.2, wall: 0.04, length }, corners: frame },
    { kind: 'swept', of: { kind: 'pipe', outside: 0.3, wall: 0.05, length }, corners: corner, bendRadius: 0.3 },
    { kind: 'swept', of: { kind: 'pipe', outside: 0.3, wall: 0.05, length }, corners: corner },
    { kind: 'swept', of: { kind: 'prism', outline: angle, holes: [], length }, corners: corner },
    { kind: 'swept', of: { kind: 'prism', outline: angle, holes: [], length }, corners: corner, bendRadius: 0.5 },
    { kind: 'swept', of: { kind: 'prism', outline: angle, holes: [], length }, corners: frame },
    { kind: 'swept', of: { kind: 'cylinder', diameter: 0.2, length }, corners: corner.slice(0, 2) },
  ];
}

/** The same in words, for the names of tests. */
export const named = (shapes: readonly Shape[]): (readonly [string, Shape])[] =>
  shapes.map((shape) => [JSON.stringify(shape).replace(/"/g, ''), shape] as const);

/** The solid of a shape that can be made; throws if it cannot, so that a test fails. */
export function made(shape: Shape): Solid & { readonly volume: number } {
  const found = solid(shape);
  if ('impossible' in found) throw new Error(`${found.reason}: ${JSON.stringify(shape)}`);
  if (found.volume === undefined) throw new Error(`no volume: ${JSON.stringify(shape)}`);
  return { ...found, volume: found.volume };
}

const size = fc.double({ min: 0.01, max: 5, noNaN: true });
const share = fc.double({ min: 0.01, max: 0.49, noNaN: true });

/** Hollow shapes with any sensible sizes. */
export const hollowShapes: fc.Arbitrary<Shape> = fc.oneof(
  fc
    .record({ a: size, s: share, l: size })
    .map(({ a, s, l }): Shape => ({ kind: 'tube', outside: a, wall: a * s, length: l })),
  fc
    .record({ a: size, s: share, l: size })
    .map(({ a, s, l }): Shape => ({ kind: 'pipe', outside: a, wall: a * s, length: l })),
  fc
    .record({ a: size, b: size, s: share, l: size })
    .map(({ a, b, s, l }): Shape => ({ kind: 'rectangular tube', y: a, z: b, wall: Math.min(a, b) * s, length: l })),
  fc.record({ a: size, s: share }).map(({ a, s }): Shape => ({ kind: 'hollow sphere', outside: a, wall: a * s })),
  fc.record({ a: size, b: size, s: share, h: size }).map(({ a, b, s, h }): Shape => {
    const lean = Math.hypot(1, (a - b) / (2 * h));
    return { kind: 'tapered tube', base: a, top: b, wall: (Math.min(a, b) * s) / lean, height: h };
  }),
  fc.record({ a: size, s: share, h: size }).map(({ a, s, h }): Shape => {
    const lean = Math.hypot(1, a / (2 * h));
    return { kind: 'conical head', base: a, top: 0, wall: (a * s) / lean, height: h };
  }),
  fc
    .record({ a: size, s: share, more: size, angle: fc.double({ min: 0.05, max: Math.PI, noNaN: true }) })
    .map(
      ({ a, s, more, angle }): Shape => ({ kind: 'elbow', outside: a, wall: a * s, bendRadius: a / 2 + more, angle }),
    ),
  fc.record({ a: size, s: share, f: size }).map(
    ({ a, s, f }): Shape => ({
      kind: 'dished head',
      form: 'ellipsoidal',
      outside: a,
      wall: a * s,
      straightFlange: f,
    }),
  ),
  fc.record({ a: size, s: share, k: share, more: size }).map(({ a, s, k, more }): Shape => {
    const inside = a * (1 - 2 * s);
    const [crownRadius, knuckleRadius] = [inside / 2 + more, inside * k];
    return { kind: 'dished head', form: 'torispherical', outside: a, wall: a * s, crownRadius, knuckleRadius };
  }),
  fc
    .record({ a: size, s: share, f: size })
    .map(({ a, s, f }): Shape => ({ kind: 'hemispherical head', outside: a, wall: a * s, straightFlange: f })),
);
