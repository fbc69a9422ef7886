// Solids with flat faces: blocks, wedges, rectangular tubes, pyramids, prisms, sheets and openings.
import { formula } from '../formula.ts';
import { areaOf, outlineFault, regionCentre } from '../outline.ts';
import { apart, within } from '../planar.ts';
import type { Box, Opening, Prism, Pyramid, RectangularTube, Sheet } from '../shapes.ts';
import { type Vec2, zero } from '../vector.ts';
import { belowZero, type Impossible, impossible, notAboveZero, type Row, wallsMeet, worked } from './row.ts';

/** m3. */
export const blockVolume = formula<'length' | 'width' | 'height'>(
  'length * width * height',
  ({ length, width, height }) => length * width * height,
);

/** m3, right triangle section. */
export const wedgeVolume = formula<'length' | 'width' | 'height'>(
  'length * width * height / 2',
  ({ length, width, height }) => (length * width * height) / 2,
);

/** m3; square corners. */
export const rectangularTubeVolume = formula<'width' | 'height' | 'wall' | 'length'>(
  '2 * wall * (width + height - 2 * wall) * length',
  ({ width, height, wall, length }) => 2 * wall * (width + height - 2 * wall) * length,
);

/** m3; prismoid, so base and top need not be in proportion. */
export const pyramidVolume = formula<'height' | 'baseLength' | 'baseWidth' | 'topLength' | 'topWidth'>(
  'height / 6 * (2 * baseLength * baseWidth + baseLength * topWidth + topLength * baseWidth + 2 * topLength * topWidth)',
  ({ height, baseLength: a, baseWidth: b, topLength: c, topWidth: d }) =>
    (height / 6) * (2 * a * b + a * d + c * b + 2 * c * d),
);

/** m3. */
export const pointedPyramidVolume = formula<'height' | 'baseLength' | 'baseWidth'>(
  'baseLength * baseWidth * height / 3',
  ({ height, baseLength, baseWidth }) => (baseLength * baseWidth * height) / 3,
);

/** m3; area of the outline less its holes. */
export const prismVolume = formula<'area' | 'length'>('area * length', ({ area, length }) => area * length);

/** kg. */
export const sheetMass = formula<'massPerArea' | 'area'>(
  'massPerArea * area',
  ({ massPerArea, area }) => massPerArea * area,
);

const sides = ({ x, y, z }: { x: number; y: number; z: number }) => ({ length: x, width: y, height: z });

const block: Row<Box> = {
  fault: ({ x, y, z }) => notAboveZero({ x, y, z }),
  volume: (shape) => worked(blockVolume, sides(shape)),
  centre: () => zero,
};

const wedge: Row<Box> = {
  ...block,
  volume: (shape) => worked(wedgeVolume, sides(shape)),
  centre: ({ x, z }) => [-x / 6, 0, -z / 6],
};

const rectangularTube: Row<RectangularTube> = {
  fault: ({ y, z, wall, length }) =>
    notAboveZero({ y, z, wall, length }) ?? wallsMeet(wall, Math.min(y, z), y < z ? 'y' : 'z'),
  volume: ({ y, z, wall, length }) => worked(rectangularTubeVolume, { width: y, height: z, wall, length }),
  centre: () => zero,
};

const pyramid: Row<Pyramid> = {
  fault: ({ base, top, height }) =>
    notAboveZero({ base: Math.min(...base), top: top && Math.max(...top), height }) ??
    belowZero('top', top && Math.min(...top)),
  volume: ({ base, top, height }) =>
    top
      ? worked(pyramidVolume, {
          height,
          baseLength: base[0],
          baseWidth: base[1],
          topLength: top[0],
          topWidth: top[1],
        })
      : worked(pointedPyramidVolume, { height, baseLength: base[0], baseWidth: base[1] }),
  centre: ({ base: [a, b], top: [c, d] = [0, 0], height }) => {
    const fromBase = ((height / 2) * (a * b + a * d + c * b + 3 * c * d)) / (2 * a * b + a * d + c * b + 2 * c * d);
    return [0, 0, fromBase - height / 2];
  },
};

const prism: Row<Prism> = {
  fault: (shape) => notAboveZero({ length: shape.length }) ?? outlinesFault(shape),
  volume: ({ outline, holes, length }) => {
    const area = areaOf(outline) - holes.reduce((sum, hole) => sum + areaOf(hole), 0);
    return worked(prismVolume, { area, length });
  },
  centre: ({ outline, holes }) => [...regionCentre(outline, holes), 0],
};

function outlinesFault({ outline, holes }: Prism): Impossible | undefined {
  for (const [index, points] of [outline, ...holes].entries()) {
    const fault = outlineFault(points);
    const clause = index === 0 ? 'outline' : 'holes';
    if (fault === 'too-few-corners') return impossible(fault, [points.length, 3], [clause]);
    if (fault) return impossible(fault, [index - 1], [clause]);
  }
  return holesFault(outline, holes);
}

function holesFault(outline: readonly Vec2[], holes: readonly (readonly Vec2[])[]): Impossible | undefined {
  for (const [i, hole] of holes.entries()) {
    if (!within({ corners: hole }, { corners: outline })) {
      return impossible('hole-outside-outline', [i], ['outline', 'holes']);
    }
    const other = holes.slice(0, i).findIndex((earlier) => !apart({ corners: hole }, { corners: earlier }));
    if (other >= 0) return impossible('holes-overlap', [other, i], ['holes']);
  }
  return undefined;
}

const sheet: Row<Sheet> = {
  fault: ({ x, y, area, massPerArea }) => notAboveZero({ x, y, area, massPerArea }),
  mass: ({ x, y, area = x * y, massPerArea }) => worked(sheetMass, { massPerArea, area }),
  centre: () => zero,
};

const opening: Row<Opening> = {
  fault: ({ x, y, depth }) => notAboveZero({ x, y, depth }),
  volume: ({ x, y, depth }) => worked(blockVolume, { length: x, width: y, height: depth }),
  centre: () => zero,
};

export const flat = {
  box: block,
  plate: block,
  envelope: block,
  wedge,
  'rectangular tube': rectangularTube,
  pyramid,
  prism,
  sheet,
  opening,
};
