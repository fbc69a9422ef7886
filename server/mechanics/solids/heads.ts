// Vessel heads: an inner face and an outer one moved out from it by the wall, on a straight flange.
import { formula } from '../formula.ts';
import { integrate } from '../quadrature.ts';
import type { DishedHead, HemisphericalHead } from '../shapes.ts';
import { belowZero, exceeds, type Impossible, impossible, notAboveZero, type Row, wallsMeet, worked } from './row.ts';

/**
 * m3; `inside` is the inside diameter. Steiner's formula for a parallel surface, area * t + mean curvature * t2 + 2 pi / 3 *
 * t3, on half a spheroid of depth inside / 4. The area of that half is (1 + ln(2 + sqrt(3)) / (2 * sqrt(3))) * pi * inside2 /
 * 4; what stands before pi is `areaFactor`, since our formulas have no logarithm.
 */
export const ellipsoidalHeadVolume = formula<'outside' | 'inside' | 'wall' | 'straightFlange' | 'areaFactor'>(
  'pi * wall * (areaFactor / 4 * inside * inside + (1 / 4 + pi / (3 * sqrt(3))) * inside * wall + 2 / 3 * wall * wall)' +
    ' + pi * (outside - wall) * wall * straightFlange',
  ({ outside, inside, wall, straightFlange, areaFactor }) =>
    Math.PI * wall * ((areaFactor / 4) * inside ** 2 + spheroidCurvature * inside * wall + (2 / 3) * wall ** 2) +
    Math.PI * (outside - wall) * wall * straightFlange,
);

const spheroidArea = 1 + Math.log(2 + Math.sqrt(3)) / (2 * Math.sqrt(3));
const spheroidCurvature = 1 / 4 + Math.PI / (3 * Math.sqrt(3));

/** m3; `knuckleCircle` is the diameter on which the knuckle's centres lie, `knuckleAngle` (rad) how far the knuckle turns. */
export const torisphericalHeadVolume = formula<
  'outside' | 'wall' | 'crownRadius' | 'knuckleRadius' | 'knuckleCircle' | 'knuckleAngle' | 'straightFlange'
>(
  '2 / 3 * pi * (1 - sin(knuckleAngle)) * wall * (3 * crownRadius * crownRadius + 3 * crownRadius * wall + wall * wall)' +
    ' + pi / 2 * knuckleCircle * knuckleAngle * wall * (2 * knuckleRadius + wall)' +
    ' + 2 / 3 * pi * sin(knuckleAngle) * wall * (3 * knuckleRadius * knuckleRadius + 3 * knuckleRadius * wall + wall * wall)' +
    ' + pi * (outside - wall) * wall * straightFlange',
  ({ outside, wall: t, crownRadius: crown, knuckleRadius: knuckle, knuckleCircle, knuckleAngle, straightFlange }) =>
    (2 / 3) * Math.PI * (1 - Math.sin(knuckleAngle)) * t * (3 * crown ** 2 + 3 * crown * t + t ** 2) +
    (Math.PI / 2) * knuckleCircle * knuckleAngle * t * (2 * knuckle + t) +
    (2 / 3) * Math.PI * Math.sin(knuckleAngle) * t * (3 * knuckle ** 2 + 3 * knuckle * t + t ** 2) +
    Math.PI * (outside - t) * t * straightFlange,
);

/** m3; half of a hollow sphere. */
export const hemisphericalHeadVolume = formula<'outside' | 'wall' | 'straightFlange'>(
  'pi / 6 * wall * (3 * outside * outside - 6 * outside * wall + 4 * wall * wall) + pi * (outside - wall) * wall * straightFlange',
  ({ outside, wall, straightFlange }) =>
    (Math.PI / 6) * wall * (3 * outside ** 2 - 6 * outside * wall + 4 * wall ** 2) +
    Math.PI * (outside - wall) * wall * straightFlange,
);

/** The lengths of a torispherical inner face: ring of the knuckle's centres, knuckle, crown, and how they meet. */
export interface Dish {
  /** Radius of the circle on which the knuckle's centres lie, m. */
  readonly ring: number;
  readonly knuckle: number;
  readonly crown: number;
  /** How far the knuckle turns from the tangent line to the crown, rad. */
  readonly turn: number;
  /** The crown's centre above the tangent line (below: negative), m. */
  readonly crownCentre: number;
}

/** Inside radius, knuckle and crown radius to the lengths that follow; tangency of both arcs. */
export function dish(radius: number, knuckle: number, crown: number): Dish {
  const ring = Math.max(0, radius - knuckle);
  const lean = crown > knuckle ? Math.asin(Math.min(1, ring / (crown - knuckle))) : 0;
  return { ring, knuckle, crown, turn: Math.PI / 2 - lean, crownCentre: -(crown - knuckle) * Math.cos(lean) };
}

/** Inside depth beyond the tangent line, m. */
export function insideDepth(shape: DishedHead | HemisphericalHead): number {
  const radius = shape.outside / 2 - shape.wall;
  if (shape.kind === 'hemispherical head') return radius;
  if (shape.form === 'ellipsoidal') return radius / 2;
  const { crown, crownCentre } = dish(radius, shape.knuckleRadius, shape.crownRadius);
  return crown + crownCentre;
}

