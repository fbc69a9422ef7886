// One horizontal bar made of pieces, as SVG: each kind of piece has a pattern of its own, and a line below in words and figures.
import type { Place } from '../../syntax/types.ts';
import type { Stack, StackPiece } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import { fixed } from './sketch-parts.ts';

const width = 760;
const top = 22; // room for the shares above the bar
const height = 24;
const line = 22;
const swatch = { width: 26, height: 13 };
const figures = 300; // where the figures begin
const roomy = 46; // a piece as wide as this has its share above it

/** The picture; `identity` gives the attributes that tie a piece to its statements. */
export function stackHtml(
  { id, title, description, pieces, note }: Stack,
  identity: (at: readonly Place[]) => Html | null,
): Html {
  const [titleId, textId] = [`${id}-title`, `${id}-text`];
  const below = top + height + 14;
  return html`<figure class="bars stack"><svg viewBox="0 0 ${fixed(width)} ${fixed(below + pieces.length * line)}" role="img" aria-labelledby="${titleId} ${textId}">
<title id="${titleId}">${title}</title>
<desc id="${textId}">${description}</desc>
<defs>${join(pieces.map(({ look }) => pattern(look, `${id}-${look}`)))}</defs>
${join(pieces.map((piece, i) => pieceHtml(piece, `${id}-${piece.look}`, below + i * line, identity(piece.at))))}
<rect class="frame" x="0.5" y="${fixed(top)}" width="${fixed(width - 1)}" height="${fixed(height)}"/>
</svg><figcaption>${note}</figcaption></figure>`;
}

/** The piece of the bar with its share above it where there is room, and its line below. */
function pieceHtml(
  { look, label, share, figure, from, to }: StackPiece,
  fill: string,
  y: number,
  tie: Html | null,
): Html {
  const [left, right] = [from * width, to * width];
  const box = (x: number, y_: number, w: number, h: number) =>
    html`<rect class="${look}" x="${fixed(x)}" y="${fixed(y_)}" width="${fixed(w)}" height="${fixed(h)}" fill="url(#${fill})"/>`;
  const above =
    right - left >= roomy
      ? html`<text class="share" x="${fixed((left + right) / 2)}" y="${fixed(top - 7)}" text-anchor="middle">${share}</text>`
      : null;
  return html`<g class="piece"${tie}>${above}${box(left, top, Math.max(right - left, 0.5), height)}
${box(1, y, swatch.width, swatch.height)}<text class="label" x="${fixed(swatch.width + 10)}" y="${fixed(y + 11)}">${label}</text><text class="figure" x="${fixed(figures)}" y="${fixed(y + 11)}">${figure}, ${share}</text></g>`;
}

/** Five patterns that differ without colour: full, stripes, hatching, crosses, bare dots. */
function pattern(look: StackPiece['look'], id: string): Html {
  const ground = html`<rect class="hatch-ground" width="8" height="8"/>`;
  return html`<pattern id="${id}" width="8" height="8" patternUnits="userSpaceOnUse">${ground}${marks[look]}</pattern>`;
}

const marks: Readonly<Record<StackPiece['look'], Html>> = {
  calculated: html`<rect class="hatch-full" width="8" height="8"/>`,
  stated: html`<path class="hatch-line" d="M2 0V8M6 0V8"/>`,
  bound: html`<path class="hatch-line" d="M-2 2L2 -2M0 8L8 0M6 10L10 6"/>`,
  estimate: html`<path class="hatch-line thin" d="M0 8L8 0M0 0L8 8"/>`,
  unnamed: html`<circle class="hatch-dot" cx="4" cy="4" r="1.3"/>`,
};
