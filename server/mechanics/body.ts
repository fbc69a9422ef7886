// The plain bodies that a shape is from outside, and that the space inside it is.
import type { Outline } from './outline.ts';
import type { Placement } from './placement.ts';
import type { Dish } from './solids/heads.ts';
import type { Cut, Piece } from './sweep.ts';
import type { Vec3 } from './vector.ts';

export type Body =
  | Hollow
  | Extruded
  | Spheroidal
  | Parabolic
  | Revolved
  | Sector
  | Segment
  | Led
  | Ridge
  | Cored
  | United;

/** The bodies that the space in a shape may have; a ball is then a whole one. */
export type Hollow = Polytope | Turned | Ball | Dome | Bend | Mitred | Joined | Crossed;

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

/** A section led along a line, less its holes. */
export interface Led {
  readonly form: 'led';
  readonly pieces: readonly Piece[];
}

/** A cone, its base at low z, drawn out by `half` to both sides along x. */
export interface Ridge {
  readonly form: 'ridge';
  readonly radius: number;
  readonly height: number;
  readonly half: number;
}

/** A block about zero by its half sides, less elliptic cores along x whose middles lie at `middles` along y. */
export interface Cored {
  readonly form: 'cored';
  readonly halves: Vec3;
  readonly across: number;
  readonly up: number;
  readonly middles: readonly number[];
}

/** A cylinder about z whose ends are cut aslant. */
export interface Mitred {
  readonly form: 'mitred';
  readonly radius: number;
  readonly low: Cut;
  readonly high: Cut;
}

/** Several bodies that touch and are one, each in the axes of its own frame. */
export interface Joined {
  readonly form: 'joined';
  readonly parts: readonly { readonly body: Hollow; readonly frame: Placement }[];
}

/** A shape's bodies, and how they lie in its own axes seen from its datum point. */
export interface Bodies {
  readonly outer: Body;
  readonly inner: Hollow | null;
  readonly frame: Placement;
}
