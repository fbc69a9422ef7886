// The signs of a sketch as SVG: hooks, slings, beams, the load's box, picks, the centre of gravity, its axes and the scale bar.
import type { Vec3 } from '../../mechanics/index.ts';
import { type System, write } from '../../quantities/index.ts';
import type { BoxOutline, Sign, SketchView, Stroke } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import type { Rect, Segment } from './sketch-labels.ts';
import { depth, type Frame, type Scale, type Spot, seen } from './sketch-view.ts';

/** Fixed decimals, never `-0.0`: the same plan gives the same bytes. */
export const fixed = (value: number): string => (Math.round(value * 10) / 10 + 0).toFixed(1);

const pathOf = (spots: readonly Spot[], closed = false): string =>
  `${spots.map(([x, y], i) => `${i ? 'L' : 'M'}${fixed(x)} ${fixed(y)}`).join('')}${closed ? 'Z' : ''}`;

/** A run, a beam or a plumb line, with room around it to be met by a pointer. */
export function strokeHtml({ is, closed }: Stroke, spots: readonly Spot[], tie: Html | null): Html {
  const d = pathOf(spots, closed);
  return html`<g class="stroke"${tie}><path class="hit" d="${d}"/><path class="${is}" d="${d}"/></g>`;
}

/** Room a sign takes up around its spot. */
export const reach: Readonly<Record<Sign['is'], number>> = { hook: 7, ring: 3, point: 3, pick: 5, centre: 6 };

export function signHtml({ is }: Sign, [x, y]: Spot, tie: Html | null): Html {
  const r = reach[is];
  if (is === 'hook')
    return html`<rect class="hook" x="${fixed(x - r)}" y="${fixed(y - r)}" width="${fixed(2 * r)}" height="${fixed(2 * r)}"${tie}/>`;
  const circle = html`<circle class="${is}" cx="${fixed(x)}" cy="${fixed(y)}" r="${fixed(r)}"`;
  if (is !== 'centre') return html`${circle}${tie}/>`;
  // Two opposite quarters are filled.
  const quarter = (side: 1 | -1) =>
    `M${fixed(x)} ${fixed(y)}L${fixed(x + side * r)} ${fixed(y)}A${fixed(r)} ${fixed(r)} 0 0 0 ${fixed(x)} ${fixed(y - side * r)}Z`;
  return html`<g class="cog"${tie}>${circle}/><path class="quarter" d="${quarter(1)}${quarter(-1)}"/></g>`;
}

interface BoxLines {
  readonly visible: readonly Segment[];
  readonly hidden: readonly Segment[];
}

/** Edges of a box: the three that meet in the corner farthest away are hidden. Edges that fall on one another are drawn once. */
export function boxLines({ corners }: BoxOutline, view: SketchView['view'], { toPage }: Scale): BoxLines {
  const far = corners.reduce(
    (best, corner, i) => (depth[view](corner) > depth[view](corners[best] as Vec3) + 1e-9 ? i : best),
    0,
  );
  const edges = [1, 2, 4].flatMap((bit) =>
    corners.flatMap((_, i) =>
      i & bit ? [] : [{ hides: i === far || (i | bit) === far, ends: [i, i | bit] as const }],
    ),
  );
  const drawn = new Set<string>();
  const lines = (hidden: boolean) =>
    edges
      .filter(({ hides }) => hides === hidden)
      .flatMap(({ ends }): readonly Segment[] => {
        const [from, to] = ends.map((i) => toPage(corners[i] as Vec3)) as [Spot, Spot];
        const key = [pathOf([from]), pathOf([to])].sort().join();
        if (drawn.has(key) || Math.hypot(to[0] - from[0], to[1] - from[1]) < 0.5) return [];
        drawn.add(key);
        return [[from, to]];
      });
  const visible = lines(false);
  return { visible, hidden: view === 'oblique' ? lines(true) : [] };
}

