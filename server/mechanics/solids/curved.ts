// Solids with curved faces beyond cylinder, cone and ball: ellipsoids, paraboloids, curved plates, segments, turned outlines, measured meshes.
import { formula } from '../formula.ts';
import { areaOf, edgesOf, type Outline, outlineFault, regionCentre } from '../outline.ts';
import type { CurvedPlate, CylinderSegment, Ellipsoid, MeshBody, Paraboloid, Turned } from '../shapes.ts';
import { zero } from '../vector.ts';
import { exceeds, impossible, notAboveZero, type Row, wallsMeet, worked } from './row.ts';

/** m3; by the whole lengths of the three axes. */
export const ellipsoidVolume = formula<'length' | 'width' | 'height'>(
  'pi / 6 * length * width * height',
  ({ length, width, height }) => (Math.PI / 6) * length * width * height,
);

/** m3; half the cylinder round it. */
export const paraboloidVolume = formula<'base' | 'height'>(
  'pi / 8 * base * base * height',
  ({ base, height }) => (Math.PI / 8) * base * base * height,
);

/** m3; area of the outline times the way its centre goes (Pappus). */
export const turnedVolume = formula<'area' | 'centreRadius'>(
  '2 * pi * centreRadius * area',
  ({ area, centreRadius }) => 2 * Math.PI * centreRadius * area,
);

/** m3; the arc through the middle of the wall times wall and length; angle in rad. */
export const curvedPlateVolume = formula<'outside' | 'wall' | 'angle' | 'length'>(
  'angle * (outside - wall) / 2 * wall * length',
  ({ outside, wall, angle, length }) => ((angle * (outside - wall)) / 2) * wall * length,
);

/** m3; `arc` (rad) is the angle that the curved face takes up as seen from the axis. */
export const segmentVolume = formula<'diameter' | 'arc' | 'length'>(
  'diameter * diameter / 8 * (arc - sin(arc)) * length',
  ({ diameter, arc, length }) => ((diameter * diameter) / 8) * (arc - Math.sin(arc)) * length,
);

/** m3; the sum over the faces of a closed mesh. */
export const meshVolume = formula<'enclosed'>('enclosed', ({ enclosed }) => enclosed);

const ellipsoid: Row<Ellipsoid> = {
  fault: ({ x, y, z }) => notAboveZero({ x, y, z }),
  volume: ({ x, y, z }) => worked(ellipsoidVolume, { length: x, width: y, height: z }),
  centre: () => zero,
};

const paraboloid: Row<Paraboloid> = {
  fault: ({ base, height }) => notAboveZero({ base, height }),
  volume: ({ base, height }) => worked(paraboloidVolume, { base, height }),
  centre: ({ height }) => [0, 0, -height / 6],
};

const turned: Row<Turned> = {
  fault: ({ outline }) => {
    const fault = outlineFault(outline);
    if (fault === 'too-few-corners') return impossible(fault, [outline.length, 3], ['outline']);
    if (fault) return impossible(fault, [-1], ['outline']);
    const across = outline.find(([radius]) => !(radius >= 0));
    return across && impossible('across-axis', [across[0]], ['outline']);
  },
  volume: ({ outline }) => worked(turnedVolume, { area: areaOf(outline), centreRadius: regionCentre(outline, [])[0] }),
  centre: ({ outline }) => [0, 0, heightOfRevolution(outline)],
};

/** Along the axis to the centre of a turned outline, m: the product of inertia over the first moment (Green's theorem). */
function heightOfRevolution(outline: Outline): number {
  const from = outline[0]?.[1] ?? 0;
  let [product, moment] = [0, 0];
  for (const [[ar, az], [br, bz]] of edgesOf(outline)) {
    const [a, b] = [az - from, bz - from];
    const twice = ar * b - br * a;
    product += (twice * (ar * b + 2 * ar * a + 2 * br * b + br * a)) / 24;
    moment += (twice * (ar + br)) / 6;
  }
  return from + product / moment;
}

const curvedPlate: Row<CurvedPlate> = {
  fault: ({ outside, wall, angle, length }) =>
    notAboveZero({ outside, wall, angle, length }) ??
    wallsMeet(wall, outside) ??
    (exceeds(angle, Math.PI) ? impossible('angle-too-large', [angle, Math.PI], ['angle']) : undefined),
  volume: ({ outside, wall, angle, length }) => worked(curvedPlateVolume, { outside, wall, angle, length }),
  centre: ({ outside, wall, angle }) => {
    const [outer, inner] = [outside / 2, outside / 2 - wall];
    const mean = (2 * (outer * outer + outer * inner + inner * inner)) / (3 * (outer + inner));
    return [(mean * Math.sin(angle / 2)) / (angle / 2), 0, 0];
  },
};

const cylinderSegment: Row<CylinderSegment> = {
  fault: ({ diameter, height, length }) =>
    notAboveZero({ diameter, height, length }) ??
    (exceeds(height, diameter)
      ? impossible('segment-too-high', [height, diameter], ['height', 'diameter'])
      : undefined),
  volume: ({ diameter, height, length }) => worked(segmentVolume, { diameter, arc: arcOf(diameter, height), length }),
  centre: ({ diameter, height }) => {
    const arc = arcOf(diameter, height);
    const fromAxis = (2 * diameter * Math.sin(arc / 2) ** 3) / (3 * (arc - Math.sin(arc)));
    return [0, fromAxis - (diameter - height) / 2, 0];
  },
};

/** The angle of the curved face seen from the axis, rad. */
const arcOf = (diameter: number, height: number): number => 2 * Math.acos(Math.max(-1, 1 - (2 * height) / diameter));

const mesh: Row<MeshBody> = {
  fault: ({ volume }) => notAboveZero({ volume }),
  volume: ({ volume }) => worked(meshVolume, { enclosed: volume }),
  centre: ({ centre }) => centre,
};

export const curved = {
  ellipsoid,
  paraboloid,
  turned,
  'curved plate': curvedPlate,
  'cylinder segment': cylinderSegment,
  mesh,
};
