// What both hosts share once they can make a server: its features are hung up here, and nowhere else.
import { commands, type ExtensionContext, Uri } from 'vscode';
import { IDLE, type IdleAnswer } from '../server/protocol/messages.ts';
import { comparePlans } from './compare.ts';
import { explainFindings } from './explain.ts';
import { exportSheets } from './export.ts';
import { answerForFiles } from './files.ts';
import { type MakeClient, Server } from './server.ts';
import { SheetPanel } from './sheet/panel.ts';
import { showStatus } from './status.ts';

/** What the extension hands to those who ask for it: tests wait for `idle` before they look. */
export interface Exports {
  /** Resolves once the server has nothing pending, with the version of each open document that it has worked out. */
  idle(): Promise<Record<string, number>>;
}

export function activateWith(context: ExtensionContext, make: MakeClient): Exports {
  const pages = Uri.joinPath(context.extensionUri, 'dist/pages.json').toString();
  const server = new Server(make, pages);
  const sheet = new SheetPanel(context.extensionUri, server);
  context.subscriptions.push(
    server,
    sheet,
    answerForFiles(server),
    showStatus(server),
    explainFindings(server),
    comparePlans(server),
    exportSheets(server, sheet, context.globalStorageUri),
    commands.registerCommand('becket.restart', () => server.restart()),
  );
  // Not waited for: commands and colours are there before the server is.
  void server.start();
  return { idle: async () => (await server.ask<IdleAnswer>(IDLE, {}))?.versions ?? {} };
}
