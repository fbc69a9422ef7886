// Volumes and centres against meshes measured by @jscad/modeling, a general solid-modelling library (MIT).
//
// A body of revolution in n facets holds n sin(2 pi / n) / (2 pi) of the round one, and its centre lies on the axis at the same
// height: every meridian slice shrinks alike. So facets cost nothing where the outline has straight sides.
import jscad from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import {
  apply,
  axisRotation,
  inCircle,
  inSteps,
  type Placement,
  type Shape,
  still,
  type Vec3,
} from '../../../server/mechanics/index.ts';
import { made } from './specimens.ts';

const { booleans, extrusions, geometries, measurements, primitives, transforms } = jscad;
type Mesh = ReturnType<typeof primitives.cuboid>;

const facets = 48;
const share = (facets * Math.sin((2 * Math.PI) / facets)) / (2 * Math.PI);
const { PI, sin, cos } = Math;

/** Outline (radius, height), counter-clockwise, turned about z. */
const revolved = (outline: readonly (readonly [number, number])[]): Mesh =>
  extrusions.extrudeRotate(
    { segments: facets },
    primitives.polygon({ points: outline.map(([r, z]) => [r, z] as [number, number]) }),
  );

/** Points along an arc about (r, z), both ends included. */
const arc = (r: number, z: number, radius: number, from: number, to: number): readonly (readonly [number, number])[] =>
  Array.from({ length: 301 }, (_, i) => {
    const at = from + ((to - from) * i) / 300;
    return [r + radius * cos(at), z + radius * sin(at)] as const;
  });

function measure(mesh: Mesh): { readonly volume: number; readonly centre: Vec3 } {
  const [x, y, z] = measurements.measureCenterOfMass(mesh) as [number, number, number];
  return { volume: measurements.measureVolume(mesh), centre: [x, y, z] };
}

function compare(shape: Shape, mesh: Mesh, part: number, within: number): void {
  const [ours, theirs] = [made(shape), measure(mesh)];
  expect(Math.abs((ours.volume * part) / theirs.volume - 1)).toBeLessThan(within);
  for (const axis of [0, 1, 2] as const) expect(Math.abs(ours.centre[axis] - theirs.centre[axis])).toBeLessThan(within);
}

describe('flat faces: the mesh is the body', () => {
  test('box', () => compare({ kind: 'box', x: 2, y: 1, z: 0.5 }, primitives.cuboid({ size: [2, 1, 0.5] }), 1, 1e-12));

  test('wedge', () => {
    const triangle = primitives.polygon({
      points: [
        [-0.75, -0.45],
        [0.75, -0.45],
        [-0.75, 0.45],
      ],
    });
    const mesh = transforms.translateY(
      0.35,
      transforms.rotateX(PI / 2, extrusions.extrudeLinear({ height: 0.7 }, triangle)),
    );
    compare({ kind: 'wedge', x: 1.5, y: 0.7, z: 0.9 }, mesh as Mesh, 1, 1e-9);
  });

  test('prism with a hole', () => {
    const outline = [
      [0, 0],
      [2, 0],
      [2, 0.4],
      [0.5, 0.4],
      [0.5, 1.5],
      [0, 1.5],
    ] as [number, number][];
    const hole = [
      [1, 0.1],
      [1.8, 0.1],
      [1.8, 0.3],
      [1, 0.3],
    ] as [number, number][];
    const flat = booleans.subtract(primitives.polygon({ points: outline }), primitives.polygon({ points: hole }));
    const mesh = transforms.translateZ(-0.3, extrusions.extrudeLinear({ height: 0.6 }, flat));
    compare({ kind: 'prism', outline, holes: [hole], length: 0.6 }, mesh as Mesh, 1, 1e-5); // the mesh's cut is rounded to a grid
  });

  test.each([[[0.4, 0.9] as const], [undefined]])('pyramid, top %o', (top) => {
    const ring = ([x, y]: readonly [number, number], z: number) => [
      [-x / 2, -y / 2, z],
      [x / 2, -y / 2, z],
      [x / 2, y / 2, z],
      [-x / 2, y / 2, z],
    ];
    const points = [...ring([1.2, 0.8], -0.45), ...ring(top ?? [1e-9, 1e-9], 0.45)] as [number, number, number][];
    const faces = [[3, 2, 1, 0], [4, 5, 6, 7], ...[0, 1, 2, 3].map((i) => [i, (i + 1) % 4, 4 + ((i + 1) % 4), 4 + i])];
    const mesh = primitives.polyhedron({ points, faces, orientation: 'outward' });
    compare({ kind: 'pyramid', base: [1.2, 0.8], ...(top && { top }), height: 0.9 }, mesh, 1, 1e-8);
  });

  test('rectangular tube along x', () => {
    const mesh = booleans.subtract(
      primitives.cuboid({ size: [1.4, 0.5, 0.8] }),
      primitives.cuboid({ size: [2, 0.3, 0.6] }),
    );
    compare({ kind: 'rectangular tube', y: 0.5, z: 0.8, wall: 0.1, length: 1.4 }, mesh as Mesh, 1, 1e-9);
  });
});

