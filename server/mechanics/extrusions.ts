// The ways in which a shape is one outline or disc carried along a straight line: a block in three, a pipe in one.
import { apply, axisRotation, compose, inverse, type Placement, still } from './placement.ts';
import type { Disc, Planar } from './planar.ts';
import { rectangle } from './polytopes.ts';
import type { Shape } from './shapes.ts';
import { coreMiddles } from './solids/shop.ts';
import { columnOf, cross, norm, type Vec2, type Vec3 } from './vector.ts';

/** A figure in the x, y of `axes`, from -half to half along their z; `axes` stands in the shape's own axes. */
export interface Extrusion {
  readonly axes: Placement;
  readonly outer: Planar;
  readonly holes: readonly Planar[];
  readonly half: number;
}

/** All ways to see a shape as an extrusion; none of what tapers or is rounded along every line. */
export function extrusionsOf(shape: Shape): readonly Extrusion[] {
  switch (shape.kind) {
    case 'box':
    case 'plate':
    case 'envelope':
      return block(shape.x, shape.y, shape.z);
    case 'opening':
      return block(shape.x, shape.y, shape.depth);
    case 'wedge': {
      const { x, y, z } = shape;
      const corners: readonly Vec2[] = [
        [-z / 2, -x / 2],
        [z / 2, -x / 2],
        [-z / 2, x / 2],
      ];
      return [{ axes: laid.y, outer: { corners }, holes: [], half: y / 2 }];
    }
    case 'cylinder':
      return [round(shape.diameter, 0, shape.length, laid.z)];
    case 'hole':
      return [round(shape.diameter, 0, shape.depth, laid.z)];
    case 'bar':
      return [round(shape.diameter, 0, shape.length, laid.x)];
    case 'tube':
      return [round(shape.outside, shape.bore ?? shape.outside - 2 * shape.wall, shape.length, laid.z)];
    case 'pipe':
      return [round(shape.outside, shape.outside - 2 * shape.wall, shape.length, laid.x)];
    case 'rectangular tube': {
      const { y, z, wall, length } = shape;
      const holes = [{ corners: rectangle(y - 2 * wall, z - 2 * wall) }];
      return [{ axes: laid.x, outer: { corners: rectangle(y, z) }, holes, half: length / 2 }];
    }
    case 'hollow core': {
      if (shape.coreWidth !== shape.coreHeight) return [];
      const { outer, half } = block(shape.x, shape.y, shape.z)[1]!;
      const holes = coreMiddles(shape).map((at): Disc => ({ centre: [at, 0], radius: shape.coreWidth / 2 }));
      return [{ axes: laid.x, outer, holes, half }];
    }
    case 'prism': {
      const holes = shape.holes.map((corners) => ({ corners }));
      return [{ axes: still, outer: { corners: shape.outline }, holes, half: shape.length / 2 }];
    }
    default:
      return [];
  }
}

/** The axes whose z runs along own x, y or z, as `axis` lays a part. */
const laid: Readonly<Record<'x' | 'y' | 'z', Placement>> = {
  x: { R: axisRotation('x'), t: [0, 0, 0] },
  y: { R: axisRotation('y'), t: [0, 0, 0] },
  z: still,
};

const block = (x: number, y: number, z: number): readonly Extrusion[] => [
  { axes: laid.z, outer: { corners: rectangle(x, y) }, holes: [], half: z / 2 },
  { axes: laid.x, outer: { corners: rectangle(y, z) }, holes: [], half: x / 2 },
  { axes: laid.y, outer: { corners: rectangle(z, x) }, holes: [], half: y / 2 },
];

const round = (outside: number, bore: number, length: number, axes: Placement): Extrusion => ({
  axes,
  outer: disc(outside),
  holes: bore > 0 ? [disc(bore)] : [],
  half: length / 2,
});

const disc = (diameter: number): Disc => ({ centre: [0, 0], radius: diameter / 2 });

/** Figures of a placed extrusion in the x, y of another one's axes, and where it begins and ends along their z. */
export interface Section {
  readonly outer: Planar;
  readonly holes: readonly Planar[];
  readonly low: number;
  readonly high: number;
}

/** How far two lines may lean, as a sine, and still be parallel. */
const parallel = 1e-10;

/** One extrusion, its shape placed by `place`, seen in the axes of another; nothing unless their lines are parallel. */
export function seenFrom(base: Placement, one: Extrusion, place: Placement): Section | undefined {
  const axes = compose(inverse(base), compose(place, one.axes));
  const along = columnOf(axes.R, 2);
  if (norm(cross(along, [0, 0, 1])) > parallel) return undefined;
  return {
    outer: moved(one.outer, axes),
    holes: one.holes.map((hole) => moved(hole, axes)),
    low: axes.t[2] - one.half,
    high: axes.t[2] + one.half,
  };
}

const moved = (figure: Planar, axes: Placement): Planar =>
  'radius' in figure
    ? { centre: flat(apply(axes, [...figure.centre, 0])), radius: figure.radius }
    : { corners: figure.corners.map((corner) => flat(apply(axes, [...corner, 0]))) };

const flat = ([x, y]: Vec3): Vec2 => [x, y];
