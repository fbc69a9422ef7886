// The sheet as one HTML file that needs nothing else: no script, no address outside, styles for screen, dark screen and paper.
import type { Sheet } from '../sheet/types.ts';
import { type Html, html, join } from './escape.ts';
import { sectionHtml } from './html.ts';
import pageStyle from './page.css?raw';
import { style } from './style.ts';

/** The whole page. `paper` is the size it prints on: A4 for metric plans, Letter for US ones. */
export function page(sheet: Sheet, paper: 'A4' | 'Letter'): string {
  const body = join(sheet.sections.map((section) => sectionHtml(section, null)));
  return `${document(sheet, paper, body).text}\n`;
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
