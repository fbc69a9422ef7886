// The sheet as a file: "Print or Save Sheet as PDF" and "Export Sheet…".
import { commands, Disposable, env, UIKind, Uri, window, workspace } from 'vscode';
import { EXPORT_SHEET, type ExportSheetAnswer, type SheetFormat } from '../server/protocol/messages.ts';
import { isPlan, type Server } from './server.ts';
import type { SheetPanel } from './sheet/panel.ts';

const formats: { label: string; description: string; format: SheetFormat; ending: string }[] = [
  { label: 'Web page', description: 'one file, ready to print', format: 'html', ending: 'html' },
  { label: 'Markdown', description: 'to be read in a repository', format: 'markdown', ending: 'md' },
  {
    label: 'JSON',
    description: 'every result, finding and expectation, for other programs',
    format: 'json',
    ending: 'json',
  },
  { label: 'Lines', description: 'one result a line, to be compared', format: 'lines', ending: 'txt' },
];

export function exportSheets(server: Server, sheet: SheetPanel, storage: Uri): Disposable {
  const sheetOf = (format: SheetFormat) => {
    const uri = sheet.focusedUri ?? activePlan() ?? sheet.shownUri;
    return uri === undefined ? null : server.ask<ExportSheetAnswer>(EXPORT_SHEET, { uri, format });
  };
  return Disposable.from(
    commands.registerCommand('becket.printSheet', async () => {
      const made = await sheetOf('html');
      if (!made) return sayNoPlan();
      if (canOpenBrowser()) await openInBrowser(made, storage);
      else await saveAs(made, 'html', 'Open the saved page in a browser and print it from there.');
    }),
    commands.registerCommand('becket.exportSheet', async (asked?: unknown) => {
      const chosen =
        formats.find(({ format }) => format === asked) ??
        (await window.showQuickPick(formats, { title: 'Export the sheet as' }));
      if (!chosen) return;
      const made = await sheetOf(chosen.format);
      if (made) await saveAs(made, chosen.ending);
      else sayNoPlan();
    }),
  );
}

const activePlan = () => {
  const document = window.activeTextEditor?.document;
  return document && isPlan(document) ? document.uri.toString() : undefined;
};

const sayNoPlan = () => void window.showInformationMessage('Open a lift plan first: its sheet is what is printed.');

/** A page on this machine can be opened only by a browser on this machine: not from a remote host, not from a browser tab. */
const canOpenBrowser = () => env.uiKind === UIKind.Desktop && env.remoteName === undefined;

async function openInBrowser(made: ExportSheetAnswer, storage: Uri): Promise<void> {
  const page = Uri.joinPath(storage, 'print', made.name);
  await workspace.fs.writeFile(page, new TextEncoder().encode(made.text));
  if (!(await env.openExternal(page)))
    await saveAs(made, 'html', 'Open the saved page in a browser and print it from there.');
}

async function saveAs(made: ExportSheetAnswer, ending: string, afterwards?: string): Promise<void> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const target = await window.showSaveDialog({
    defaultUri: folder && Uri.joinPath(folder, made.name),
    filters: { [ending]: [ending] },
  });
  if (!target) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(made.text));
  if (afterwards) void window.showInformationMessage(afterwards);
}
