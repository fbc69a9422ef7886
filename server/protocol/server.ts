// Hangs the server up on a connection: the handshake, texts and files, and every feature, each behind a guard.
import type { Connection, InitializeParams, InitializeResult } from 'vscode-languageserver';
import { paperEndings } from '../plan/index.ts';
import { announcedBy, startOptions } from './announced.ts';
import { capabilitiesFor } from './capabilities.ts';
import { answerFeatures } from './features.ts';
import type { Host } from './host.ts';
import { answerOwnMessages } from './own.ts';
import { Session } from './session.ts';
import { readSettings } from './settings.ts';

/** Of drawings, lists and papers, as watchers of files tell them apart. */
const endings = paperEndings.flatMap((ending) => [ending, ending.toUpperCase()]);

/** Files that come in together, such as by a change of branch, are looked at together. */
const burst = 50;

/** Serves one client. Requests that come before `initialize` are refused by the library itself. */
export function serve(connection: Connection, host: Host): void {
  connection.onInitialize((params): InitializeResult => {
    const session = new Session(connection, host, announcedBy(params));
    const { pages, setAside = [] } = startOptions(params.initializationOptions);
    for (const uri of setAside) session.workspace.setAside(session.addresses.of(uri));
    followTexts(session);
    followFiles(session);
    answerFeatures(session);
    answerOwnMessages(session, pages);
    connection.onInitialized(() => begin(session, foldersOf(params)));
    return { capabilities: capabilitiesFor(session.announced), serverInfo: { name: 'becket' } };
  });
  connection.listen();
}

function foldersOf({ workspaceFolders, rootUri, rootPath }: InitializeParams): readonly string[] {
  if (workspaceFolders?.length) return workspaceFolders.map(({ uri }) => uri);
  if (rootUri) return [rootUri];
  return rootPath ? [`file://${rootPath.startsWith('/') ? '' : '/'}${rootPath.replaceAll('\\', '/')}`] : [];
}

/** What may be asked of the client only once it is ready. */
function begin(session: Session, folders: readonly string[]): void {
  const { connection, announced } = session;
  const register = (method: string, registerOptions: object): void => {
    const asked = connection.sendRequest('client/registerCapability', {
      registrations: [{ id: method, method, registerOptions }],
    });
    void session.tasks.during(asked).catch((error) => session.log(method, error));
  };
  if (announced.watching)
    register('workspace/didChangeWatchedFiles', {
      watchers: [{ globPattern: '**/*.liftplan' }, { globPattern: `**/*.{${endings.join(',')}}` }],
    });
  if (announced.changedConfiguration) register('workspace/didChangeConfiguration', { section: 'becket' });
  if (announced.folders) {
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      const gone = new Set(removed.map(({ uri }) => session.addresses.of(uri).replace(/\/+$/, '')));
      session.setFolders([
        ...session.addresses.openedFolders.filter((folder) => !gone.has(folder)),
        ...added.map(({ uri }) => uri),
      ]);
    });
  }
  session.setFolders(folders);
}

function followTexts(session: Session): void {
  const { connection } = session;
  connection.onDidOpenTextDocument(
    session.guarded('open', ({ textDocument: { uri, version, text } }) => {
      session.open(uri, version, text);
      if (!session.announced.watching) session.rereadAll();
      void fetchSettings(session, [uri]);
    }),
  );
  connection.onDidChangeTextDocument(
    session.guarded('change', ({ textDocument: { uri, version }, contentChanges }) => {
      session.change(
        uri,
        version,
        contentChanges.map((change) => ({ range: 'range' in change ? change.range : null, text: change.text })),
      );
    }),
  );
  connection.onDidSaveTextDocument(session.guarded('save', ({ textDocument }) => session.save(textDocument.uri)));
  connection.onDidCloseTextDocument(session.guarded('close', ({ textDocument }) => session.close(textDocument.uri)));
  connection.onDidChangeConfiguration(
    session.guarded('settings', ({ settings }) => {
      if (session.announced.configuration) void fetchSettings(session, session.workspace.openFiles);
      else
        for (const file of session.workspace.openFiles)
          session.setSettings(file, readSettings((settings as { becket?: unknown } | null)?.becket));
    }),
  );
}

async function fetchSettings(session: Session, uris: readonly string[]): Promise<void> {
  if (!session.announced.configuration || uris.length === 0) return;
  const items = uris.map((uri) => ({
    scopeUri: session.addresses.spelled(session.addresses.of(uri)),
    section: 'becket',
  }));
  try {
    const all = await session.tasks.during(session.connection.workspace.getConfiguration(items));
    uris.forEach((uri, n) => session.setSettings(session.addresses.of(uri), readSettings(all[n])));
  } catch (error) {
    session.log('settings', error);
  }
}

function followFiles(session: Session): void {
  const due = new Set<string>();
  session.connection.onDidChangeWatchedFiles(
    session.guarded('files', ({ changes }) => {
      for (const { uri } of changes) due.add(uri);
      session.tasks.later('files', burst, () => {
        session.changedOutside([...due]);
        due.clear();
      });
    }),
  );
}
