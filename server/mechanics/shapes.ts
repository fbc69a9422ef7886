// The shapes a part, a liquid's container or a cut-out may have, each with its sizes in its own axes.
//
// The datum point is the centre of the bounding box unless the shape says otherwise. Lengths in m, angles in rad, masses in
// kg. Whether the sizes make a body at all is for `solid` to say.
import type { PipeworkShape } from './shapes-of-pipework.ts';
import type { Vec2, Vec3 } from './vector.ts';

export type Shape =
  | Box
  | Cylinder
  | Tube
  | RectangularTube
  | Sphere
  | HollowSphere
  | Cone
  | Frustum
  | SphericalCap
  | Ellipsoid
  | Paraboloid
  | Turned
  | CurvedPlate
  | CylinderSegment
  | TaperedTube
  | Pyramid
  | Prism
  | Torus
  | Elbow
  | DishedHead
  | HemisphericalHead
  | Section
  | Pipe
  | Bar
  | Sheet
  | Hole
  | Opening
  | MeshBody
  | Swept
  | Weld
  | Coil
  | Heap
  | HollowCore
  | PipeworkShape;

export type ShapeKind = Shape['kind'];

/** A block; an envelope is an upper bound of one. A wedge has a right triangle section, full height at low x. */
export interface Box {
  readonly kind: 'box' | 'plate' | 'envelope' | 'wedge';
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Own z along the axis. */
export interface Cylinder {
  readonly kind: 'cylinder';
  readonly diameter: number;
  readonly length: number;
}

/** Own z along the axis; outside diameter, and either the wall or the bore (inside diameter). */
export type Tube = { readonly kind: 'tube'; readonly outside: number; readonly length: number } & (
  | { readonly wall: number; readonly bore?: undefined }
  | { readonly bore: number; readonly wall?: undefined }
);

/** Own x along the length, outside width y, outside height z; corners taken as square. */
export interface RectangularTube {
  readonly kind: 'rectangular tube';
  readonly y: number;
  readonly z: number;
  readonly wall: number;
  readonly length: number;
}

export interface Sphere {
  readonly kind: 'sphere';
  readonly diameter: number;
}

export interface HollowSphere {
  readonly kind: 'hollow sphere';
  readonly outside: number;
  readonly wall: number;
}

/** Own z from the base (low z) to the tip. */
export interface Cone {
  readonly kind: 'cone';
  readonly base: number;
  readonly height: number;
}

/** Own z from the base (low z) to the top; diameters, either may be the larger. */
export interface Frustum {
  readonly kind: 'frustum';
  readonly base: number;
  readonly top: number;
  readonly height: number;
}

/**
 * Flat face (diameter `base`) at low z; a height above half the base is more than a hemisphere. With a `top` (diameter) it
 * ends in a second flat face: the slice of a ball between two level planes.
 */
export interface SphericalCap {
  readonly kind: 'spherical cap';
  readonly base: number;
  readonly top?: number;
  readonly height: number;
}

/** Whole lengths of its three axes. */
export interface Ellipsoid {
  readonly kind: 'ellipsoid';
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A parabola turned about own z, flat face (diameter `base`) at low z. */
export interface Paraboloid {
  readonly kind: 'paraboloid';
  readonly base: number;
  readonly height: number;
}

/**
 * An outline turned once about own z: each corner is (radius, along own z), none on the other side of the axis. Datum point:
 * the outline's (0, 0), on the axis.
 */
export interface Turned {
  readonly kind: 'turned';
  readonly outline: readonly Vec2[];
}

/** A piece of a tube over `angle` in (0, pi], its middle towards own x. Datum point: on the axis of the curve at mid-length. */
export interface CurvedPlate {
  readonly kind: 'curved plate';
  readonly outside: number;
  readonly wall: number;
  readonly angle: number;
  readonly length: number;
}

/** What a flat cut along the axis leaves of a round bar, own z along it, flat face at low y; `height` square to that face. */
export interface CylinderSegment {
  readonly kind: 'cylinder segment';
  readonly diameter: number;
  readonly height: number;
  readonly length: number;
}

/** Outside diameters, base at low z; the wall is measured square to the plate; both ends are cut level. Top 0: pointed. */
export interface TaperedTube {
  readonly kind: 'tapered tube' | 'conical head';
  readonly base: number;
  readonly top: number;
  readonly wall: number;
  readonly height: number;
}

/** Base (along x, along y) at low z; without a top it ends in a point. Sides need not be in proportion; one of the top may be 0: a ridge. */
export interface Pyramid {
  readonly kind: 'pyramid';
  readonly base: Vec2;
  readonly top?: Vec2;
  readonly height: number;
}

/** An outline in own x, y carried along own z. Datum point: the outline's (0, 0) at mid-length. */
export interface Prism {
  readonly kind: 'prism';
  readonly outline: readonly Vec2[];
  readonly holes: readonly (readonly Vec2[])[];
  readonly length: number;
}

/** A round section whose centre goes round own z at the mean diameter. */
export interface Torus {
  readonly kind: 'torus';
  readonly meanDiameter: number;
  readonly sectionDiameter: number;
}

/**
 * A pipe bend, solid without a wall. It comes in along +x and turns towards +y by `angle` in (0, pi]. Datum point: where
 * the centre lines cross; for a half turn, which has no such point, the bend centre.
 */
export interface Elbow {
  readonly kind: 'elbow';
  readonly outside: number;
  readonly wall?: number;
  readonly bendRadius: number;
  readonly angle: number;
}

/**
 * A vessel head, opening at low z, its wall alike all over (the outer face is the inner one moved out by the wall).
 * Ellipsoidal: inside depth a quarter of the inside diameter. Torispherical: inside crown and knuckle radius.
 */
export type DishedHead = {
  readonly kind: 'dished head';
  readonly outside: number;
  readonly wall: number;
  readonly straightFlange?: number;
} & (
  | { readonly form: 'ellipsoidal'; readonly crownRadius?: undefined; readonly knuckleRadius?: undefined }
  | { readonly form: 'torispherical'; readonly crownRadius: number; readonly knuckleRadius: number }
);

/** Half a hollow sphere on a straight flange, opening at low z. */
export interface HemisphericalHead {
  readonly kind: 'hemispherical head';
  readonly outside: number;
  readonly wall: number;
  readonly straightFlange?: number;
}

/** A rolled section along own x with the mass per length of a table; its centre is taken at the centre of its box. */
export interface Section {
  readonly kind: 'section';
  readonly length: number;
  /** Along own z. */
  readonly depth: number;
  /** Along own y. */
  readonly width: number;
  readonly massPerLength: number;
}

/** A straight pipe along own x; a mass per length from a table goes before the one its sizes give. */
export interface Pipe {
  readonly kind: 'pipe';
  readonly length: number;
  readonly outside: number;
  readonly wall: number;
  readonly massPerLength?: number;
}

/** A round bar along own x; a mass per length from a table goes before the one its diameter gives. */
export interface Bar {
  readonly kind: 'bar';
  readonly length: number;
  readonly diameter: number;
  readonly massPerLength?: number;
}

/** Something flat in own x, y of a mass per area, such as grating; the area, where given, need not be x by y. */
export interface Sheet {
  readonly kind: 'sheet';
  readonly x: number;
  readonly y: number;
  readonly area?: number;
  readonly massPerArea: number;
}

/** What a drill takes away, along own z. */
export interface Hole {
  readonly kind: 'hole';
  readonly diameter: number;
  readonly depth: number;
}

/** A rectangle along own x, y taken away, `depth` along own z. */
export interface Opening {
  readonly kind: 'opening';
  readonly x: number;
  readonly y: number;
  readonly depth: number;
}

/** A closed body measured from a drawing file; where its faces lie is not kept, only its box. Datum point: the file's zero. */
export interface MeshBody {
  readonly kind: 'mesh';
  readonly volume: number;
  readonly centre: Vec3;
  readonly min: Vec3;
  readonly max: Vec3;
}

/** What runs straight and alike from end to end, so that it may be led along a line. */
export type Member = Cylinder | Tube | RectangularTube | Prism | Section | Pipe | Bar | Weld;

/**
 * A member led along a line through its corners; of its own sizes all but the length count. Corners are mitred, or bent to a
 * radius of the line. Where the line ends in its first corner it is a ring. Datum point: the zero the corners are given from.
 */
export interface Swept {
  readonly kind: 'swept';
  readonly of: Member;
  readonly corners: readonly Vec3[];
  readonly bendRadius?: number;
  /** How much longer its line is taken than drawn, m: what the tolerance of its corners may make of it. */
  readonly longer?: number;
}

/**
 * Weld metal along own x, its centre taken at the middle of its box. A fillet fills a corner between two legs. A butt weld fills
 * the gap of its root and what the bevels leave open above the root face: `prepared` says how much of one face bevelled on both
 * edges that is. `excess` is the share of metal above the flat.
 */
export type Weld = { readonly kind: 'weld'; readonly length: number; readonly excess: number } & (
  | { readonly leg: Vec2; readonly thickness?: undefined }
  | {
      readonly leg?: undefined;
      readonly thickness: number;
      readonly gap: number;
      readonly rootFace: number;
      readonly bevel: number;
      readonly prepared: number;
    }
);

/**
 * Strip or wire wound about own z, bore and outside as diameters. `fillFactor` is the share of the ring that is metal; of wire
 * whose length is known that length counts instead.
 */
export interface Coil {
  readonly kind: 'coil';
  readonly outside: number;
  readonly bore: number;
  readonly width: number;
  readonly fillFactor: number;
  readonly wire?: number;
  readonly length?: number;
}

/**
 * Loose material on a level floor, base at low z: a cone, or where it is longer than wide a ridge between two half cones, along
 * own x. Its height, or the angle of its slope.
 */
export type Heap = { readonly kind: 'heap'; readonly base: number; readonly length?: number } & (
  | { readonly height: number; readonly angle?: undefined }
  | { readonly height?: undefined; readonly angle: number }
);

/** A slab along own x with cores right through at mid-depth, evenly spread: round ones, or oval ones counted as ellipses. */
export interface HollowCore {
  readonly kind: 'hollow core';
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly cores: number;
  readonly coreWidth: number;
  readonly coreHeight: number;
}
