// VS Code's remote server, as npm carries it, with a Node extension host: what the desktop's extension host is, too. It wants
// Node 24, which npm carries as well, and builds native parts, for which the system needs libkrb5-dev, libx11-dev,
// libxkbfile-dev, libsecret-1-dev and a compiler.
import { execFileSync, spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { install } from './install.mjs';

const nodeVersion = '24.21.0';
const packages = { 'code-server': '4.139.1' };
const userSettings = {
  'telemetry.telemetryLevel': 'off',
  'workbench.startupEditor': 'none',
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'chat.disableAIFeatures': true,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
};

/** Starts the host for a folder, the extension under test and its suite's script, all by path. */
export async function startNodeHost({ cache, workspace, extension, suite }) {
  const path = installHost(cache);
  const data = await mkdtemp(join(tmpdir(), 'becket-host-'));
  await mkdir(join(data, 'data/User'), { recursive: true });
  await writeFile(join(data, 'data/User/settings.json'), JSON.stringify(userSettings));
  const script = join(cache, 'host/node_modules/code-server/lib/vscode/out/server-main.js');
  const options = [
    '--host',
    '127.0.0.1',
    '--port',
    '0',
    '--server-data-dir',
    data,
    '--extensions-dir',
    join(data, 'extensions'),
  ];
  const plain = ['--without-connection-token', '--accept-server-license-terms', '--enable-smoke-test-driver'];
  const server = spawn('node', [script, ...options, ...plain, '--disable-workspace-trust'], {
    env: { ...process.env, PATH: path },
  });
  const port = await portOf(server);
  const remote = (file) => `vscode-remote://127.0.0.1:${port}${file}`;
  const payload = [
    ['extensionDevelopmentPath', remote(extension)],
    ['extensionTestsPath', remote(suite)],
  ];
  return {
    address: `http://127.0.0.1:${port}/?folder=${encodeURIComponent(workspace)}&payload=${encodeURIComponent(JSON.stringify(payload))}`,
    /** Ends the language server's process without a word, as a fault or a full memory would. */
    endServer: () => process.kill(childOf(server.pid, 'dist/server.js'), 'SIGKILL'),
    async close() {
      const ended = new Promise((done) => server.once('exit', done));
      server.kill();
      await ended;
      await rm(data, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** The path of programs on which its own Node comes first. */
function installHost(cache) {
  const node = join(cache, 'node');
  install(node, { node: nodeVersion });
  const path = [join(node, 'node_modules/.bin'), process.env.PATH].join(delimiter);
  install(join(cache, 'host'), packages, { path });
  return path;
}

/** The process below `ancestor` whose command line holds `words`. */
function childOf(ancestor, words) {
  const rows = execFileSync('ps', ['-eo', 'pid=,ppid=,args='], { encoding: 'utf8' }).trim().split('\n');
  const all = rows.map((row) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(row)).filter((found) => found !== null);
  const parents = new Map(all.map(([, pid, parent]) => [+pid, +parent]));
  const isBelow = (pid) => pid !== undefined && (parents.get(pid) === ancestor || isBelow(parents.get(pid)));
  const found = all.find(([, pid, , command]) => command.includes(words) && isBelow(+pid));
  if (!found) throw new Error(`No process runs ${words}.`);
  return +found[1];
}

/** The port that the server says it listens on; its words are shown if it ends before. */
function portOf(server) {
  return new Promise((found, failed) => {
    let words = '';
    const read = (chunk) => {
      words += chunk;
      const port = /Web UI available at http:\/\/localhost:(\d+)/.exec(words)?.[1];
      if (port) found(port);
    };
    server.stdout.on('data', read);
    server.stderr.on('data', read);
    server.once('error', failed);
    server.once('exit', (code) => failed(new Error(`The host ended with ${code}.\n${words}`)));
  });
}
