// Liquids in hollow parts: what lies below a level, against closed forms, against pieces and against random points.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  add,
  apply,
  below,
  closed,
  compose,
  contains,
  containsMaterial,
  dot,
  fill,
  type Interior,
  identity,
  interior,
  inverse,
  levelFor,
  levels,
  multiply,
  norm,
  type Placement,
  type Shape,
  type Space,
  scale,
  still,
  subtract,
  turn,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { placementFrom, randomFrom } from './random.ts';
import { hollowShapes, made, named, specimens } from './specimens.ts';

const hollow = specimens.filter((shape) => interior(shape) !== null);
const inside = (shape: Shape): Interior => interior(shape)!;
const turned = (angle: number, axis: 'x' | 'y' | 'z'): Placement => ({ R: turn(angle, axis), t: [0, 0, 0] });

/** Worst difference of two points, m. */
const off = (a: Vec3 | undefined, b: Vec3): number => norm(subtract(a!, b));

describe('closed forms', () => {
  // A lying cylinder, 2 m across, 5 m long, filled 0.6 m deep: circular segment area r2 acos((r-h)/r) - (r-h) sqrt(2rh-h2), its
  // centre c3/(12A) off the axis (Machinery's Handbook, from memory): 3.9634 m3, 0.6475 m below the axis.
  test('a circular segment in a lying tube and pipe', () => {
    const tube: Shape = { kind: 'tube', outside: 2.02, bore: 2, length: 5 };
    const pipe: Shape = { kind: 'pipe', outside: 2.02, wall: 0.01, length: 5 };
    for (const found of [below(inside(tube), turned(Math.PI / 2, 'y'), -0.4), below(inside(pipe), still, -0.4)]) {
      expect(found.volume).toBeCloseTo(3.9633671256547065, 11);
      expect(off(found.centre, [0, 0, -0.6474904564263281])).toBeLessThan(1e-11);
    }
  });

  test('a standing tube', () => {
    const found = below(inside({ kind: 'tube', outside: 1.2, wall: 0.1, length: 2 }), still, 0.25);
    expect(found.volume).toBeCloseTo(Math.PI * 0.25 * 1.25, 13);
    expect(off(found.centre, [0, 0, -0.375])).toBeLessThan(1e-13);
  });

  // Obliquely cut cylinder: pi r2 (h1 + h2) / 2; centre r2 k / (4 hm) towards the tall side, hm / 2 + r2 k2 / (8 hm) up, with
  // k the slope (Machinery's Handbook, from memory).
  test('a leaning tube whose surface meets no end', () => {
    const [radius, lean] = [0.5, 0.3];
    const place = turned(lean, 'x');
    const found = below(inside({ kind: 'tube', outside: 1.2, wall: 0.1, length: 4 }), place, 0);
    const [mean, slope] = [2, Math.tan(lean)];
    expect(found.volume).toBeCloseTo(Math.PI * radius ** 2 * mean, 12);
    const side = (radius ** 2 * slope) / (4 * mean);
    const up = mean / 2 + (radius ** 2 * slope ** 2) / (8 * mean) - 2;
    const own = apply(inverse(place), found.centre!);
    expect(Math.abs(own[0])).toBeLessThan(1e-13);
    expect(Math.abs(own[1])).toBeCloseTo(side, 12);
    expect(own[2]).toBeCloseTo(up, 12);
  });

  // Archimedes' hoof: a plane through a diameter of the end cuts off 2/3 r2 h.
  test('a puddle in the low corner of a leaning tube', () => {
    const tube = inside({ kind: 'tube', outside: 1.2, wall: 0.1, length: 4 });
    const lean = 1.2;
    const height = 0.5 * Math.tan(lean);
    const level = -2 * Math.cos(lean);
    expect(below(tube, turned(lean, 'x'), level).volume / ((2 / 3) * 0.25 * height)).toBeCloseTo(1, 12);
  });

  test('caps of a hollow sphere, however it is turned', () => {
    const sphere = inside({ kind: 'hollow sphere', outside: 2.2, wall: 0.1 });
    const place = placementFrom(randomFrom(8));
    for (const height of [1e-4, 0.3, 1, 1.7]) {
      const found = below(sphere, place, place.t[2] - 1 + height);
      expect(found.volume / ((Math.PI * height ** 2 * (3 - height)) / 3)).toBeCloseTo(1, 10);
      const centre = (height * (4 - height)) / (4 * (3 - height));
      expect(off(found.centre, add(place.t, [0, 0, height - 1 - centre]))).toBeLessThan(1e-10);
    }
  });

  // A sphere stretched along its axis carries caps to caps: pi h2 (3R - h) / 3 times the stretch, for any plane.
  test('two ellipsoidal heads face to face, cut by any plane', () => {
    const head = inside({ kind: 'dished head', form: 'ellipsoidal', outside: 2.2, wall: 0.1 });
    const random = randomFrom(9);
    const toTangent: Vec3 = [0, 0, 0.3];
    for (let round = 0; round < 60; round++) {
      const whole = placementFrom(random);
      const up = compose(whole, { R: identity, t: toTangent });
      const down = compose(whole, { R: turn(Math.PI, 'x'), t: scale(toTangent, -1) });
      const axis = apply({ R: whole.R, t: [0, 0, 0] }, [0, 0, 1]);
      const half = Math.hypot(Math.hypot(axis[0], axis[1]), 0.5 * axis[2]);
      const share = random() ** 3;
      const found = fill(
        [
          { interior: head, place: up },
          { interior: head, place: down },
        ],
        whole.t[2] + half * (2 * share - 1),
      );
      const height = 2 * share;
      expect(found.volume / ((0.5 * Math.PI * height ** 2 * (3 - height)) / 3)).toBeCloseTo(1, 9);
    }
  });

  test('hemispherical heads are half spheres', () => {
    const head = inside({ kind: 'hemispherical head', outside: 2.2, wall: 0.1, straightFlange: 0.5 });
    const found = below(head, turned(Math.PI, 'x'), -0.7 + 0.4);
    expect(found.volume).toBeCloseTo((Math.PI * 0.4 ** 2 * (3 - 0.4)) / 3, 12);
  });

  test('a rectangular tube on edge and a bend cut along its middle plane', () => {
    const tube = inside({ kind: 'rectangular tube', y: 1.2, z: 1.2, wall: 0.1, length: 3 });
    const depth = 0.3;
    const found = below(tube, turned(Math.PI / 4, 'x'), depth - Math.SQRT1_2);
    expect(found.volume).toBeCloseTo(depth ** 2 * 3, 13);
    expect(found.centre![2]).toBeCloseTo((2 / 3) * depth - Math.SQRT1_2, 13);
    const bend = inside({ kind: 'elbow', outside: 0.6, wall: 0.1, bendRadius: 0.7, angle: 1.9 });
    const half = below(bend, still, 0);
    expect(half.volume / bend.volume).toBeCloseTo(0.5, 13);
    expect(half.centre![2]).toBeCloseTo((-4 * 0.2) / (3 * Math.PI), 13);
  });

  // A cone upside down filled to the share s of its height holds s3 of it.
  test('a pointed end down', () => {
    const cone = inside({ kind: 'conical head', base: 1, top: 0, wall: 0.05, height: 1 });
    const { lowest } = levels(cone, turned(Math.PI, 'x'));
    const height = made({ kind: 'conical head', base: 1, top: 0, wall: 0.05, height: 1 }).box.max[2] - lowest;
    expect(below(cone, turned(Math.PI, 'x'), lowest + 0.2 * height).volume / cone.volume).toBeCloseTo(0.008, 12);
  });
});

