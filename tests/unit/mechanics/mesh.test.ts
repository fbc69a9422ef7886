// Meshes: volume and centre against a general geometry library (@jscad/modeling) and against closed forms; what is not closed gives no number.
import jscad, { measurements, primitives } from '@jscad/modeling';
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

describe('as programs write it', () => {
  const { booleans, modifiers } = jscad;
  const block = primitives.cuboid({ size: [4, 3, 2], center: [10, 20, 30] });
  const triangles = trianglesOf(block as never);
  const is = (bytes: Uint8Array, kind: 'stl' | 'obj') => {
    const got = solid(readMesh(bytes, kind));
    expect(got.volume).toBeCloseTo(24, 9);
    expect(got.centre.map((x) => Number(x.toFixed(9)))).toEqual([10, 20, 30]);
  };

  test('a binary file whose head begins with "solid" and goes on in Latin-1', () => {
    const bytes = binary(triangles, 'solid Tr');
    bytes.set([0xe4, 0x67, 0x65, 0x72, 0xff, 0x80, 0x0a], 8);
    is(bytes, 'stl');
  });

  test('a text file in capitals, with a byte-order mark and its lines ended as old machines did', () => {
    const lines = new TextDecoder().decode(text(triangles)).toUpperCase();
    is(new TextEncoder().encode(`\ufeff${lines}`), 'stl');
    is(new TextEncoder().encode(lines.replaceAll('\n', '\r')), 'stl');
  });

  // Corners 1 to 8 of the block, the lower four first, as the form OBJ numbers them.
  const corners = [28, 0].flatMap((_, level) =>
    [
      [8, 18.5],
      [12, 18.5],
      [12, 21.5],
      [8, 21.5],
    ].map(([x, y]) => [x, y, level === 0 ? 29 : 31] as const),
  );
  const quads = [
    [4, 3, 2, 1],
    [5, 6, 7, 8],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 4, 8, 7],
    [4, 1, 5, 8],
  ];
  const write = (more: string, face: (corner: number) => string) =>
    new TextEncoder().encode(
      `# a block\no block\nvt 0 0\nvn 0 0 1\n${corners.map((at) => `v ${at.join(' ')}${more}`).join('\n')}\ns off\n${quads.map((quad) => `f ${quad.map(face).join(' ')}`).join('\n')}\n`,
    );

  test.each([
    ['faces of four corners', '', (corner: number) => `${corner}`],
    ['corners with textures and normals', '', (corner: number) => `${corner}/1/1`],
    ['corners counted from the end', '', (corner: number) => `${corner - 9}`],
    ['corners with a weight', ' 1.0', (corner: number) => `${corner}//1`],
    ['corners with colours', ' 0.2 0.4 0.6', (corner: number) => `${corner}`],
  ])('OBJ with %s', (_, more, face) => is(write(more, face), 'obj'));

  test('a face that is not convex counts with its area, though the fan leaves it', () => {
    const outline = [
      [0, 0],
      [3, 0],
      [3, 3],
      [2, 3],
      [2, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ];
    const n = outline.length;
    const side = (i: number) => `f ${i + 1} ${((i + 1) % n) + 1} ${((i + 1) % n) + 1 + n} ${i + 1 + n}`;
    const up = outline.map((_, i) => i + 1);
    for (let turn = 0; turn < n; turn++) {
      const from = [...up.slice(turn), ...up.slice(0, turn)];
      const lines = [
        ...[0, 5].flatMap((z) => outline.map(([x, y]) => `v ${x} ${y} ${z}`)),
        ...outline.map((_, i) => side(i)),
        `f ${[...from].reverse().join(' ')}`,
        `f ${from.map((corner) => corner + n).join(' ')}`,
      ];
      const got = solid(readMesh(new TextEncoder().encode(lines.join('\n')), 'obj'));
      expect(got.volume).toBeCloseTo(7 * 5, 9); // a square of 3 less a slot of 1 by 2
    }
  });

  test('bodies that stand on each other are no crossing', () => {
    const above = primitives.cuboid({ size: [1, 1, 1], center: [10, 20, 31.5] });
    const both = [...triangles, ...trianglesOf(above as never)];
    expect(solid(readMesh(text(both), 'stl')).volume).toBeCloseTo(25, 9);
  });

  test('a space inside counts as empty, bodies apart count together, joined ones once (@jscad/modeling)', () => {
    const outer = primitives.cuboid({ size: [4, 4, 4] });
    const made = [
      booleans.subtract(outer, primitives.sphere({ radius: 1.5, segments: 32 })),
      booleans.subtract(outer, primitives.cuboid({ size: [1, 1, 9] })),
      booleans.union(outer, primitives.cuboid({ size: [2, 2, 2], center: [2, 2, 2] })),
    ];
    for (const cut of made) {
      const body = (modifiers.generalize as unknown as (options: object, of: typeof cut) => typeof cut)(
        { snap: true, triangulate: true },
        cut,
      ); // edges of its cuts meet corner to corner then
      const got = solid(readMesh(text(trianglesOf(body as never)), 'stl'));
      expect(got.volume / measurements.measureVolume(body)).toBeCloseTo(1, 6);
    }
    const apart = [outer, primitives.cuboid({ size: [1, 2, 3], center: [10, 0, 0] })];
    const both = solid(readMesh(binary(apart.flatMap((body) => [...trianglesOf(body as never)])), 'stl'));
    expect(both.volume).toBeCloseTo(64 + 6, 4);
    expect(both.centre[0]).toBeCloseTo((6 * 10) / 70, 5);
    expect(both.box).toEqual({ min: [-2, -2, -2], max: [10.5, 2, 2] });
  });
});

describe('what is no closed body gives no number', () => {
  test('two bodies of which one is inside out, or one in the other', () => {
    const small = trianglesOf(primitives.cube({ size: 0.5, center: [3, 0, 0] }) as never);
    const inside = trianglesOf(primitives.cube({ size: 0.5 }) as never);
    expect(not([...cube, ...small.map(([a, b, c]) => [a, c, b] as never)])).toBe('crossing');
    expect(not([...cube, ...inside])).toBe('crossing');
  });
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
  test('longer than it says, too many, curved surfaces, a corner that is not there', () => {
    const long = new Uint8Array([...binary(cube), 0, 0, 0, 0]);
    expect(readMesh(long, 'stl')).toMatchObject({ fault: 'runs-on' });
    const count = 2_000_001;
    const huge = new Uint8Array(84 + count * 50);
    new DataView(huge.buffer).setUint32(80, count, true);
    expect(readMesh(huge, 'stl')).toMatchObject({ fault: 'too-large' });
    const written = (lines: string) =>
      readMesh(new TextEncoder().encode(`v 0 0 0\nv 1 0 0\nv 0 1 0\n${lines}\n`), 'obj');
    expect(written('f 1 2 3\nsurf 0 1 0 1 1 2 3')).toMatchObject({ fault: 'curved', row: 5 });
    for (const face of ['f 1 2 4', 'f 0 1 2', 'f 1 2 -4', 'f 1.5 2 3', 'f 1 2', 'f a b c'])
      expect(written(face), face).toMatchObject({ fault: 'bad-number', row: 4 });
  });
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
