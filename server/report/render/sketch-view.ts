// From points in space to points on the page: the ways a sketch is seen, and the scale that fits its frames.
import type { Vec3 } from '../../mechanics/index.ts';
import type { Scene, SketchView } from '../sheet/types.ts';

/** A point on the page: x to the right, y down. */
export type Spot = readonly [x: number, y: number];

/** A picture's size, always the same, so that nothing moves while a plan is typed; and the room kept for labels. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly side: number;
  readonly top: number;
  readonly bottom: number;
}

export const frameOf = ({ view, width }: SketchView): Frame => frames[width][view];

const wholeWidth = { width: 760, side: 130, top: 36, bottom: 66 };
const halfWidth = { width: 372, height: 400, side: 64, top: 36, bottom: 66 };
const frames: Readonly<Record<SketchView['width'], Readonly<Record<SketchView['view'], Frame>>>> = {
  whole: {
    elevation: { ...wholeWidth, height: 480 },
    plan: { ...wholeWidth, height: 330 },
    oblique: { ...wholeWidth, height: 460 },
  },
  half: { elevation: halfWidth, plan: halfWidth, oblique: halfWidth },
};

/** Third axis of a cabinet drawing: at 45°, half as long as it is (ISO 5456-3, from memory). */
const receding = Math.SQRT1_2 / 2;

/** Where a point or direction falls on the drawing plane, m: across and up. */
export const seen: Readonly<Record<SketchView['view'], (point: Vec3) => Spot>> = {
  elevation: ([x, , z]) => [x, z],
  plan: ([x, y]) => [x, y],
  oblique: ([x, y, z]) => [x + receding * y, z + receding * y],
};

/** How far away from the eye a point lies, in any unit. */
export const depth: Readonly<Record<SketchView['view'], (point: Vec3) => number>> = {
  elevation: ([, y]) => y,
  plan: ([, , z]) => -z,
  oblique: ([x, y, z]) => y - receding * (x + z),
};

export interface Scale {
  readonly perMetre: number; // units of the picture
  readonly toPage: (point: Vec3) => Spot;
}

/** Scales of the views: one for all elevations and plans, so that they can be held against each other, one for each oblique view. */
export function scalesOf(views: readonly SketchView[]): readonly Scale[] {
  const boxes = views.map(({ view, scene }) => boundsOf(pointsOf(scene).map(seen[view])));
  const fits = views.map((view, i) => fitting(frameOf(view), boxes[i] as Bounds));
  const shared = Math.min(...fits.filter((_, i) => views[i]?.view !== 'oblique'));
  return views.map((view, i) => {
    const perMetre = view.view === 'oblique' ? (fits[i] as number) : shared;
    const { width, height, top, bottom } = frameOf(view);
    const { low, high } = boxes[i] as Bounds;
    const [midX, midY] = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
    const middle = top + (height - top - bottom) / 2;
    return {
      perMetre,
      toPage: (point) => {
        const [x, y] = seen[view.view](point);
        return [width / 2 + (x - midX) * perMetre, middle - (y - midY) * perMetre];
      },
    };
  });
}

/** All points of a scene. */
export const pointsOf = ({ strokes, signs, boxes }: Scene): readonly Vec3[] => [
  ...strokes.flatMap(({ path }) => path),
  ...signs.map(({ place }) => place),
  ...boxes.flatMap(({ corners }) => corners),
];

interface Bounds {
  readonly low: Spot;
  readonly high: Spot;
}

function boundsOf(spots: readonly Spot[]): Bounds {
  const of = (i: 0 | 1, pick: (...all: number[]) => number) =>
    spots.length ? pick(...spots.map((spot) => spot[i])) : 0;
  return { low: [of(0, Math.min), of(1, Math.min)], high: [of(0, Math.max), of(1, Math.max)] };
}

/** Largest scale at which a view fits into its frame; nothing is drawn larger than a hand's breadth would be across it. */
function fitting({ width, height, side, top, bottom }: Frame, { low, high }: Bounds): number {
  const least = 0.1; // m
  const across = (width - 2 * side) / Math.max(high[0] - low[0], least);
  return Math.min(across, (height - top - bottom) / Math.max(high[1] - low[1], least));
}
