// What an interior holds on one side of a plane, and the piece of a disc that a line leaves.
import type { Vec3 } from '../vector.ts';

/** Volume (m3) and first moment (m4) about the body's own zero. */
export interface Below {
  readonly volume: number;
  readonly moment: Vec3;
}

/** A running sum of volume and first moment over the sections of a body. */
export interface Tally {
  volume: number;
  x: number;
  y: number;
  z: number;
}

export const tally = (): Tally => ({ volume: 0, x: 0, y: 0, z: 0 });

/** Adds a volume and its first moment. */
export function count(sum: Tally, volume: number, x: number, y: number, z: number): void {
  sum.volume += volume;
  sum.x += x;
  sum.y += y;
  sum.z += z;
}

export const counted = ({ volume, x, y, z }: Tally): Below => ({ volume, moment: [x, y, z] });

/** How far a cut at `rest` reaches from the centre of a section that the plane leans to by `lean`; level with it: all or nothing. */
export const reachOf = (rest: number, lean: number): number =>
  lean > 0 ? rest / lean : rest >= 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;

/** Moments of what lies at w <= reach in a disc about zero: w square to the cut, v along it. */
export interface Segment {
  /** m2. */
  readonly area: number;
  /** Of w, m3; that of v is zero. */
  readonly first: number;
  /** Of w2 and v2, m4; that of w v is zero. */
  readonly acrossCut: number;
  readonly alongCut: number;
}

const none: Segment = { area: 0, first: 0, acrossCut: 0, alongCut: 0 };

/** The segment of a disc (radius m) at w <= reach; all of it or nothing where the cut misses the disc. */
export function segment(radius: number, reach: number): Segment {
  if (reach <= -radius) return none;
  if (reach >= radius) return whole(radius);
  // Half the angle that the cut spans at the centre, 0 to pi; the quotient keeps its digits in thin segments.
  const angle = 2 * Math.atan2(Math.sqrt(radius + reach), Math.sqrt(radius - reach));
  const [double, fourfold] = [lessSine(2 * angle), lessSine(4 * angle)];
  const square = radius * radius;
  return {
    area: (square * double) / 2,
    first: (-2 / 3) * (radius * Math.sin(angle)) ** 3,
    acrossCut: (square * square * fourfold) / 16,
    alongCut: (square * square * (8 * double - fourfold)) / 48,
  };
}

const whole = (radius: number): Segment => {
  const area = Math.PI * radius * radius;
  const second = (area * radius * radius) / 4;
  return { area, first: 0, acrossCut: second, alongCut: second };
};

/** angle - sin(angle), without the loss of digits at small angles. */
function lessSine(angle: number): number {
  if (angle > 0.5) return angle - Math.sin(angle);
  let [term, sum] = [angle ** 3 / 6, 0];
  for (let n = 4; n <= 20; n += 2) {
    sum += term;
    term *= -(angle * angle) / (n * (n + 1));
  }
  return sum;
}