export function boxHtml({ visible, hidden }: BoxLines, tie: Html | null): Html {
  const d = (segments: readonly Segment[]) => segments.map((segment) => pathOf(segment)).join('');
  const back = hidden.length ? html`<path class="box hidden" d="${d(hidden)}"/>` : null;
  return html`<g class="stroke"${tie}><path class="hit" d="${d(visible)}"/>${back}<path class="box" d="${d(visible)}"/></g>`;
}

/** Where the axes stand, and how large they are. */
export const axesRect = ({ height }: Frame): Rect => ({ x: 0, y: height - 88, width: 88, height: 88 });
const arrow = 26;

/** The load's own axes as they hang; one that points at the eye is a dot in a circle, one that points away a cross. */
export function axesHtml(axes: readonly [Vec3, Vec3, Vec3], view: SketchView['view'], frame: Frame): Html {
  const { x, y, width } = axesRect(frame);
  const [left, top] = [x + width / 2, y + width / 2];
  const parts = axes.map((axis, i) => {
    const [across, up] = seen[view](axis);
    const length = Math.hypot(across, up);
    const name = 'xyz'[i] ?? '';
    if (length < 0.2) return endOn(left, top, depth[view](axis) > 0, name);
    const [ux, uy] = [across / length, -up / length];
    const [tipX, tipY] = [left + across * arrow, top - up * arrow];
    const barb = (side: 1 | -1): Spot => [tipX - ux * 6 + side * uy * 3, tipY - uy * 6 - side * ux * 3];
    return html`<path class="axis" d="${pathOf([
      [left, top],
      [tipX, tipY],
    ])}${pathOf([barb(1), [tipX, tipY], barb(-1)])}"/>
<text class="axis-name" x="${fixed(tipX + ux * 9)}" y="${fixed(tipY + uy * 9 + 4)}" text-anchor="middle">${name}</text>`;
  });
  return html`<g class="axes">${join(parts)}</g>`;
}

function endOn(x: number, y: number, away: boolean, name: string): Html {
  const cross =
    pathOf([
      [x - 3, y - 3],
      [x + 3, y + 3],
    ]) +
    pathOf([
      [x - 3, y + 3],
      [x + 3, y - 3],
    ]);
  const inner = away
    ? html`<path class="axis" d="${cross}"/>`
    : html`<circle class="axis-dot" cx="${fixed(x)}" cy="${fixed(y)}" r="1.5"/>`;
  return html`<circle class="axis-end" cx="${fixed(x)}" cy="${fixed(y)}" r="5.0"/>${inner}
<text class="axis-name" x="${fixed(x - 12)}" y="${fixed(y + 15)}" text-anchor="middle">${name}</text>`;
}

export const scaleRect = ({ width, height }: Frame): Rect => ({
  x: width - 166,
  y: height - 44,
  width: 166,
  height: 44,
});
const longest = 130;

/** A length of one, two or five with noughts, as long as it is in the drawing. */
export function scaleHtml({ perMetre }: Scale, system: System, { width, height }: Frame): Html {
  const { length, unit } = roundLength(longest / perMetre, system);
  const [to, y] = [width - 18, height - 14];
  const from = to - length * perMetre;
  const text = write(length, 'm', { system, round: 'near', unit, plain: false });
  return html`<g class="scale"><path class="axis" d="${pathOf([
    [from, y - 4],
    [from, y + 4],
  ])}${pathOf([
    [from, y],
    [to, y],
  ])}${pathOf([
    [to, y - 4],
    [to, y + 4],
  ])}"/>
<text class="axis-name" x="${fixed(to)}" y="${fixed(y - 9)}" text-anchor="end">${text}</text></g>`;
}

const units: Readonly<Record<System, readonly [large: string, inMetres: number, small: string, inMetres: number]>> = {
  metric: ['m', 1, 'mm', 0.001],
  US: ['ft', 0.3048, 'in', 0.0254],
};

function roundLength(most: number, system: System): { readonly length: number; readonly unit: string } {
  const [large, large1, small, small1] = units[system];
  const [unit, one] = most >= large1 ? [large, large1] : [small, small1];
  const power = 10 ** Math.floor(Math.log10(most / one));
  const step = [5, 2, 1].find((digit) => digit * power * one <= most) ?? 1;
  return { length: step * power * one, unit };
}
