// The space inside hollow shapes, and how much of it lies below a level, however the shape stands.
import { bodiesOf } from './bodies.ts';
import type { Hollow, Joined, Turned } from './body.ts';
import { reach } from './extent.ts';
import { belowInBend } from './interiors/bend.ts';
import { belowInCrossed } from './interiors/crossed.ts';
import { belowInPolytope } from './interiors/flat.ts';
import type { Below } from './interiors/half-space.ts';
import { belowInMitred } from './interiors/mitred.ts';
import { belowInBall, belowInDome, belowInTurned } from './interiors/round.ts';
import { apply, compose, type Placement } from './placement.ts';
import type { Shape } from './shapes.ts';
import { solid } from './solids.ts';
import { isRing } from './sweep.ts';
import { add, dot, norm, rotate, scale, transpose, type Vec3 } from './vector.ts';

/** The space inside one hollow shape; a tube's or head's ends at the plane of its opening. */
export interface Interior {
  /** m3. */
  readonly volume: number;
  readonly body: Hollow;
  /** How the body stands in the shape's own axes. */
  readonly frame: Placement;
}

/** What of a space lies below a level: m3, and its centre in the parent's axes; no centre of nothing. */
export interface Filling {
  readonly volume: number;
  readonly centre: Vec3 | undefined;
}

/** An interior and how its shape stands in axes whose z is up. */
export interface Space {
  readonly interior: Interior;
  readonly place: Placement;
}

/** The space inside a shape that can be made; null for shapes without one. */
export function interior(shape: Shape): Interior | null {
  const { inner, frame } = bodiesOf(shape);
  if (!inner) return null;
  return { volume: cut(inner, [0, 0, 1], reach(inner, [0, 0, 1])).volume, body: inner, frame };
}

/**
 * The volume of that space, m3; also that of a bent rectangular tube, in which no level is known here: metal and bore are led along
 * the same line, so that their volumes are as their sections are (Pappus). Null for shapes without one.
 */
export function enclosed(shape: Shape): number | null {
  const inside = interior(shape);
  if (inside) return inside.volume;
  if (shape.kind !== 'swept' || shape.of.kind !== 'rectangular tube') return null;
  const { y, z, wall } = shape.of;
  const metal = solid(shape);
  const bore = (y - 2 * wall) * (z - 2 * wall);
  return 'impossible' in metal || metal.volume === undefined ? null : (metal.volume * bore) / (y * z - bore);
}

/** Whether a shape by itself lets nothing out: tubes, pipes, elbows and heads are open at their ends, but for a ring. */
export const closed = (shape: Shape): boolean =>
  shape.kind === 'hollow sphere' || (shape.kind === 'swept' && isRing(shape.corners));

/**
 * Volume and centre of that part of an interior that lies below the level z = height of the parent's axes. Relative error
 * below 1e-9 (measured: below 1e-11 from a hundredth of the depth on).
 */
export function below(one: Interior, place: Placement, height: number): Filling {
  const standing = compose(place, one.frame);
  const up = rotate(transpose(standing.R), [0, 0, 1]);
  const { volume, moment } = cut(one.body, up, height - standing.t[2]);
  if (!(volume > 0)) return { volume: 0, centre: undefined };
  return { volume, centre: apply(standing, scale(moment, 1 / volume)) };
}

/** Lowest and highest point of an interior along the parent's z, m. */
export function levels(one: Interior, place: Placement): { readonly lowest: number; readonly highest: number } {
  const standing = compose(place, one.frame);
  const up = rotate(transpose(standing.R), [0, 0, 1]);
  const at = dot(standing.t, [0, 0, 1]);
  return { lowest: at - reach(one.body, scale(up, -1)), highest: at + reach(one.body, up) };
}

/** What several spaces that are one hold below a level. */
export function fill(spaces: readonly Space[], height: number): Filling {
  const parts = spaces.map(({ interior: one, place }) => below(one, place, height));
  const volume = parts.reduce((sum, part) => sum + part.volume, 0);
  if (!(volume > 0)) return { volume: 0, centre: undefined };
  const moment = parts.reduce<Vec3>(
    (sum, part) => (part.centre ? add(sum, scale(part.centre, part.volume)) : sum),
    [0, 0, 0],
  );
  return { volume, centre: scale(moment, 1 / volume) };
}

