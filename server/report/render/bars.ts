// Plain horizontal bars as SVG: text as text, looks by class, fixed decimals, so that equal sheets give equal pictures.
import type { Place } from '../../syntax/types.ts';
import type { Bar, Bars } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';

const width = 760;
const labels = 230; // where the bars begin
const figures = 620; // where they end and the figures begin
const line = 18;
const gap = 8;
const top = 30; // room for the mark's label
const letters = 34; // of a label, on one line

/** The picture; `identity` gives the attributes that tie a bar to its statement. */
export function barsHtml(
  { id, title, description, bars, mark }: Bars,
  identity: (at: readonly Place[]) => Html | null,
): Html {
  const rows = laid(bars);
  const last = rows.at(-1);
  const bottom = last ? last.y + last.height : top;
  const [titleId, textId, hatch] = [`${id}-title`, `${id}-text`, `${id}-hatch`];
  return html`<figure class="bars"><svg viewBox="0 0 ${fixed(width)} ${fixed(bottom + gap)}" role="img" aria-labelledby="${titleId} ${textId}">
<title id="${titleId}">${title}</title>
<desc id="${textId}">${description}</desc>
<defs><pattern id="${hatch}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="hatch-ground" width="6" height="6"/><line class="hatch-line" x1="0" y1="0" x2="0" y2="6"/></pattern></defs>
${join(rows.map((placed) => barHtml(placed, hatch, identity)))}
<line class="axis" x1="${fixed(labels)}" y1="${fixed(top - 4)}" x2="${fixed(labels)}" y2="${fixed(bottom)}"/>
${mark ? markHtml(mark, bottom) : null}
</svg></figure>`;
}

interface Placed {
  readonly bar: Bar;
  readonly lines: readonly string[];
  readonly y: number;
  readonly height: number;
}

function laid(bars: readonly Bar[]): readonly Placed[] {
  let y = top;
  return bars.map((bar) => {
    const lines = wrapped(bar.label);
    const placed = { bar, lines, y, height: lines.length * line };
    y += placed.height + gap;
    return placed;
  });
}

function barHtml(
  { bar, lines, y, height }: Placed,
  hatch: string,
  identity: (at: readonly Place[]) => Html | null,
): Html {
  const [from, to] = [along(bar.from), along(bar.to)];
  const base = y + line - 5;
  const fill = bar.look === 'added' ? html` fill="url(#${hatch})"` : null;
  return html`<g class="bar ${bar.look}"${identity(bar.at)}>
<text class="label" x="${fixed(labels - 8)}" y="${fixed(base)}" text-anchor="end">${lines.map((text, i) => html`<tspan x="${fixed(labels - 8)}" y="${fixed(base + i * line)}">${text}</tspan>`)}</text>
<rect class="${bar.look}" x="${fixed(from)}" y="${fixed(y + (height - line) / 2 + 2)}" width="${fixed(Math.max(to - from, 0.5))}" height="${fixed(line - 4)}"${fill}/>
<text class="figure" x="${fixed(figures + 8)}" y="${fixed(base)}">${bar.text}</text>
</g>`;
}

function markHtml({ label, at }: NonNullable<Bars['mark']>, bottom: number): Html {
  const x = along(at);
  return html`<line class="mark" x1="${fixed(x)}" y1="${fixed(top - 6)}" x2="${fixed(x)}" y2="${fixed(bottom)}"/>
<text class="mark-label" x="${fixed(x)}" y="${fixed(top - 12)}" text-anchor="end">${label}</text>`;
}

const along = (share: number) => labels + share * (figures - labels);

const fixed = (value: number) => value.toFixed(1);

/** A label broken between words into lines that fit; a longer word is broken where it must be, never cut off. */
function wrapped(label: string): readonly string[] {
  const lines: string[] = [];
  for (const word of label.split(' ').flatMap(pieces)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.length ? lines : [''];
}

const pieces = (word: string): readonly string[] => {
  const characters = [...word];
  return Array.from({ length: Math.max(1, Math.ceil(characters.length / letters)) }, (_, i) =>
    characters.slice(i * letters, (i + 1) * letters).join(''),
  );
};
