// Flanges, nozzles, manways, tees and reducers, worked out from the dimensions of their standards.
import { formula } from '../formula.ts';
import type { Flange, Manway, Nozzle, Reducer, Tee } from '../shapes-of-pipework.ts';
import type { Vec3 } from '../vector.ts';
import { boltSetWorked } from './bolting.ts';
import { boredVolume, frustumCentre, frustumVolume, tubeVolume } from './round.ts';
import {
  belowZero,
  exceeds,
  figureOf,
  type Impossible,
  impossible,
  joined,
  notAboveZero,
  type Row,
  type Worked,
  wallsMeet,
  worked,
} from './row.ts';

/** m3; plate, raised face and conical hub, less the bore; bolt holes are not taken off. */
export const flangeVolume = formula<
  'outside' | 'thickness' | 'raisedFace' | 'faceHeight' | 'hub' | 'neck' | 'hubLength' | 'bore'
>(
  'pi / 4 * (outside * outside * thickness + raisedFace * raisedFace * faceHeight' +
    ' + (hub * hub + hub * neck + neck * neck) / 3 * hubLength - bore * bore * (thickness + faceHeight + hubLength))',
  ({ outside, thickness, raisedFace, faceHeight, hub, neck, hubLength, bore }) =>
    (Math.PI / 4) *
    (outside * outside * thickness +
      raisedFace * raisedFace * faceHeight +
      ((hub * hub + hub * neck + neck * neck) / 3) * hubLength -
      bore * bore * (thickness + faceHeight + hubLength)),
);

/** m3; a blind flange, or a cover: plate and raised face. */
export const blindVolume = formula<'outside' | 'thickness' | 'raisedFace' | 'faceHeight'>(
  'pi / 4 * (outside * outside * thickness + raisedFace * raisedFace * faceHeight)',
  ({ outside, thickness, raisedFace, faceHeight }) =>
    (Math.PI / 4) * (outside * outside * thickness + raisedFace * raisedFace * faceHeight),
);

/** m3; its pieces stand with it. */
export const nozzleVolume = formula<'flange' | 'pipe'>('flange + pipe', ({ flange: of, pipe }) => of + pipe);

/** m3; its pieces stand with it. */
export const paddedNozzleVolume = formula<'flange' | 'pipe' | 'pad'>(
  'flange + pipe + pad',
  ({ flange: of, pipe, pad }) => of + pipe + pad,
);

/** m3; its pieces stand with it. */
export const manwayVolume = formula<'nozzle' | 'cover' | 'bolts'>(
  'nozzle + cover + bolts',
  ({ nozzle, cover, bolts }) => nozzle + cover + bolts,
);

/**
 * m3; run and branch to the crossing of their centre lines, less what both take up there: half of what two crossing
 * cylinders share is a third of the cube of their diameter (Archimedes), of the outside as of the bore.
 */
export const teeVolume = formula<'outside' | 'wall' | 'bore' | 'run' | 'branch'>(
  'pi * (outside - wall) * wall * (2 * run + branch) - (outside * outside * outside - bore * bore * bore) / 3',
  ({ outside, wall, bore, run, branch }) =>
    Math.PI * (outside - wall) * wall * (2 * run + branch) - (outside ** 3 - bore ** 3) / 3,
);

/** m3; a cone less the cone inside it, each end with its own wall; where the ends lie across the axis makes no difference. */
export const reducerVolume = formula<'large' | 'largeBore' | 'small' | 'smallBore' | 'length'>(
  'pi / 12 * (large * large + large * small + small * small' +
    ' - largeBore * largeBore - largeBore * smallBore - smallBore * smallBore) * length',
  ({ large, largeBore, small, smallBore, length }) =>
    (Math.PI / 12) *
    (large * large +
      large * small +
      small * small -
      largeBore * largeBore -
      largeBore * smallBore -
      smallBore * smallBore) *
    length,
);

const discVolume = (diameter: number, height: number): number => (Math.PI / 4) * diameter * diameter * height;

const lengthOf = ({ thickness, faceHeight, hubLength }: Flange): number => thickness + faceHeight + hubLength;

const flangeWorked = (shape: Flange): Worked => {
  const { outside, thickness, raisedFace, faceHeight, hub, neck, hubLength, bore } = shape;
  const plate = { outside, thickness, raisedFace, faceHeight };
  return bore === 0 && hubLength === 0
    ? worked(blindVolume, plate)
    : worked(flangeVolume, { ...plate, hub, neck, hubLength, bore });
};

/** First moment of a flange about its gasket face along own z, m4. */
function flangeMoment(shape: Flange): number {
  const { outside, thickness, raisedFace, faceHeight, hub, neck, hubLength, bore } = shape;
  const plate = discVolume(outside, thickness);
  const taper = hubLength > 0 ? frustumVolume({ base: hub, top: neck, height: hubLength }) : 0;
  const intoHub = hubLength > 0 ? frustumCentre(hub, neck, hubLength) : 0;
  return -(
    (discVolume(raisedFace, faceHeight) * faceHeight) / 2 +
    plate * (faceHeight + thickness / 2) +
    taper * (faceHeight + thickness + intoHub) -
    (discVolume(bore, lengthOf(shape)) * lengthOf(shape)) / 2
  );
}

