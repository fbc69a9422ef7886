// The same rig with its anchors somewhere near: warm from a pose of rest, for those who look for where anchors have to be.
import type { Vec3 } from '../vector.ts';
import { descend } from './descent.ts';
import { measure } from './energy.ts';
import { copyPose } from './pose.ts';
import type { Rig } from './rig.ts';
import type { Hung } from './solve.ts';

/**
 * How the rig hangs once its anchors have moved to other places (world, m); null where it finds no rest from here. Its judgement
 * is that of the pose it started from: what is shown is to be solved cold at the places found.
 */
export function follow(hung: Hung, places: readonly Vec3[]): Hung | null {
  const rig: Rig = { ...hung.rig, local: hung.rig.local.slice() };
  let entry = 0;
  for (const sling of rig.model.slings) {
    for (const node of sling.path) {
      if ('anchor' in node) {
        for (let d = 0; d < 3; d++) rig.local[3 * entry + d] = places[node.anchor]![d]! - rig.origin[d]!;
      }
      entry++;
    }
  }
  const start = copyPose(hung.pose);
  measure(rig, start);
  const rest = descend(rig, start, hung.unknowns, 1e-12, 300);
  return rest.residual < 1e-8 ? { ...hung, rig, pose: rest.pose, residual: rest.residual } : null;
}