/** How near, against the volume asked for, the one below the level found comes to it. */
const nearEnough = 1e-12;

/**
 * The level (parent's z) below which spaces that are one hold a volume, m3. Nothing if the volume is below zero or more than
 * they hold, or if there are no spaces.
 */
export function levelFor(volume: number, spaces: readonly Space[]): number | undefined {
  const whole = spaces.reduce((sum, { interior: one }) => sum + one.volume, 0);
  if (!(volume >= 0 && volume <= whole * (1 + 1e-12)) || spaces.length === 0) return undefined;
  const ends = spaces.map(({ interior: one, place }) => levels(one, place));
  const lowest = Math.min(...ends.map((end) => end.lowest));
  const highest = Math.max(...ends.map((end) => end.highest));
  if (volume === 0) return lowest;
  if (volume >= whole) return highest;
  const miss = (height: number): number => fill(spaces, height).volume - volume;
  return crossing(miss, [lowest, -volume], [highest, whole - volume], volume * nearEnough);
}

/** Where a rising function crosses zero between two points with their values: false position with the Illinois weakening. */
function crossing(
  compute: (at: number) => number,
  from: readonly [number, number],
  to: readonly [number, number],
  near: number,
): number {
  let [[low, under], [high, over], last] = [from, to, 0];
  for (let step = 0; step < 200; step++) {
    const straight = low - (under * (high - low)) / (over - under);
    const at = straight > low && straight < high ? straight : (low + high) / 2;
    if (at === low || at === high) return at;
    const value = compute(at);
    if (Math.abs(value) <= near) return at;
    if (value < 0) [low, under, over] = [at, value, last < 0 ? over / 2 : over];
    else [high, over, under] = [at, value, last > 0 ? under / 2 : under];
    last = value;
  }
  return (low + high) / 2;
}

/** Volume and first moment of what lies at up . r <= level in a body's own axes. */
function cut(body: Hollow, up: Vec3, level: number): Below {
  const unit = scale(up, 1 / norm(up));
  if (level <= -reach(body, scale(unit, -1))) return { volume: 0, moment: [0, 0, 0] };
  const capped = Math.min(level, reach(body, unit));
  switch (body.form) {
    case 'polytope':
      return belowInPolytope(body, unit, capped);
    case 'turned':
      return body.lean ? belowInLeaning(body, body.lean, unit, capped) : belowInTurned(body, unit, capped);
    case 'crossed':
      return belowInCrossed(body, unit, capped);
    case 'ball':
      return belowInBall(body, unit, capped);
    case 'dome':
      return belowInDome(body, unit, capped);
    case 'bend':
      return belowInBend(body, unit, capped);
    case 'mitred':
      return belowInMitred(body, unit, capped);
    case 'joined':
      return belowInJoined(body, unit, capped);
  }
}

/** A leaning body set upright level by level keeps its volume, and the plane through it stays a plane. */
function belowInLeaning(body: Turned, lean: number, [x, y, z]: Vec3, level: number): Below {
  const tilted: Vec3 = [x, y, z + lean * y];
  const length = norm(tilted);
  const upright = belowInTurned(body, scale(tilted, 1 / length), (level + lean * body.low * y) / length);
  const [mx, my, mz] = upright.moment;
  return { volume: upright.volume, moment: [mx, my + lean * (mz - body.low * upright.volume), mz] };
}

function belowInJoined({ parts }: Joined, up: Vec3, level: number): Below {
  let volume = 0;
  let moment: Vec3 = [0, 0, 0];
  for (const { body, frame } of parts) {
    const one = cut(body, rotate(transpose(frame.R), up), level - dot(frame.t, up));
    volume += one.volume;
    moment = add(moment, add(rotate(frame.R, one.moment), scale(frame.t, one.volume)));
  }
  return { volume, moment };
}
