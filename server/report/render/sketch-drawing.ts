// One view of a sketch: what is drawn in it, from the back to the front, and its labels, each tied to its statement.
import type { Place } from '../../syntax/types.ts';
import type { Label, Sign, SketchView, Stroke } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import {
  lineHeight,
  type PlacedLabel,
  placeLabels,
  type Rect,
  type Segment,
  shortened,
  type Wanted,
} from './sketch-labels.ts';
import { axesRect, boxHtml, boxLines, fixed, reach, scaleRect, signHtml, strokeHtml } from './sketch-parts.ts';
import type { Frame, Scale, Spot } from './sketch-view.ts';
import { visible } from './visible.ts';

export type Identity = (at: readonly Place[]) => Html | null;

interface Row {
  readonly text: string;
  readonly over: boolean;
  readonly at: readonly Place[];
}

/** Labels of what falls on one spot or one line share a place, one under the other. */
interface Group extends Omit<Wanted, 'rows'> {
  readonly lines: Row[];
  readonly spots: readonly Spot[]; // the same for things that fall on one another
}

export interface Drawing {
  readonly picture: Html;
  readonly homeless: readonly string[]; // labels that no room was left for
}

export function drawing({ view, scene }: SketchView, frame: Frame, scale: Scale, identity: Identity): Drawing {
  const strokes = scene.strokes.map((stroke) => ({ stroke, spots: stroke.path.map(scale.toPage) }));
  const signs = scene.signs.map((sign) => ({ sign, spot: scale.toPage(sign.place) }));
  const boxes = scene.boxes.map((box) => ({ box, lines: boxLines(box, view, scale) }));
  const groups = new Groups(view === 'elevation');
  for (const { sign, spot } of signs) if (sign.is === 'hook') groups.sign(sign, spot);
  for (const { stroke, spots } of strokes) groups.stroke(stroke, spots);
  for (const { sign, spot } of signs) if (sign.is !== 'hook') groups.sign(sign, spot);
  for (const { box } of boxes) groups.add(box.label, underside(box.corners.map(scale.toPage)), [], 4, box.at);
  const segments = [
    ...strokes.flatMap(({ stroke, spots }) => (stroke.is === 'plumb' ? [] : segmentsOf(spots, stroke.closed))),
    ...boxes.flatMap(({ lines }) => [...lines.visible, ...lines.hidden]),
  ];
  const area = { x: 0, y: 0, width: frame.width, height: frame.height };
  const taken = [axesRect(frame), scaleRect(frame), ...(scene.open ? [messageRect(frame)] : [])];
  const wanted = groups.all.map(({ lines, anchors, clear }) => ({
    rows: lines.map(({ text }) => text),
    anchors,
    clear,
  }));
  const found = placeLabels(
    wanted,
    area,
    taken,
    segments,
    signs.map(({ spot }) => spot),
  );
  const placed = groups.all.map((group, i) => ({ group, place: found[i] ?? null }));
  return {
    picture: join([
      ...boxes.map(({ box, lines }) => boxHtml(lines, identity(box.at))),
      ...ordered(strokes).map(({ stroke, spots }) => strokeHtml(stroke, spots, identity(stroke.at))),
      ...ordered(signs).map(({ sign, spot }) => signHtml(sign, spot, identity(sign.at))),
      ...placed.flatMap(({ group, place }) => (place ? labelHtml(group.lines, place, identity) : [])),
    ]),
    homeless: placed.flatMap(({ group, place }) => (place ? [] : group.lines.map(({ text }) => text))),
  };
}

const layers: Readonly<Record<Stroke['is'] | Sign['is'], number>> = {
  plumb: 0,
  leg: 1,
  slack: 1,
  beam: 2,
  ring: 3,
  point: 3,
  hook: 4,
  pick: 5,
  centre: 6,
};

/** From the back to the front by what they are, else as they come. */
const ordered = <T extends { readonly stroke: Stroke } | { readonly sign: Sign }>(
  things: readonly T[],
): readonly T[] => {
  const layer = (thing: T) => layers['stroke' in thing ? thing.stroke.is : thing.sign.is];
  return [...things].sort((a, b) => layer(a) - layer(b));
};

