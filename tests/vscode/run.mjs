// Runs the suite in a real VS Code and says how many checks held: `node tests/vscode/run.mjs [browser | node] [--log]`.
//
// browser (the default): VS Code's own browser build with its browser extension host. node: its remote server with a Node
// extension host. Both are drawn by Chromium (CHROMIUM names another one than /usr/bin/chromium) and come from npm, once, into
// `.cache`. With VSCODE_PATH it is the desktop VS Code at that path; its page is reached through its debugging port, so that the
// same suite can ask the same questions.
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { runTests } from '@vscode/test-electron';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import { startHost } from './host.mjs';
import { install } from './install.mjs';
import { startNodeHost } from './node-host.mjs';
import { pageDeeds } from './page.mjs';
import { checkPatching } from './patch.mjs';

const root = resolve(import.meta.dirname, '../..');
const cache = join(root, '.cache');
const suiteFolder = '.cache/suite';
const screens = join(root, '.cache/screens');
const loud = process.argv.includes('--log');
/** Milliseconds for the whole suite. */
const longest = 240_000;
const debugPort = 9333;
const browserBuild = { 'code-server': '4.139.1', '@vscode/test-web': '0.0.81' };
const kind = process.env.VSCODE_PATH ? 'desktop' : process.argv.includes('node') ? 'node' : 'browser';

const workspace = await mkdtemp(join(tmpdir(), 'becket-workspace-'));
const tally = { held: 0, failed: 0 };
const log = [];
let ended = false;
try {
  await cp(join(root, 'samples'), workspace, { recursive: true });
  await cp(join(import.meta.dirname, 'plans'), workspace, { recursive: true });
  await rm(screens, { recursive: true, force: true });
  await mkdir(screens, { recursive: true });
  ended = kind === 'desktop' ? await runDesktop(process.env.VSCODE_PATH) : await runInChromium();
  note('the suite ran to its end', ended);
} finally {
  await rm(workspace, { recursive: true, force: true });
}
if (!ended) console.log(log.slice(-40).join('\n'));
console.log(`VS Code, ${kind}: ${tally.held} passed, ${tally.failed} failed`);
process.exit(ended && tally.failed === 0 ? 0 : 1);

async function runInChromium() {
  let answer;
  const host = await startHost((question) => answer(question), kind === 'browser' ? browserFolders() : undefined);
  await bundleSuite('suite.js', host.address);
  const remote = kind === 'node' ? await startNode() : undefined;
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
  try {
    const patching = await checkPatching(browser, join(root, 'client/sheet/patch.ts')).catch((error) => error);
    note('a patched sheet equals the new sheet drawn from nothing', patching === undefined, patching?.message);
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    answer = withNotes({ ...pageDeeds(page, screens), endServer: async () => remote.endServer() });
    const elsewhere = watchRequests(page);
    const exit = new Promise((done) => page.exposeFunction('codeAutomationExit', done));
    await page.exposeFunction('codeAutomationLog', (kind, words) => hear(kind, words.join(' ')));
    page.on('pageerror', (error) => hear('page', String(error)));
    await page.goto((remote ?? host).address);
    const code = await within(longest, exit);
    if (code !== 0) await page.screenshot({ path: join(screens, 'failed.png') });
    // The remote server's own page asks for a gallery of extensions; the browser's has none, so there the check is exact.
    if (kind === 'browser')
      note(`asks nothing of another machine ${[...elsewhere].join(' ')}`.trim(), elsewhere.size === 0);
    return code === 0;
  } finally {
    await browser.close();
    await remote?.close();
    host.close();
  }
}

/** The packages' own install scripts build native parts of a server that is not run here, so they are left out. */
function browserFolders() {
  const folder = join(cache, 'browser-host');
  install(folder, browserBuild, { options: ['--ignore-scripts'] });
  return {
    code: join(folder, 'node_modules/code-server/lib/vscode'),
    fileSystem: join(folder, 'node_modules/@vscode/test-web/fs-provider'),
    extension: root,
    suite: `${suiteFolder}/suite.js`,
    workspace,
  };
}

function startNode() {
  return startNodeHost({
    cache: join(cache, 'node-host'),
    workspace,
    extension: root,
    suite: join(root, suiteFolder, 'suite.js'),
  });
}

async function runDesktop(path) {
  let answer;
  const host = await startHost(async (question) => {
    answer ??= withNotes(pageDeeds(await desktopPage(), screens));
    return answer(question);
  });
  await bundleSuite('suite.cjs', host.address);
  const code = await runTests({
    vscodeExecutablePath: path,
    extensionDevelopmentPath: root,
    extensionTestsPath: join(root, suiteFolder, 'suite.cjs'),
    launchArgs: [
      workspace,
      '--disable-extensions',
      '--disable-workspace-trust',
      `--remote-debugging-port=${debugPort}`,
    ],
  }).catch(() => 1);
  host.close();
  return code === 0;
}

/** The page of the desktop's window, over the debugging port. */
async function desktopPage() {
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${debugPort}`);
  const pages = browser.contexts().flatMap((context) => context.pages());
  const page = pages.find((one) => one.url().includes('workbench'));
  if (!page) throw new Error('The desktop VS Code shows no window.');
  return page;
}

async function bundleSuite(name, address) {
  await build({
    entryPoints: [join(import.meta.dirname, 'suite.ts')],
    outfile: join(root, suiteFolder, name),
    bundle: true,
    format: 'cjs',
    platform: 'browser',
    external: ['vscode'],
    define: { ASK: JSON.stringify(`${address}/ask`), HOST: JSON.stringify(kind) },
    logLevel: 'warning',
  });
  // The suite is CommonJS whatever the package above it says.
  await writeFile(join(root, suiteFolder, 'package.json'), '{ "type": "commonjs" }\n');
}

/** Answers the suite's questions, `{ deed, … }`: each check as it ends (`note`), and the deeds given. */
function withNotes(deeds) {
  const all = { ...deeds, note: async ({ name, held, why }) => note(name, held, why) };
  return async ({ deed, ...details }) => (await all[deed](details)) ?? null;
}

function note(name, held, why) {
  tally[held ? 'held' : 'failed'] += 1;
  console.log(`${held ? 'held  ' : 'FAILED'} ${name}${why ? `\n       ${why.replaceAll('\n', '\n       ')}` : ''}`);
}

/** The editor's own log is long and full of its own troubles: shown when asked for, and its end after a failure. */
function hear(kind, words) {
  const line = `[${kind}] ${words.slice(0, 800)}`;
  if (loud) console.log(line);
  else log.push(line);
}

function watchRequests(page) {
  const elsewhere = new Set();
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (/^(http|ws)s?:$/.test(protocol) && !/^(127\.0\.0\.1|([a-z0-9-]+\.)?localhost)$/.test(hostname))
      elsewhere.add(hostname);
  });
  return elsewhere;
}

/** What `promise` resolves to, or undefined when the time is over. */
async function within(milliseconds, promise) {
  let timer;
  const over = new Promise((done) => {
    timer = setTimeout(done, milliseconds);
  });
  return Promise.race([promise, over]).finally(() => clearTimeout(timer));
}
