// Weights from drawing files: bodies of a general geometry library (@jscad/modeling) written as STL and OBJ, against the same body by its
// sizes; and files that hold no closed body, which give no number.
import { geometries, measurements, primitives } from '@jscad/modeling';
import { describe, expect, test } from 'vitest';
import { check } from '../../../server/workspace/memory.ts';
import { head, lift, message, slugs, value } from '../../support/lift.ts';

type Triangle = readonly (readonly number[])[];
type Solid = ReturnType<typeof primitives.cuboid>;

const trianglesOf = (solid: Solid): readonly Triangle[] =>
  geometries.geom3
    .toPolygons(solid)
    .flatMap(({ vertices }) =>
      vertices.slice(2).map((_, i) => [vertices[0], vertices[i + 1], vertices[i + 2]] as unknown as Triangle),
    );

function binary(triangles: readonly Triangle[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + triangles.length * 50));
  view.setUint32(80, triangles.length, true);
  triangles.forEach((triangle, t) =>
    triangle.flat().forEach((x, i) => view.setFloat32(84 + t * 50 + 12 + i * 4, x, true)),
  );
  return new Uint8Array(view.buffer);
}
const text = (triangles: readonly Triangle[]): string =>
  `solid a\n${triangles.map((t) => `facet normal 0 0 0\nouter loop\n${t.map((p) => `vertex ${p.join(' ')}`).join('\n')}\nendloop\nendfacet`).join('\n')}\nendsolid a\n`;
const obj = (triangles: readonly Triangle[]): string =>
  `${triangles
    .flat()
    .map((p) => `v ${p.join(' ')}`)
    .join('\n')}\n${triangles.map((_, i) => `f ${i * 3 + 1} ${i * 3 + 2} ${i * 3 + 3}`).join('\n')}\n`;

const drawn = (content: string | Uint8Array, clauses: string, name = 'part.stl', path = name) =>
  check(
    {
      'plans/plan.liftplan': `${head}load "L"\n  contingency 0 %\n  free "stands loose"\n  part "P": mesh "${path}", ${clauses}\n`,
      [`plans/${name}`]: content,
    },
    'plans/plan.liftplan',
  );

const plate = primitives.cuboid({ size: [200, 100, 10], center: [300, 50, 5] });
const placed = 'of carbon steel, at (1 m, 0, 0)';

describe('a body from a drawing', () => {
  test('of a plate weighs, balances and measures as the plate by its sizes', () => {
    const byMesh = drawn(binary(trianglesOf(plate)), `unit mm, ${placed}`);
    const bySizes = lift(
      `${head}load "L"\n  contingency 0 %\n  free "stands loose"\n  part "P": plate 200 x 100 x 10 mm, of carbon steel, at (1,300, 50, 5) mm\n`,
    );
    expect(slugs(byMesh)).toEqual([]);
    for (const result of ['calculated weight', 'volume', 'cog x', 'cog y', 'cog z', 'length', 'width', 'height'])
      expect(value(byMesh, 'load', 'L', result), result).toBeCloseTo(value(bySizes, 'load', 'L', result) as number, 6);
  });

  const ring = primitives.torus({ innerRadius: 0.3, outerRadius: 1.2, innerSegments: 24, outerSegments: 32 });
  test.each([
    ['binary STL', 'part.stl', binary(trianglesOf(ring))],
    ['text STL', 'part.STL', text(trianglesOf(ring))],
    ['OBJ', 'part.obj', obj(trianglesOf(ring))],
  ])('%s gives the volume that the library measures', (_, name, content) => {
    const s = drawn(content, 'unit ft, density 490 lb/ft3, at (0, 0, 0)', name);
    const cubicFeet = measurements.measureVolume(ring);
    expect((value(s, 'part', 'P', 'weight') as number) / 0.45359237 / 490 / cubicFeet).toBeCloseTo(1, 5);
    expect(slugs(s)).toEqual([]);
  });

  test.each([
    ['mm', 1e-3],
    ['cm', 1e-2],
    ['m', 1],
    ['in', 0.0254],
    ['ft', 0.3048],
  ])('one unit of it is 1 %s', (unit, metres) => {
    const s = drawn(binary(trianglesOf(plate)), `unit ${unit}, of carbon steel, at (0, 0, 0)`);
    expect((value(s, 'part', 'P', 'volume') as number) / (2e5 * metres ** 3)).toBeCloseTo(1, 6);
    expect((value(s, 'part', 'P', 'cog x') as number) / metres).toBeCloseTo(300, 3);
  });

  test('its datum point is the zero of the file, about which it is laid and turned', () => {
    const s = drawn(binary(trianglesOf(plate)), 'unit mm, of carbon steel, turn 90 deg about z, at (0, 0, 0)');
    expect([value(s, 'part', 'P', 'cog x'), value(s, 'part', 'P', 'cog y')].map((x) => Number(x?.toFixed(6)))).toEqual([
      -0.05, 0.3,
    ]);
  });

  test('turned askew its box errs to the large side', () => {
    const ball = primitives.sphere({ radius: 100, segments: 32 });
    const s = drawn(binary(trianglesOf(ball)), 'unit mm, of carbon steel, turn 45 deg about z, at (0, 0, 0)');
    expect(value(s, 'part', 'P', 'length')).toBeCloseTo(0.2 * Math.SQRT2, 3);
  });

  test('of a path with folders, resolved from the plan that names it', () => {
    const s = check(
      {
        'plans/plan.liftplan': `${head}use "../library/parts.liftplan"\nload "L"\n  contingency 0 %\n  part "P": mesh "../drawings/part.stl", unit mm, ${placed}\n`,
        'library/parts.liftplan': 'gear\n  hook "H": weight 5 kg, capacity 1 t\n',
        'drawings/part.stl': binary(trianglesOf(plate)),
      },
      'plans/plan.liftplan',
    );
    expect(value(s, 'part', 'P', 'weight')).toBeCloseTo(1.57, 5);
  });

  test('nothing is cut from it: where its material lies is not known', () => {
    const s = drawn(
      binary(trianglesOf(plate)),
      `unit mm, ${placed}\n    less: hole, diameter 10 mm, depth 10 mm, at (300, 50, 5) mm`,
    );
    expect(slugs(s)).toContain('cutout-outside');
    expect(value(s, 'part', 'P', 'weight')).toBeCloseTo(1.57, 5);
  });
});

