// Bought-in parts of pipework against meshes of a general solid-modelling library (@jscad/modeling, MIT), with every nut and washer in place.
import jscad from '@jscad/modeling';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { below, boxOf, identity, interior, type Shape, solid, type Vec3 } from '../../../server/mechanics/index.ts';
import type { Bolt, Flange, Manway, Nozzle, Tee } from '../../../server/mechanics/shapes-of-pipework.ts';
import { blind, headed, lapJoint, nozzle, padded, slipOn, stud, studs, weldNeck } from './pipework-specimens.ts';
import { made } from './specimens.ts';

const { booleans, measurements, primitives, transforms } = jscad;
type Mesh = ReturnType<typeof primitives.cuboid>;

const facets = 96;
/** A round of n facets is made to hold as much as a true one: its corners lie that much farther out. */
const grown = 1 / Math.sqrt((facets * Math.sin((2 * Math.PI) / facets)) / (2 * Math.PI));

/** A round of a diameter from one height to another; the two ends may differ. */
const round = (diameter: number, low: number, high: number, top = diameter): Mesh => {
  const radius = (d: number): [number, number] => [(d / 2) * grown, (d / 2) * grown];
  const body = primitives.cylinderElliptic({
    height: high - low,
    startRadius: radius(diameter),
    endRadius: radius(top),
    segments: facets,
  });
  return transforms.translateZ((low + high) / 2, body) as Mesh;
};
const hexagon = (flats: number, low: number, high: number): Mesh =>
  transforms.translateZ(
    (low + high) / 2,
    primitives.cylinder({ radius: flats / Math.sqrt(3), height: high - low, segments: 6 }),
  ) as Mesh;
const all = (...meshes: readonly Mesh[]): Mesh => booleans.union(...meshes) as Mesh;
const less = (mesh: Mesh, ...taken: readonly Mesh[]): Mesh => booleans.subtract(mesh, ...taken) as Mesh;
const lengthOf = ({ thickness, faceHeight, hubLength }: Flange): number => thickness + faceHeight + hubLength;

function flangeMesh(shape: Flange): Mesh {
  const { outside, thickness, raisedFace, faceHeight, hub, neck, hubLength, bore } = shape;
  const back = -(thickness + faceHeight);
  const solidBody = all(
    round(outside, back, -faceHeight),
    ...(faceHeight > 0 ? [round(raisedFace, -faceHeight - 0.001, 0)] : []),
    ...(hubLength > 0 ? [round(neck, back - hubLength, back, hub)] : []),
  );
  return bore > 0 ? less(solidBody, round(bore, -lengthOf(shape) - 0.01, 0.01)) : solidBody;
}

function nozzleMesh({ flange, outside, wall, projection, pad }: Nozzle): Mesh {
  const stub = less(
    round(outside, -projection, -lengthOf(flange)),
    round(outside - 2 * wall, -projection - 0.01, -lengthOf(flange) + 0.01),
  );
  if (!pad) return all(flangeMesh(flange), stub);
  const plate = less(
    round(pad.outside, -projection, pad.thickness - projection),
    round(outside, -projection - 0.01, pad.thickness - projection + 0.01),
  );
  return all(flangeMesh(flange), stub, plate);
}

/** From -half to half; washers lie one on the other below the nuts. */
function boltMesh({ diameter, length, head, nuts, nut, washers, washer }: Bolt): readonly Mesh[] {
  const whole = length + (head?.height ?? 0);
  const rod = round(diameter, (head?.height ?? 0) - whole / 2, whole / 2);
  const onTop = (flats: number, from: number, to: number): Mesh =>
    less(hexagon(flats, from, to), round(diameter, from - 0.01, to + 0.01));
  if (!head) {
    const half = ((nut?.height ?? 0) * nuts) / 2;
    const flats = nut?.flats ?? 0;
    return [rod, onTop(flats, whole / 2 - half, whole / 2), onTop(flats, -whole / 2, half - whole / 2)];
  }
  const stack = nuts * (nut?.height ?? 0);
  const rings = washers * (washer?.thickness ?? 0);
  return [
    rod,
    hexagon(head.flats, -whole / 2, head.height - whole / 2),
    onTop(nut?.flats ?? 0, whole / 2 - stack, whole / 2),
    less(
      round(washer?.outside ?? 0, whole / 2 - stack - rings, whole / 2 - stack),
      round(washer?.bore ?? 0, -whole, whole),
    ),
  ];
}

function together(meshes: readonly Mesh[]): { readonly volume: number; readonly centre: Vec3 } {
  const each = meshes.map((mesh) => ({
    volume: measurements.measureVolume(mesh),
    centre: measurements.measureCenterOfMass(mesh) as [number, number, number],
  }));
  const volume = each.reduce((sum, one) => sum + one.volume, 0);
  const along = (axis: 0 | 1 | 2): number => each.reduce((sum, one) => sum + one.volume * one.centre[axis], 0) / volume;
  return { volume, centre: [along(0), along(1), along(2)] };
}

function compare(shape: Shape, meshes: readonly Mesh[], within: number): void {
  const [ours, theirs] = [made(shape), together(meshes)];
  expect(Math.abs(ours.volume / theirs.volume - 1)).toBeLessThan(within);
  for (const axis of [0, 1, 2] as const) expect(Math.abs(ours.centre[axis] - theirs.centre[axis])).toBeLessThan(within);
}

