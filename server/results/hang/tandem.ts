// Two hooks that pull straight up on a load held as drawn or as a stage says: shares by the balance of moments.
import { boxCorners } from '../../mechanics/hang/index.ts';
import { rotate, turn, type Vec3 } from '../../mechanics/index.ts';
import type { Built } from './model.ts';

export interface Share {
  readonly edges: readonly [number, number];
  readonly pulls: readonly [number, number]; // on the picks, N
  readonly worst: readonly [number, number]; // over the box of the centre, N
  readonly least: readonly [number, number];
  readonly tilt: number; // rad
  readonly depth: number; // of the centre under the line between the picks, m
}
export type NoShare = { readonly reason: string } | { readonly unbuilt: string };

/** Is this rig two hooks that pull straight up? Hooks with a place of their own are fixed points instead. */
export const pullsStraightUp = (built: Built): boolean => built.hooks.length > 1 && built.hooks.every((hook) => !hook.item.clauses.has('at'));

/** Shares with the load's x (or y) axis pointing `incline` rad above horizontal. */
export function share(built: Built, incline: { readonly axis: string; readonly angle: number } | null): Share | NoShare {
  const [body, ...others] = built.model.bodies;
  if (built.hooks.length !== 2 || !body || others.length || built.model.particles.length) return { unbuilt: 'more than two hooks, or beams and rings under two hooks that pull straight up' };
  const lines = built.hooks.map((_, a) => built.model.slings.flatMap((sling, s) => (sling.path.some((node) => 'anchor' in node && node.anchor === a) ? [s] : [])));
  if (lines.some((list) => list.length !== 1)) return { unbuilt: 'several legs on one of two hooks that pull straight up' };
  const edges = lines.map(([s]) => s as number) as [number, number];
  const picks = edges.map((s) => {
    const node = built.model.slings[s]?.path.find((one) => 'body' in one);
    return node && 'body' in node ? (body.points[node.point]?.at as Vec3) : null;
  });
  const [a, b] = picks;
  if (!a || !b) return { unbuilt: 'a hook that does not reach a pick' };
  const R = incline ? turn(incline.axis.startsWith('-') ? incline.angle : -incline.angle, incline.axis.endsWith('y') ? '-x' : 'y') : turn(0, 'y');
  const half = built.bodies[0]?.half;
  const centres = [body.cog, ...(half ? boxCorners(body.cog, half) : [])];
  const all = centres.map((cog) => pulls(rotate(R, a), rotate(R, b), rotate(R, cog), body.weight));
  const bad = all.find((one) => 'reason' in one);
  if (bad && 'reason' in bad) return bad;
  const fine = all as readonly { readonly pulls: readonly [number, number]; readonly roll: number; readonly depth: number }[];
  const [first] = fine as [(typeof fine)[number]];
  const worst = [0, 1].map((i) => Math.max(...fine.map((one) => one.pulls[i] as number))) as unknown as readonly [number, number];
  const least = [0, 1].map((i) => Math.min(...fine.map((one) => one.pulls[i] as number))) as unknown as readonly [number, number];
  const up = R[8] as number; // cosine of the incline
  return { edges, pulls: first.pulls, worst, least, tilt: Math.acos(Math.min(1, Math.max(-1, up * Math.cos(first.roll)))), depth: Math.min(...fine.map((one) => one.depth)) };
}

/** Balance of moments about the first line, and how far the load rolls about the line between its picks. */
function pulls(a: Vec3, b: Vec3, c: Vec3, weight: number): { readonly pulls: readonly [number, number]; readonly roll: number; readonly depth: number } | { readonly reason: string } {
  const d = [b[0] - a[0], b[1] - a[1]] as const;
  const e = [c[0] - a[0], c[1] - a[1]] as const;
  const apart = Math.hypot(d[0], d[1]);
  const reach = Math.max(apart, Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]), Math.hypot(e[0], e[1]));
  if (!(apart > 1e-9 * reach)) return { reason: 'both lines hang in one plumb line, so nothing says which carries what' };
  const part = (d[0] * e[0] + d[1] * e[1]) / (apart * apart);
  if (part < -1e-12 || part > 1 + 1e-12) return { reason: `the centre of gravity is not between the two hooks: one of the lines would have to push` };
  const aside = Math.abs(d[0] * e[1] - d[1] * e[0]) / apart;
  const depth = a[2] + part * (b[2] - a[2]) - c[2];
  const kept = Math.min(1, Math.max(0, part));
  return { pulls: [weight * (1 - kept), weight * kept], roll: Math.atan2(aside, Math.abs(depth)), depth };
}

