// The server as a process: speaks over standard input and output or the parent's channel, and reads files from disk.
import { readFileSync, realpathSync, statSync } from 'node:fs';
import { mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { createConnection, IPCMessageReader, IPCMessageWriter } from 'vscode-languageserver/node';
import { URI } from 'vscode-uri';
import { mostBytes } from '../workspace/index.ts';
import type { Host } from './host.ts';
import type { ExplainAnswer } from './messages.ts';
import { serve } from './server.ts';

/** Serves the client at the other end: of the channel to the parent where the command line says `--node-ipc`, else of stdio. */
export function start(): void {
  const channel = process.argv.includes('--node-ipc');
  const connection = channel
    ? createConnection(new IPCMessageReader(process), new IPCMessageWriter(process))
    : createConnection(process.stdin, process.stdout);
  // What fails outside a handler is told to the log; the documents stay alive.
  for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(event, (error: unknown) =>
      connection.console.error(`${event}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`),
    );
  }
  if (channel) process.on('disconnect', () => process.exit(1)); // the client is gone without saying so
  serve(connection, host);
}

const host: Host = {
  read: (uri) => readText(uri),
  bytes: (uri) => readBytes(uri),
  forget: () => {},
  arrived: () => {},
  real,
  list: async (folder, most) => {
    const found: Below = { plans: [], others: [] };
    const path = pathOf(folder);
    if (path !== null) await filesBelow(path, most, found);
    return [...found.plans.sort(), ...found.others.sort()].map((file) => URI.file(file).toString());
  },
  pages: async (from) => {
    const path =
      (from === undefined ? null : pathOf(from)) ?? join(dirname(realpathSync(process.argv[1] ?? '.')), 'pages.json');
    return JSON.parse(await readFile(path, 'utf8')) as Record<string, ExplainAnswer>;
  },
  put: async (name, text) => {
    const file = join(await mkdtemp(join(tmpdir(), 'becket-')), name);
    await writeFile(file, text);
    return URI.file(file).toString();
  },
  soon: (deed) => void setImmediate(deed),
};

const pathOf = (uri: string): string | null => {
  const parsed = URI.parse(uri);
  return parsed.scheme === 'file' ? parsed.fsPath : null;
};

function readText(uri: string): string | null {
  const path = pathOf(uri);
  if (path === null) return null;
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null; // no such file, or one that may not be read: the plan that takes it in says so
  }
}

function readBytes(uri: string): Uint8Array | null {
  const path = pathOf(uri);
  try {
    return path !== null && statSync(path).size <= mostBytes ? readFileSync(path) : null;
  } catch {
    return null; // the plan that names it says so
  }
}

/** With links followed as far as the path exists: a file not yet saved is known by its folder. */
function real(uri: string): string {
  const path = pathOf(uri);
  if (path === null) return uri;
  try {
    return URI.file(realpathSync.native(path)).toString();
  } catch {
    const folder = dirname(path);
    return folder === path
      ? uri
      : URI.file(join(URI.parse(real(URI.file(folder).toString())).fsPath, basename(path))).toString();
  }
}

interface Below {
  readonly plans: string[];
  readonly others: string[];
}

/** Hidden folders, other hidden files and installed packages are left out; of the rest the first ones, folder by folder. */
async function filesBelow(folder: string, most: number, found: Below): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    const plan = entry.name.endsWith('.liftplan');
    const kind = plan ? found.plans : found.others;
    if (entry.isFile() && (plan || !entry.name.startsWith('.')) && kind.length < most)
      kind.push(join(folder, entry.name));
  }
  for (const entry of entries) {
    if (found.plans.length >= most) return;
    if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules')
      await filesBelow(join(folder, entry.name), most, found);
  }
}