describe('what is no closed body gives no number', () => {
  const whole = trianglesOf(plate);
  const moved = (by: number) => trianglesOf(primitives.cuboid({ size: [200, 100, 10], center: [300 + by, 50, 5] }));
  test.each([
    ['a face is missing', binary(whole.slice(1)), /edges? of it ha/],
    [
      'a face is turned',
      binary([[...(whole[0] as Triangle)].reverse(), ...whole.slice(1)]),
      /turned against each other/,
    ],
    ['two bodies overlap', binary([...whole, ...moved(50)]), /overlap/],
    ['it is cut short', binary(whole).slice(0, -7), /ends before its faces do/],
    [
      'its faces are said to be more than two million',
      (() => {
        const bytes = binary(whole);
        new DataView(bytes.buffer).setUint32(80, 4_000_000_000, true);
        return bytes;
      })(),
      /no faces in the form/,
    ],
    ['a corner is no number', text(whole).replace(/vertex \S+/, 'vertex NaN'), /not given by numbers.*row 4/],
    ['it holds no face', 'solid a\nendsolid a\n', /no face in the file/],
    ['it is something else', 'name,weight kg\nBeam,1\n', /no faces in the form/],
    ['it is empty', '', /no faces in the form/],
    ['it goes on behind its faces', new Uint8Array([...binary(whole), 1]), /longer than the number of faces/],
  ])('%s', (_, content, said) => {
    const s = drawn(content, `unit mm, ${placed}`);
    expect(slugs(s)).toContain('geometry-impossible');
    expect(message(s, 'geometry-impossible')).toMatch(said);
    for (const result of ['weight', 'volume', 'cog x', 'length']) expect(value(s, 'part', 'P', result)).toBeNull();
    expect(value(s, 'load', 'L', 'weight')).toBeNull();
  });

  test.each([
    ['there is no such file', 'gone.stl'],
    ['the ending is another', 'part.step'],
    ['it lies outside the folder', '../../part.stl'],
    ['the path is no relative one', '/plans/part.stl'],
  ])('%s', (_, path) => {
    const s = drawn(binary(whole), `unit mm, ${placed}`, 'part.stl', path);
    expect(slugs(s)).toContain('file-missing');
    expect(value(s, 'load', 'L', 'weight')).toBeNull();
  });

  test('a file elsewhere of that name is offered', () => {
    const s = check(
      {
        'plan.liftplan': `${head}load "L"\n  part "P": mesh "part.stl", unit mm, ${placed}\n`,
        'drawings/part.stl': binary(whole),
      },
      'plan.liftplan',
    );
    expect(s.findings.find(({ slug }) => slug === 'file-missing')?.fixes.map(({ title }) => title)).toEqual([
      'Write "drawings/part.stl"',
    ]);
  });

  test.each([
    ['inches read as millimetres', [8, 4, 2] as const, 'mm', 'in', 'is 8 mm over its longest side and weighs 0.01 kg'],
    [
      'millimetres read as metres',
      [200, 20, 2] as const,
      'm',
      'mm',
      'is 200 m over its longest side and weighs 62,800,000 kg',
    ],
  ])('%s are doubted, and the figure stands', (_, [x, y, z], unit, meant, said) => {
    const body = trianglesOf(primitives.cuboid({ size: [x, y, z] }));
    const s = drawn(binary(body), `unit ${unit}, of carbon steel, at (0, 0, 0)`);
    expect(slugs(s)).toContain('weight-implausible');
    expect(message(s, 'weight-implausible')).toContain(said);
    expect(value(s, 'load', 'L', 'weight')).toBeGreaterThan(0);
    expect(slugs(drawn(binary(body), `unit ${meant}, of carbon steel, at (0, 0, 0)`))).not.toContain(
      'weight-implausible',
    );
  });

  test('without its unit it has no size', () => {
    const s = drawn(binary(whole), placed);
    expect(slugs(s)).toContain('clause-missing');
    expect(value(s, 'load', 'L', 'weight')).toBeNull();
  });
});