function flangeFault(shape: Flange): Impossible | undefined {
  const { outside, thickness, hub, neck, bore, hubLength, faceHeight, raisedFace } = shape;
  const sizes =
    notAboveZero({ outside, thickness, ...(hubLength > 0 && { hub, neck }) }) ??
    belowZero('hubLength', hubLength) ??
    belowZero('bore', bore) ??
    belowZero('faceHeight', faceHeight) ??
    belowZero('raisedFace', raisedFace);
  if (sizes) return sizes;
  const narrowest = hubLength > 0 ? Math.min(hub, neck) : outside;
  return bore < narrowest ? undefined : impossible('bore-not-inside', [bore, narrowest], ['bore', 'outside']);
}

const flange: Row<Flange> = {
  fault: flangeFault,
  volume: flangeWorked,
  centre: (shape) => [0, 0, flangeMoment(shape) / figureOf(flangeWorked(shape))],
};

/** The pieces of a nozzle, m3 each. */
const nozzlePieces = ({ flange: of, outside, wall, pipeLength, pad }: Nozzle) => ({
  flange: flangeWorked(of),
  pipe: worked(tubeVolume, { outside, wall, length: pipeLength }),
  ...(pad && { pad: worked(boredVolume, { outside: pad.outside, bore: outside, length: pad.thickness }) }),
});

const nozzleWorked = (shape: Nozzle): Worked => {
  const { pad, ...rest } = nozzlePieces(shape);
  return pad ? joined(paddedNozzleVolume, { ...rest, pad }) : joined(nozzleVolume, rest);
};

/** First moment of a nozzle about its gasket face, m4: the stub begins at -projection. */
function nozzleMoment(shape: Nozzle): number {
  const { projection, pipeLength, pad } = shape;
  const pieces = nozzlePieces(shape);
  const stub = figureOf(pieces.pipe) * (pipeLength / 2 - projection);
  const plate = pad && pieces.pad ? figureOf(pieces.pad) * (pad.thickness / 2 - projection) : 0;
  return flangeMoment(shape.flange) + stub + plate;
}

const nozzleFault = ({ flange: of, outside, wall, pipeLength, projection, pad }: Nozzle): Impossible | undefined =>
  flangeFault(of) ??
  notAboveZero({ outside, wall, projection }) ??
  wallsMeet(wall, outside) ??
  (pipeLength < 0
    ? impossible('projection-too-short', [projection, projection - pipeLength], ['projection'])
    : undefined) ??
  (pad && (notAboveZero({ pad: pad.thickness }) ?? padInside(pad.outside, outside)));

const padInside = (pad: number, outside: number): Impossible | undefined =>
  exceeds(pad, outside) ? undefined : impossible('pad-inside', [pad, outside], ['pad']);

const nozzle: Row<Nozzle> = {
  fault: nozzleFault,
  volume: nozzleWorked,
  centre: (shape) => [0, 0, nozzleMoment(shape) / figureOf(nozzleWorked(shape))],
};

const manwayWorked = ({ nozzle: of, cover, studs }: Manway): Worked =>
  joined(manwayVolume, { nozzle: nozzleWorked(of), cover: flangeWorked(cover), bolts: boltSetWorked(studs) });

const manway: Row<Manway> = {
  fault: ({ nozzle: of, cover }) => nozzleFault(of) ?? flangeFault(cover),
  volume: manwayWorked,
  // The cover lies the other way round on the face, the studs' middles lie in it.
  centre: (shape) => [0, 0, (nozzleMoment(shape.nozzle) - flangeMoment(shape.cover)) / figureOf(manwayWorked(shape))],
};

const boreOf = (outside: number, wall: number): number => outside - 2 * wall;

const teeWorked = ({ outside, wall, run, branch }: Tee): Worked =>
  worked(teeVolume, { outside, wall, bore: boreOf(outside, wall), run, branch });

const tee: Row<Tee> = {
  fault: ({ outside, wall, run, branch }) =>
    notAboveZero({ outside, wall, run, branch }) ??
    wallsMeet(wall, outside) ??
    (exceeds(outside / 2, Math.min(run, branch))
      ? impossible('branch-too-short', [Math.min(run, branch), outside / 2], ['branch', 'outside'])
      : undefined),
  volume: teeWorked,
  centre: (shape) => {
    // Of a branch of radius r beyond the run: pi r2 m2 / 2 less the moment of what it shares with the run, 3 pi r4 / 8.
    const moment = (radius: number): number =>
      (Math.PI * radius ** 2 * shape.branch ** 2) / 2 - (3 * Math.PI * radius ** 4) / 8;
    const radius = shape.outside / 2;
    return [0, (moment(radius) - moment(radius - shape.wall)) / figureOf(teeWorked(shape)), 0];
  },
};

const reducerWorked = ({ large, largeWall, small, smallWall, length }: Reducer): Worked =>
  worked(reducerVolume, {
    large,
    largeBore: boreOf(large, largeWall),
    small,
    smallBore: boreOf(small, smallWall),
    length,
  });

const reducer: Row<Reducer> = {
  fault: ({ large, largeWall, small, smallWall, length, offset }) =>
    notAboveZero({ large, largeWall, small, smallWall, length }) ??
    belowZero('offset', offset) ??
    wallsMeet(largeWall, large) ??
    wallsMeet(smallWall, small),
  volume: reducerWorked,
  centre: (shape): Vec3 => {
    const { large, largeWall, small, smallWall, length, offset } = shape;
    const moment = (base: number, top: number): number =>
      frustumVolume({ base, top, height: length }) * frustumCentre(base, top, length);
    const inner = moment(boreOf(large, largeWall), boreOf(small, smallWall));
    const up = (moment(large, small) - inner) / figureOf(reducerWorked(shape));
    return [0, 0 - (offset * up) / length, up - length / 2];
  },
};

export const pipework = { flange, nozzle, manway, tee, reducer };
