// What bought-in parts of pipework are from outside, and the space inside them.
import type { Bodies, Crossed, Extruded, Revolved, Turned, United } from './body.ts';
import type { Outline } from './outline.ts';
import { type Placement, still } from './placement.ts';
import type {
  Bolt,
  BoltSet,
  Flange,
  Hexagon,
  Manway,
  Nozzle,
  PipeworkShape,
  Reducer,
  Tee,
} from './shapes-of-pipework.ts';
import type { Vec2 } from './vector.ts';

/** The bodies of a part that can be made. */
export function pipeworkBodies(shape: PipeworkShape): Bodies {
  switch (shape.kind) {
    case 'flange':
      return {
        outer: revolved(flangeOutline(shape)),
        inner: shape.bore > 0 ? rod(shape.bore, -flangeLength(shape), 0) : null,
        frame: still,
      };
    case 'nozzle':
      return { outer: revolved(nozzleOutline(shape)), inner: stub(shape), frame: still };
    case 'manway':
      return manway(shape);
    case 'tee':
      return { outer: tee(shape, shape.outside), inner: tee(shape, shape.outside - 2 * shape.wall), frame: still };
    case 'reducer':
      return reducer(shape);
    case 'bolt':
      return { outer: bolt(shape), inner: null, frame: still };
    case 'bolt set':
      return { outer: revolved(ring(shape)), inner: null, frame: still };
    case 'nut':
      return { outer: hexagon(shape), inner: null, frame: still };
    case 'washer':
      return { outer: rod(shape.outside, -shape.thickness / 2, shape.thickness / 2), inner: null, frame: still };
  }
}

const revolved = (outline: Outline): Revolved => ({ form: 'revolved', outline });
const rod = (diameter: number, low: number, high: number): Turned => ({
  form: 'turned',
  low,
  high,
  lowRadius: diameter / 2,
  highRadius: diameter / 2,
});
const raised = (z: number): Placement => ({ R: still.R, t: [0, 0, z] });

const flangeLength = ({ thickness, faceHeight, hubLength }: Flange): number => thickness + faceHeight + hubLength;

/** From the gasket face at 0 downwards, as if it were solid. */
function flangeOutline({ outside, thickness, raisedFace, faceHeight, hub, neck, hubLength }: Flange): Outline {
  const plate = -(thickness + faceHeight);
  return run([
    [0, 0],
    ...(faceHeight > 0
      ? ([
          [raisedFace / 2, 0],
          [raisedFace / 2, -faceHeight],
        ] as const)
      : []),
    [outside / 2, -faceHeight],
    [outside / 2, plate],
    ...(hubLength > 0
      ? ([
          [hub / 2, plate],
          [neck / 2, plate - hubLength],
        ] as const)
      : []),
    [0, plate - hubLength],
  ]);
}

function nozzleOutline({ flange, outside, pipeLength, projection, pad }: Nozzle): Outline {
  const plain = flangeOutline(flange).slice(0, -1);
  return run([
    ...plain,
    ...(pipeLength > 0 ? ([[outside / 2, pipeLength - projection]] as const) : []),
    ...(pad
      ? ([
          [outside / 2, pad.thickness - projection],
          [pad.outside / 2, pad.thickness - projection],
          [pad.outside / 2, -projection],
        ] as const)
      : ([[outside / 2, -projection]] as const)),
    [0, -projection],
  ]);
}

/** Corners without those that repeat the one before. */
const run = (corners: readonly Vec2[]): Outline =>
  corners.filter(([r, z], i) => i === 0 || r !== corners[i - 1]?.[0] || z !== corners[i - 1]?.[1]);

/** The pipe's bore from the gasket face to where the pipe begins. */
const stub = ({ outside, wall, projection }: Nozzle): Turned => rod(outside - 2 * wall, -projection, 0);

function manway({ nozzle, cover, studs }: Manway): Bodies {
  const above = flangeOutline(cover).map(([r, z]): Vec2 => [r, -z]);
  const pieces: United['pieces'] = [
    { body: revolved(nozzleOutline(nozzle)), frame: still },
    { body: revolved(above), frame: still },
    { body: revolved(ring(studs)), frame: still },
  ];
  return { outer: { form: 'united', pieces }, inner: stub(nozzle), frame: still };
}

const tee = ({ run: half, branch }: Tee, diameter: number): Crossed => ({
  form: 'crossed',
  radius: diameter / 2,
  run: half,
  branch,
});

function reducer({ large, largeWall, small, smallWall, length, offset }: Reducer): Bodies {
  const body = (base: number, top: number): Turned => ({
    form: 'turned',
    low: -length / 2,
    high: length / 2,
    lowRadius: base / 2,
    highRadius: top / 2,
    ...(offset > 0 && { lean: -offset / length }),
  });
  return { outer: body(large, small), inner: body(large - 2 * largeWall, small - 2 * smallWall), frame: still };
}

function bolt({ diameter, length, head, nuts, nut }: Bolt): United {
  const whole = length + (head?.height ?? 0);
  const stack = nut ? nuts * nut.height : 0;
  const ends = head ? [{ of: head, low: -whole / 2 }] : [];
  const nutted = nut && stack > 0 ? stacks(nut, stack, whole, head === undefined) : [];
  return {
    form: 'united',
    pieces: [
      { body: rod(diameter, -whole / 2, whole / 2), frame: still },
      ...[...ends, ...nutted].map(({ of, low }) => ({ body: hexagon(of), frame: raised(low + of.height / 2) })),
    ],
  };
}

/** Nuts on top of each other at the far end, or half of them at each end. */
function stacks({ flats }: Hexagon, height: number, whole: number, both: boolean) {
  const of = { flats, height: both ? height / 2 : height };
  const far = { of, low: whole / 2 - of.height };
  return both ? [far, { of, low: -whole / 2 }] : [far];
}

/** Corners along x. */
function hexagon({ flats, height }: Hexagon): Extruded {
  const corner = flats / Math.sqrt(3);
  const outline = [0, 1, 2, 3, 4, 5].map(
    (n): Vec2 => [corner * Math.cos((n * Math.PI) / 3), corner * Math.sin((n * Math.PI) / 3)],
  );
  return { form: 'extruded', outline, holes: [], half: height / 2 };
}

/** The room that a set of bolts takes up, turned round: as wide as the widest corner. */
function ring({ circle, each: { length, diameter, head, nut } }: BoltSet): Outline {
  const across = Math.max(diameter, ...[head, nut].map((one) => ((one?.flats ?? 0) * 2) / Math.sqrt(3)));
  const [inner, outer, half] = [Math.max(0, circle - across) / 2, (circle + across) / 2, length / 2];
  return [
    [inner, -half],
    [outer, -half],
    [outer, half],
    [inner, half],
  ];
}