describe('volume and centre of a mesh', () => {
  test.each([
    ['weld neck', weldNeck],
    ['slip on', slipOn],
    ['lap joint', lapJoint],
    ['blind', blind],
  ] as const)('%s flange', (_, shape) => compare(shape, [flangeMesh(shape)], 1e-3));

  test.each([
    ['plain', nozzle],
    ['with a pad', padded],
  ] as const)('nozzle %s', (_, shape) => compare(shape, [nozzleMesh(shape)], 1e-3));

  test('hexagon bolt with a nut and two washers', () => compare(headed, boltMesh(headed), 1e-3));
  test('stud with two nuts', () => compare(stud, boltMesh(stud), 1e-3));
  test('nut', () =>
    compare(
      { kind: 'nut', diameter: 0.3, flats: 0.5, height: 0.28 },
      [less(hexagon(0.5, -0.14, 0.14), round(0.3, -0.2, 0.2))],
      1e-3,
    ));

  test('manway: the cover lies face to face on the nozzle, the studs in their middle', () => {
    const shape: Manway = { kind: 'manway', nozzle: padded, cover: blind, studs };
    const cover = transforms.rotateX(Math.PI, flangeMesh(blind)) as Mesh;
    const bolts = Array.from({ length: 8 }, () => boltMesh(stud)).flat();
    compare(shape, [nozzleMesh(padded), cover, ...bolts], 1e-3);
  });

  test('tee: two rounds less two bores', () => {
    const shape: Tee = { kind: 'tee', outside: 0.7, wall: 0.08, run: 0.6, branch: 0.5 };
    const cross = (diameter: number, over: number): Mesh =>
      all(
        transforms.rotateY(Math.PI / 2, round(diameter, -0.6 - over, 0.6 + over)) as Mesh,
        transforms.rotateX(-Math.PI / 2, round(diameter, 0, 0.5 + over)) as Mesh,
      );
    compare(shape, [less(cross(0.7, 0), cross(0.54, 0.01))], 2e-3);
  });

  test('bolt set: so many studs', () => expect(made(studs).volume).toBeCloseTo(8 * together(boltMesh(stud)).volume, 4));
});

describe('reducers', () => {
  const sizes = { kind: 'reducer', large: 0.9, largeWall: 0.08, small: 0.5, smallWall: 0.05, length: 0.7 } as const;

  test('the flat side of an eccentric one lies level on -y, and its centre sinks towards it', () => {
    const { min, max } = boxOf({ ...sizes, offset: 0.2 }, identity);
    expect(min[1]).toBeCloseTo(-0.45, 12);
    expect(max[1]).toBeCloseTo(0.45, 12);
    const centre = made({ ...sizes, offset: 0.2 }).centre;
    expect(centre[1]).toBeLessThan(-0.05);
    expect(made({ ...sizes, offset: 0 }).centre).toEqual([0, 0, centre[2]]);
  });

  test('material and the space inside make up the outside, whatever the sizes', () => {
    const size = fc.double({ min: 0.01, max: 5, noNaN: true });
    const share = fc.double({ min: 0.01, max: 0.49, noNaN: true });
    fc.assert(
      fc.property(size, size, share, share, size, size, (large, small, s, t, length, offset) => {
        const walls = { largeWall: large * s, smallWall: small * t };
        const shape: Shape = { kind: 'reducer', large, small, ...walls, length, offset };
        const outer = (Math.PI / 12) * length * (large ** 2 + large * small + small ** 2);
        expect(Math.abs((made(shape).volume + interior(shape)!.volume) / outer - 1)).toBeLessThan(1e-10);
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  test('leaning costs no volume, outside or in, at any level and lean', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (offset, share) => {
          const leaning: Shape = { ...sizes, offset };
          const upright: Shape = { ...sizes, offset: 0 };
          expect(made(leaning).volume).toBe(made(upright).volume);
          const still = { R: identity, t: [0, 0, 0] as const };
          const level = 0.7 * share - 0.35; // standing, a level cut is the same disc wherever it lies
          const [a, b] = [leaning, upright].map((shape) => below(interior(shape)!, still, level));
          expect(Math.abs(a!.volume / b!.volume - 1)).toBeLessThan(1e-9);
          expect(Math.abs(a!.centre![2] - b!.centre![2])).toBeLessThan(1e-9);
          expect(a!.centre![1]).toBeLessThanOrEqual(1e-12);
        },
      ),
      { numRuns: 100, seed: 3 },
    );
  });
});

describe('what cannot be made', () => {
  test.each([
    ['a bore as wide as the hub', { ...weldNeck, bore: 0.7 }, 'bore-not-inside'],
    ['no thickness', { ...weldNeck, thickness: 0 }, 'not-above-zero'],
    ['a nozzle that ends before its flange', { ...nozzle, pipeLength: -0.1 }, 'projection-too-short'],
    ['a pad inside its pipe', { ...padded, pad: { outside: 0.7, thickness: 0.05 } }, 'pad-inside'],
    ['nuts longer than their stud', { ...stud, length: 0.17 }, 'bolt-too-short'],
    [
      'a branch that ends in the run',
      { kind: 'tee', outside: 0.7, wall: 0.08, run: 0.6, branch: 0.3 },
      'branch-too-short',
    ],
    ['a nut without room for its bolt', { kind: 'nut', diameter: 0.5, flats: 0.5, height: 0.3 }, 'bore-not-inside'],
  ] as const)('%s', (_, shape, reason) => expect(solid(shape as Shape)).toMatchObject({ impossible: true, reason }));
});
