// The server as a web worker: it has no files of its own, so it asks the client for them, once each until they change.
import { BrowserMessageReader, BrowserMessageWriter, type Connection, createConnection } from 'vscode-languageserver/browser';
import type { Host } from './host.ts';
import { type ExplainAnswer, LIST_FILES, type ListFilesAnswer, READ_FILE, type ReadFileAnswer } from './messages.ts';
import { serve } from './server.ts';

const connection = createConnection(new BrowserMessageReader(self as never), new BrowserMessageWriter(self as never));
serve(connection, hostOf(connection));

function hostOf(client: Connection): Host {
  const texts = new Map<string, { text: string | null | undefined }>(); // undefined: on its way
  const listeners: ((uri: string) => void)[] = [];
  const fetchText = async (uri: string): Promise<string | null> => {
    const answer = await client.sendRequest<ReadFileAnswer | null>(READ_FILE, { uri }).catch(() => null);
    return answer?.text ?? null;
  };
  return {
    read(uri) {
      const known = texts.get(uri);
      if (known) return known.text;
      const asked: { text: string | null | undefined } = { text: undefined };
      texts.set(uri, asked);
      void fetchText(uri).then((text) => {
        if (texts.get(uri) !== asked) return; // let go of meanwhile: it may be another text by now
        asked.text = text;
        for (const hear of listeners) hear(uri);
      });
      return undefined;
    },
    forget: (uri) => void texts.delete(uri),
    arrived: (hear) => void listeners.push(hear),
    real: (uri) => uri,
    list: async (folderUri, most) => (await client.sendRequest<ListFilesAnswer>(LIST_FILES, { folderUri })).uris.slice(0, most),
    pages: async (from) => JSON.parse((from === undefined ? null : await fetchText(from)) ?? '{}') as Record<string, ExplainAnswer>,
    put: async () => null,
    soon: (deed) => void setTimeout(deed, 0),
  };
}
