// A sketch of what hangs as SVG, to scale: text as text, looks by class, fixed decimals, one size whatever is drawn in it.
import type { System } from '../../quantities/index.ts';
import type { Sketch, SketchView } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import { drawing, type Identity } from './sketch-drawing.ts';
import { lineHeight, textWidth } from './sketch-labels.ts';
import { axesHtml, fixed, scaleHtml } from './sketch-parts.ts';
import { type Frame, frameOf, pointsOf, type Scale, scalesOf } from './sketch-view.ts';
import { visible } from './visible.ts';

/** The pictures of a sketch; `identity` gives the attributes that tie a sign to its statement. */
export function sketchHtml({ views, system, note }: Sketch, identity: Identity): Html {
  const scales = scalesOf(views);
  const figures = views.map((view, i) => figureHtml(view, scales[i] as Scale, system, identity));
  return html`<div class="sketches">
${join(figures)}
${note ? html`<p class="sketch-note">${note}</p>` : null}
</div>`;
}

function figureHtml(view: SketchView, scale: Scale, system: System, identity: Identity): Html {
  const { id, title, description, scene, width } = view;
  const frame = frameOf(view);
  const [titleId, textId] = [`${id}-title`, `${id}-text`];
  const empty = pointsOf(scene).length === 0;
  const { picture, homeless } = drawing(view, frame, scale, identity);
  const left = homeless.length ? ` No room was left to name: ${homeless.join(', ')}.` : '';
  return html`<figure class="sketch ${width}"><svg viewBox="0 0 ${fixed(frame.width)} ${fixed(frame.height)}" role="img" aria-labelledby="${titleId} ${textId}">
<title id="${titleId}">${title}</title>
<desc id="${textId}">${description}</desc>
${picture}
${scene.axes && !empty ? axesHtml(scene.axes, view.view, frame) : null}
${empty ? null : scaleHtml(scale, system, frame)}
${scene.open ? messageHtml(scene.open, frame) : null}
</svg><figcaption>${title}.${left}</figcaption></figure>`;
}

const rows = 3;

/** Why there are no figures, in at most three lines; the whole of it stands beside the tables. */
function messageHtml(text: string, { width }: Frame): Html {
  const lines: string[] = [];
  for (const word of visible(text)
    .split(' ')
    .flatMap((long) => long.match(/.{1,24}/gsu) ?? [])) {
    const longer = `${lines.at(-1) ?? ''} ${word}`.trimStart();
    if (lines.length && textWidth(longer) <= width - 32) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  const shown = lines
    .slice(0, rows)
    .map((line, i) => (i === rows - 1 && lines.length > rows ? `${line.slice(0, -1)}…` : line));
  return html`<text class="message" x="12.0" y="18.0">${shown.map((line, i) => html`<tspan x="12.0" y="${fixed(18 + i * lineHeight)}">${line}</tspan>`)}</text>`;
}
