// What of a space of revolution lies below a plane: discs along the axis, each cut by a line.
import type { Ball, Dome, Turned } from '../body.ts';
import { cutsBetween, sweep } from '../quadrature.ts';
import { scale, type Vec3 } from '../vector.ts';
import { type Below, count, counted, reachOf, segment, type Tally, tally } from './half-space.ts';

/** A cone or cylinder between its flat ends. */
export function belowInTurned({ low, high, lowRadius, highRadius }: Turned, up: Vec3, level: number): Below {
  const sum = tally();
  addDiscs(straight(low, high, lowRadius, highRadius), up, level, sum);
  return counted(sum);
}

/** A whole sphere: closed forms of the cap, for any direction. */
export function belowInBall({ centre, radius }: Ball, up: Vec3, level: number): Below {
  const height = level - up[2] * centre + radius;
  const rest = 2 * radius - height;
  const volume = (Math.PI * height * height * (3 * radius - height)) / 3;
  const [x, y, z] = scale(up, (-Math.PI / 4) * (height * rest) ** 2);
  return { volume, moment: [x, y, z + centre * volume] };
}

/** A head's flange and its curved end. */
export function belowInDome(dome: Dome, up: Vec3, level: number): Below {
  const sum = tally();
  for (const profile of profilesOf(dome)) addDiscs(profile, up, level, sum);
  return counted(sum);
}

/** The radius along a stretch of the axis, and where along it a line begins or ends to cut the discs. */
interface Profile {
  readonly from: number;
  readonly to: number;
  radius(z: number): number;
  /** Where across * radius(z) = rest + slope * z; more values do no harm. */
  touches(across: number, rest: number, slope: number): readonly number[];
}

function profilesOf({ low, tangent, end }: Dome): readonly Profile[] {
  if (end.curve === 'spheroid') {
    const flange = straight(low, tangent, end.across, end.across);
    return [flange, arched(tangent, tangent + end.up, { ring: 0, centre: tangent, across: end.across, up: end.up })];
  }
  const rim = end.ring + end.knuckle;
  const meet = tangent + end.knuckle * Math.sin(end.turn);
  const centre = tangent + end.crownCentre;
  return [
    straight(low, tangent, rim, rim),
    arched(tangent, meet, { ring: end.ring, centre: tangent, across: end.knuckle, up: end.knuckle }),
    arched(meet, centre + end.crown, { ring: 0, centre, across: end.crown, up: end.crown }),
  ];
}

function straight(from: number, to: number, first: number, last: number): Profile {
  const slope = (last - first) / (to - from);
  return {
    from,
    to,
    radius: (z) => first + slope * (z - from),
    touches: (across, rest, tilt) => [(across * (first - slope * from) - rest) / (tilt - across * slope)],
  };
}

/** An arc of an ellipse about (ring, centre) with half axes `across` the axis and `up` along it. */
function arched(
  from: number,
  to: number,
  { ring, centre, across: a, up: b }: { ring: number; centre: number; across: number; up: number },
): Profile {
  return {
    from,
    to,
    radius: (z) => ring + a * Math.sqrt(Math.max(0, 1 - ((z - centre) / b) ** 2)),
    // With w = (z - centre) / b: across a sqrt(1 - w2) = p + q w, squared.
    touches: (across, rest, slope) => {
      const [p, q, r] = [rest + slope * centre - across * ring, slope * b, across * a];
      const root = Math.sqrt(r * r + q * q - p * p);
      const over = r * r + q * q;
      return [-1, 1].map((sign) => centre + (b * (-p * q + sign * r * root)) / over).filter(Number.isFinite);
    },
  };
}

/** The discs of a profile below the plane up . r = level. */
function addDiscs(profile: Profile, up: Vec3, level: number, sum: Tally): void {
  const across = Math.hypot(up[0], up[1]);
  const [ux, uy] = across > 0 ? [up[0] / across, up[1] / across] : [0, 0];
  const cuts = [1, -1].flatMap((sign) => profile.touches(across, sign * level, -sign * up[2]));
  sweep(cutsBetween(profile.from, profile.to, cuts), (z, weight) => {
    const { area, first } = segment(profile.radius(z), reachOf(level - up[2] * z, across));
    count(sum, weight * area, weight * ux * first, weight * uy * first, weight * area * z);
  });
}
