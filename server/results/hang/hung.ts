// How a load hangs once it is at rest: its tilt and low side, where the hook stands over it, and how far it reaches below the hook.
import { type Box, type Mat3, rotate, transpose, type Vec2, type Vec3 } from '../../mechanics/index.ts';
import type { Thing } from '../../plan/index.ts';
import type { Built } from './model.ts';
import type { Solved } from './solve.ts';
import type { Share } from './tandem.ts';

export interface HungLoad {
  readonly thing: Thing;
  readonly tilt: number; // of its z from the plumb line, rad
  readonly up: Vec3; // world up in the load's axes
  /** The pick that hangs lowest, else the axis that points down; null where it hangs level to 1e-6. */
  readonly low: string | null;
  /** One hook: where it stands from the marked centre, along the load's x and y, m; null with several. */
  readonly hookOver: Vec2 | null;
  /** Down from the bearing point of each hook to the lowest and to the highest point of the load's box, m; null where the box is not known. */
  readonly below: readonly { readonly hook: Thing; readonly lowest: number; readonly highest: number }[] | null;
}

/** Of every load of a solved rig. */
export function hungLoads(built: Built, rest: Solved['rest'], boxOf: (load: Thing) => Box | null): readonly HungLoad[] {
  return built.bodies.flatMap(({ thing }, b) => {
    const body = rest.bodies[b];
    if (thing.kind !== 'load' || !body) return [];
    const box = boxOf(thing);
    const heights = box && cornersOf(box).map((corner) => body.position[2] + rotate(body.rotation, corner)[2]);
    const over = body.hookOverCentre;
    return [
      {
        thing,
        tilt: body.tilt,
        up: body.up,
        low: lowSide(built, b, body.up),
        hookOver: over ? ([over[0], over[1]] as const) : null,
        below:
          heights &&
          built.hooks.map((hook, k) => ({
            hook,
            lowest: hookHeight(built, rest, k) - Math.min(...heights),
            highest: hookHeight(built, rest, k) - Math.max(...heights),
          })),
      },
    ];
  });
}

/** A hook on a plumb line is the particle at its lower end. */
function hookHeight(built: Built, rest: Solved['rest'], hook: number): number {
  const first = built.model.particles.length - built.hooks.length;
  const particle = built.onLines ? rest.particles[first + hook] : null;
  return particle ? particle.position[2] : (built.model.anchors[hook]?.at[2] ?? 0);
}

/** The same of a load on two plumb lines whose hooks stand over its picks as high as each line is long. */
export function hungOnLines(built: Built, found: Share, box: Box | null): readonly HungLoad[] {
  const [body] = built.model.bodies;
  const thing = built.bodies[0]?.thing;
  if (!body || !thing) return [];
  const height = (place: Vec3): number => place[0] * found.up[0] + place[1] * found.up[1] + place[2] * found.up[2];
  const corners = box && cornersOf(box).map(height);
  const below =
    corners &&
    built.hooks.map((hook, k) => {
      const sling = built.model.slings[found.edges[k] as number];
      const node = sling?.path.find((one) => 'body' in one);
      const pick = node && 'body' in node ? (body.points[node.point]?.at as Vec3) : body.cog;
      const stretched =
        (sling?.length ?? 0) * (1 + (found.pulls[k] as number) / (sling?.stiffness ?? Number.POSITIVE_INFINITY));
      const top = height(pick) + stretched;
      return { hook, lowest: top - Math.min(...corners), highest: top - Math.max(...corners) };
    });
  return [{ thing, tilt: found.tilt, up: found.up, low: lowSide(built, 0, found.up), hookOver: null, below }];
}

const cornersOf = ({ min, max }: Box): readonly Vec3[] =>
  [min[0], max[0]].flatMap((x) => [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z): Vec3 => [x, y, z])));

function lowSide(built: Built, b: number, up: Vec3): string | null {
  const sideways = Math.hypot(up[0], up[1]);
  if (sideways < 1e-6) return null;
  const drops = [...built.places]
    .flatMap(([thing, place]) => {
      const at =
        thing.kind === 'pick' && 'body' in place && place.body === b
          ? built.model.bodies[b]?.points[place.point]?.at
          : null;
      return at ? [{ name: thing.name, down: -(at[0] * up[0] + at[1] * up[1]) / sideways }] : [];
    })
    .sort((x, y) => y.down - x.down);
  const [first, second] = drops;
  if (first && second && first.down > second.down + 1e-9) return first.name;
  const axis = Math.abs(up[0]) >= Math.abs(up[1]) ? 0 : 1;
  return `${(up[axis] as number) > 0 ? '-' : '+'}${'xy'[axis]}`;
}

/** How far the load's up direction stands from where a turn R of its axes would put it, rad. */
export function awayFrom(up: Vec3, R: Mat3): number {
  const wanted = rotate(transpose(R), [0, 0, 1]);
  const cosine = up[0] * wanted[0] + up[1] * wanted[1] + up[2] * wanted[2];
  const sine = Math.hypot(
    up[1] * wanted[2] - up[2] * wanted[1],
    up[2] * wanted[0] - up[0] * wanted[2],
    up[0] * wanted[1] - up[1] * wanted[0],
  );
  return Math.atan2(sine, cosine);
}
