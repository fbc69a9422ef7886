// The sheet as one HTML file that needs nothing else: no script, no address outside, styles for screen, dark screen and paper.
import { beside } from '../paths.ts';
import type { Cell, Section, Sheet } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import { sectionHtml } from './html.ts';
import pageStyle from './page.css?raw';
import { style } from './style.ts';

/** The whole page. `paper` is the size it prints on: A4 for metric plans, Letter for US ones; `from` is the plan's path as seen from the page. */
export function page(sheet: Sheet, paper: 'A4' | 'Letter', from: string): string {
  const body = join(sheet.sections.map((section) => sectionHtml(seenFrom(from, section), null)));
  return `${document(sheet, paper, body).text}\n`;
}

/** The files that a section names, as seen from the page. */
function seenFrom(from: string, section: Section): Section {
  const moved = (cell: Cell): Cell =>
    cell.document === undefined ? cell : { ...cell, document: beside(from, cell.document) };
  const blocks = section.blocks.map((block) =>
    block.kind === 'table'
      ? { ...block, rows: block.rows.map((row) => ({ ...row, cells: row.cells.map(moved) })) }
      : block,
  );
  return { ...section, blocks };
}

const document = ({ title, revision, foot }: Sheet, paper: 'A4' | 'Letter', body: Html): Html => html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}, revision ${revision}</title>
${style(pageStyle, paper)}
</head>
<body>
<div class="paper">
<main>
${body}
</main>
<div class="page-foot" aria-hidden="true"><p>${foot}</p></div>
</div>
</body>
</html>`;
