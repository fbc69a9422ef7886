// The conventional figure for four legs: each pair of opposite legs carrying everything alone.
import { add, dot, rotate, scale, subtract, type Vec3 } from '../vector.ts';
import type { HangModel, Placed } from './model.ts';

/**
 * Tension (N) of each of four legs on one body if its diagonal pair alone carried all the four carry: lever rule on the
 * centre's projection in plan, at the angles as hung. To show beside the envelope, never instead of it.
 * Null when the four are not two-node slings on that body, a leg is slack or level, or the picks make no quadrilateral.
 */
export function diagonalPairs(
  model: HangModel,
  placed: Placed,
  body: number,
  legs: readonly [number, number, number, number],
): readonly [number, number, number, number] | null {
  const picks = legs.map((s) => pickOf(model, placed, body, s));
  if (!picks.every((pick) => pick !== null)) return null;
  const carried = picks.reduce((sum, pick) => sum + pick.force[2], 0);
  const place = placed.bodies[body]!;
  const centre = add(place.position, rotate(place.rotation, model.bodies[body]!.cog));
  const mean = scale(
    picks.reduce<Vec3>((sum, pick) => add(sum, pick.at), [0, 0, 0]),
    1 / 4,
  );
  const round = [0, 1, 2, 3].sort((a, b) => bearing(picks[a]!.at, mean) - bearing(picks[b]!.at, mean));
  const tensions: [number, number, number, number] = [0, 0, 0, 0];
  for (const k of [0, 1, 2, 3]) {
    const one = round[k]!;
    const other = round[(k + 2) % 4]!;
    const line = plan(subtract(picks[other]!.at, picks[one]!.at));
    const length2 = dot(line, line);
    const rise = Math.sin(picks[one]!.angle);
    if (!(length2 > 0 && rise > 0)) return null;
    const along = dot(plan(subtract(centre, picks[one]!.at)), line) / length2;
    tensions[one] = (carried * (1 - along)) / rise;
  }
  return tensions;
}

function pickOf(model: HangModel, placed: Placed, body: number, s: number) {
  const sling = model.slings[s];
  const result = placed.slings[s];
  if (!sling || !result || sling.path.length !== 2 || result.angleFromHorizontal === null) return null;
  const k = sling.path.findIndex((node) => 'body' in node && node.body === body);
  const node = sling.path[k];
  if (!node || !('body' in node)) return null;
  const { position, rotation } = placed.bodies[body]!;
  const at = add(position, rotate(rotation, model.bodies[body]!.points[node.point]!.at));
  return { at, force: rotate(rotation, result.forces[k]!), angle: result.angleFromHorizontal };
}

const plan = (v: Vec3): Vec3 => [v[0], v[1], 0];
const bearing = (at: Vec3, from: Vec3) => Math.atan2(at[1] - from[1], at[0] - from[0]);
