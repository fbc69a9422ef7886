// Members led along a line against boxes, elbows, and meshes of @jscad/modeling whose rings are cut plane by plane.
import jscad from '@jscad/modeling';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  add,
  apply,
  below,
  boxOf,
  contains,
  cross,
  directed,
  dot,
  fits,
  identity,
  interior,
  levels,
  norm,
  type Placement,
  type Shape,
  scale,
  solid,
  still,
  subtract,
  turn,
  type Vec2,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { pointIn, randomFrom } from './random.ts';
import { made } from './specimens.ts';

const { measurements, primitives } = jscad;
type Swept = Extract<Shape, { kind: 'swept' }>;
const led = (of: Swept['of'], corners: readonly Vec3[], bendRadius?: number): Swept => ({
  kind: 'swept',
  of,
  corners,
  ...(bendRadius !== undefined && { bendRadius }),
});
const duct = (y: number, z: number, wall: number) => ({ kind: 'rectangular tube', y, z, wall, length: 1 }) as const;
const pipe = (outside: number, wall: number) => ({ kind: 'pipe', outside, wall, length: 1 }) as const;

const near = (a: Vec3, b: Vec3, digits = 12): void => {
  for (const axis of [0, 1, 2] as const) expect(a[axis]).toBeCloseTo(b[axis], digits);
};

test('a mitred picture frame is its outer block less its opening', () => {
  const [x, y, w, t] = [1.4, 0.9, 0.12, 0.05];
  const corners: readonly Vec3[] = [
    [0, 0, 0],
    [x, 0, 0],
    [x, y, 0],
    [0, y, 0],
    [0, 0, 0],
  ];
  const bar: Swept['of'] = {
    kind: 'prism',
    outline: [
      [-w / 2, -t / 2],
      [w / 2, -t / 2],
      [w / 2, t / 2],
      [-w / 2, t / 2],
    ],
    holes: [],
    length: 1,
  };
  const frame = made(led(bar, corners));
  expect(frame.volume).toBeCloseTo(((x + w) * (y + w) - (x - w) * (y - w)) * t, 14);
  near(frame.centre, [x / 2, y / 2, 0]);
  near(frame.box.min, [-w / 2, -w / 2, -t / 2]);
  near(frame.box.max, [x + w / 2, y + w / 2, t / 2]);
});

test('a bent pipe is its straights and elbows', () => {
  const [outside, wall, radius] = [0.2, 0.02, 0.35];
  const bent = made(
    led(
      pipe(outside, wall),
      [
        [0, 0, 0],
        [2, 0, 0],
        [2, 1.5, 0],
      ],
      radius,
    ),
  );
  const elbow = made({ kind: 'elbow', outside, wall, bendRadius: radius, angle: Math.PI / 2 });
  const [a, b] = [2 - radius, 1.5 - radius].map((length) => made({ ...pipe(outside, wall), length }));
  expect(bent.volume).toBeCloseTo(elbow.volume + a!.volume + b!.volume, 14);
  const moment = add(
    scale(add(elbow.centre, [2, 0, 0]), elbow.volume),
    add(scale([(2 - radius) / 2, 0, 0], a!.volume), scale([2, (1.5 + radius) / 2, 0], b!.volume)),
  );
  near(bent.centre, scale(moment, 1 / bent.volume));
});

