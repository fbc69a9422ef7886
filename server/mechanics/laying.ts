// How a shape lies when `axis` names the way its own axis points. A mirror image would do for most shapes but not for all, so each gets a proper turn.
import type { AxisLetter } from './placement.ts';
import type { ShapeKind } from './shapes.ts';
import { identity, type Mat3, multiply } from './vector.ts';

/**
 * member: runs along own x, width along own y, depth along own z; its length is what the axis points.
 * even: alike on both sides of own x, y, so that reversing own z changes nothing.
 * ended: alike on both sides of own y, z plane (own x), with two different ends along own z.
 * wedge: alike on both sides of own x, z plane (own y).
 */
type Symmetry = 'member' | 'even' | 'ended' | 'wedge';

const symmetries: Partial<Record<ShapeKind, Symmetry>> = {
  section: 'member',
  pipe: 'member',
  bar: 'member',
  weld: 'member',
  'rectangular tube': 'member',
  cone: 'ended',
  frustum: 'ended',
  'spherical cap': 'ended',
  'tapered tube': 'ended',
  'conical head': 'ended',
  pyramid: 'ended',
  'dished head': 'ended',
  'hemispherical head': 'ended',
  wedge: 'wedge',
  'curved plate': 'wedge',
  paraboloid: 'ended',
  turned: 'ended',
  'cylinder segment': 'ended',
  mesh: 'ended',
  flange: 'ended',
  nozzle: 'ended',
  manway: 'ended',
  reducer: 'ended',
  bolt: 'ended',
  heap: 'ended',
};

/** Own x, y, z become y, z, x. */
const toX: Mat3 = [0, 0, 1, 1, 0, 0, 0, 1, 0];

const lyings: Readonly<Record<Symmetry, Readonly<Record<AxisLetter, Mat3>>>> = {
  member: { x: identity, y: [0, -1, 0, 1, 0, 0, 0, 0, 1], z: [0, 1, 0, 0, 0, 1, 1, 0, 0] },
  even: { x: toX, y: [1, 0, 0, 0, 0, -1, 0, 1, 0], z: identity },
  ended: { x: toX, y: [-1, 0, 0, 0, 0, 1, 0, 1, 0], z: identity },
  wedge: { x: toX, y: [1, 0, 0, 0, 0, 1, 0, -1, 0], z: identity },
};

/** What reverses own z (of a member: its length) first. */
const reversals: Readonly<Record<Symmetry, Mat3>> = {
  member: [-1, 0, 0, 0, -1, 0, 0, 0, 1],
  even: identity,
  ended: [-1, 0, 0, 0, 1, 0, 0, 0, -1],
  wedge: [1, 0, 0, 0, -1, 0, 0, 0, -1],
};

/** The turn that lays a shape's own axis along an axis of its parent; `null` for an assembly, which is turned as a thing with two ends. */
export function laid(shape: ShapeKind | null, axis: string): Mat3 {
  const symmetry = shape === null ? 'ended' : (symmetries[shape] ?? 'even');
  const turned = lyings[symmetry][axis.slice(-1) as AxisLetter];
  return axis.startsWith('-') ? multiply(turned, reversals[symmetry]) : turned;
}
