// What a shape is from outside, and the space inside it, as one of a few plain bodies.

import { pipeworkBodies } from './bodies-of-pipework.ts';
import type { Outline } from './outline.ts';
import { axisRotation, type Placement, still } from './placement.ts';
import { block, pyramid, rectangle, wedge } from './polytopes.ts';
import type {
  DishedHead,
  Elbow,
  HemisphericalHead,
  MeshBody,
  Prism,
  Shape,
  SphericalCap,
  TaperedTube,
} from './shapes.ts';
import type { PipeworkShape } from './shapes-of-pipework.ts';
import { bendCentre } from './solids/bent.ts';
import { type Dish, dish, insideDepth } from './solids/heads.ts';
import { levelWall } from './solids/round.ts';
import type { Vec3 } from './vector.ts';

export type Body = Hollow | Extruded | Spheroidal | Parabolic | Revolved | Sector | Segment | United;

/** The bodies that the space in a shape may have; a ball is then a whole one. */
export type Hollow = Polytope | Turned | Ball | Dome | Bend | Crossed;

/** Convex, with flat faces; the corners of each face counter-clockwise seen from outside. */
export interface Polytope {
  readonly form: 'polytope';
  readonly points: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

/** An outline less its holes, from -half to half along z. */
export interface Extruded {
  readonly form: 'extruded';
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly half: number;
}

/** An ellipsoid about zero by its half axes. */
export interface Spheroidal {
  readonly form: 'ellipsoid';
  readonly halves: Vec3;
}

/** A parabola turned about z: `radius` at `low`, its tip `height` above. */
export interface Parabolic {
  readonly form: 'paraboloid';
  readonly low: number;
  readonly height: number;
  readonly radius: number;
}

/** An outline of (radius, z) turned about z. */
export interface Revolved {
  readonly form: 'revolved';
  readonly outline: Outline;
}

/** A ring section within `angle` of a turn at most half, its middle towards x, from -half to half along z. */
export interface Sector {
  readonly form: 'sector';
  readonly outer: number;
  readonly inner: number;
  readonly angle: number;
  readonly half: number;
}

/** What lies above y = `low` of a disc about zero, from -half to half along z. */
export interface Segment {
  readonly form: 'segment';
  readonly radius: number;
  readonly low: number;
  readonly half: number;
}

/** Bodies that are one, each with how it stands. */
export interface United {
  readonly form: 'united';
  readonly pieces: readonly { readonly body: Exclude<Body, United>; readonly frame: Placement }[];
}

/** A radius that changes evenly along z; with a lean the centre moves by so much along y a metre of z, from zero at `low`. */
export interface Turned {
  readonly form: 'turned';
  readonly lean?: number;
  readonly low: number;
  readonly high: number;
  readonly lowRadius: number;
  readonly highRadius: number;
}

/** What lies between `low` and `high` of a sphere about (0, 0, centre). */
export interface Ball {
  readonly form: 'ball';
  readonly centre: number;
  readonly radius: number;
  readonly low: number;
  readonly high: number;
}

/** A straight flange from `low` up to the tangent line, and a curved end above it. */
export interface Dome {
  readonly form: 'dome';
  readonly low: number;
  readonly tangent: number;
  readonly end: Spheroid | Knuckled;
}

/** Half a spheroid of radius `across` and height `up`, its face moved out by `grown`. */
export interface Spheroid {
  readonly curve: 'spheroid';
  readonly across: number;
  readonly up: number;
  readonly grown: number;
}

/** Knuckle and crown, their radii moved out by `grown`. */
export interface Knuckled extends Dish {
  readonly curve: 'knuckled';
  readonly grown: number;
}

/** A disc led round z at `bend`, counter-clockwise by `angle` from the direction -y; a full ring has no ends. */
export interface Bend {
  readonly form: 'bend';
  readonly bend: number;
  readonly radius: number;
  readonly angle: number | 'ring';
}

/** Two rounds of one radius that cross: one along x to `run` on both sides, one along y from zero to `branch`. */
export interface Crossed {
  readonly form: 'crossed';
  readonly radius: number;
  readonly run: number;
  readonly branch: number;
}

/** A shape's bodies, and how they lie in its own axes seen from its datum point. */
export interface Bodies {
  readonly outer: Body;
  readonly inner: Hollow | null;
  readonly frame: Placement;
}

/** The bodies of a shape that can be made; a section counts as its box, a sheet as a plate without thickness. */
export function bodiesOf(shape: Shape): Bodies {
  switch (shape.kind) {
    case 'box':
    case 'plate':
    case 'envelope':
      return solidBody(block(shape.x, shape.y, shape.z));
    case 'wedge':
      return solidBody(wedge(shape.x, shape.y, shape.z));
    case 'opening':
      return solidBody(block(shape.x, shape.y, shape.depth));
    case 'sheet':
      return solidBody({ form: 'extruded', outline: rectangle(shape.x, shape.y), holes: [], half: 0 });
    case 'section':
      return solidBody(block(shape.length, shape.width, shape.depth));
    case 'rectangular tube': {
      const { y, z, wall, length } = shape;
      return { outer: block(length, y, z), inner: block(length, y - 2 * wall, z - 2 * wall), frame: still };
    }
    case 'pyramid':
      return solidBody(pyramid(shape));
    case 'prism':
      return solidBody(prism(shape));
    case 'mesh':
      return meshBox(shape);
    case 'flange':
    case 'nozzle':
    case 'manway':
    case 'tee':
    case 'reducer':
    case 'bolt':
    case 'bolt set':
    case 'nut':
    case 'washer':
      return pipeworkBodies(shape);
    default:
      return roundBodies(shape);
  }
}

type Flat =
  | 'box'
  | 'plate'
  | 'envelope'
  | 'wedge'
  | 'opening'
  | 'sheet'
  | 'section'
  | 'rectangular tube'
  | 'pyramid'
  | 'prism'
  | 'mesh';

function roundBodies(shape: Exclude<Shape, { kind: Flat } | PipeworkShape>): Bodies {
  switch (shape.kind) {
    case 'cylinder':
      return solidBody(rod(shape.diameter, shape.length));
    case 'hole':
      return solidBody(rod(shape.diameter, shape.depth));
    case 'bar':
      return { ...solidBody(rod(shape.diameter, shape.length)), frame: alongX };
    case 'tube': {
      const bore = shape.bore ?? shape.outside - 2 * shape.wall;
      return { outer: rod(shape.outside, shape.length), inner: rod(bore, shape.length), frame: still };
    }
    case 'pipe': {
      const bore = shape.outside - 2 * shape.wall;
      return { outer: rod(shape.outside, shape.length), inner: rod(bore, shape.length), frame: alongX };
    }
    case 'sphere':
      return solidBody(ball(shape.diameter));
    case 'hollow sphere':
      return { outer: ball(shape.outside), inner: ball(shape.outside - 2 * shape.wall), frame: still };
    case 'spherical cap':
      return solidBody(cap(shape));
    case 'ellipsoid':
      return solidBody({ form: 'ellipsoid', halves: [shape.x / 2, shape.y / 2, shape.z / 2] });
    case 'paraboloid': {
      const { base, height } = shape;
      return solidBody({ form: 'paraboloid', low: -height / 2, height, radius: base / 2 });
    }
    case 'turned':
      return solidBody({ form: 'revolved', outline: shape.outline });
    case 'curved plate': {
      const { outside, wall, angle, length } = shape;
      return solidBody({ form: 'sector', outer: outside / 2, inner: outside / 2 - wall, angle, half: length / 2 });
    }
    case 'cylinder segment': {
      const low = shape.diameter / 2 - shape.height;
      const outer: Segment = { form: 'segment', radius: shape.diameter / 2, low, half: shape.length / 2 };
      return { ...solidBody(outer), frame: { R: still.R, t: [0, -(low + shape.diameter / 2) / 2, 0] } };
    }
    case 'cone':
      return solidBody(taper(shape.base, 0, shape.height));
    case 'frustum':
      return solidBody(taper(shape.base, shape.top, shape.height));
    case 'tapered tube':
    case 'conical head':
      return { outer: taper(shape.base, shape.top, shape.height), inner: taperInside(shape), frame: still };
    case 'torus':
      return solidBody({
        form: 'bend',
        bend: shape.meanDiameter / 2,
        radius: shape.sectionDiameter / 2,
        angle: 'ring',
      });
    case 'elbow':
      return elbow(shape);
    case 'dished head':
    case 'hemispherical head':
      return { outer: dome(shape, shape.wall), inner: dome(shape, 0), frame: still };
  }
}

const solidBody = (outer: Body): Bodies => ({ outer, inner: null, frame: still });
const alongX: Placement = { R: axisRotation('x'), t: [0, 0, 0] };

const rod = (diameter: number, length: number): Turned => taper(diameter, diameter, length);
const taper = (base: number, top: number, height: number): Turned => ({
  form: 'turned',
  low: -height / 2,
  high: height / 2,
  lowRadius: base / 2,
  highRadius: top / 2,
});

const ball = (diameter: number): Ball => ({
  form: 'ball',
  centre: 0,
  radius: diameter / 2,
  low: -diameter / 2,
  high: diameter / 2,
});

/** By the radii of its faces: the ball's middle lies as far above the base as makes both faces lie on it. */
function cap({ base, top = 0, height }: SphericalCap): Ball {
  const aboveBase = (top * top - base * base) / (8 * height) + height / 2;
  const radius = Math.hypot(base / 2, aboveBase);
  return { form: 'ball', centre: aboveBase - height / 2, radius, low: -height / 2, high: height / 2 };
}

/** A mesh counts as its box: exact while it lies along the axes, else its eight corners err to the large side. */
function meshBox({ min, max }: MeshBody): Bodies {
  const side = (i: 0 | 1 | 2) => max[i] - min[i];
  const middle = (i: 0 | 1 | 2) => (max[i] + min[i]) / 2;
  return {
    ...solidBody(block(side(0), side(1), side(2))),
    frame: { R: still.R, t: [middle(0), middle(1), middle(2)] },
  };
}

/** The space in a tapering wall; under a pointed end it closes in a point of its own. */
function taperInside({ base, top, wall, height }: TaperedTube): Turned {
  const level = levelWall({ wall, base, top, height });
  if (top > 0) return taper(base - 2 * level, top - 2 * level, height);
  const inside = base - 2 * level;
  return { ...taper(inside, 0, height), high: -height / 2 + (height * inside) / base };
}

function elbow(shape: Elbow): Bodies {
  const { outside, wall, bendRadius, angle } = shape;
  const pipe = (radius: number): Bend => ({ form: 'bend', bend: bendRadius, radius, angle });
  const inner = wall === undefined ? null : pipe(outside / 2 - wall);
  return { outer: pipe(outside / 2), inner, frame: { R: still.R, t: bendCentre(shape) } };
}

/** A head's inner face moved out by `grown`: 0 is the space inside, the wall the outside. */
function dome(shape: DishedHead | HemisphericalHead, grown: number): Dome {
  const { outside, wall, straightFlange: flange = 0 } = shape;
  const [radius, depth] = [outside / 2 - wall, insideDepth(shape)];
  const low = -(flange + depth + wall) / 2;
  const end: Dome['end'] =
    shape.kind === 'dished head' && shape.form === 'torispherical'
      ? { curve: 'knuckled', ...dish(radius, shape.knuckleRadius, shape.crownRadius), grown }
      : { curve: 'spheroid', across: radius, up: depth, grown };
  return { form: 'dome', low, tangent: low + flange, end };
}

const prism = ({ outline, holes, length }: Prism): Extruded => ({
  form: 'extruded',
  outline,
  holes,
  half: length / 2,
});