/** A prism led along a line as a mesh: each ring is the one before, moved along its straight to the plane through the corner. */
function meshed(
  outline: readonly Vec2[],
  corners: readonly Vec3[],
): { readonly volume: number; readonly centre: Vec3 } {
  const sides = corners.slice(1).map((corner, i) => {
    const side = subtract(corner, corners[i]!);
    return scale(side, 1 / norm(side));
  });
  const R = directed(sides[0]!);
  const start: readonly Vec3[] = outline.map(([x, y]) => apply({ R, t: corners[0]! }, [0, x, y]));
  const rings = [start];
  for (const [i, along] of sides.entries()) {
    const next = sides[i + 1];
    const normal = next ? add(along, next) : along;
    const plane = dot(normal, corners[i + 1]!);
    rings.push(rings[i]!.map((point) => add(point, scale(along, (plane - dot(normal, point)) / dot(normal, along)))));
  }
  const n = outline.length;
  const fan = Array.from({ length: n }, (_, k) => k);
  const faces = [
    [...fan].reverse(),
    ...rings.slice(1).flatMap((_, i) =>
      fan.flatMap((k) => {
        const [a, b] = [i * n + k, i * n + ((k + 1) % n)];
        return [
          [a, b, b + n],
          [a, b + n, a + n],
        ];
      }),
    ),
    fan.map((k) => (rings.length - 1) * n + k),
  ];
  const points = rings.flat().map(([x, y, z]) => [x, y, z] as [number, number, number]);
  const mesh = primitives.polyhedron({ points, faces, orientation: 'outward' });
  const [x, y, z] = measurements.measureCenterOfMass(mesh) as [number, number, number];
  return { volume: measurements.measureVolume(mesh), centre: [x, y, z] };
}

describe('mitred corners: the mesh is the body', () => {
  const outlines: readonly (readonly [string, readonly Vec2[]])[] = [
    [
      'a triangle beside its line',
      [
        [0.02, 0.01],
        [0.3, 0.05],
        [0.1, 0.25],
      ],
    ],
    [
      'a rectangle on its line',
      [
        [-0.1, -0.05],
        [0.1, -0.05],
        [0.1, 0.05],
        [-0.1, 0.05],
      ],
    ],
    [
      'a round of 90 corners',
      Array.from(
        { length: 90 },
        (_, k) => [0.12 * Math.cos((k * Math.PI) / 45), 0.12 * Math.sin((k * Math.PI) / 45)] as const,
      ),
    ],
  ];
  test.each(outlines)('%s', (_, outline) => {
    const corners: readonly Vec3[] = [
      [0.3, -0.2, 0.1],
      [1.8, -0.2, 0.3],
      [1.9, 1.1, 0.5],
      [0.6, 1.4, 1.7],
    ];
    const mesh = meshed(outline, corners);
    const ours = made(led({ kind: 'prism', outline, holes: [], length: 1 }, corners));
    expect(ours.volume / mesh.volume).toBeCloseTo(1, 9);
    near(ours.centre, mesh.centre, 9);
  });
});

describe('whatever the line', () => {
  const place = fc.double({ min: -2, max: 2, noNaN: true });
  const corner = fc.tuple(place, place, place);
  const profiles: readonly Swept['of'][] = [
    pipe(0.06, 0.01),
    duct(0.05, 0.03, 0.004),
    {
      kind: 'prism',
      outline: [
        [0, 0],
        [0.06, 0],
        [0, 0.05],
      ],
      holes: [],
      length: 1,
    },
  ];
  const line = fc.array(corner, { minLength: 3, maxLength: 6 });
  const makable = (shape: Swept) => !('impossible' in solid(shape));

  test('a corner set into the middle of a straight changes nothing', () =>
    fc.assert(
      fc.property(line, fc.constantFrom(...profiles), fc.boolean(), (corners, of, bent) => {
        const one = led(of, corners, bent ? 0.1 : undefined);
        fc.pre(makable(one));
        const middle = scale(add(corners[0]!, corners[1]!), 0.5);
        const two = led(of, [corners[0]!, middle, ...corners.slice(1)], bent ? 0.1 : undefined);
        fc.pre(makable(two));
        const [a, b] = [made(one), made(two)];
        expect(a.volume / b.volume).toBeCloseTo(1, 9);
        near(a.centre, b.centre, 9);
      }),
      { numRuns: 60, seed: 1 },
    ));

  test('twice as large weighs eight times as much, its centre twice as far', () =>
    fc.assert(
      fc.property(line, (corners) => {
        const one = led(pipe(0.06, 0.01), corners, 0.1);
        fc.pre(makable(one));
        const two = led(
          pipe(0.12, 0.02),
          corners.map((at) => scale(at, 2)),
          0.2,
        );
        const [a, b] = [made(one), made(two)];
        expect(b.volume / a.volume).toBeCloseTo(8, 9);
        near(b.centre, scale(a.centre, 2), 9);
      }),
      { numRuns: 60, seed: 2 },
    ));

  test('the centre lies in the box', () =>
    fc.assert(
      fc.property(line, fc.constantFrom(...profiles), (corners, of) => {
        const shape = led(of, corners);
        fc.pre(makable(shape));
        const { centre, box } = made(shape);
        for (const axis of [0, 1, 2] as const) {
          expect(centre[axis]).toBeGreaterThan(box.min[axis]);
          expect(centre[axis]).toBeLessThan(box.max[axis]);
        }
        expect(box).toEqual(boxOf(shape, identity));
      }),
      { numRuns: 60, seed: 3 },
    ));
});