// The other order of integration: rings about the bend centre, each above or below the plane over known angles.
test('a bend by rings instead of discs', () => {
  const [bend, radius, angle] = [0.7, 0.4, 1.9];
  const space = inside({ kind: 'elbow', outside: 1, wall: 0.1, bendRadius: bend, angle });
  const about: Vec3 = [-bend * Math.tan(angle / 2), bend, 0];
  const random = randomFrom(14);
  for (let round = 0; round < 8; round++) {
    const place = placementFrom(random);
    const { lowest, highest } = levels(space, place);
    const height = lowest + (highest - lowest) * (0.2 + 0.6 * random());
    const up: Vec3 = [place.R[6], place.R[7], place.R[8]];
    const level = height - place.t[2] - dot(up, about);
    const [across, heading] = [Math.hypot(up[0], up[1]), Math.atan2(up[0], -up[1])];
    let [volume, moment] = [0, [0, 0, 0] as Vec3];
    const n = 300;
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < n; k++) {
        const [r, at] = [(radius * (i + 0.5)) / n, (2 * Math.PI * (k + 0.5)) / n];
        const [from, z] = [bend + r * Math.cos(at), r * Math.sin(at)];
        const share = (level - up[2] * z) / (across * from);
        const lean = Math.acos(Math.max(-1, Math.min(1, share)));
        // Wet where the angle from the heading is more than `lean`.
        const wet = [-2, 0, 2]
          .map((turns) => heading + turns * Math.PI)
          .map((to) => [Math.max(0, to + lean), Math.min(angle, to + 2 * Math.PI - lean)] as const)
          .filter(([a, b]) => b > a);
        const area = (radius / n) * r * ((2 * Math.PI) / n);
        for (const [a, b] of wet) {
          volume += area * from * (b - a);
          const part: Vec3 = [
            from * from * (Math.cos(a) - Math.cos(b)),
            from * from * (Math.sin(a) - Math.sin(b)),
            from * z * (b - a),
          ];
          moment = add(moment, scale(part, area));
        }
      }
    }
    const found = below(space, place, height);
    expect(found.volume / volume).toBeCloseTo(1, 4);
    expect(off(found.centre, apply(place, add(about, scale(moment, 1 / volume))))).toBeLessThan(2e-5);
  }
});

