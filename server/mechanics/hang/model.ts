// The question and the answer of a hanging equilibrium: what hangs on what, and how it comes to rest.
import type { Mat3, Vec3 } from '../vector.ts';

/** One place a sling touches: a fixed point, a named point of a body, or a particle. Indices into the model's lists. */
export type NodeRef =
  | { readonly anchor: number }
  | { readonly body: number; readonly point: number }
  | { readonly particle: number };

/** A fixed place in the world: the hook of one crane, the two hooks of two, a boom tip. */
export interface Anchor {
  readonly name: string;
  /** World, m. */
  readonly at: Vec3;
}

/** A rigid body: the load, a spreader, a lifting beam, a frame. */
export interface Body {
  readonly name: string;
  /** N, may be 0. */
  readonly weight: number;
  /** Body axes, m. */
  readonly cog: Vec3;
  readonly points: readonly { readonly name: string; readonly at: Vec3 }[];
  /** Both ends of a beam on its own x axis, m. */
  readonly axis?: readonly [number, number];
  /** Drawn orientation, body axes to world; world axes when absent. */
  readonly orientation?: Mat3;
}

/** A ring, master link, joining shackle or hook block: weight without rotation. */
export interface Particle {
  readonly name: string;
  /** N, may be 0. */
  readonly weight: number;
}

/** A sling or a whole leg: two nodes, or more when it runs free over the nodes between (one pull in all parts). */
export interface Sling {
  readonly name: string;
  readonly path: readonly NodeRef[];
  /** Unstretched, m, over the whole path. */
  readonly length: number;
  /** EA, N. Above 1e5 times all weight it is taken as that: tensions of determinate rigs move by 1e-5. */
  readonly stiffness: number;
  /** N, half of each part at each of its ends. */
  readonly weight: number;
}

/** A force of fixed direction at a fixed point of a body: wind at the pressure centre. */
export interface DeadForce {
  readonly body: number;
  /** Body axes, m. */
  readonly point: Vec3;
  /** World, N. */
  readonly force: Vec3;
}

export interface HangModel {
  readonly anchors: readonly Anchor[];
  readonly bodies: readonly Body[];
  readonly particles: readonly Particle[];
  readonly slings: readonly Sling[];
  readonly forces?: readonly DeadForce[];
}

export interface HangOptions {
  /** While typing: say `does-not-hang-as-drawn` after the descent, and leave out where it would fall. */
  readonly quick?: boolean;
}

export type HangErrorCode =
  | 'bad-number'
  | 'bad-path'
  | 'no-weight'
  | 'unsupported-body'
  | 'legs-too-short'
  | 'too-soft'
  | 'does-not-hang-as-drawn'
  | 'no-convergence';

/** Why there is no result; `name` is the item to point at, where there is one. */
export interface HangError {
  readonly error: HangErrorCode;
  readonly name: string | null;
  /** For `does-not-hang-as-drawn`: how far a body turns, rad. */
  readonly turned?: number;
}

/** One straight part of a taut sling. */
export interface SlingPart {
  /** Stretched, m. */
  readonly length: number;
  /** From the horizontal, rad in [0, pi/2]. */
  readonly angle: number;
  /** Tension at its upper end: the middle's and half the weight along it, N. */
  readonly upperTension: number;
}

export interface SlingResult {
  /** Pull at the middle, one in all parts, N; exactly 0 when slack. */
  readonly tension: number;
  readonly slack: boolean;
  /** Stretched path length when taut; straight distance along the path when slack, m. */
  readonly lengthNow: number;
  /** Flattest part from the horizontal, rad; null when slack. */
  readonly angleFromHorizontal: number | null;
  /** Largest over the parts, N; half a part's weight when slack. */
  readonly upperTension: number;
  /** In path order; empty when slack. */
  readonly parts: readonly SlingPart[];
  /** Force of the sling with its weight on each node of the path, N: body axes at a body, else world axes. */
  readonly forces: readonly Vec3[];
}

/** Where a body is. */
export interface BodyPlace {
  /** Body axes to world. Its heading means nothing under one hook. */
  readonly rotation: Mat3;
  /** World place of the body's own datum, m. Its x and y mean nothing under one hook. */
  readonly position: Vec3;
  /** Angle of body z to world z, rad. */
  readonly tilt: number;
  /** World up in body axes. */
  readonly up: Vec3;
  /** World z of the centre of gravity, m. */
  readonly cogHeight: number;
}

export interface BodyResult extends BodyPlace {
  /** m; null where the rig is not at rest stably, the body rolls free or weighs nothing. */
  readonly rightingLever: number | null;
  /** False where the body may turn by itself without any change of energy. */
  readonly orientationUnique: boolean;
  readonly freeToRoll: boolean;
  /** Largest distance of used points and centre from their mean, m: the measure for a lever that is too small. */
  readonly size: number;
  /** With one anchor only: its place in body axes, less the centre's: where the hook stands over the drawn centre, m. */
  readonly hookOverCentre: Vec3 | null;
}

export interface AfterTopple {
  readonly tensions: readonly number[];
  /** Of each body, rad. */
  readonly tilts: readonly number[];
  /** Largest turn of a body against the drawn pose, rad. */
  readonly turned: number;
}

/** A pose with a set of tensions that hold it. */
export interface Placed {
  readonly slings: readonly SlingResult[];
  readonly bodies: readonly BodyPlace[];
  readonly particles: readonly { readonly position: Vec3 }[];
  /** Force of the slings, with the weight of their ends, on each anchor; world axes, N. */
  readonly anchors: readonly { readonly force: Vec3 }[];
}

export interface HangResult extends Placed {
  readonly status: 'stable' | 'neutral' | 'unstable';
  /** Of an unstable pose: a body goes over, or the whole rig only turns about the hook line. */
  readonly mode: 'topples' | 'spins' | null;
  /**
   * It does not hang as drawn: it falls from there, or comes to rest turned by more than 30° from a pose that lets go.
   * Its tensions are information and no basis for anything.
   */
  readonly turnsOver: boolean;
  /** Largest force or moment left over, of all weight. Below 1e-8 always. */
  readonly residual: number;
  readonly iterations: number;
  /** Largest turn of a body's up direction against the drawn pose hung without turning, rad. */
  readonly turned: number;
  /** Eigenvalues of the scaled stiffness that are nothing. */
  readonly zeroModes: number;
  /** All that hangs, slings included, N. */
  readonly totalWeight: number;
  readonly bodies: readonly BodyResult[];
  /** Where the load ends that falls from an unstable pose; null where it does not, or was not looked for. */
  readonly afterTopple: AfterTopple | null;
}