describe('the space inside', () => {
  const flat = (bend: number | undefined, of: Swept['of']) =>
    interior(
      led(
        of,
        [
          [0, 0, 0],
          [2, 0, 0],
          [2, 1.5, 0],
          [2, 1.5, 1.2],
        ],
        bend,
      ),
    );

  test('a bent pipe holds, below any level, what its straights and elbows hold', () => {
    const [outside, wall, radius] = [0.2, 0.02, 0.35];
    const bent = flat(radius, pipe(outside, wall))!;
    const piece = (shape: Shape, place: Placement) => ({ one: interior(shape)!, place });
    const quarter: Shape = { kind: 'elbow', outside, wall, bendRadius: radius, angle: Math.PI / 2 };
    const along = (from: Vec3, to: Vec3) =>
      piece(
        { ...pipe(outside, wall), length: norm(subtract(to, from)) },
        { R: directed(scale(subtract(to, from), 1 / norm(subtract(to, from)))), t: scale(add(from, to), 0.5) },
      );
    const pieces = [
      along([0, 0, 0], [2 - radius, 0, 0]),
      piece(quarter, { R: identity, t: [2, 0, 0] }),
      along([2, radius, 0], [2, 1.5 - radius, 0]),
      // comes in along y, turns up
      piece(quarter, { R: [0, 0, 1, 1, 0, 0, 0, 1, 0], t: [2, 1.5, 0] }),
      along([2, 1.5, radius], [2, 1.5, 1.2]),
    ];
    for (const level of [-0.05, 0, 0.04, 0.1, 0.3, 0.9, 2]) {
      const ours = below(bent, still, level);
      const theirs = pieces.map(({ one, place }) => below(one, place, level));
      const volume = theirs.reduce((sum, part) => sum + part.volume, 0);
      expect(ours.volume).toBeCloseTo(volume, 12);
      const moment = theirs.reduce<Vec3>(
        (sum, part) => (part.centre ? add(sum, scale(part.centre, part.volume)) : sum),
        [0, 0, 0],
      );
      near(ours.centre!, scale(moment, 1 / volume), 9);
    }
    expect(levels(bent, still).lowest).toBeCloseTo(-0.08, 12);
    expect(levels(bent, still).highest).toBeCloseTo(1.2, 12);
  });

  test('a mitred duct holds its clear section times its line; half of it lies below its middle', () => {
    const of = duct(0.3, 0.2, 0.01);
    const level = interior(
      led(of, [
        [0, 0, 0],
        [2, 0, 0],
        [2.5, 1.5, 0],
      ]),
    )!;
    const line = 2 + Math.hypot(0.5, 1.5);
    expect(level.volume).toBeCloseTo(0.28 * 0.18 * line, 12);
    expect(below(level, still, 0).volume).toBeCloseTo((0.28 * 0.18 * line) / 2, 12);
  });

  test('a mitred pipe holds its bore times its line, and below any level its share of random points', () => {
    const [outside, wall] = [0.3, 0.02];
    const corners: readonly Vec3[] = [
      [0, 0, 0],
      [1.5, 0, 0.1],
      [1.5, 1.2, 0.4],
      [0.6, 1.2, 1.4],
    ];
    const round = interior(led(pipe(outside, wall), corners))!;
    const line = corners.slice(1).reduce((sum, at, i) => sum + norm(subtract(at, corners[i]!)), 0);
    const bore = outside / 2 - wall;
    expect(round.volume / (Math.PI * bore ** 2 * line)).toBeCloseTo(1, 11);
    const random = randomFrom(8);
    const solidBore = led({ kind: 'cylinder', diameter: 2 * bore, length: 1 }, corners);
    const { box } = made(solidBore);
    for (const level of [0, 0.15, 0.5, 1.1]) {
      let [all, under, sum] = [0, 0, [0, 0, 0] as Vec3];
      for (let i = 0; i < 60_000; i++) {
        const point = pointIn(box, random);
        if (!contains(solidBore, point, 0)) continue;
        all++;
        if (point[2] > level) continue;
        under++;
        sum = add(sum, point);
      }
      const found = below(round, still, level);
      expect(Math.abs(found.volume / round.volume - under / all)).toBeLessThan(4 * Math.sqrt(0.25 / all));
      expect(norm(subtract(found.centre!, scale(sum, 1 / under)))).toBeLessThan(0.05);
    }
  });

  test('a straight cut aslant at both ends is the wedge of Archimedes where the level meets its foot', () => {
    // one square end, one mitre of 45 deg: standing on the square end, what lies above the mitre's lowest point
    const upright = interior(
      led(pipe(0.3, 0.02), [
        [0, 0, 0],
        [0, 0, 1],
        [1, 0, 1],
      ]),
    )!;
    const r = 0.13;
    expect(below(upright, still, 1 - r).volume).toBeCloseTo(Math.PI * r * r * (1 - r), 12);
    // up to the middle of the corner: the leg less a hoof of 2 r3 / 3, and the lower half of the level run less another
    expect(below(upright, still, 1).volume).toBeCloseTo(1.5 * Math.PI * r * r - (4 / 3) * r ** 3, 12);
    expect(below(upright, still, 2).volume).toBeCloseTo(Math.PI * r * r * 2, 11);
  });

  test('a rectangular one with bends holds nothing that can be levelled', () => {
    expect(flat(0.4, duct(0.2, 0.2, 0.01))).toBeNull();
    expect(flat(undefined, duct(0.2, 0.2, 0.01))).not.toBeNull();
  });
});

