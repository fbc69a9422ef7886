// Two hooks that pull straight up with several legs, rings or beams under them: each finds its place over what it carries, and one is
// raised until the load has the attitude wanted.
import { follow, type HangError, type HangModel, type Hung, type NodeRef, solve } from '../../mechanics/hang/index.ts';
import { type Mat3, rotate, transpose, type Vec3 } from '../../mechanics/index.ts';
import type { Built } from './model.ts';

/** How far over its hook a hoist line is taken to hang from, in lengths of the rig: so far that it is plumb wherever the hook goes. */
const overhead = 20;
const mostRounds = 24;
/** Left over at the end: of the rig's length between hook and line, and of the attitude, rad. */
const exact = 1e-8;

const kept = new Map<string, ReturnType<typeof found>>();
const most = 128;

/** The rig on plumb lines that hold its load in the attitude R; the same numbers give the same answer and are kept. */
export function plumb(built: Built, R: Mat3): ReturnType<typeof found> {
  const key = JSON.stringify([built.model, R]);
  const known = kept.get(key);
  if (known) return 'model' in known ? { ...built, model: known.model, onLines: true } : known;
  const rig = found(built, R);
  kept.set(key, rig);
  if (kept.size > most) kept.delete(kept.keys().next().value as string);
  return rig;
}

/**
 * The rig with each hook on a long plumb line, its second hook as high as the attitude R of the load asks for. The places of
 * hooks are found by Broyden's method (1965) on their distance and difference in height; each round follows the one before.
 */
function found(built: Built, R: Mat3): Built | HangError | { readonly reason: string } {
  const { model } = built;
  const load = built.bodies.findIndex((body) => body.thing.kind === 'load');
  if (load < 0) return { reason: 'no load hangs from the hooks' };
  const guess = startOf(built, R);
  if (!guess) return { reason: 'both hooks take hold of the same things, so nothing says how far they stand apart' };
  const { direction, span } = guess;
  const reach = Math.max(span, ...model.slings.map((sling) => sling.length));
  const along = rotate(transpose(R), [direction[0], direction[1], 0]); // in the load's axes
  const wanted = rotate(R, along)[2];
  const at = (spacing: number, height: number): HangModel =>
    onLines(built, R, [direction[0] * spacing, direction[1] * spacing, height], reach * overhead);
  let near: Hung | null = null; // where it hung last: found cold once, then followed
  const miss = (spacing: number, height: number): readonly [number, number] | HangError => {
    const moved = at(spacing, height);
    const hung: Hung | HangError =
      (near &&
        follow(
          near,
          moved.anchors.map((anchor) => anchor.at),
        )) ??
      solve(moved, { quick: true });
    if ('error' in hung) return hung;
    near = hung;
    const place = (k: number, d: number): number =>
      hung.pose.p[3 * (model.bodies.length + model.particles.length + k) + d] as number;
    const now = (place(1, 0) - place(0, 0)) * direction[0] + (place(1, 1) - place(0, 1)) * direction[1];
    const r = hung.pose.rotation.subarray(9 * load, 9 * load + 9);
    const rise = (r[6] as number) * along[0] + (r[7] as number) * along[1] + (r[8] as number) * along[2];
    return [(now - spacing) / reach, rise - wanted];
  };
  let [s, h] = [guess.spacing, guess.height];
  let off = miss(s, h);
  if ('error' in off) return off;
  let inverse = [-reach, 0, 0, span];
  for (let round = 0; round < mostRounds; round++) {
    if (Math.abs(off[0]) < exact && Math.abs(off[1]) < exact) return { ...built, model: at(s, h), onLines: true };
    const step: readonly [number, number] = [
      -((inverse[0] as number) * off[0] + (inverse[1] as number) * off[1]),
      -((inverse[2] as number) * off[0] + (inverse[3] as number) * off[1]),
    ];
    const kept = Math.min(1, (0.2 * reach) / Math.max(1e-300, Math.hypot(...step)));
    const moved: readonly [number, number] = [step[0] * kept, step[1] * kept];
    const next = miss(s + moved[0], h + moved[1]);
    if ('error' in next) return next;
    inverse = broyden(inverse, moved, [next[0] - off[0], next[1] - off[1]]);
    [s, h, off] = [s + moved[0], h + moved[1], next];
  }
  return { error: 'no-convergence', name: null };
}

/** Broyden's good update of the inverse of a 2 × 2 slope. */
function broyden(
  inverse: readonly number[],
  moved: readonly [number, number],
  change: readonly [number, number],
): number[] {
  const [a, b, c, d] = inverse as [number, number, number, number];
  const seen = [a * change[0] + b * change[1], c * change[0] + d * change[1]] as const;
  const below = moved[0] * seen[0] + moved[1] * seen[1];
  if (!(Math.abs(below) > 1e-14 * (moved[0] ** 2 + moved[1] ** 2))) return [...inverse];
  const left = [(moved[0] - seen[0]) / below, (moved[1] - seen[1]) / below] as const;
  const right = [moved[0] * a + moved[1] * c, moved[0] * b + moved[1] * d] as const;
  return [a + left[0] * right[0], b + left[0] * right[1], c + left[1] * right[0], d + left[1] * right[1]];
}

