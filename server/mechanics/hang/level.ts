// Levelling: the sling lengths with which a load hangs level, before they are rounded to stock and solved again.
import { subtract, type Vec3 } from '../vector.ts';
import { cholesky, choleskySolve } from './linear.ts';
import type { HangError, HangModel } from './model.ts';
import { lengthRates } from './sensitivity.ts';
import { type Hung, solve } from './solve.ts';

export interface LevelLengths {
  /** Unstretched, of each sling of the model, m. */
  readonly lengths: readonly number[];
  /** Pull of each, N. */
  readonly tensions: readonly number[];
}

/**
 * Lengths of the legs of one body on one hook, so that it hangs level with the hook at `height` (m) over its datum, plumb
 * over the centre of the load and the half slings on it. Among tensions in balance the least Σ T² L/EA is taken, which is
 * the one answer for up to three legs. Null where no pulling legs hold it so, or the model is not one body on one hook.
 */
export function levelOneHook(model: HangModel, height: number): LevelLengths | null {
  const [body, ...bodies] = model.bodies;
  if (!body || bodies.length > 0 || model.anchors.length !== 1 || model.particles.length > 0) return null;
  const picks = model.slings.map((sling) => {
    const node = sling.path.find((one) => 'body' in one);
    return sling.path.length === 2 && node && 'body' in node ? body.points[node.point]!.at : null;
  });
  if (!picks.every((pick) => pick !== null)) return null;
  const weights = [body.weight, ...model.slings.map((sling) => sling.weight / 2)];
  const places = [body.cog, ...picks];
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  if (!(all > 0)) return null;
  const centre = (d: 0 | 1) => places.reduce((sum, place, i) => sum + (place[d] * weights[i]!) / all, 0);
  const hook: Vec3 = [centre(0), centre(1), height];
  const legs = picks.map((pick) => subtract(hook, pick));
  const spans = legs.map((leg) => Math.hypot(...leg));
  if (spans.some((span) => !(span > 0))) return null;
  const units = legs.map((leg, i) => leg.map((v) => v / spans[i]!) as unknown as Vec3);
  const stiffness = model.slings.map((sling, i) => sling.stiffness / spans[i]!);
  const tensions = leastEffort(units, stiffness, all);
  if (!tensions) return null;
  const lengths = spans.map((span, i) => span / (1 + tensions[i]! / model.slings[i]!.stiffness));
  return { lengths, tensions };
}

/** T = D Uᵀ x with U D Uᵀ x = (0, 0, W), D = EA/L; legs that would push are dropped one by one. */
function leastEffort(units: readonly Vec3[], stiffness: readonly number[], weight: number): number[] | null {
  const used = units.map(() => true);
  for (let round = 0; round < units.length; round++) {
    const square = new Float64Array(9);
    units.forEach((unit, i) => {
      if (!used[i]) return;
      for (let r = 0; r < 3; r++) {
        for (let c = 0; c < 3; c++) square[3 * r + c] = square[3 * r + c]! + stiffness[i]! * unit[r]! * unit[c]!;
      }
    });
    const largest = Math.max(square[0]!, square[4]!, square[8]!);
    const lower = new Float64Array(9);
    const x = Float64Array.from([0, 0, weight]);
    // The shift answers for legs that lie in one plane: nothing pulls across it.
    if (!cholesky(square, 3, 1e-12 * largest, lower)) return null;
    choleskySolve(lower, 3, x);
    const tensions = units.map((u, i) => (used[i] ? stiffness[i]! * (u[0] * x[0]! + u[1] * x[1]! + u[2] * x[2]!) : 0));
    const least = tensions.indexOf(Math.min(...tensions));
    if (tensions[least]! >= -1e-9 * weight) {
      const sum = (d: 0 | 1 | 2) => units.reduce((total, unit, i) => total + tensions[i]! * unit[d], 0);
      const off = Math.hypot(sum(0), sum(1), sum(2) - weight);
      return off <= 1e-6 * weight ? tensions.map((t) => Math.max(0, t)) : null;
    }
    used[least] = false;
  }
  return null;
}