describe('pieces add up to the whole at any level and attitude', () => {
  test.each([
    ['tubes', (a: number): Shape => ({ kind: 'tube', outside: 1, wall: 0.1, length: a }), lengthwise],
    ['tapered tubes', taper, lengthwise],
    ['elbows', (a: number): Shape => ({ kind: 'elbow', outside: 1, wall: 0.1, bendRadius: 0.55, angle: a }), bendwise],
  ])('%s', (_, shape, put) => {
    const random = randomFrom(11);
    for (let round = 0; round < 150; round++) {
      const place = placementFrom(random);
      const [a, b] = [0.2 + random(), 0.2 + random()];
      const whole = inside(shape(a + b, 0, a + b));
      const pieces: readonly Space[] = [
        { interior: inside(shape(a, 0, a + b)), place: compose(place, put(a, b)[0]) },
        { interior: inside(shape(b, a, a + b)), place: compose(place, put(a, b)[1]) },
      ];
      const { lowest, highest } = levels(whole, place);
      const height = lowest + (highest - lowest) * random() ** 2;
      const one = below(whole, place, height);
      const sum = fill(pieces, height);
      expect(Math.abs(sum.volume / one.volume - 1)).toBeLessThan(1e-9);
      expect(off(sum.centre, one.centre!)).toBeLessThan(1e-9);
    }
  });

  function lengthwise(a: number, b: number): readonly [Placement, Placement] {
    return [
      { R: identity, t: [0, 0, -b / 2] },
      { R: identity, t: [0, 0, a / 2] },
    ];
  }

  /** A stretch of one taper from 1 m outside at the bottom to 0.4 m at the top, wall alike all over. */
  function taper(length: number, from: number, whole: number): Shape {
    const at = (z: number): number => 1 - (0.6 * z) / whole;
    return { kind: 'tapered tube', base: at(from), top: at(from + length), wall: 0.1, height: length };
  }

  /** Both bends about the whole one's bend centre. */
  function bendwise(a: number, b: number): readonly [Placement, Placement] {
    const centre = (angle: number): Vec3 => [-0.55 * Math.tan(angle / 2), 0.55, 0];
    const about = centre(a + b);
    const second = turn(a, 'z');
    return [
      { R: identity, t: subtract(about, centre(a)) },
      { R: second, t: subtract(about, apply({ R: second, t: [0, 0, 0] }, centre(b))) },
    ];
  }
});

