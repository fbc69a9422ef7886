// The sheet as HTML, section by section: for the view beside the text, and for the page that stands alone.

import { digest } from '../../plan/digest.ts';
import type { Place } from '../../syntax/types.ts';
import { addressOf } from '../paths.ts';
import type { Block, Cell, Column, Paragraph, Row, Section, Sheet, Table } from '../sheet/types.ts';
import { barsHtml } from './bars.ts';
import { curveHtml } from './curve.ts';
import { type Html, html, join } from './escape.ts';
import { sketchHtml } from './sketch.ts';
import { stackHtml } from './stack.ts';

/** The identity of the statement at a place, a word without spaces; null: rows are not tied to the text. */
export type IdOf = ((place: Place) => string | null) | null;

export interface SectionHtml {
  readonly id: string;
  readonly hash: string; // changes with the HTML
  readonly html: string;
}

/** Every section as finished HTML; each line that shows a statement carries its ids in `data-id`, its own one first. */
export const sectionsHtml = (sheet: Sheet, idOf: IdOf): readonly SectionHtml[] =>
  sheet.sections.map((section) => {
    const { text } = sectionHtml(section, idOf);
    return { id: section.id, hash: digest(text).slice(0, 16), html: text };
  });

/** One section under its heading; the first one carries the sheet's title. */
export function sectionHtml({ id, title, blocks }: Section, idOf: IdOf): Html {
  const heading = id === 'head' ? html`<h1 id="head-title">${title}</h1>` : html`<h2 id="${id}-title">${title}</h2>`;
  return html`<section id="section-${id}" aria-labelledby="${id}-title">
${heading}
${join(blocks.map((block) => blockHtml(block, idOf)))}
</section>`;
}

function blockHtml(block: Block, idOf: IdOf): Html {
  const tie = (at: readonly Place[]) => identity(at, idOf);
  switch (block.kind) {
    case 'paragraph':
      return paragraph(block, idOf);
    case 'table':
      return table(block, idOf);
    case 'bars':
      return barsHtml(block, tie);
    case 'stack':
      return stackHtml(block, tie);
    case 'sketch':
      return sketchHtml(block, tie);
    case 'curve':
      return curveHtml(block, tie);
  }
}

const paragraph = ({ look, text, at }: Paragraph, idOf: IdOf): Html =>
  html`<p class="${look}"${identity(at, idOf)}>${text}</p>`;

function table({ caption, columns, rows }: Table, idOf: IdOf): Html {
  const head = columns.length
    ? html`<thead><tr>${columns.map(({ title, figures }) => html`<th scope="col"${figures ? figuresClass : null}>${title}</th>`)}</tr></thead>
`
    : null;
  return html`<div class="wide"><table>
<caption>${caption}</caption>
${head}<tbody>
${join(rows.map((line) => row(line, columns, idOf)))}
</tbody>
</table></div>`;
}

function row(line: Row, columns: readonly Column[], idOf: IdOf): Html {
  const cells = line.cells.map((cell, i) => {
    const figures = columns[i]?.figures ? figuresClass : null;
    const content = cellHtml(idOf ? { ...cell, document: undefined } : cell);
    return i === 0 ? html`<th scope="row"${figures}>${content}</th>` : html`<td${figures}>${content}</td>`;
  });
  const looks = [line.total ? 'total' : '', line.depth ? `deep${Math.min(line.depth, 6)}` : '']
    .filter(Boolean)
    .join(' ');
  return html`<tr${looks ? html` class="${looks}"` : null}${identity(line.at, idOf)}${line.repeat && idOf ? html` data-repeat=""` : null}>${cells}</tr>`;
}

const figuresClass = html` class="figures"`;

function cellHtml({
  text,
  is,
  link,
  document,
}: Omit<Cell, 'document'> & { readonly document?: string | undefined }): Html {
  const where = link ? [link.path, `line ${link.line}`].filter(Boolean).join(', ') : '';
  const place = where ? html`${text ? ' ' : null}<span class="line">${where}</span>` : null;
  if (document !== undefined) return html`<a href="${addressOf(document)}">${text}</a>${place}`;
  if (is === 'over') return html`<strong class="over">${text}</strong>${place}`;
  return is === 'not known' ? html`<span class="not-known">${text}</span>${place}` : html`${text}${place}`;
}

/** What ties an element to its statements, and lets a keyboard reach it. */
function identity(at: readonly Place[], idOf: IdOf): Html | null {
  const ids = idOf ? [...new Set(at.map(idOf).filter((id) => id !== null))] : [];
  return ids.length ? html` data-id="${ids.join(' ')}" tabindex="-1"` : null;
}
