// What a shape is from outside, and the space inside it, as one of a few plain bodies.

import { pipeworkBodies } from './bodies-of-pipework.ts';
import type { Ball, Bend, Bodies, Body, Dome, Extruded, Segment, Turned } from './body.ts';
import { axisRotation, type Placement, still } from './placement.ts';
import { block, pyramid, rectangle, wedge } from './polytopes.ts';
import type {
  Coil,
  DishedHead,
  Elbow,
  Heap,
  HemisphericalHead,
  HollowCore,
  MeshBody,
  Prism,
  Shape,
  SphericalCap,
  TaperedTube,
  Weld,
} from './shapes.ts';
import type { PipeworkShape } from './shapes-of-pipework.ts';
import { bendCentre } from './solids/bent.ts';
import { dish, insideDepth } from './solids/heads.ts';
import { levelWall } from './solids/round.ts';
import { coreMiddles, heapHeight, weldSides } from './solids/shop.ts';
import { filled, ledSpace, sweptPieces } from './swept-body.ts';
import type { Vec2 } from './vector.ts';

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
    case 'weld':
    case 'coil':
    case 'heap':
    case 'hollow core':
      return solidBody(shopBody(shape));
    case 'swept': {
      const pieces = sweptPieces(shape);
      if ('impossible' in pieces) throw new Error(`${pieces.reason}: no body`);
      const inner = ledSpace(shape.of, pieces);
      return { outer: { form: 'led', pieces: inner ? pieces.map(filled) : pieces }, inner, frame: still };
    }
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
  | 'mesh'
  | 'swept'
  | 'weld'
  | 'coil'
  | 'heap'
  | 'hollow core';

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

/** What shops make and heap up: a weld counts as its box, a coil as a ring, cores are elliptic and right through. */
function shopBody(shape: Weld | Coil | Heap | HollowCore): Body {
  switch (shape.kind) {
    case 'weld':
      return block(shape.length, ...weldSides(shape));
    case 'coil': {
      const { outside, bore, width } = shape;
      const ring = rectangle((outside - bore) / 2, width).map(([r, z]): Vec2 => [r + (outside + bore) / 4, z]);
      return { form: 'revolved', outline: ring };
    }
    case 'heap': {
      const { base, length = base } = shape;
      return { form: 'ridge', radius: base / 2, height: heapHeight(shape), half: (length - base) / 2 };
    }
    case 'hollow core': {
      const { x, y, z, coreWidth, coreHeight } = shape;
      const middles = coreMiddles(shape);
      return { form: 'cored', halves: [x / 2, y / 2, z / 2], across: coreWidth / 2, up: coreHeight / 2, middles };
    }
  }
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