describe.each(named(hollow))('%s', (_, shape) => {
  test('random points below a level', () => {
    const random = randomFrom(12);
    const space = inside(shape);
    const place = placementFrom(random);
    const { lowest, highest } = levels(space, place);
    const height = lowest + 0.4 * (highest - lowest);
    const { box } = made(shape);
    const size = subtract(box.max, box.min);
    let [all, under, sum] = [0, 0, [0, 0, 0] as Vec3];
    for (let i = 0; i < 30_000; i++) {
      const own: Vec3 = [
        box.min[0] + size[0] * random(),
        box.min[1] + size[1] * random(),
        box.min[2] + size[2] * random(),
      ];
      if (!contains(shape, own, 0) || containsMaterial(shape, own, 0)) continue;
      const at = apply(place, own);
      all++;
      if (at[2] > height) continue;
      under++;
      sum = add(sum, at);
    }
    const found = below(space, place, height);
    const share = found.volume / space.volume;
    expect(all).toBeGreaterThan(500);
    expect(Math.abs(under / all - share)).toBeLessThan(4 * Math.sqrt(0.25 / all));
    expect(off(found.centre, scale(sum, 1 / under))).toBeLessThan((4 * norm(size)) / Math.sqrt(4 * under));
  });

  test('up to its highest point it is the whole; below its lowest there is nothing', () => {
    const space = inside(shape);
    const place = placementFrom(randomFrom(13));
    const { lowest, highest } = levels(space, place);
    expect(below(space, place, highest).volume / space.volume).toBeCloseTo(1, 12);
    expect(below(space, place, highest + 1).volume / space.volume).toBeCloseTo(1, 12);
    expect(below(space, place, lowest - 1e-12)).toEqual({ volume: 0, centre: undefined });
    expect(below(space, place, lowest + 1e-3).volume).toBeGreaterThan(0);
  });
});

