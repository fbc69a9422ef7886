// The server as a web worker: it has no files of its own, so it asks the client for them, once each until they change.
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  type Connection,
  createConnection,
} from 'vscode-languageserver/browser';
import { mostBytes } from '../workspace/index.ts';
import type { Host } from './host.ts';
import {
  type ExplainAnswer,
  LIST_FILES,
  type ListFilesAnswer,
  READ_BYTES,
  READ_FILE,
  type ReadBytesAnswer,
  type ReadFileAnswer,
} from './messages.ts';
import { serve } from './server.ts';

const connection = createConnection(new BrowserMessageReader(self as never), new BrowserMessageWriter(self as never));
serve(connection, hostOf(connection));

/** What was fetched of files, by address; undefined: on its way. */
type Fetched<T> = Map<string, { content: T | null | undefined }>;

function hostOf(client: Connection): Host {
  const texts: Fetched<string> = new Map();
  const contents: Fetched<Uint8Array> = new Map();
  const listeners: ((uri: string) => void)[] = [];
  const fetchText = async (uri: string): Promise<string | null> => {
    const answer = await client.sendRequest<ReadFileAnswer | null>(READ_FILE, { uri }).catch(() => null);
    return answer?.text ?? null;
  };
  const fetchBytes = async (uri: string): Promise<Uint8Array | null> => {
    const answer = await client
      .sendRequest<ReadBytesAnswer | null>(READ_BYTES, { uri, most: mostBytes })
      .catch(() => null);
    return typeof answer?.base64 === 'string'
      ? Uint8Array.from(atob(answer.base64), (letter) => letter.charCodeAt(0))
      : null;
  };
  const known = <T>(all: Fetched<T>, uri: string, ask: (uri: string) => Promise<T | null>): T | null | undefined => {
    const before = all.get(uri);
    if (before) return before.content;
    const asked: { content: T | null | undefined } = { content: undefined };
    all.set(uri, asked);
    void ask(uri).then((content) => {
      if (all.get(uri) !== asked) return; // let go of meanwhile: it may be another content by now
      asked.content = content;
      for (const hear of listeners) hear(uri);
    });
    return undefined;
  };
  return {
    read: (uri) => known(texts, uri, fetchText),
    bytes: (uri) => known(contents, uri, fetchBytes),
    forget: (uri) => {
      texts.delete(uri);
      contents.delete(uri);
    },
    arrived: (hear) => void listeners.push(hear),
    real: (uri) => uri,
    list: async (folderUri, most) => {
      const { uris } = await client.sendRequest<ListFilesAnswer>(LIST_FILES, { folderUri, most });
      return uris;
    },
    pages: async (from) =>
      JSON.parse((from === undefined ? null : await fetchText(from)) ?? '{}') as Record<string, ExplainAnswer>,
    put: async () => null,
    soon: (deed) => void setTimeout(deed, 0),
  };
}
