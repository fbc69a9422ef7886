// What shops make and heap up: weld metal, coils of strip or wire, heaps, hollow-core slabs.
import { formula } from '../formula.ts';
import type { Coil, Heap, HollowCore, Weld } from '../shapes.ts';
import { type Vec2, zero } from '../vector.ts';
import { belowZero, exceeds, impossible, notAboveZero, type Row, worked } from './row.ts';

/** m3; a right triangle between its legs, and the excess. */
export const filletVolume = formula<'leg' | 'otherLeg' | 'excess' | 'length'>(
  'leg * otherLeg / 2 * (1 + excess) * length',
  ({ leg, otherLeg, excess, length }) => ((leg * otherLeg) / 2) * (1 + excess) * length,
);

/** m3; the gap through the thickness, the bevels above the root face, and the excess; bevel in rad from square. */
export const buttVolume = formula<'thickness' | 'gap' | 'prepared' | 'rootFace' | 'bevel' | 'excess' | 'length'>(
  '(thickness * gap + prepared * (thickness - rootFace) * (thickness - rootFace) * tan(bevel)) * (1 + excess) * length',
  ({ thickness, gap, prepared, rootFace, bevel, excess, length }) =>
    (thickness * gap + prepared * (thickness - rootFace) ** 2 * Math.tan(bevel)) * (1 + excess) * length,
);

/** m3; the ring, as far as it is metal. */
export const coilVolume = formula<'outside' | 'bore' | 'width' | 'fillFactor'>(
  'pi / 4 * (outside * outside - bore * bore) * width * fillFactor',
  ({ outside, bore, width, fillFactor }) => (Math.PI / 4) * (outside * outside - bore * bore) * width * fillFactor,
);

/** m3; round wire of a known length. */
export const wireVolume = formula<'wire' | 'length'>(
  'pi / 4 * wire * wire * length',
  ({ wire, length }) => (Math.PI / 4) * wire * wire * length,
);

/** m3; a cone. */
export const heapVolume = formula<'base' | 'height'>(
  'pi / 12 * base * base * height',
  ({ base, height }) => (Math.PI / 12) * base * base * height,
);

/** m3; a cone by its slope (rad). */
export const slopedHeapVolume = formula<'base' | 'angle'>(
  'pi / 24 * base * base * base * tan(angle)',
  ({ base, angle }) => (Math.PI / 24) * base * base * base * Math.tan(angle),
);

/** m3; a ridge between two half cones; length over all. */
export const ridgeVolume = formula<'base' | 'height' | 'length'>(
  'base * height * (pi / 12 * base + (length - base) / 2)',
  ({ base, height, length }) => base * height * ((Math.PI / 12) * base + (length - base) / 2),
);

/** m3; the same by its slope (rad). */
export const slopedRidgeVolume = formula<'base' | 'angle' | 'length'>(
  'base * base / 2 * tan(angle) * (pi / 12 * base + (length - base) / 2)',
  ({ base, angle, length }) => ((base * base) / 2) * Math.tan(angle) * ((Math.PI / 12) * base + (length - base) / 2),
);

/** m3; the slab less its cores. */
export const hollowCoreVolume = formula<'length' | 'width' | 'depth' | 'cores' | 'coreWidth' | 'coreHeight'>(
  'length * (width * depth - cores * pi / 4 * coreWidth * coreHeight)',
  ({ length, width, depth, cores, coreWidth, coreHeight }) =>
    length * (width * depth - ((cores * Math.PI) / 4) * coreWidth * coreHeight),
);

/** Round wires side by side fill at most this share of a section: each in a hexagon of its own (Thue 1910). */
export const closestPacking = Math.PI / Math.sqrt(12);

const tooSteep = (name: string, angle: number | undefined) =>
  angle !== undefined && angle >= Math.PI / 2 ? impossible('angle-too-steep', [angle], [name]) : undefined;

