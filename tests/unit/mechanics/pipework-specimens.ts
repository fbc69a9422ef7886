// One or more of every part of pipework that can be made, in sizes that leave no face out of sight.
import type { Shape } from '../../../server/mechanics/index.ts';
import type { Bolt, BoltSet, Flange, Nozzle } from '../../../server/mechanics/shapes-of-pipework.ts';

export const weldNeck: Flange = {
  kind: 'flange',
  outside: 1.4,
  thickness: 0.2,
  raisedFace: 0.9,
  faceHeight: 0.06,
  hub: 0.85,
  neck: 0.7,
  hubLength: 0.3,
  bore: 0.55,
};
export const slipOn: Flange = { ...weldNeck, neck: 0.85, hubLength: 0.15, bore: 0.71 };
export const lapJoint: Flange = { ...slipOn, faceHeight: 0, raisedFace: 0 };
export const blind: Flange = { ...weldNeck, hub: 0, neck: 0, hubLength: 0, bore: 0 };

export const stud: Bolt = {
  kind: 'bolt',
  diameter: 0.09,
  length: 0.7,
  nuts: 2,
  nut: { flats: 0.15, height: 0.09 },
  washers: 0,
};
export const headed: Bolt = {
  ...stud,
  nuts: 1,
  washers: 2,
  head: { flats: 0.14, height: 0.06 },
  washer: { outside: 0.2, bore: 0.1, thickness: 0.02 },
};
/** A bolt without washers, which its body does not show. */
export const plainBolt: Bolt = { ...headed, washers: 0 };

export const studs: BoltSet = { kind: 'bolt set', bolts: 8, circle: 1.15, each: stud };

export const nozzle: Nozzle = {
  kind: 'nozzle',
  flange: weldNeck,
  outside: 0.7,
  wall: 0.075,
  pipeLength: 0.64,
  projection: 1.2,
};
export const padded: Nozzle = { ...nozzle, pad: { outside: 1.1, thickness: 0.05 } };

export const pipeworkSpecimens: readonly Shape[] = [
  weldNeck,
  slipOn,
  lapJoint,
  blind,
  nozzle,
  padded,
  { kind: 'manway', nozzle: padded, cover: blind, studs },
  { kind: 'tee', outside: 0.7, wall: 0.08, run: 0.6, branch: 0.5 },
  { kind: 'reducer', large: 0.9, largeWall: 0.08, small: 0.5, smallWall: 0.05, length: 0.7, offset: 0 },
  { kind: 'reducer', large: 0.9, largeWall: 0.08, small: 0.5, smallWall: 0.05, length: 0.7, offset: 0.2 },
  stud,
  headed,
  plainBolt,
  studs,
  { kind: 'nut', diameter: 0.3, flats: 0.5, height: 0.28 },
  { kind: 'washer', outside: 0.6, bore: 0.32, thickness: 0.05 },
];

/** Parts with washers, a bore or loose pieces that their bodies do not show; held against meshes instead. */
export const notShown = (shape: Shape): boolean =>
  shape.kind === 'manway' ||
  shape.kind === 'bolt set' ||
  shape.kind === 'nut' ||
  shape.kind === 'washer' ||
  (shape.kind === 'bolt' && shape.washers > 0);