const messageRect = ({ width }: Frame): Rect => ({ x: 0, y: 0, width, height: 3 * lineHeight + 12 });

/** Along the lower side of what is around these spots, the middle first. */
function underside(spots: readonly Spot[]): readonly Spot[] {
  const across = spots.map(([x]) => x);
  const [left, right] = [Math.min(...across), Math.max(...across)];
  const bottom = Math.max(...spots.map(([, y]) => y));
  return [0.5, 0.3, 0.7, 0.15, 0.85].map((share): Spot => [left + share * (right - left), bottom]);
}

function segmentsOf(spots: readonly Spot[], closed = false): readonly Segment[] {
  const ends = closed ? [...spots, ...spots.slice(0, 1)] : spots;
  return ends.slice(1).map((to, i): Segment => [ends[i] as Spot, to]);
}

/** Units of the picture: what is closer falls together, what is shorter is seen end on and has its name in another view. */
const near = 2;
const endOn = 8;

class Groups {
  readonly all: Group[] = [];

  constructor(private readonly withFigures: boolean) {}

  sign({ is, label, at }: Sign, spot: Spot): void {
    if (label) this.add(label, [spot], [spot], reach[is], at);
  }

  /** Along the longest part of its path. */
  stroke({ label, at, closed }: Stroke, spots: readonly Spot[]): void {
    if (!label || spots.length < 2) return;
    const length = ([[x1, y1], [x2, y2]]: Segment) => Math.hypot(x2 - x1, y2 - y1);
    const [from, to] = segmentsOf(spots, closed).reduce((a, b) => (length(b) > length(a) + 1e-6 ? b : a));
    if (length([from, to]) < endOn) return;
    const anchors = [0.5, 0.4, 0.6, 0.3, 0.7].map(
      (t): Spot => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])],
    );
    const [first, last] = [spots[0] as Spot, spots.at(-1) as Spot];
    const forward = first[0] < last[0] || (first[0] === last[0] && first[1] <= last[1]);
    this.add(label, anchors, forward ? spots : [...spots].reverse(), 2, at);
  }

  add(label: Label, anchors: readonly Spot[], spots: readonly Spot[], clear: number, at: readonly Place[]): void {
    const name = shortened(visible(label.name));
    const shown = this.withFigures && label.figures !== '';
    const row: Row = { text: shown ? `${name}: ${label.figures}` : name, over: shown && label.over === true, at };
    const same = spots.length ? this.all.find((group) => fallsOn(group.spots, spots)) : undefined;
    if (same) same.lines.push(row);
    else this.all.push({ lines: [row], anchors, spots, clear });
  }
}

const fallsOn = (a: readonly Spot[], b: readonly Spot[]): boolean =>
  a.length === b.length && a.every(([x, y], i) => Math.hypot(x - (b[i]?.[0] ?? 0), y - (b[i]?.[1] ?? 0)) < near);

/** The lines of a label, set towards what they name, with a thin leader where they stand away from it. */
function labelHtml(lines: readonly Row[], { rect, anchor, leader }: PlacedLabel, identity: Identity): Html {
  const right = rect.x + rect.width;
  const side = right <= anchor[0] ? 'end' : rect.x >= anchor[0] ? 'start' : 'middle';
  const x = { start: rect.x + 3, middle: rect.x + rect.width / 2, end: right - 3 }[side];
  const texts = lines.map(
    ({ text, over, at }, i) =>
      html`<text class="label${over ? ' over' : null}" x="${fixed(x)}" y="${fixed(rect.y + 13 + i * lineHeight)}" text-anchor="${side}"${identity(at)}>${text}</text>`,
  );
  const line = leader
    ? html`<line class="leader" x1="${fixed(leader[0][0])}" y1="${fixed(leader[0][1])}" x2="${fixed(leader[1][0])}" y2="${fixed(leader[1][1])}"/>
`
    : null;
  return html`${line}${join(texts)}`;
}
