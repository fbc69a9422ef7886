// Solids of revolution with straight or spherical sides: cylinders, tubes, spheres, cones, caps and round holes.
import { formula } from '../formula.ts';
import type {
  Cone,
  Cylinder,
  Frustum,
  Hole,
  HollowSphere,
  Sphere,
  SphericalCap,
  TaperedTube,
  Tube,
} from '../shapes.ts';
import { zero } from '../vector.ts';
import { belowZero, impossible, notAboveZero, type Row, wallsMeet, worked } from './row.ts';

/** m3. */
export const cylinderVolume = formula<'diameter' | 'length'>(
  'pi / 4 * diameter * diameter * length',
  ({ diameter, length }) => (Math.PI / 4) * diameter * diameter * length,
);

/** m3; exact, the circle through the middle of the wall times wall and length. */
export const tubeVolume = formula<'outside' | 'wall' | 'length'>(
  'pi * (outside - wall) * wall * length',
  ({ outside, wall, length }) => Math.PI * (outside - wall) * wall * length,
);

/** m3. */
export const boredVolume = formula<'outside' | 'bore' | 'length'>(
  'pi / 4 * (outside * outside - bore * bore) * length',
  ({ outside, bore, length }) => (Math.PI / 4) * (outside * outside - bore * bore) * length,
);

/** m3. */
export const sphereVolume = formula<'diameter'>(
  'pi / 6 * diameter * diameter * diameter',
  ({ diameter }) => (Math.PI / 6) * diameter * diameter * diameter,
);

/** m3; the difference of two spheres, multiplied out. */
export const hollowSphereVolume = formula<'outside' | 'wall'>(
  'pi / 3 * wall * (3 * outside * outside - 6 * outside * wall + 4 * wall * wall)',
  ({ outside, wall }) => (Math.PI / 3) * wall * (3 * outside * outside - 6 * outside * wall + 4 * wall * wall),
);

/** m3. */
export const coneVolume = formula<'base' | 'height'>(
  'pi / 12 * base * base * height',
  ({ base, height }) => (Math.PI / 12) * base * base * height,
);

/** m3. */
export const frustumVolume = formula<'base' | 'top' | 'height'>(
  'pi / 12 * (base * base + base * top + top * top) * height',
  ({ base, top, height }) => (Math.PI / 12) * (base * base + base * top + top * top) * height,
);

/** m3; by the diameter of the flat face, for caps of less or more than a hemisphere alike. */
export const capVolume = formula<'base' | 'height'>(
  'pi / 6 * height * (3 * base * base / 4 + height * height)',
  ({ base, height }) => (Math.PI / 6) * height * ((3 * base * base) / 4 + height * height),
);

/** m3; a slice of a ball between two level planes, whichever side of the middle they lie on. */
export const zoneVolume = formula<'base' | 'top' | 'height'>(
  'pi / 24 * height * (3 * base * base + 3 * top * top + 4 * height * height)',
  ({ base, top, height }) => (Math.PI / 24) * height * (3 * base * base + 3 * top * top + 4 * height * height),
);

/** m; a wall measured square to a tapering plate, as it lies measured level. */
export const levelWall = formula<'wall' | 'base' | 'top' | 'height'>(
  'wall * sqrt(1 + (base - top) * (base - top) / (4 * height * height))',
  ({ wall, base, top, height }) => wall * Math.sqrt(1 + ((base - top) * (base - top)) / (4 * height * height)),
);

/** m3; the difference of two frustums, multiplied out. */
export const taperedTubeVolume = formula<'levelWall' | 'base' | 'top' | 'height'>(
  'pi * levelWall * ((base + top) / 2 - levelWall) * height',
  ({ levelWall: level, base, top, height }) => Math.PI * level * ((base + top) / 2 - level) * height,
);

/** m3; a cone less the cone inside it. */
export const pointedTubeVolume = formula<'levelWall' | 'base' | 'height'>(
  'pi / 12 * (base * base - (base - 2 * levelWall) * (base - 2 * levelWall) * (base - 2 * levelWall) / base) * height',
  ({ levelWall: level, base, height }) => (Math.PI / 12) * (base * base - (base - 2 * level) ** 3 / base) * height,
);

const cylinder: Row<Cylinder> = {
  fault: ({ diameter, length }) => notAboveZero({ diameter, length }),
  volume: ({ diameter, length }) => worked(cylinderVolume, { diameter, length }),
  centre: () => zero,
};

