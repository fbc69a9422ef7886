// Places labels of a sketch so that none lies on another or outside the picture: one after the other, each where it disturbs least.
import type { Spot } from './sketch-view.ts';

/** Lines of text that belong to one spot. */
export interface Wanted {
  readonly rows: readonly string[];
  /** Where it may point to, best first: one for a sign, several along a line. */
  readonly anchors: readonly Spot[];
  readonly clear: number; // what the sign itself takes up around its spot
}

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Segment = readonly [from: Spot, to: Spot];

/** A label's place, the spot it stands for, and the thin line between them where they stand apart. */
export interface PlacedLabel {
  readonly rect: Rect;
  readonly anchor: Spot;
  readonly leader: Segment | null;
}

export const lineHeight = 15;
const padding = 3;
const margin = 4;

/** A place for each label in turn, or null where there is none left. The same labels get the same places. */
export function placeLabels(
  labels: readonly Wanted[],
  area: Rect,
  taken: readonly Rect[],
  segments: readonly Segment[],
  spots: readonly Spot[],
): readonly (PlacedLabel | null)[] {
  const full = [...taken];
  const lines = [...segments];
  return labels.map((label) => {
    const found = best(label, area, full, lines, spots);
    if (found) full.push(found.rect);
    if (found?.leader) lines.push(found.leader);
    return found;
  });
}

function best(
  { rows, anchors, clear }: Wanted,
  area: Rect,
  full: readonly Rect[],
  segments: readonly Segment[],
  spots: readonly Spot[],
): PlacedLabel | null {
  const width = Math.max(...rows.map(textWidth)) + 2 * padding;
  const height = rows.length * lineHeight + padding;
  let found: PlacedLabel | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { anchor, x, y, cost } of candidates(anchors, clear, width, height, area)) {
    if (cost >= least) break;
    const rect = { x, y, width, height };
    if (!within(rect, area) || full.some((other) => overlap(rect, other))) continue;
    const leader = leaderTo(rect, anchor, clear);
    const crossed = segments.filter((segment) => crosses(segment, rect)).length;
    const covered = spots.filter((spot) => inside(spot, rect, 5)).length;
    const through = leader ? full.filter((other) => crosses(leader, other)).length : 0;
    const total = cost + 200 * (crossed + covered + through);
    if (total < least) {
      least = total;
      found = { rect, anchor, leader };
    }
  }
  return found;
}

/** From the label's nearest edge to its spot; none where it stands close by. */
function leaderTo({ x, y, width, height }: Rect, anchor: Spot, clear: number): Segment | null {
  const edge: Spot = [clamp(anchor[0], x, x + width), clamp(anchor[1], y, y + height)];
  return Math.hypot(edge[0] - anchor[0], edge[1] - anchor[1]) > clear + 14 ? [edge, anchor] : null;
}

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);

interface Candidate {
  readonly anchor: Spot;
  readonly x: number;
  readonly y: number;
  readonly cost: number;
}

/** Directions from the spot to the label: beside it, above, below, aslant. */
const ways: readonly Spot[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
];
const distances = [4, 12, 24, 40, 60, 90, 130, 180, 240, 320];

/** Where a label may stand, the least far away first; on the side that looks out of the drawing rather than into it. */
function candidates(
  anchors: readonly Spot[],
  clear: number,
  width: number,
  height: number,
  area: Rect,
): readonly Candidate[] {
  const middle = area.x + area.width / 2;
  const all = anchors.flatMap((anchor, a) =>
    distances.flatMap((distance) =>
      ways.map(([across, down], w): Candidate => {
        const away = distance + clear;
        const x = anchor[0] + across * away + ((across - 1) * width) / 2;
        const y = anchor[1] + down * away + ((down - 1) * height) / 2;
        const inwards = across * (anchor[0] - middle) < -1 ? 6 : 0;
        return { anchor, x, y, cost: distance + 2 * a + w + inwards };
      }),
    ),
  );
  return all.sort((p, q) => p.cost - q.cost);
}

const within = ({ x, y, width, height }: Rect, area: Rect): boolean =>
  x >= area.x + margin &&
  y >= area.y + margin &&
  x + width <= area.x + area.width - margin &&
  y + height <= area.y + area.height - margin;

/** Do two rectangles have more than an edge in common? */
export const overlap = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const inside = ([x, y]: Spot, rect: Rect, reach: number): boolean =>
  x > rect.x - reach && x < rect.x + rect.width + reach && y > rect.y - reach && y < rect.y + rect.height + reach;

/** Does a line run through a rectangle? By clipping it on each pair of sides (Liang and Barsky, 1984). */
function crosses([from, to]: Segment, { x, y, width, height }: Rect): boolean {
  let [start, end] = [0, 1];
  for (const [axis, low, high] of [
    [0, x, x + width],
    [1, y, y + height],
  ] as const) {
    const way = to[axis] - from[axis];
    const [a, b] = [low - from[axis], high - from[axis]];
    if (Math.abs(way) < 1e-9) {
      if (a > 0 || b < 0) return false;
      continue;
    }
    start = Math.max(start, Math.min(a / way, b / way));
    end = Math.min(end, Math.max(a / way, b / way));
  }
  return start < end;
}

/** Width of a text at 12 units, wide enough for the widest usual sans-serif type (DejaVu Sans, from memory). */
export const textWidth = (text: string): number =>
  [...text].reduce((sum, character) => sum + (widths.find(([set]) => set.test(character))?.[1] ?? 7.8), 0);

const widths: readonly (readonly [set: RegExp, width: number])[] = [
  [/\p{M}/u, 0],
  [/[iIjl.,:;|'’!() ]/, 4.6],
  [/[ftr[\]/°-]/, 5.6],
  [/[mwMW%@—]/, 12],
  [/[A-Z&#]/, 9],
  [/[\u1100-\u{3ffff}]/u, 13],
];

const most = 24;

/** A name short enough for a drawing; the whole one stands in the tables and the description. */
export function shortened(name: string): string {
  const characters = [...name];
  return characters.length > most
    ? `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
    : name;
}