describe('lines that cannot be followed', () => {
  const bar: Swept['of'] = { kind: 'cylinder', diameter: 0.2, length: 1 };
  const corner: readonly Vec3[] = [
    [0, 0, 0],
    [1, 0, 0],
    [1, 0.05, 0],
    [2, 0.05, 0],
  ];
  test.each([
    ['line-too-short', led(bar, [[0, 0, 0]]), [1], ['along']],
    [
      'line-stands-still',
      led(bar, [
        [0, 0, 0],
        [1, 0, 0],
        [1, 0, 0],
      ]),
      [1],
      ['along'],
    ],
    [
      'line-doubles-back',
      led(bar, [
        [0, 0, 0],
        [1, 0, 0],
        [0.5, 0, 0],
      ]),
      [1],
      ['along'],
    ],
    ['bend-too-tight', led(bar, corner.slice(0, 3), 0.09), [0.09, 0.1], ['bendRadius', 'along']],
    [
      'line-twists',
      led(duct(0.1, 0.05, 0.01), [
        [0, 0, 0],
        [1, 0, 0],
        [1, 1, 0],
        [1, 1, 1],
        [0, 0, 0],
      ]),
      [],
      ['along'],
    ],
  ] as const)('%s', (reason, shape, figures, clauses) =>
    expect(solid(shape)).toEqual({ impossible: true, reason, figures, clauses }),
  );

  test('a straight shorter than its two corners take: mitres that cross, bends that overlap', () => {
    const back: readonly Vec3[] = [corner[0]!, corner[1]!, corner[2]!, [0, 0.05, 0]];
    const crossed = solid(led(bar, back));
    expect(crossed).toMatchObject({ reason: 'corner-too-tight', clauses: ['along', 'bendRadius'] });
    expect('figures' in crossed && crossed.figures[1]).toBeCloseTo(0.2, 12);
    // of an offset the mitres lie level with each other and never cross
    expect(solid(led(bar, corner))).not.toHaveProperty('impossible');
    expect(solid(led(bar, corner, 0.15))).toMatchObject({ reason: 'corner-too-tight' });
  });

  test('a round section may go round a ring that a square one may not', () => {
    const ring: readonly Vec3[] = [
      [0, 0, 0],
      [1, 0, 0],
      [1, 1, 0],
      [1, 1, 1],
      [0, 0, 0],
    ];
    expect(solid(led(bar, ring))).not.toHaveProperty('impossible');
  });
});