const tube: Row<Tube> = {
  fault: ({ outside, wall, bore, length }) =>
    notAboveZero({ outside, wall, bore, length }) ??
    (wall !== undefined
      ? wallsMeet(wall, outside)
      : bore < outside
        ? undefined
        : impossible('bore-not-inside', [bore, outside], ['bore', 'outside'])),
  volume: ({ outside, wall, bore, length }) =>
    wall !== undefined ? worked(tubeVolume, { outside, wall, length }) : worked(boredVolume, { outside, bore, length }),
  centre: () => zero,
};

const sphere: Row<Sphere> = {
  fault: ({ diameter }) => notAboveZero({ diameter }),
  volume: ({ diameter }) => worked(sphereVolume, { diameter }),
  centre: () => zero,
};

const hollowSphere: Row<HollowSphere> = {
  fault: ({ outside, wall }) => notAboveZero({ outside, wall }) ?? wallsMeet(wall, outside),
  volume: ({ outside, wall }) => worked(hollowSphereVolume, { outside, wall }),
  centre: () => zero,
};

const cone: Row<Cone> = {
  fault: ({ base, height }) => notAboveZero({ base, height }),
  volume: ({ base, height }) => worked(coneVolume, { base, height }),
  centre: ({ height }) => [0, 0, -height / 4],
};

const frustum: Row<Frustum> = {
  fault: ({ base, top, height }) => notAboveZero({ base, top, height }),
  volume: ({ base, top, height }) => worked(frustumVolume, { base, top, height }),
  centre: ({ base, top, height }) => [0, 0, frustumCentre(base, top, height) - height / 2],
};

const cap: Row<SphericalCap> = {
  fault: ({ base, top, height }) => notAboveZero({ base, top, height }),
  volume: ({ base, top, height }) =>
    top === undefined ? worked(capVolume, { base, height }) : worked(zoneVolume, { base, top, height }),
  centre: ({ base, top, height }) => {
    if (top !== undefined) return [0, 0, zoneCentre(base / 2, top / 2, height) - height / 2];
    const radius = (base * base) / (8 * height) + height / 2;
    return [0, 0, (height * (4 * radius - height)) / (4 * (3 * radius - height)) - height / 2];
  },
};

const taperedTube: Row<TaperedTube> = {
  fault: (shape) => {
    const { base, top, wall, height } = shape;
    const fault = notAboveZero({ base, wall, height }) ?? belowZero('top', top);
    if (fault) return fault;
    const narrower = top > 0 && top < base ? 'top' : 'base';
    return wallsMeet(levelWall(shape), shape[narrower], narrower);
  },
  volume: (shape) => {
    const { base, top, height } = shape;
    return top === 0
      ? worked(pointedTubeVolume, { levelWall: levelWall(shape), base, height })
      : worked(taperedTubeVolume, { levelWall: levelWall(shape), base, top, height });
  },
  centre: ({ base, top, wall, height }) => {
    const level = levelWall({ wall, base, top, height });
    const inside = base - 2 * level;
    const insideTop = Math.max(0, top - 2 * level);
    const insideHeight = top === 0 ? (height * inside) / base : height;
    const outer = frustumVolume({ base, top, height });
    const inner = frustumVolume({ base: inside, top: insideTop, height: insideHeight });
    const moment = outer * frustumCentre(base, top, height) - inner * frustumCentre(inside, insideTop, insideHeight);
    return [0, 0, moment / (outer - inner) - height / 2];
  },
};

/** Centre of a slice of a ball above its base, m, by the radii of its faces: first moment of its level discs. */
function zoneCentre(base: number, top: number, height: number): number {
  const middle = (top * top - base * base + height * height) / (2 * height);
  const moment = (base * base) / 2 + (2 * middle * height) / 3 - (height * height) / 4;
  return (moment * height * height) / ((base * base + middle * height) * height - height ** 3 / 3);
}

/** Centre of a frustum above its base, m. */
export const frustumCentre = (base: number, top: number, height: number): number =>
  ((height / 4) * (base * base + 2 * base * top + 3 * top * top)) / (base * base + base * top + top * top);

const hole: Row<Hole> = {
  fault: ({ diameter, depth }) => notAboveZero({ diameter, depth }),
  volume: ({ diameter, depth }) => worked(cylinderVolume, { diameter, length: depth }),
  centre: () => zero,
};

export const round = {
  cylinder,
  tube,
  sphere,
  'hollow sphere': hollowSphere,
  cone,
  frustum,
  'spherical cap': cap,
  'tapered tube': taperedTube,
  'conical head': taperedTube,
  hole,
};
