// The empty page that the sheet is put into: nothing runs in it but our own script, and nothing is fetched.
import { Uri, type Webview } from 'vscode';

/** The page's HTML. Everything inside is fixed text of ours; the plan's words come later, as escaped sections. */
export function pageHtml(webview: Webview, dist: Uri): string {
  const nonce = crypto.randomUUID();
  const policy = [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${webview.cspSource}`,
    "form-action 'none'",
    "base-uri 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Sheet</title>
<link rel="stylesheet" href="${webview.asWebviewUri(Uri.joinPath(dist, 'sheet.css'))}">
</head>
<body>
<div class="bar" role="toolbar" aria-label="Sheet">
<button type="button" id="stay" aria-pressed="false">Stay with this plan</button>
<button type="button" id="paper" aria-pressed="false">Paper look</button>
<button type="button" id="print">Print or save as PDF</button>
<button type="button" id="export">Export…</button>
<span id="version"></span>
</div>
<p id="state" role="status"></p>
<main id="sheet" aria-describedby="how"></main>
<p id="how" class="unseen">Arrow keys move along the lines of the plan that stand on this sheet. Enter shows a line in the text; Enter again goes there.</p>
<script nonce="${nonce}" src="${webview.asWebviewUri(Uri.joinPath(dist, 'sheet.js'))}"></script>
</body>
</html>`;
}