const weld: Row<Weld> = {
  fault: (shape) => {
    const { length, excess } = shape;
    const own = notAboveZero({ length }) ?? belowZero('excess', excess);
    if (own) return own;
    if (shape.leg) return notAboveZero({ legLength: Math.min(...shape.leg) });
    const { thickness, gap, rootFace, bevel, prepared } = shape;
    return (
      notAboveZero({ thickness, ...((prepared === 0 || bevel === 0) && { gap }) }) ??
      belowZero('gap', gap) ??
      belowZero('rootFace', rootFace) ??
      belowZero('bevel', bevel) ??
      tooSteep('bevel', bevel) ??
      (rootFace < thickness
        ? undefined
        : impossible('root-face-too-large', [rootFace, thickness], ['rootFace', 'thickness']))
    );
  },
  volume: (shape) => {
    const { length, excess } = shape;
    if (shape.leg) return worked(filletVolume, { leg: shape.leg[0], otherLeg: shape.leg[1], excess, length });
    const { thickness, gap, prepared, rootFace, bevel } = shape;
    return worked(buttVolume, { thickness, gap, prepared, rootFace, bevel, excess, length });
  },
  centre: () => zero,
};

/** Width and height of a weld's box, m; a butt weld is as wide as it is open at its face. */
export function weldSides(shape: Weld): Vec2 {
  if (shape.leg) return shape.leg;
  const { thickness, gap, rootFace, bevel, prepared } = shape;
  return [gap + 2 * prepared * (thickness - rootFace) * Math.tan(bevel), thickness];
}

const coil: Row<Coil> = {
  fault: ({ outside, bore, width, fillFactor, wire, length }) => {
    const size = notAboveZero({ outside, bore, width, fillFactor, wire, length });
    if (size) return size;
    if (bore >= outside) return impossible('bore-not-inside', [bore, outside], ['bore', 'outside']);
    if (wire === undefined) return undefined;
    if (exceeds(fillFactor, closestPacking))
      return impossible('wound-too-tight', [fillFactor, closestPacking], ['fillFactor', 'wire']);
    const most = coilVolume({ outside, bore, width, fillFactor: closestPacking });
    const volume = length === undefined ? 0 : wireVolume({ wire, length });
    return exceeds(volume, most) ? impossible('coil-too-full', [volume, most], ['length', 'wire']) : undefined;
  },
  volume: ({ outside, bore, width, fillFactor, wire, length }) =>
    wire !== undefined && length !== undefined
      ? worked(wireVolume, { wire, length })
      : worked(coilVolume, { outside, bore, width, fillFactor }),
  centre: () => zero,
};

/** m; as stated, or by its slope. */
export const heapHeight = ({ base, height, angle }: Heap): number => height ?? (base / 2) * Math.tan(angle);

const heap: Row<Heap> = {
  fault: ({ base, length, height, angle }) =>
    notAboveZero({ base, length, height, angle }) ??
    tooSteep('angle', angle) ??
    (length !== undefined && exceeds(base, length)
      ? impossible('heap-too-short', [length, base], ['length', 'base'])
      : undefined),
  volume: (shape) => {
    const { base, length } = shape;
    if (length === undefined)
      return shape.angle === undefined
        ? worked(heapVolume, { base, height: shape.height })
        : worked(slopedHeapVolume, { base, angle: shape.angle });
    return shape.angle === undefined
      ? worked(ridgeVolume, { base, height: shape.height, length })
      : worked(slopedRidgeVolume, { base, angle: shape.angle, length });
  },
  centre: (shape) => {
    const { base, length = base } = shape;
    const height = heapHeight(shape);
    const [cone, ridge] = [(Math.PI / 12) * base, (length - base) / 2];
    return [0, 0, (height * (cone / 4 + ridge / 3)) / (cone + ridge) - height / 2];
  },
};

/** Where the middles of the cores lie across a slab, m: the webs between them and beside them are alike. */
export function coreMiddles({ y, cores, coreWidth }: HollowCore): readonly number[] {
  const step = coreWidth + (y - cores * coreWidth) / (cores + 1);
  return Array.from({ length: cores }, (_, i) => (i - (cores - 1) / 2) * step);
}

const hollowCore: Row<HollowCore> = {
  fault: ({ x, y, z, cores, coreWidth, coreHeight }) =>
    notAboveZero({ x, y, z, cores, coreWidth, coreHeight }) ??
    (cores * coreWidth < y ? undefined : impossible('cores-too-wide', [cores * coreWidth, y], ['cores', 'core'])) ??
    (coreHeight < z ? undefined : impossible('cores-too-high', [coreHeight, z], ['core'])),
  volume: ({ x, y, z, cores, coreWidth, coreHeight }) =>
    worked(hollowCoreVolume, { length: x, width: y, depth: z, cores, coreWidth, coreHeight }),
  centre: () => zero,
};

export const shop = { weld, coil, heap, 'hollow core': hollowCore };
