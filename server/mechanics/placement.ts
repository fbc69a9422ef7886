// How a thing stands in its parent's axes: turned by R, its datum point at t; and the copies of one thing.
import type { Box } from './extent.ts';
import { add, identity, type Mat3, multiply, rotate, scale, transpose, type Vec3, zero } from './vector.ts';

/** A proper rotation, then a shift (m): own point r stands at R r + t in the parent's axes. */
export interface Placement {
  readonly R: Mat3;
  readonly t: Vec3;
}

/** Not turned, not shifted. */
export const still: Placement = { R: identity, t: zero };

export type AxisLetter = 'x' | 'y' | 'z';
export type Axis = AxisLetter | `+${AxisLetter}` | `-${AxisLetter}`;

/** Where an own point stands in the parent's axes. */
export const apply = (place: Placement, point: Vec3): Vec3 => add(rotate(place.R, point), place.t);

/** First `inner`, then `outer`: from the axes of a thing in a thing to those of the outermost. */
export const compose = (outer: Placement, inner: Placement): Placement => ({
  R: multiply(outer.R, inner.R),
  t: apply(outer, inner.t),
});

/** The way back: from the parent's axes to the thing's own. */
export function inverse({ R, t }: Placement): Placement {
  const back = transpose(R);
  return { R: back, t: scale(rotate(back, t), -1) };
}

const letterOf = (axis: Axis): AxisLetter => axis.at(-1) as AxisLetter;
const signOf = (axis: Axis): 1 | -1 => (axis.startsWith('-') ? -1 : 1);

/** Unit vector of an axis. */
export function axisVector(axis: Axis): Vec3 {
  const sign = signOf(axis);
  const letter = letterOf(axis);
  return [letter === 'x' ? sign : 0, letter === 'y' ? sign : 0, letter === 'z' ? sign : 0];
}

/** Own x, y, z become y, z, x; then z, x, y; or stay. */
const layings: Readonly<Record<AxisLetter, Mat3>> = {
  x: [0, 0, 1, 1, 0, 0, 0, 1, 0],
  y: [0, 1, 0, 0, 0, 1, 1, 0, 0],
  z: identity,
};

/** A half turn about own x: reverses own z and stays a rotation, where a mere change of sign would mirror the part. */
const reversal: Mat3 = [1, 0, 0, 0, -1, 0, 0, 0, -1];

/** Lays own z along an axis of the parent: x makes own x, y, z the parent's y, z, x; y makes them z, x, y. */
export function axisRotation(axis: Axis): Mat3 {
  const laid = layings[letterOf(axis)];
  return signOf(axis) > 0 ? laid : multiply(laid, reversal);
}

/** A turn by an angle (rad) about an axis, counter-clockwise seen with the axis pointing at you. Quarter turns are exact. */
export function turn(angle: number, axis: Axis): Mat3 {
  const [sin, cos] = exactQuarter(angle * signOf(axis));
  switch (letterOf(axis)) {
    case 'x':
      return [1, 0, 0, 0, cos, -sin, 0, sin, cos];
    case 'y':
      return [cos, 0, sin, 0, 1, 0, -sin, 0, cos];
    case 'z':
      return [cos, -sin, 0, sin, cos, 0, 0, 0, 1];
  }
}

/** Sine and cosine; of whole quarter turns without the rounding of pi, so that a part turned by 90 deg has no crooked box. */
function exactQuarter(angle: number): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-12) return [Math.sin(angle), Math.cos(angle)];
  const at = ((whole % 4) + 4) % 4;
  return [[0, 1, 0, -1][at]!, [1, 0, -1, 0][at]!];
}

/** `count` copies, the first where the place is, each a step further. */
export function inSteps(first: Placement, step: Vec3, count: number): readonly Placement[] {
  return Array.from({ length: count }, (_, k) => ({
    R: first.R,
    t: [first.t[0] + k * step[0], first.t[1] + k * step[1], first.t[2] + k * step[2]],
  }));
}

/** The parent's axis from which copies round an axis start: the next in the order x, y, z, x. */
const startOf: Readonly<Record<AxisLetter, Vec3>> = { x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] };

/**
 * `count` copies spread evenly round a diameter (m) about an axis of the parent through the place, each turned along. The
 * first, unturned, lies from the place along the next axis (z: +x, x: +y, y: +z); the rest follow counter-clockwise seen
 * with the axis pointing at you.
 */
export function inCircle(place: Placement, diameter: number, axis: Axis, count: number): readonly Placement[] {
  const start = startOf[letterOf(axis)].map((part) => (part * diameter) / 2) as unknown as Vec3;
  return Array.from({ length: count }, (_, k) => {
    const turned = turn((2 * Math.PI * k) / count, axis);
    return { R: multiply(turned, place.R), t: add(place.t, rotate(turned, start)) };
  });
}

/** The smallest box that holds all; nothing of nothing. */
export function unionOf(boxes: readonly Box[]): Box | undefined {
  const [first] = boxes;
  if (!first || boxes.length === 1) return first;
  const [min, max] = [[...first.min] as [number, number, number], [...first.max] as [number, number, number]];
  for (const box of boxes)
    for (const axis of [0, 1, 2] as const) {
      min[axis] = Math.min(min[axis], box.min[axis]);
      max[axis] = Math.max(max[axis], box.max[axis]);
    }
  return { min, max };
}

/** A box shifted by a placement's t, such as one found for its R. */
export const shifted = (box: Box, t: Vec3): Box => ({ min: add(box.min, t), max: add(box.max, t) });
