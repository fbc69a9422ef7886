// Starts Becket in VS Code for the browser, where the server is a web worker and reads files through the client.
import { type ExtensionContext, Uri } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { activateWith } from './activate.ts';

export function activate(context: ExtensionContext) {
  const script = Uri.joinPath(context.extensionUri, 'dist/server.js').toString(true);
  return activateWith(context, (options) => {
    let worker: Worker | undefined;
    // The editor puts a class of its own in the place of `Worker`, so the library does not know ours for one: it gets the two
    // ends of the talk instead. In this version of it the server comes before the options, unlike in older samples.
    const startWorker = async () => {
      worker?.terminate();
      worker = new Worker(script);
      return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
    };
    const client = new LanguageClient('becket', 'Becket', startWorker, options);
    return { client, end: async () => client.dispose().finally(() => worker?.terminate()) };
  });
}