const dishedHead: Row<DishedHead> = {
  fault: (shape) => {
    const { outside, wall, straightFlange, crownRadius, knuckleRadius } = shape;
    const sizes = notAboveZero({ outside, wall, crownRadius, knuckleRadius });
    return sizes ?? belowZero('straightFlange', straightFlange) ?? wallsMeet(wall, outside) ?? dishFault(shape);
  },
  volume: (shape) => {
    const { outside, wall, straightFlange = 0 } = shape;
    const inside = outside - 2 * wall;
    if (shape.form === 'ellipsoidal')
      return worked(ellipsoidalHeadVolume, { outside, inside, wall, straightFlange, areaFactor: spheroidArea });
    const { crownRadius, knuckleRadius } = shape;
    const { ring, turn } = dish(inside / 2, knuckleRadius, crownRadius);
    const lengths = { outside, wall, crownRadius, knuckleRadius, straightFlange };
    return worked(torisphericalHeadVolume, { ...lengths, knuckleCircle: 2 * ring, knuckleAngle: turn });
  },
  centre: (shape) => {
    const { outside, wall } = shape;
    const radius = outside / 2 - wall;
    const moment =
      shape.form === 'ellipsoidal'
        ? spheroidMoment(radius, wall)
        : dishMoment(dish(radius, shape.knuckleRadius, shape.crownRadius), wall);
    return [0, 0, balance(shape, dishedHead.volume!(shape), moment)];
  },
};

const hemisphericalHead: Row<HemisphericalHead> = {
  fault: ({ outside, wall, straightFlange }) =>
    notAboveZero({ outside, wall }) ?? belowZero('straightFlange', straightFlange) ?? wallsMeet(wall, outside),
  volume: ({ outside, wall, straightFlange = 0 }) => worked(hemisphericalHeadVolume, { outside, wall, straightFlange }),
  centre: (shape) => {
    const radius = shape.outside / 2;
    const moment = (Math.PI / 4) * (radius ** 4 - (radius - shape.wall) ** 4);
    return [0, 0, balance(shape, hemisphericalHead.volume!(shape), moment)];
  },
};

function dishFault(shape: DishedHead): Impossible | undefined {
  if (shape.form === 'ellipsoidal') return undefined;
  const radius = shape.outside / 2 - shape.wall;
  if (exceeds(shape.knuckleRadius, radius)) {
    return impossible('knuckle-too-large', [shape.knuckleRadius, radius], ['knuckleRadius', 'outside', 'wall']);
  }
  if (exceeds(radius, shape.crownRadius)) {
    return impossible('crown-too-small', [shape.crownRadius, radius], ['crownRadius', 'outside', 'wall']);
  }
  return undefined;
}

/** Height of the centre over the middle of the box, from the moment (m4) of the head alone about its tangent line. */
function balance(
  shape: DishedHead | HemisphericalHead,
  { formula: volume, inputs }: ReturnType<NonNullable<(typeof dishedHead)['volume']>>,
  moment: number,
): number {
  const { outside, wall, straightFlange: flange = 0 } = shape;
  const ring = Math.PI * (outside - wall) * wall * flange;
  const fromTangent = (moment - (ring * flange) / 2) / volume(inputs);
  return fromTangent + (flange - insideDepth(shape) - wall) / 2;
}

/**
 * Moment about the tangent line of a wall t on half a spheroid of radius a and depth a / 2, m4: each patch of the inner
 * face carries (z + s nz)(1 + s k1)(1 + s k2) over the wall, s from 0 to t, with its principal curvatures k1, k2.
 */
function spheroidMoment(a: number, t: number): number {
  const c = a / 2;
  return integrate(
    (angle) => {
      const [rise, run] = [Math.sin(angle), Math.cos(angle)];
      const speed = Math.hypot(a * rise, c * run);
      const [k1, k2, nz, z] = [(a * c) / speed ** 3, c / (a * speed), (a * rise) / speed, c * rise];
      const [sum, product] = [k1 + k2, k1 * k2];
      const wall =
        z * t + ((z * sum + nz) * t ** 2) / 2 + ((z * product + nz * sum) * t ** 3) / 3 + (nz * product * t ** 4) / 4;
      return 2 * Math.PI * a * run * speed * wall;
    },
    0,
    Math.PI / 2,
  );
}

/** The same of a torispherical wall: a shell sector of the crown and a ring sector of the knuckle, closed forms. */
function dishMoment({ ring, knuckle, crown, turn, crownCentre }: Dish, t: number): number {
  const grown = (radius: number, power: number): number => ((radius + t) ** power - radius ** power) / power;
  const [rise, run] = [Math.sin(turn), Math.cos(turn)];
  const crownPart = 2 * Math.PI * (crownCentre * (1 - rise) * grown(crown, 3) + (run ** 2 / 2) * grown(crown, 4));
  const knucklePart = 2 * Math.PI * (ring * (1 - run) * grown(knuckle, 3) + (rise ** 2 / 2) * grown(knuckle, 4));
  return crownPart + knucklePart;
}

export const heads = { 'dished head': dishedHead, 'hemispherical head': hemisphericalHead };
