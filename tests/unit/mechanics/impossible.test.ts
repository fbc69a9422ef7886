// Sizes that make no body: why, the figures at odds and the sizes they belong to.
import { describe, expect, test } from 'vitest';
import { type Shape, solid } from '../../../server/mechanics/index.ts';

describe('sizes that make no body', () => {
  const steel = { outside: 1, wall: 0.1 };
  const impossible: readonly (readonly [Shape, string, readonly number[], readonly string[]])[] = [
    [{ kind: 'box', x: 1, y: 0, z: 1 }, 'not-above-zero', [0], ['y']],
    [{ kind: 'cylinder', diameter: -1, length: 1 }, 'not-above-zero', [-1], ['diameter']],
    [
      { kind: 'sphere', diameter: Number.POSITIVE_INFINITY },
      'not-above-zero',
      [Number.POSITIVE_INFINITY],
      ['diameter'],
    ],
    [{ kind: 'cone', base: Number.NaN, height: 1 }, 'not-above-zero', [Number.NaN], ['base']],
    [{ kind: 'pyramid', base: [1, 1], top: [0.5, -0.1], height: 1 }, 'below-zero', [-0.1], ['top']],
    [{ kind: 'pyramid', base: [1, 1], top: [0, 0], height: 1 }, 'not-above-zero', [0], ['top']],
    [{ kind: 'ellipsoid', x: 1, y: 0, z: 1 }, 'not-above-zero', [0], ['y']],
    [{ kind: 'paraboloid', base: 1, height: Number.NaN }, 'not-above-zero', [Number.NaN], ['height']],
    [{ kind: 'spherical cap', base: 1, top: 0, height: 1 }, 'not-above-zero', [0], ['top']],
    [{ kind: 'curved plate', outside: 1, wall: 0.5, angle: 1, length: 1 }, 'walls-meet', [0.5, 1], ['wall', 'outside']],
    [
      { kind: 'curved plate', outside: 1, wall: 0.1, angle: 3.2, length: 1 },
      'angle-too-large',
      [3.2, Math.PI],
      ['angle'],
    ],
    [
      { kind: 'cylinder segment', diameter: 1, height: 1.1, length: 1 },
      'segment-too-high',
      [1.1, 1],
      ['height', 'diameter'],
    ],
    [
      {
        kind: 'turned',
        outline: [
          [0, 0],
          [1, 0],
          [1, 1],
          [-0.1, 1],
        ],
      },
      'across-axis',
      [-0.1],
      ['outline'],
    ],
    [
      {
        kind: 'turned',
        outline: [
          [0, 0],
          [1, 0],
        ],
      },
      'too-few-corners',
      [2, 3],
      ['outline'],
    ],
    [
      {
        kind: 'turned',
        outline: [
          [0, 0],
          [1, 1],
          [1, 0],
          [0, 1],
        ],
      },
      'crosses-itself',
      [-1],
      ['outline'],
    ],
    [{ kind: 'frustum', base: 1, top: 0, height: 1 }, 'not-above-zero', [0], ['top']],
    [{ kind: 'tube', outside: 0.75, wall: 0.4, length: 1 }, 'walls-meet', [0.4, 0.75], ['wall', 'outside']],
    [{ kind: 'tube', outside: 0.8, wall: 0.4, length: 1 }, 'walls-meet', [0.4, 0.8], ['wall', 'outside']],
    [{ kind: 'tube', outside: 0.8, bore: 0.8, length: 1 }, 'bore-not-inside', [0.8, 0.8], ['bore', 'outside']],
    [{ kind: 'rectangular tube', y: 0.1, z: 0.3, wall: 0.06, length: 1 }, 'walls-meet', [0.06, 0.1], ['wall', 'y']],
    [{ kind: 'hollow sphere', outside: 1, wall: 0.5 }, 'walls-meet', [0.5, 1], ['wall', 'outside']],
    [{ kind: 'pipe', length: 1, outside: 0.1, wall: 0.06 }, 'walls-meet', [0.06, 0.1], ['wall', 'outside']],
    [{ kind: 'elbow', outside: 1, bendRadius: 0.4, angle: 1 }, 'bend-too-tight', [0.4, 0.5], ['bendRadius', 'outside']],
    [{ kind: 'elbow', outside: 1, bendRadius: 2, angle: 3.2 }, 'angle-too-large', [3.2, Math.PI], ['angle']],
    [{ kind: 'elbow', outside: 1, bendRadius: 2, angle: 0 }, 'not-above-zero', [0], ['angle']],
    [{ kind: 'elbow', outside: 1, wall: 0.5, bendRadius: 2, angle: 1 }, 'walls-meet', [0.5, 1], ['wall', 'outside']],
    [
      { kind: 'torus', meanDiameter: 1, sectionDiameter: 1.1 },
      'ring-closed',
      [1.1, 1],
      ['sectionDiameter', 'meanDiameter'],
    ],
    [
      { kind: 'dished head', form: 'ellipsoidal', ...steel, straightFlange: -1 },
      'below-zero',
      [-1],
      ['straightFlange'],
    ],
    [{ kind: 'dished head', form: 'ellipsoidal', outside: 1, wall: 0.6 }, 'walls-meet', [0.6, 1], ['wall', 'outside']],
    [
      { kind: 'dished head', form: 'torispherical', ...steel, crownRadius: 1, knuckleRadius: 0.5 },
      'knuckle-too-large',
      [0.5, 0.4],
      ['knuckleRadius', 'outside', 'wall'],
    ],
    [
      { kind: 'dished head', form: 'torispherical', ...steel, crownRadius: 0.3, knuckleRadius: 0.1 },
      'crown-too-small',
      [0.3, 0.4],
      ['crownRadius', 'outside', 'wall'],
    ],
    [
      {
        kind: 'prism',
        outline: [
          [0, 0],
          [1, 0],
        ],
        holes: [],
        length: 1,
      },
      'too-few-corners',
      [2, 3],
      ['outline'],
    ],
    [
      {
        kind: 'prism',
        outline: [
          [0, 0],
          [1, 1],
          [1, 0],
          [0, 1],
        ],
        holes: [],
        length: 1,
      },
      'crosses-itself',
      [-1],
      ['outline'],
    ],
    [
      {
        kind: 'prism',
        outline: [
          [0, 0],
          [1, 0],
          [2, 0],
        ],
        holes: [],
        length: 1,
      },
      'crosses-itself',
      [-1],
      ['outline'],
    ],
    [{ kind: 'section', length: 1, depth: 1, width: 1, massPerLength: 0 }, 'not-above-zero', [0], ['massPerLength']],
    [{ kind: 'opening', x: 1, y: 1, depth: 0 }, 'not-above-zero', [0], ['depth']],
  ];
  test.each(impossible)('%o', (shape, reason, figures, clauses) => {
    expect(solid(shape)).toEqual({ impossible: true, reason, figures, clauses });
  });

  const square = (x: number, y: number, side: number) =>
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ] as const;
  test.each([
    ['hole-outside-outline', [square(0.9, 0.9, 0.2)], [0]],
    ['hole-outside-outline', [square(0.1, 0.1, 0.2), square(2, 2, 0.1)], [1]],
    ['holes-overlap', [square(0.1, 0.1, 0.4), square(0.3, 0.3, 0.4)], [0, 1]],
    ['holes-overlap', [square(0.1, 0.1, 0.4), square(0.1, 0.1, 0.4)], [0, 1]],
    ['holes-overlap', [square(0.1, 0.1, 0.6), square(0.3, 0.3, 0.1)], [0, 1]],
  ] as const)('%s', (reason, holes, figures) => {
    const shape: Shape = { kind: 'prism', outline: square(0, 0, 1), holes, length: 1 };
    expect(solid(shape)).toMatchObject({ impossible: true, reason, figures });
  });

  test('walls of a tapering tube are measured as they lie across it', () => {
    const steep = { kind: 'tapered tube', base: 1, top: 0.2, height: 0.2 } as const;
    expect(solid({ ...steep, wall: 0.04 })).not.toHaveProperty('impossible');
    expect(solid({ ...steep, wall: 0.06 })).toMatchObject({ reason: 'walls-meet', clauses: ['wall', 'top'] });
  });
});
