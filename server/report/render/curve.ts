// A plain line chart as SVG: a few lines over one axis, each named at its end; its figures stand in the table beside it.
import type { Place } from '../../syntax/types.ts';
import type { Curve, CurveLine } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import { lineHeight, shortened, textWidth } from './sketch-labels.ts';
import { fixed } from './sketch-parts.ts';
import { visible } from './visible.ts';

const width = 760;
const height = 300;
const plot = { left: 86, right: 560, top: 36, bottom: 244 };

export function curveHtml(curve: Curve, identity: (at: readonly Place[]) => Html | null): Html {
  const { id, title, description, across, up, acrossTitle, upTitle, lines } = curve;
  const [titleId, textId] = [`${id}-title`, `${id}-text`];
  const ends = endLabels(lines);
  return html`<figure class="curve"><svg viewBox="0 0 ${fixed(width)} ${fixed(height)}" role="img" aria-labelledby="${titleId} ${textId}">
<title id="${titleId}">${title}</title>
<desc id="${textId}">${description}</desc>
${join(
  across.map(
    ({
      at,
      text,
    }) => html`<line class="grid" x1="${fixed(toX(at))}" y1="${fixed(plot.top)}" x2="${fixed(toX(at))}" y2="${fixed(plot.bottom)}"/>
<text class="tick" x="${fixed(toX(at))}" y="${fixed(plot.bottom + 18)}" text-anchor="middle">${text}</text>`,
  ),
)}
${join(
  up.map(
    ({
      at,
      text,
    }) => html`<line class="grid" x1="${fixed(plot.left)}" y1="${fixed(toY(at))}" x2="${fixed(plot.right)}" y2="${fixed(toY(at))}"/>
<text class="tick" x="${fixed(plot.left - 8)}" y="${fixed(toY(at) + 4)}" text-anchor="end">${text}</text>`,
  ),
)}
<text class="tick" x="${fixed(plot.right)}" y="${fixed(plot.bottom + 38)}" text-anchor="end">${acrossTitle}</text>
<text class="tick" x="${fixed(plot.left - 8)}" y="${fixed(plot.top - 16)}">${upTitle}</text>
${join(lines.map((line, i) => lineHtml(line, i, ends[i] as number, identity(line.at))))}
</svg><figcaption>${title}.</figcaption></figure>`;
}

const toX = (share: number) => plot.left + share * (plot.right - plot.left);
const toY = (share: number) => plot.bottom - share * (plot.bottom - plot.top);

function lineHtml({ label, points }: CurveLine, i: number, y: number, tie: Html | null): Html {
  let down = false;
  const d = points
    .map((point) => {
      const step = point ? `${down ? 'L' : 'M'}${fixed(toX(point[0]))} ${fixed(toY(point[1]))}` : '';
      down = point !== null;
      return step;
    })
    .join('');
  const last = points.findLast((point) => point !== null);
  return html`<g class="stroke"${tie}><path class="hit" d="${d}"/><path class="curve-line line${String(i % 2)}" d="${d}"/>
${last ? html`<text class="label" x="${fixed(toX(last[0]) + 8)}" y="${fixed(y + 4)}">${fitting(visible(label), last[0])}</text>` : null}</g>`;
}

/** A name that ends before the picture does. */
function fitting(label: string, from: number): string {
  const room = width - 12 - toX(from) - 8;
  let text = shortened(label);
  while (textWidth(text) > room && text.length > 1) text = `${[...text].slice(0, -2).join('')}…`;
  return text;
}

/** Heights of the names at the lines' ends, kept apart where lines end close together. */
function endLabels(lines: readonly CurveLine[]): readonly number[] {
  const ends = lines.map(({ points }, i) => ({ i, y: toY(points.findLast((point) => point !== null)?.[1] ?? 0) }));
  const placed: number[] = [];
  let above = Number.NEGATIVE_INFINITY;
  for (const { i, y } of [...ends].sort((a, b) => a.y - b.y || a.i - b.i)) {
    above = Math.max(y, above + lineHeight);
    placed[i] = above;
  }
  return placed;
}