describe('straight sides turned about an axis: exact but for the facets', () => {
  test('cylinder, tube, pipe', () => {
    const solid = revolved([
      [0, -0.45],
      [0.6, -0.45],
      [0.6, 0.45],
      [0, 0.45],
    ]);
    compare({ kind: 'cylinder', diameter: 1.2, length: 0.9 }, solid, share, 1e-9);
    const ring = revolved([
      [0.4, -0.45],
      [0.6, -0.45],
      [0.6, 0.45],
      [0.4, 0.45],
    ]);
    compare({ kind: 'tube', outside: 1.2, wall: 0.2, length: 0.9 }, ring, share, 1e-9);
    compare({ kind: 'tube', outside: 1.2, bore: 0.8, length: 0.9 }, ring, share, 1e-9);
    const lying = transforms.rotateY(PI / 2, ring) as Mesh;
    compare({ kind: 'pipe', outside: 1.2, wall: 0.2, length: 0.9 }, lying, share, 1e-9);
  });

  test('cone, frustum, tapered tube', () => {
    compare(
      { kind: 'cone', base: 1.2, height: 0.9 },
      revolved([
        [0, -0.45],
        [0.6, -0.45],
        [0, 0.45],
      ]),
      share,
      1e-9,
    );
    const frustum = revolved([
      [0, -0.4],
      [0.35, -0.4],
      [0.65, 0.4],
      [0, 0.4],
    ]);
    compare({ kind: 'frustum', base: 0.7, top: 1.3, height: 0.8 }, frustum, share, 1e-9);
    const level = 0.12 * Math.hypot(1, 0.3 / 0.9);
    const cone = revolved([
      [0.7 - level, -0.45],
      [0.7, -0.45],
      [0.4, 0.45],
      [0.4 - level, 0.45],
    ]);
    compare({ kind: 'tapered tube', base: 1.4, top: 0.8, wall: 0.12, height: 0.9 }, cone, share, 1e-9);
    const slope = 0.12 * Math.hypot(1, 0.7 / 0.9);
    const tip = -0.45 + (0.9 * (0.7 - slope)) / 0.7;
    const pointed = revolved([
      [0, tip],
      [0.7 - slope, -0.45],
      [0.7, -0.45],
      [0, 0.45],
    ]);
    compare({ kind: 'conical head', base: 1.4, top: 0, wall: 0.12, height: 0.9 }, pointed, share, 1e-9);
  });
});

test('turned outlines: the mesh is the outline turned', () => {
  for (const outline of [
    [
      [0, 0],
      [0.6, 0],
      [0.6, 0.2],
      [0.25, 0.3],
      [0.2, 1.1],
      [0, 1.4],
    ],
    [
      [0.3, -0.4],
      [0.8, -0.4],
      [0.8, -0.1],
      [0.5, 0.1],
      [0.5, 0.6],
      [0.3, 0.6],
    ],
  ] as const)
    compare({ kind: 'turned', outline }, revolved(outline), share, 1e-9);
});

test('a block with a ridge, longer than its base: five faces', () => {
  const [a, b, c, h] = [0.7, 0.4, 1.1, 0.6];
  const roof = primitives.polyhedron({
    points: [
      [-a, -b, -h],
      [a, -b, -h],
      [a, b, -h],
      [-a, b, -h],
      [-c, 0, h],
      [c, 0, h],
    ],
    faces: [
      [3, 2, 1, 0],
      [0, 1, 5, 4],
      [2, 3, 4, 5],
      [1, 2, 5],
      [3, 0, 4],
    ],
  });
  compare({ kind: 'pyramid', base: [2 * a, 2 * b], top: [2 * c, 0], height: 2 * h }, roof, 1, 1e-9);
});