/** The model with hooks as weightless points under plumb lines from far above; the second hook `to` from the first. */
function onLines(built: Built, R: Mat3, to: Vec3, high: number): HangModel {
  const { model } = built;
  const first = model.particles.length;
  const hooks: readonly Vec3[] = [[0, 0, 0], to];
  const swap = (node: NodeRef): NodeRef => ('anchor' in node ? { particle: first + node.anchor } : node);
  const both = sharedBodies(built);
  return {
    ...model,
    anchors: model.anchors.map((anchor, k) => ({
      ...anchor,
      at: [(hooks[k] as Vec3)[0], (hooks[k] as Vec3)[1], (hooks[k] as Vec3)[2] + high] as Vec3,
    })),
    bodies: model.bodies.map((body, i) =>
      both.has(i) || built.bodies[i]?.thing.kind === 'load' ? { ...body, orientation: R } : body,
    ),
    particles: [...model.particles, ...model.anchors.map(({ name }) => ({ name, weight: 0 }))],
    slings: [
      ...model.slings.map((sling) => ({ ...sling, path: sling.path.map(swap) })),
      ...model.anchors.map(({ name }, k) => ({
        name,
        path: [{ anchor: k }, { particle: first + k }],
        length: high,
        stiffness: Number.MAX_VALUE,
        weight: 0,
      })),
    ],
  };
}

/** What can be reached from a hook down the slings, without going through a body: points of bodies, with the length to each. */
function firstPoints(
  built: Built,
  hook: number,
): readonly { readonly body: number; readonly point: number; readonly length: number }[] {
  const points: { body: number; point: number; length: number }[] = [];
  const seen = new Set<number>();
  const from = (same: (node: NodeRef) => boolean, length: number): void => {
    for (const sling of built.model.slings) {
      if (!sling.path.some(same)) continue;
      for (const node of sling.path) {
        if ('body' in node) points.push({ ...node, length: length + sling.length / (sling.path.length - 1) });
        else if ('particle' in node && !seen.has(node.particle)) {
          seen.add(node.particle);
          from(
            (one) => 'particle' in one && one.particle === node.particle,
            length + sling.length / (sling.path.length - 1),
          );
        }
      }
    }
  };
  from((node) => 'anchor' in node && node.anchor === hook, 0);
  return points;
}

/** Bodies that both hooks take hold of before any other. */
function sharedBodies(built: Built): ReadonlySet<number> {
  const [a, b] = [0, 1].map((hook) => new Set(firstPoints(built, hook).map((one) => one.body)));
  return new Set([...(a ?? [])].filter((body) => b?.has(body)));
}

/** Points of the load that hang from a hook, through beams as well where each hook has beams of its own. */
function carriedPoints(
  built: Built,
  hook: number,
): readonly { readonly body: number; readonly point: number; readonly length: number }[] {
  const load = built.bodies.findIndex((body) => body.thing.kind === 'load');
  const reached = new Map<number, number>(); // beams with the length above them
  let layer = firstPoints(built, hook);
  const points = [...layer.filter((one) => one.body === load)];
  for (let round = 0; round < built.bodies.length; round++) {
    const beams = layer.filter((one) => one.body !== load && !reached.has(one.body));
    for (const one of beams) reached.set(one.body, one.length);
    layer = built.model.slings.flatMap((sling) => {
      const top = sling.path.find((node) => 'body' in node && beams.some((beam) => beam.body === node.body));
      return top && 'body' in top
        ? sling.path.flatMap((node) =>
            'body' in node && node.body !== top.body
              ? [{ body: node.body, point: node.point, length: (reached.get(top.body) ?? 0) + sling.length }]
              : [],
          )
        : [];
    });
    points.push(...layer.filter((one) => one.body === load));
  }
  return points;
}

/** Where the hooks are looked for first: each over the middle of what it carries, as high as its lengths reach. */
function startOf(
  built: Built,
  R: Mat3,
): {
  readonly direction: readonly [number, number];
  readonly span: number;
  readonly spacing: number;
  readonly height: number;
} | null {
  const shared = [...sharedBodies(built)];
  const tops = [0, 1].map((hook) => {
    const points = shared.length
      ? firstPoints(built, hook).filter((one) => one.body === shared[0])
      : carriedPoints(built, hook);
    const places = points.map((one) => ({
      length: one.length,
      at: rotate(R, built.model.bodies[one.body]?.points[one.point]?.at as Vec3),
    }));
    const middle = [0, 1].map(
      (d) => places.reduce((sum, one) => sum + (one.at[d] as number), 0) / Math.max(1, places.length),
    ) as [number, number];
    const height =
      places.reduce(
        (sum, { length, at }) =>
          sum +
          at[2] +
          Math.sqrt(Math.max(length ** 2 - (at[0] - middle[0]) ** 2 - (at[1] - middle[1]) ** 2, 0.1 * length ** 2)),
        0,
      ) / Math.max(1, places.length);
    return { middle, height, any: places.length > 0 };
  });
  const [a, b] = tops;
  if (!a?.any || !b?.any) return null;
  const way = [b.middle[0] - a.middle[0], b.middle[1] - a.middle[1]] as const;
  const span = Math.hypot(...way);
  const reach = Math.max(...built.model.slings.map((sling) => sling.length));
  if (!(span > 1e-6 * reach)) return null;
  return { direction: [way[0] / span, way[1] / span], span, spacing: span, height: b.height - a.height };
}