test('a mirrored line gives a mirrored centre', () => {
  const corners: readonly Vec3[] = [
    [0, 0, 0],
    [1, 0.2, 0],
    [1.4, 1, 0],
  ];
  const flipped = corners.map(([x, y, z]): Vec3 => [x, -y, z]);
  const of = duct(0.1, 0.06, 0.01);
  const [a, b] = [made(led(of, corners)), made(led(of, flipped))];
  near(b.centre, [a.centre[0], -a.centre[1], a.centre[2]]);
  expect(Math.abs(cross([1, 0, 0], a.centre)[2])).toBeGreaterThan(0.1);
});

describe('what is cut out', () => {
  const strip: Swept['of'] = {
    kind: 'prism',
    outline: [
      [-0.1, 0],
      [0.1, 0],
      [0.1, 0.01],
      [-0.1, 0.01],
    ],
    holes: [],
    length: 1,
  };
  const plate = led(strip, [
    [0, 0, 0],
    [0.5, 0, 0],
    [0.5, 0, 0.4],
  ]);
  const hole: Shape = { kind: 'hole', diameter: 0.05, depth: 0.01 };

  test('a hole right through a straight of a bent plate, wherever it points', () => {
    expect(fits({ shape: hole, place: { R: identity, t: [0.2, 0, 0.005] } }, plate)).toBe(true);
    expect(fits({ shape: hole, place: { R: turn(Math.PI / 2, 'y'), t: [0.495, 0, 0.2] } }, plate)).toBe(true);
  });

  test('not one that runs into the corner, out of the plate, or through the air between', () => {
    for (const t of [
      [0.49, 0, 0.005],
      [0.2, 0.09, 0.005],
      [0.2, 0, 0.2],
    ] as const)
      expect(fits({ shape: hole, place: { R: identity, t } }, plate)).toBe('outside');
  });

  test('at either end of a straight only behind the whole of its mitre', () => {
    const upright = (z: number) => fits({ shape: hole, place: { R: turn(Math.PI / 2, 'y'), t: [0.495, 0, z] } }, plate);
    expect([upright(0.03), upright(0.036)]).toEqual(['outside', true]);
    const level = (x: number) => fits({ shape: hole, place: { R: identity, t: [x, 0, 0.005] } }, plate);
    expect([level(0.47), level(0.464)]).toEqual(['outside', true]);
  });

  test('nothing from a section of the tables', () =>
    expect(
      fits(
        { shape: hole, place: { R: identity, t: [0.2, 0, 0] } },
        led({ kind: 'section', length: 1, depth: 0.2, width: 0.1, massPerLength: 20 }, plate.corners),
      ),
    ).toBe('outside'));
});
