// Worst sharing of an indeterminate rig: all sets of tensions that hold the hung pose, whatever the lengths really are.

import type { Vec3 } from '../vector.ts';
import { placedAt } from './describe.ts';
import { pullOfSling } from './energy.ts';
import { nearNullSpace } from './linear.ts';
import type { HangError, HangModel, Placed } from './model.ts';
import { largest } from './simplex.ts';
import { type Hung, solve } from './solve.ts';

export interface Envelope {
  /** How many tensions could be chosen freely: 0 for a determinate rig. */
  readonly redundancy: number;
  /** Of each sling, N; `most` null where slings can pull against each other without bound. */
  readonly slings: readonly { readonly least: number; readonly most: number | null }[];
}

/**
 * A pose change of this size (rad) absorbs an imbalance of the same size, so singular values below this part of the
 * largest count as none: legs that nearly meet in a point share freely.
 */
const nearlyNone = 2e-3;
const mostVertices = 5000;

/** Least and largest tension of each sling over all t = T + N z ≥ 0 in balance at the hung pose. */
export function envelope(hung: Hung): Envelope {
  const elastic = hung.pose.tension;
  const base = freeSharing(hung);
  if (base.length === 0) return { redundancy: 0, slings: Array.from(elastic, (t) => ({ least: t, most: t })) };
  const all = hung.rig.totalWeight;
  const t = elastic.map((pull) => pull / all);
  const rows = Array.from(elastic, (_, s) => base.map((vector) => vector[s]!));
  const slings = rows.map((row, s) => {
    const more = largest(row, t, rows);
    const less = largest(
      row.map((value) => -value),
      t,
      rows,
    );
    return {
      least: Math.max(0, elastic[s]! - less * all),
      most: Number.isFinite(more) ? elastic[s]! + more * all : null,
    };
  });
  return { redundancy: base.length, slings };
}

/**
 * The extreme sets of tensions, elastic first: every one of them holds the hung pose, and whatever grows outward (a pull
 * at a pick, a moment in a beam) is worst in one of them. Null when there are more than 5,000 to try.
 */
export function extremeSharings(hung: Hung): readonly Float64Array[] | null {
  const elastic = hung.pose.tension;
  const base = freeSharing(hung);
  const n = elastic.length;
  const k = base.length;
  const states = [elastic.slice()];
  if (k === 0) return states;
  if (choices(n, k) > mostVertices) return null;
  const chosen = Array.from({ length: k }, (_, i) => i);
  const slack = 1e-9 * hung.rig.totalWeight;
  do {
    const z = zeroAt(chosen, elastic, base);
    if (!z) continue;
    const state = elastic.map((t, s) => base.reduce((sum, vector, c) => sum + vector[s]! * z[c]!, t));
    for (const s of chosen) state[s] = 0;
    if (state.every((t) => t >= -slack)) states.push(state.map((t) => Math.max(0, t)));
  } while (nextChoice(chosen, n));
  return states;
}

/** Forces and angles of the hung pose under another set of tensions that holds it. */
export function withTensions(hung: Hung, tensions: Float64Array): Placed {
  return placedAt(hung.rig, hung.pose, tensions);
}

/**
 * The envelope with the centre of a body anywhere in a box (half widths in body axes, m): the worse of the drawn centre
 * and the eight corners, each hung by itself. An error at a corner, or a load that does not hang as drawn there, is the
 * answer, as that corner is part of the box.
 */
export function envelopeOverBox(model: HangModel, body: number, box: Vec3): Envelope | HangError {
  const { cog, name } = model.bodies[body]!;
  let worst: Envelope | null = null;
  for (const place of [cog, ...boxCorners(cog, box)]) {
    const bodies = model.bodies.map((one, i) => (i === body ? { ...one, cog: place } : one));
    const hung = solve({ ...model, bodies }, { quick: true });
    if ('error' in hung) return hung;
    if (hung.turnsOver) return { error: 'does-not-hang-as-drawn', name, turned: hung.turned };
    worst = worst ? worse(worst, envelope(hung)) : envelope(hung);
  }
  return worst!;
}

function worse(a: Envelope, b: Envelope): Envelope {
  const slings = a.slings.map((one, s) => {
    const other = b.slings[s]!;
    const most = one.most === null || other.most === null ? null : Math.max(one.most, other.most);
    return { least: Math.min(one.least, other.least), most };
  });
  return { redundancy: Math.max(a.redundancy, b.redundancy), slings };
}

/** The corners of a box about a place, each once: two for one width that is not zero, eight for three. */
export function boxCorners(centre: Vec3, half: Vec3): Vec3[] {
  const ends = (d: 0 | 1 | 2) => (half[d] > 0 ? [-half[d], half[d]] : [0]);
  return ends(0).flatMap((x) =>
    ends(1).flatMap((y) => ends(2).map((z): Vec3 => [centre[0] + x, centre[1] + y, centre[2] + z])),
  );
}

/** Base of all changes of tension that leave every body in balance (moments over body size). */
function freeSharing(hung: Hung): Float64Array[] {
  const { rig, pose, unknowns: u } = hung;
  const n = rig.slings;
  const matrix = new Float64Array(u.n * n);
  const column = new Float64Array(u.n);
  for (let s = 0; s < n; s++) {
    column.fill(0);
    pullOfSling(rig, pose, u, s, 1, column);
    for (let i = 0; i < u.n; i++) matrix[i * n + s] = column[i]! * u.scale[i]!;
  }
  return nearNullSpace(matrix, u.n, n, nearlyNone);
}

function choices(n: number, k: number): number {
  let count = 1;
  for (let i = 0; i < k; i++) count = (count * (n - i)) / (i + 1);
  return count;
}

/** The next k of n in order, in place; false after the last. */
function nextChoice(chosen: number[], n: number): boolean {
  const k = chosen.length;
  for (let i = k - 1; i >= 0; i--) {
    if (chosen[i]! >= n - k + i) continue;
    chosen[i] = chosen[i]! + 1;
    for (let j = i + 1; j < k; j++) chosen[j] = chosen[j - 1]! + 1;
    return true;
  }
  return false;
}

/** The z that slackens just the chosen slings; null when they do not determine it. Gauss with row pivots. */
function zeroAt(chosen: readonly number[], elastic: Float64Array, base: readonly Float64Array[]): number[] | null {
  const k = chosen.length;
  const rows = chosen.map((s) => [...base.map((vector) => vector[s]!), -elastic[s]!]);
  for (let c = 0; c < k; c++) {
    let pivot = c;
    for (let r = c + 1; r < k; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    const row = rows[pivot]!;
    if (Math.abs(row[c]!) < 1e-9) return null;
    rows[pivot] = rows[c]!;
    rows[c] = row;
    for (let r = 0; r < k; r++) {
      if (r === c) continue;
      const factor = rows[r]![c]! / row[c]!;
      for (let j = c; j <= k; j++) rows[r]![j] = rows[r]![j]! - factor * row[j]!;
    }
  }
  return rows.map((row, c) => row[k]! / row[c]!);
}
