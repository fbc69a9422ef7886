// Two hooks that pull straight up on a load held as drawn or as a stage says, one line on each: shares by the balance of moments.
import { boxCorners } from '../../mechanics/hang/index.ts';
import { cross, dot, type Mat3, norm, rotate, scale, subtract, transpose, type Vec3 } from '../../mechanics/index.ts';
import type { Built } from './model.ts';

export interface Share {
  readonly edges: readonly [number, number];
  readonly pulls: readonly [number, number]; // on the picks, N
  readonly worst: readonly [number, number]; // over the box of the centre, N
  readonly least: readonly [number, number];
  readonly up: Vec3; // world up in the load's axes
  readonly tilt: number; // rad
  readonly tiltMost: number; // over the box of the centre
  readonly depth: number; // of the centre under the line between the picks, m
}
export type NoShare = { readonly reason: string };

/** Is this rig two hooks that pull straight up? Hooks with a place of their own are fixed points instead. */
export const pullsStraightUp = (built: Built): boolean =>
  built.hooks.length > 1 && built.hooks.every((hook) => !hook.item.clauses.has('at'));

/** The one line of each of two hooks, straight to a pick of the one load; null where more hangs there. */
export function linesOf(built: Built): readonly [number, number] | null {
  const { bodies, particles, slings } = built.model;
  if (built.hooks.length !== 2 || bodies.length !== 1 || particles.length || slings.length !== 2) return null;
  const lines = built.hooks.map((_, a) =>
    slings.findIndex(
      ({ path }) =>
        path.length === 2 &&
        path.some((node) => 'anchor' in node && node.anchor === a) &&
        path.some((node) => 'body' in node),
    ),
  );
  const [first, second] = lines;
  return first === undefined || second === undefined || first < 0 || second < 0 ? null : [first, second];
}

/** Shares with the load's axes turned by R, then rolled about the line between its picks until its centre hangs plumb under that line. */
export function share(built: Built, edges: readonly [number, number], R: Mat3): Share | NoShare {
  const [body] = built.model.bodies as [Built['model']['bodies'][number]];
  const [a, b] = edges.map((s) => {
    const node = built.model.slings[s]?.path.find((one) => 'body' in one);
    return rotate(R, (node && 'body' in node ? body.points[node.point]?.at : body.cog) as Vec3);
  }) as [Vec3, Vec3];
  const half = built.bodies[0]?.half;
  const centres = [body.cog, ...(half ? boxCorners(body.cog, half) : [])].map((cog) =>
    pulls(a, b, rotate(R, cog), body.weight),
  );
  const bad = centres.find((one) => 'reason' in one);
  if (bad && 'reason' in bad) return bad;
  const fine = centres as readonly Hangs[];
  const [first] = fine as [Hangs];
  const over = (pick: (...values: number[]) => number) =>
    [0, 1].map((i) => pick(...fine.map((one) => one.pulls[i] as number))) as unknown as readonly [number, number];
  const ups = fine.map((one) => rotate(transpose(R), one.up));
  const tilts = ups.map((up) => Math.atan2(Math.hypot(up[0], up[1]), up[2]));
  return {
    edges,
    pulls: first.pulls,
    worst: over(Math.max),
    least: over(Math.min),
    up: ups[0] as Vec3,
    tilt: tilts[0] as number,
    tiltMost: Math.max(...tilts),
    depth: Math.min(...fine.map((one) => one.depth)),
  };
}

interface Hangs {
  readonly pulls: readonly [number, number];
  readonly up: Vec3; // world up before the roll, as the rolled load sees it
  readonly depth: number;
}

/** Balance of moments about the first line. The centre lies t along the line and ρ off it: rolled plumb, it stands t cos + ρ sin out. */
function pulls(a: Vec3, b: Vec3, c: Vec3, weight: number): Hangs | NoShare {
  const line = subtract(b, a);
  const reach = Math.max(norm(line), norm(subtract(c, a)));
  const apart = Math.hypot(line[0], line[1]);
  if (!(apart > 1e-9 * reach))
    return { reason: 'both lines hang in one plumb line, so nothing says which carries what' };
  const along = scale(line, 1 / norm(line));
  const t = dot(subtract(c, a), along);
  const off = subtract(subtract(c, a), scale(along, t));
  const rho = norm(off);
  // Straight up, square to the line: where the plumb of the rolled load points.
  const rise: Vec3 = [-along[2] * along[0], -along[2] * along[1], 1 - along[2] * along[2]];
  const square = scale(rise, 1 / norm(rise));
  const depth = -dot(off, square);
  const part = (t * (apart / norm(line)) + (depth < 0 ? -rho : rho) * along[2]) / apart;
  if (part < -1e-12 || part > 1 + 1e-12)
    return { reason: 'the centre of gravity is not between the two hooks: one of the lines would have to push' };
  const kept = Math.min(1, Math.max(0, part));
  // The roll about the line carries `off` to straight down; seen from the load, up turns the other way.
  const sine = rho > 1e-12 * reach ? dot(cross(off, scale(square, depth < 0 ? 1 : -1)), along) / rho : 0;
  const cosine = rho > 1e-12 * reach ? dot(off, scale(square, depth < 0 ? 1 : -1)) / rho : 1;
  const z: Vec3 = [0, 0, 1];
  const up = turned(z, along, -sine, cosine);
  return { pulls: [weight * (1 - kept), weight * kept], up, depth };
}

/** A vector turned about a unit axis by an angle of that sine and cosine (Rodrigues). */
function turned(v: Vec3, axis: Vec3, sine: number, cosine: number): Vec3 {
  const k = dot(axis, v) * (1 - cosine);
  const side = cross(axis, v);
  return [0, 1, 2].map(
    (i) => (v[i] as number) * cosine + (side[i] as number) * sine + (axis[i] as number) * k,
  ) as unknown as Vec3;
}