describe('arcs of 300 chords each', () => {
  test('sphere, hollow sphere, caps', () => {
    compare({ kind: 'sphere', diameter: 1.1 }, revolved(arc(0, 0, 0.55, -PI / 2, PI / 2)), share, 3e-5);
    const shell = [...arc(0, 0, 0.55, -PI / 2, PI / 2), ...arc(0, 0, 0.4, PI / 2, -PI / 2)];
    compare({ kind: 'hollow sphere', outside: 1.1, wall: 0.15 }, revolved(shell), share, 3e-5);
    for (const [base, height] of [
      [1.2, 0.3],
      [0.8, 1],
    ] as const) {
      const radius = base ** 2 / (8 * height) + height / 2;
      const centre = height / 2 - radius;
      const from = Math.atan2(radius - height, base / 2);
      const cap = revolved([...arc(0, centre, radius, from, PI / 2), [0, -height / 2]]);
      compare({ kind: 'spherical cap', base, height }, cap, share, 3e-5);
    }
  });

  test('slice of a ball, paraboloid, ellipsoid', () => {
    const [radius, low, high] = [0.8, -0.3, 0.6];
    const rim = (z: number) => Math.sqrt(radius ** 2 - z ** 2);
    const slice = revolved([
      [0, low],
      ...arc(0, 0, radius, Math.asin(low / radius), Math.asin(high / radius)),
      [0, high],
    ]);
    const zone = { kind: 'spherical cap', base: 2 * rim(low), top: 2 * rim(high), height: high - low } as const;
    compare(zone, transforms.translateZ(-(low + high) / 2, slice) as Mesh, share, 3e-5);

    const [base, height] = [1.2, 0.7];
    const bowl = Array.from({ length: 301 }, (_, i) => {
      const r = (base / 2) * (1 - i / 300);
      return [r, height * (1 - (2 * r) ** 2 / base ** 2) - height / 2] as const;
    });
    compare({ kind: 'paraboloid', base, height }, revolved([[0, -height / 2], ...bowl]), share, 3e-5);

    const [x, y, z] = [1.4, 0.9, 0.5];
    const ball = revolved(arc(0, 0, 0.5, -PI / 2, PI / 2));
    compare({ kind: 'ellipsoid', x, y, z }, transforms.scale([x, y, z], ball) as Mesh, share, 3e-5);
  });

  test('curved plate and segment of a cylinder', () => {
    const [outer, wall, angle, length] = [0.8, 0.15, 1.9, 0.8];
    const drawn = (points: readonly (readonly [number, number])[], height: number): Mesh =>
      transforms.translateZ(
        -height / 2,
        extrusions.extrudeLinear(
          { height },
          primitives.polygon({ points: points.map(([a, b]): [number, number] => [a, b]) }),
        ),
      ) as Mesh;
    const ring = [...arc(0, 0, outer, -angle / 2, angle / 2), ...arc(0, 0, outer - wall, angle / 2, -angle / 2)];
    compare({ kind: 'curved plate', outside: 2 * outer, wall, angle, length }, drawn(ring, length), 1, 3e-5);

    for (const [radius, height] of [
      [0.6, 0.35],
      [0.6, 0.95],
    ] as const) {
      const from = Math.asin((radius - height) / radius);
      const round = drawn(arc(0, 0, radius, from, PI - from), 0.9);
      const shape = { kind: 'cylinder segment', diameter: 2 * radius, height, length: 0.9 } as const;
      compare(shape, transforms.translateY(-(radius - height / 2), round) as Mesh, 1, 3e-5);
    }
  });

  test('ring and elbow', () => {
    compare(
      { kind: 'torus', meanDiameter: 1.2, sectionDiameter: 0.5 },
      revolved(arc(0.6, 0, 0.25, 0, 2 * PI).slice(1)),
      share,
      1e-4,
    );
    const pipe = (radius: number) => primitives.circle({ center: [0.6, 0], radius, segments: 600 });
    const angle = 1.9;
    const bend = (radius: number): Mesh => extrusions.extrudeRotate({ segments: 400, angle }, pipe(radius));
    const [outer, inner] = [measure(bend(0.25)), measure(bend(0.15))];
    const volume = outer.volume - inner.volume;
    const ours = made({ kind: 'elbow', outside: 0.5, wall: 0.1, bendRadius: 0.6, angle });
    expect(Math.abs(ours.volume / volume - 1)).toBeLessThan(2e-4);
    const middle = outer.centre.map((part, k) => (part * outer.volume - inner.centre[k]! * inner.volume) / volume);
    expect(Math.hypot(middle[0]!, middle[1]!)).toBeCloseTo(
      Math.hypot(ours.centre[0] + 0.6 * Math.tan(angle / 2), ours.centre[1] - 0.6),
      4,
    );
  });

  test('hemispherical head on a flange', () => {
    const outline = [[0.45, -0.2], [0.6, -0.2], ...arc(0, 0, 0.6, 0, PI / 2), ...arc(0, 0, 0.45, PI / 2, 0)] as const;
    const mesh = transforms.translateZ(-0.2, revolved(outline)) as Mesh;
    compare({ kind: 'hemispherical head', outside: 1.2, wall: 0.15, straightFlange: 0.2 }, mesh, share, 3e-5);
  });

  test('ellipsoidal head, its outer face set off square to the inner one', () => {
    const [radius, wall, flange] = [0.68, 0.12, 0.1];
    const curve = (off: number) =>
      arc(0, 0, 1, 0, PI / 2).map(([c, s]) => {
        const length = Math.hypot(c, 2 * s);
        return [radius * c + (off * c) / length, (radius / 2) * s + (off * 2 * s) / length] as const;
      });
    const outline = [[radius, -flange], [radius + wall, -flange], ...curve(wall), ...[...curve(0)].reverse()] as const;
    const mesh = transforms.translateZ((flange - radius / 2 - wall) / 2, revolved(outline)) as Mesh;
    compare(
      { kind: 'dished head', form: 'ellipsoidal', outside: 1.6, wall, straightFlange: flange },
      mesh,
      share,
      3e-5,
    );
  });

  test('torispherical head', () => {
    const [radius, wall, crown, knuckle] = [0.7, 0.1, 1.4, 0.2];
    const ring = radius - knuckle;
    const meet = Math.acos(ring / (crown - knuckle));
    const middle = -(crown - knuckle) * sin(meet);
    const face = (off: number) => [
      ...arc(ring, 0, knuckle + off, 0, meet),
      ...arc(0, middle, crown + off, meet, PI / 2),
    ];
    const depth = crown + middle;
    const mesh = transforms.translateZ(-(depth + wall) / 2, revolved([...face(wall), ...face(0).reverse()])) as Mesh;
    const shape = {
      kind: 'dished head',
      form: 'torispherical',
      outside: 1.6,
      wall,
      crownRadius: crown,
      knuckleRadius: knuckle,
    } as const;
    compare(shape, mesh, share, 3e-5);
  });
});

