// Round sections led round a bend: rings and elbows.
import { formula } from '../formula.ts';
import type { Elbow, Torus } from '../shapes.ts';
import { add, type Vec3, zero } from '../vector.ts';
import { exceeds, impossible, notAboveZero, type Row, wallsMeet, worked } from './row.ts';

/** m3 (Pappus). */
export const torusVolume = formula<'meanDiameter' | 'sectionDiameter'>(
  'pi * pi / 4 * meanDiameter * sectionDiameter * sectionDiameter',
  ({ meanDiameter, sectionDiameter }) => (Math.PI ** 2 / 4) * meanDiameter * sectionDiameter * sectionDiameter,
);

/** m3; area of the wall times the way its centre goes (Pappus); angle in rad. */
export const elbowVolume = formula<'outside' | 'wall' | 'bendRadius' | 'angle'>(
  'pi * (outside - wall) * wall * bendRadius * angle',
  ({ outside, wall, bendRadius, angle }) => Math.PI * (outside - wall) * wall * bendRadius * angle,
);

/** m3; angle in rad. */
export const solidElbowVolume = formula<'outside' | 'bendRadius' | 'angle'>(
  'pi / 4 * outside * outside * bendRadius * angle',
  ({ outside, bendRadius, angle }) => (Math.PI / 4) * outside * outside * bendRadius * angle,
);

/** Angles this close to a half turn count as one (rad): the centre lines then cross too far off to measure from. */
const nearHalfTurn = 1e-9;

const torus: Row<Torus> = {
  fault: ({ meanDiameter, sectionDiameter }) =>
    notAboveZero({ meanDiameter, sectionDiameter }) ??
    (exceeds(sectionDiameter, meanDiameter)
      ? impossible('ring-closed', [sectionDiameter, meanDiameter], ['sectionDiameter', 'meanDiameter'])
      : undefined),
  volume: ({ meanDiameter, sectionDiameter }) => worked(torusVolume, { meanDiameter, sectionDiameter }),
  centre: () => zero,
};

const elbow: Row<Elbow> = {
  fault: ({ outside, wall, bendRadius, angle }) => {
    const size = notAboveZero({ outside, wall, bendRadius, angle });
    if (size) return size;
    if (wall !== undefined && wallsMeet(wall, outside)) return wallsMeet(wall, outside);
    if (exceeds(outside / 2, bendRadius)) {
      return impossible('bend-too-tight', [bendRadius, outside / 2], ['bendRadius', 'outside']);
    }
    return angle > Math.PI + nearHalfTurn ? impossible('angle-too-large', [angle, Math.PI], ['angle']) : undefined;
  },
  volume: ({ outside, wall, bendRadius, angle }) =>
    wall === undefined
      ? worked(solidElbowVolume, { outside, bendRadius, angle })
      : worked(elbowVolume, { outside, wall, bendRadius, angle }),
  centre: (shape) => {
    const { outside, wall, bendRadius, angle } = shape;
    const outer = outside / 2;
    const inner = wall === undefined ? 0 : outer - wall;
    const half = angle / 2;
    const fromBend = ((bendRadius + (outer ** 2 + inner ** 2) / (4 * bendRadius)) * Math.sin(half)) / half;
    return add(bendCentre(shape), [fromBend * Math.sin(half), -fromBend * Math.cos(half), 0]);
  },
};

/** The bend centre from the datum point, own axes: the elbow comes in along +x below it. */
export function bendCentre({ bendRadius, angle }: Elbow): Vec3 {
  if (angle > Math.PI - nearHalfTurn) return zero;
  return [-bendRadius * Math.tan(angle / 2), bendRadius, 0];
}

export const bent = { torus, elbow };