export interface Adjustable {
  readonly sling: number;
  /** Range of its unstretched length, m. */
  readonly least: number;
  readonly most: number;
}

export interface Levelled {
  readonly lengths: readonly number[];
  /** Tilt that is left, rad; more than 1e-6 when the ranges do not reach. */
  readonly tilt: number;
  readonly hung: Hung;
}

/**
 * Adjusts some lengths, each inside its range, until a body of any rig hangs level: Gauss–Newton on the level parts of
 * its up direction, the least change each time; lengths that meet their range stay there. Each round is a cold solve.
 */
export function levelByLengths(model: HangModel, body: number, free: readonly Adjustable[]): Levelled | HangError {
  let lengths = model.slings.map((sling) => sling.length);
  let best: Levelled | null = null;
  for (let round = 0; round < 30; round++) {
    const slings = model.slings.map((sling, s) => ({ ...sling, length: lengths[s]! }));
    const hung = solve({ ...model, slings }, { quick: true });
    if ('error' in hung) return best ?? hung;
    const up = [hung.pose.rotation[9 * body + 6]!, hung.pose.rotation[9 * body + 7]!] as const;
    const tilt = Math.atan2(Math.hypot(...up), hung.pose.rotation[9 * body + 8]!);
    if (best && tilt >= best.tilt) break;
    best = { lengths, tilt, hung };
    if (tilt < 1e-9) break;
    const next = adjusted(hung, body, free, lengths, up);
    if (!next) break;
    lengths = next;
  }
  return best!;
}

function adjusted(
  hung: Hung,
  body: number,
  free: readonly Adjustable[],
  lengths: readonly number[],
  up: readonly [number, number],
): number[] | null {
  const linear = lengthRates(hung.rig, hung.pose, hung.unknowns);
  if (!linear) return null;
  const rates = free.map(({ sling }) => upRate(hung, body, linear[sling]!.turn));
  const moves = free.map(() => true);
  for (let round = 0; round < free.length; round++) {
    const step = leastChange(rates, moves, up);
    if (!step) return null;
    const blocked = free.findIndex(({ sling, least, most }, i) => {
      const at = lengths[sling]!;
      return moves[i] && ((step[i]! > 0 && at >= most) || (step[i]! < 0 && at <= least));
    });
    if (blocked < 0) {
      const next = [...lengths];
      free.forEach(({ sling, least, most }, i) => {
        next[sling] = Math.min(most, Math.max(least, next[sling]! + step[i]!));
      });
      return next;
    }
    moves[blocked] = false;
  }
  return null;
}

/** Change of a body's up direction (in its axes, level parts) with a small turn ω: −Rᵀ(ω × z). */
function upRate(hung: Hung, body: number, turn: Float64Array): [number, number] {
  const wx = turn[3 * body]!;
  const wy = turn[3 * body + 1]!;
  const r = hung.pose.rotation.subarray(9 * body, 9 * body + 9);
  return [-(r[0]! * wy - r[3]! * wx), -(r[1]! * wy - r[4]! * wx)];
}

/** Least Σ δ² with Σ rate δ = −up. */
function leastChange(
  rates: readonly (readonly [number, number])[],
  moves: readonly boolean[],
  up: readonly [number, number],
): number[] | null {
  const square = new Float64Array(4);
  rates.forEach(([x, y], i) => {
    if (!moves[i]) return;
    square[0] = square[0]! + x * x;
    square[2] = square[2]! + x * y;
    square[3] = square[3]! + y * y;
  });
  const lower = new Float64Array(4);
  const push = Float64Array.from([-up[0], -up[1]]);
  if (!cholesky(square, 2, 1e-9 * (square[0]! + square[3]!), lower)) return null;
  choleskySolve(lower, 2, push);
  return rates.map(([x, y], i) => (moves[i] ? x * push[0]! + y * push[1]! : 0));
}