describe('parts placed and cut', () => {
  const stand = (mesh: Mesh, { R, t }: Placement): Mesh =>
    transforms.transform([R[0], R[3], R[6], 0, R[1], R[4], R[7], 0, R[2], R[5], R[8], 0, ...t, 1], mesh) as Mesh;

  test('a bolt circle in a plate and a row of openings', () => {
    const plate: Shape = { kind: 'plate', x: 2, y: 1, z: 0.1 };
    const [bolt, slot] = [
      made({ kind: 'hole', diameter: 0.1, depth: 0.1 }),
      made({ kind: 'opening', x: 0.1, y: 0.2, depth: 0.1 }),
    ];
    const bolts = inCircle({ ...still, t: [0.5, 0.1, 0] }, 0.4, 'z', 5);
    const slots = inSteps({ ...still, t: [-0.8, -0.2, 0] }, [0.2, 0.1, 0], 3);
    const pin = primitives.cylinder({ radius: 0.05, height: 0.2, segments: 64 });
    const block = primitives.cuboid({ size: [0.1, 0.2, 0.2] });
    const cuts = [...bolts.map((place) => stand(pin, place)), ...slots.map((place) => stand(block, place))];
    const mesh = measure(booleans.subtract(primitives.cuboid({ size: [2, 1, 0.1] }), ...cuts) as Mesh);
    const whole = made(plate).volume;
    const volume = whole - 5 * bolt.volume - 3 * slot.volume;
    const middle = [0, 1].map((axis) => {
      const taken =
        bolts.reduce((sum, { t }) => sum + t[axis]! * bolt.volume, 0) +
        slots.reduce((sum, { t }) => sum + t[axis]! * slot.volume, 0);
      return -taken / volume;
    });
    expect(volume / mesh.volume).toBeCloseTo(1, 4);
    expect(middle[0]).toBeCloseTo(mesh.centre[0], 4);
    expect(middle[1]).toBeCloseTo(mesh.centre[1], 4);
  });

  test.each(['x', '-x', 'y', '-y', '-z'] as const)('a wedge laid along %s', (axis) => {
    const shape: Shape = { kind: 'wedge', x: 1.5, y: 0.7, z: 0.9 };
    const triangle = primitives.polygon({
      points: [
        [-0.75, -0.45],
        [0.75, -0.45],
        [-0.75, 0.45],
      ],
    });
    const mesh = transforms.translateY(
      0.35,
      transforms.rotateX(PI / 2, extrusions.extrudeLinear({ height: 0.7 }, triangle)),
    ) as Mesh;
    const place: Placement = { R: axisRotation(axis), t: [1, 2, 3] };
    const [ours, theirs] = [apply(place, made(shape).centre), measure(stand(mesh, place))];
    expect(theirs.volume).toBeCloseTo(made(shape).volume, 9);
    for (const k of [0, 1, 2] as const) expect(ours[k]).toBeCloseTo(theirs.centre[k], 9);
    expect(geometries.geom3.isA(mesh)).toBe(true);
  });
});