describe('whatever the sizes and the attitude', () => {
  const attitude = fc.integer({ min: 0, max: 1e9 }).map((seed) => placementFrom(randomFrom(seed)));
  const share = fc.double({ min: 0, max: 1, noNaN: true });

  test('a higher level holds no less, its centre no lower, and never more than the whole', () => {
    fc.assert(
      fc.property(hollowShapes, attitude, share, share, (shape, place, a, b) => {
        const space = inside(shape);
        const { lowest, highest } = levels(space, place);
        const at = (part: number) => below(space, place, lowest + part * (highest - lowest));
        const [less, more] = [at(Math.min(a, b)), at(Math.max(a, b))];
        expect(less.volume).toBeLessThanOrEqual(more.volume * (1 + 1e-12));
        expect(more.volume).toBeLessThanOrEqual(space.volume * (1 + 1e-11));
        if (less.centre) expect(less.centre[2]).toBeLessThanOrEqual(more.centre![2] + 1e-9 * (highest - lowest));
      }),
      { numRuns: 400, seed: 3 },
    );
  });

  test('turning about the vertical changes no volume and turns the centre along', () => {
    fc.assert(
      fc.property(
        hollowShapes,
        attitude,
        share,
        fc.double({ min: -4, max: 4, noNaN: true }),
        (shape, place, part, angle) => {
          const space = inside(shape);
          const spin = turn(angle, 'z');
          const spun: Placement = { R: multiply(spin, place.R), t: apply({ R: spin, t: [0, 0, 0] }, place.t) };
          const { lowest, highest } = levels(space, place);
          const height = lowest + (0.05 + 0.9 * part) * (highest - lowest);
          const [one, other] = [below(space, place, height), below(space, spun, height)];
          expect(Math.abs(other.volume / one.volume - 1)).toBeLessThan(1e-9);
          expect(off(other.centre, apply({ R: spin, t: [0, 0, 0] }, one.centre!))).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 200, seed: 4 },
    );
  });

  test('what is below and what is above (the same upside down) make the whole', () => {
    fc.assert(
      fc.property(hollowShapes, attitude, share, (shape, place, part) => {
        const space = inside(shape);
        const over = turn(Math.PI, 'x');
        const flipped: Placement = { R: multiply(over, place.R), t: apply({ R: over, t: [0, 0, 0] }, place.t) };
        const { lowest, highest } = levels(space, place);
        const height = lowest + part * (highest - lowest);
        const sum = below(space, place, height).volume + below(space, flipped, -height).volume;
        expect(Math.abs(sum / space.volume - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 300, seed: 5 },
    );
  });

  test('the level for a volume holds that volume', () => {
    fc.assert(
      fc.property(hollowShapes, hollowShapes, attitude, attitude, share, (a, b, here, there, part) => {
        const spaces: readonly Space[] = [
          { interior: inside(a), place: here },
          { interior: inside(b), place: there },
        ];
        const whole = spaces[0]!.interior.volume + spaces[1]!.interior.volume;
        const volume = part * whole;
        const found = fill(spaces, levelFor(volume, spaces)!).volume;
        expect(Math.abs(found - volume)).toBeLessThanOrEqual(1e-11 * volume + 1e-14 * whole);
      }),
      { numRuns: 300, seed: 6 },
    );
  });
});

describe('a vessel of a shell and two heads as one space', () => {
  const shell: Shape = { kind: 'tube', outside: 2.024, wall: 0.012, length: 6 };
  const head: Shape = { kind: 'dished head', form: 'ellipsoidal', outside: 2.024, wall: 0.012 };
  const headMiddle = made(head).box.max[2];
  const lying = { R: turn(Math.PI / 2, 'y'), t: [0, 0, 0] as Vec3 };
  const spaces: readonly Space[] = [
    { interior: inside(shell), place: lying },
    { interior: inside(head), place: compose(lying, { R: identity, t: [0, 0, 3 + headMiddle] }) },
    { interior: inside(head), place: compose(lying, { R: turn(Math.PI, 'x'), t: [0, 0, -3 - headMiddle] }) },
  ];

  // Contents: pi/4 D2 L + 2 pi D3 / 24 (standard mensuration).
  test('full, half full, and a depth in between', () => {
    const whole = (Math.PI / 4) * 4 * 6 + (Math.PI * 8) / 12;
    expect(fill(spaces, 1).volume).toBeCloseTo(whole, 11);
    expect(fill(spaces, 0).volume).toBeCloseTo(whole / 2, 11);
    expect(levelFor(whole / 2, spaces)).toBeCloseTo(0, 11);
    const height = 0.6;
    const segment = Math.acos(0.4) - 0.4 * Math.sqrt(2 * height - height ** 2);
    const ends = (0.5 * Math.PI * height ** 2 * (3 - height)) / 3;
    expect(fill(spaces, -0.4).volume).toBeCloseTo(6 * segment + ends, 11);
  });

  test('none for less than nothing or more than it holds, nor without a space', () => {
    expect(levelFor(-1, spaces)).toBeUndefined();
    expect(levelFor(30, spaces)).toBeUndefined();
    expect(levelFor(Number.NaN, spaces)).toBeUndefined();
    expect(levelFor(0, [])).toBeUndefined();
    expect(levelFor(0, spaces)).toBeCloseTo(-1, 13);
    expect(fill([], 3)).toEqual({ volume: 0, centre: undefined });
  });
});

test('only a hollow sphere, and what is led round a ring, is closed by itself; solids have no inside', () => {
  const shut = specimens
    .filter(closed)
    .filter((shape) => shape.kind !== 'swept' || shape.corners[0]?.some((x, i) => x !== shape.corners.at(-1)?.[i]));
  expect(shut.map((shape) => shape.kind)).toEqual(['hollow sphere']);
  const kinds = new Set(hollow.map((shape) => shape.kind));
  expect([...kinds].sort()).toEqual([
    'conical head',
    'dished head',
    'elbow',
    'flange',
    'hemispherical head',
    'hollow sphere',
    'manway',
    'nozzle',
    'pipe',
    'rectangular tube',
    'reducer',
    'swept',
    'tapered tube',
    'tee',
    'tube',
  ]);
  expect(interior({ kind: 'elbow', outside: 0.5, bendRadius: 0.6, angle: 1 })).toBeNull();
});
