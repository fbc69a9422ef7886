// Two plumb lines on one load: who carries how much at a tilt, and through a whole upending.
import type { Vec2 } from '../vector.ts';

/** A load between two plumb lines, in its own upright plane. */
export interface TandemLoad {
  /** N. */
  readonly weight: number;
  /** Places in the load: [x along, z up], m. */
  readonly a: Vec2;
  readonly b: Vec2;
  readonly cog: Vec2;
}

export interface TandemShares {
  /** Pull of each line, N. */
  readonly a: number;
  readonly b: number;
  /** Plumb distance of the centre under the line from a to b, m. Below zero the load rolls over, whatever the shares. */
  readonly depth: number;
}

/** Why there are no shares: both lines in one plumb, or one of them would have to push. */
export interface NoShares {
  readonly open: 'lines-coincide' | 'a-pushes' | 'b-pushes';
}

/**
 * Shares of two plumb lines at a tilt (rad, +x end up): with X(P) = P_x cos θ − P_z sin θ from pick a,
 * R_b = W X(c)/X(b), R_a = W − R_b. Moment balance.
 */
export function plumbShares(load: TandemLoad, tilt: number): TandemShares | NoShares {
  const out = (p: Vec2) => (p[0] - load.a[0]) * Math.cos(tilt) - (p[1] - load.a[1]) * Math.sin(tilt);
  const up = (p: Vec2) => (p[0] - load.a[0]) * Math.sin(tilt) + (p[1] - load.a[1]) * Math.cos(tilt);
  const apart = out(load.b);
  const size = Math.hypot(load.b[0] - load.a[0], load.b[1] - load.a[1], load.cog[0] - load.a[0]);
  if (!(Math.abs(apart) > 1e-9 * size)) return { open: 'lines-coincide' };
  const part = out(load.cog) / apart;
  // A centre plumb under a pick leaves the other line nothing; rounding must not make that a push.
  if (part < -1e-12) return { open: 'b-pushes' };
  if (part > 1 + 1e-12) return { open: 'a-pushes' };
  const share = Math.min(1, Math.max(0, part));
  return {
    a: load.weight * (1 - share),
    b: load.weight * share,
    depth: share * up(load.b) - up(load.cog),
  };
}

export interface Upending {
  readonly steps: readonly { readonly tilt: number; readonly shares: TandemShares | NoShares }[];
  /** Largest share of each line on the way, N, with its tilt (rad); null where no step has shares. */
  readonly worstA: { readonly share: number; readonly tilt: number } | null;
  readonly worstB: { readonly share: number; readonly tilt: number } | null;
  /** Tilts on the way without shares. */
  readonly open: readonly number[];
}

/** Finest and coarsest step of an upending, and when to take the fine one: the shares run away where X(b) is small. */
const fineStep = Math.PI / 720;
const coarseStep = Math.PI / 180;

/** Shares on the way from one tilt to another (rad), in steps of 1°, of ¼° over the last 10°. */
export function upending(load: TandemLoad, from: number, to: number): Upending {
  const steps = tilts(from, to).map((tilt) => ({ tilt, shares: plumbShares(load, tilt) }));
  const worst = (line: 'a' | 'b') =>
    steps.reduce<{ share: number; tilt: number } | null>((most, { tilt, shares }) => {
      if ('open' in shares) return most;
      return most && most.share >= shares[line] ? most : { share: shares[line], tilt };
    }, null);
  const open = steps.filter(({ shares }) => 'open' in shares).map(({ tilt }) => tilt);
  return { steps, worstA: worst('a'), worstB: worst('b'), open };
}

function tilts(from: number, to: number): number[] {
  const way = to - from;
  const fine = Math.min(Math.abs(way), 10 * coarseStep) * Math.sign(way);
  const coarse = way - fine;
  const spaced = (start: number, length: number, step: number) => {
    const count = Math.ceil(Math.abs(length) / step - 1e-9);
    return Array.from({ length: count }, (_, i) => start + (length * i) / count);
  };
  return [...spaced(from, coarse, coarseStep), ...spaced(from + coarse, fine, fineStep), to];
}
