// Meshes: volume and centre against a general geometry library (@jscad/modeling) and against closed forms; what is not closed gives no number.
import { measurements, primitives } from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import { measureMesh } from '../../../server/mechanics/mesh/measure.ts';
import { type Mesh, readMesh } from '../../../server/mechanics/mesh/read.ts';

type Triangle = readonly (readonly [number, number, number])[];

/** Triangles of a solid of the library. */
const trianglesOf = (solid: { polygons: { vertices: [number, number, number][] }[] }): Triangle[] =>
  solid.polygons.flatMap(({ vertices }) =>
    vertices.slice(2).map((_, i) => [vertices[0], vertices[i + 1], vertices[i + 2]] as Triangle),
  );

function binary(triangles: readonly Triangle[], head = 'drawing'): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + triangles.length * 50));
  [...head].forEach((letter, i) => view.setUint8(i, letter.charCodeAt(0)));
  view.setUint32(80, triangles.length, true);
  triangles.forEach((triangle, t) =>
    triangle.flat().forEach((value, i) => view.setFloat32(84 + t * 50 + 12 + i * 4, value, true)),
  );
  return new Uint8Array(view.buffer);
}
const text = (triangles: readonly Triangle[]): Uint8Array =>
  new TextEncoder().encode(
    `solid drawing\n${triangles.map((t) => `facet normal 0 0 0\nouter loop\n${t.map((p) => `vertex ${p.join(' ')}`).join('\n')}\nendloop\nendfacet`).join('\n')}\nendsolid drawing\n`,
  );
const obj = (triangles: readonly Triangle[]): Uint8Array =>
  new TextEncoder().encode(
    `${triangles
      .flat()
      .map((p) => `v ${p.join(' ')}`)
      .join('\n')}\n${triangles.map((_, i) => `f ${i * 3 + 1} ${i * 3 + 2}//1 ${i * 3 + 3}/2/1`).join('\n')}\n`,
  );

const solid = (mesh: ReturnType<typeof readMesh>) => {
  if ('fault' in mesh) throw new Error(mesh.fault);
  const measured = measureMesh(mesh as Mesh);
  if ('not' in measured) throw new Error(measured.not);
  return measured;
};

describe('volume, centre and box', () => {
  const solids = {
    cuboid: primitives.cuboid({ size: [2, 1, 0.5], center: [1, 2, 3] }),
    sphere: primitives.sphere({ radius: 1.5, segments: 48, center: [10, -3, 2] }),
    cylinder: primitives.cylinder({ radius: 0.5, height: 3, segments: 64, center: [0, 0, 5] }),
    torus: primitives.torus({ innerRadius: 0.3, outerRadius: 1.2, innerSegments: 32, outerSegments: 48 }),
  };
  for (const [name, made] of Object.entries(solids))
    for (const [form, write] of Object.entries({ binary, text, obj }))
      test(`of a ${name} as ${form}`, () => {
        const got = solid(readMesh(write(trianglesOf(made as never)), form === 'obj' ? 'obj' : 'stl'));
        const digits = form === 'binary' ? 1e-5 : 1e-9; // binary files keep seven digits
        expect(Math.abs(got.volume / measurements.measureVolume(made) - 1)).toBeLessThan(digits);
        const centre = measurements.measureCenterOfMass(made) as number[];
        got.centre.forEach((x, i) => {
          expect(Math.abs(x - (centre[i] as number))).toBeLessThan(digits * 20);
        });
      });

  test('a unit cube is one, whichever way its faces are turned, and a header that begins with "solid" is still binary', () => {
    const cube = trianglesOf(primitives.cube({ size: 1 }) as never);
    expect(solid(readMesh(binary(cube, 'solid of a part'), 'stl')).volume).toBeCloseTo(1, 12);
    expect(solid(readMesh(binary(cube.map(([a, b, c]) => [a, c, b] as never)), 'stl')).volume).toBeCloseTo(1, 12);
  });
});

describe('what is no closed body gives no number', () => {
  const cube = trianglesOf(primitives.cube({ size: 1 }) as never);
  const not = (triangles: readonly Triangle[]) => {
    const mesh = readMesh(text(triangles), 'stl');
    return 'fault' in mesh ? mesh.fault : (measureMesh(mesh) as { not?: string }).not;
  };
  test('a face left out', () => expect(not(cube.slice(1))).toBe('open'));
  test('a face turned over', () =>
    expect(not([[...(cube[0] as Triangle)].reverse() as never, ...cube.slice(1)])).toBe('turned'));
  test('two bodies that run into each other', () =>
    expect(not([...cube, ...trianglesOf(primitives.cube({ size: 1, center: [0.5, 0.25, 0.25] }) as never)])).toBe(
      'crossing',
    ));
  test('two bodies apart are fine', () =>
    expect(not([...cube, ...trianglesOf(primitives.cube({ size: 1, center: [2, 0, 0] }) as never)])).toBeUndefined());
  test('a flat sheet', () =>
    expect(
      not([
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
        ],
        [
          [0, 0, 0],
          [0, 1, 0],
          [1, 0, 0],
        ],
      ]),
    ).toBe('empty'));
  test('cut short, no triangles, not a mesh, no number', () => {
    expect(readMesh(binary(cube).slice(0, 300), 'stl')).toMatchObject({ fault: 'cut-short' });
    expect(readMesh(text(cube).slice(0, 400), 'stl')).toMatchObject({ fault: 'cut-short' });
    expect(readMesh(binary([]), 'stl')).toMatchObject({ fault: 'no-triangles' });
    expect(readMesh(new TextEncoder().encode('hello'), 'stl')).toMatchObject({ fault: 'not-a-mesh' });
    expect(readMesh(new TextEncoder().encode('v 0 0 x\nf 1 1 1\n'), 'obj')).toMatchObject({
      fault: 'bad-number',
      row: 1,
    });
    expect(readMesh(new Uint8Array(0), 'stl')).toMatchObject({ fault: 'not-a-mesh' });
  });
});
