// Starts Becket in desktop VS Code and its remote hosts, where the server is a process of its own.
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith } from './activate.ts';

export function activate(context: ExtensionContext) {
  const module = context.asAbsolutePath('dist/server.js');
  return activateWith(context, (options) => {
    const client = new LanguageClient('becket', 'Becket', { module, transport: TransportKind.ipc }, options);
    return { client, end: () => client.dispose() };
  });
}
