// Serves VS Code's own browser build, as npm carries it, from this machine alone: no remote host, so that the extension runs
// in the browser's extension host and the folder under test is a virtual one.
import { createReadStream } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const types = {
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.cjs': 'text/javascript',
  '.css': 'text/css',
  '.html': 'text/html',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.png': 'image/png',
};
const workbenchScript = '/out/vs/code/browser/workbench/workbench.js';

/**
 * Starts the host. `ask` answers the suite's questions, posted to `/ask`. `folders` are paths, needed only by the browser's VS
 * Code: `code` (its build), `fileSystem` (the extension that shows a served folder as a workspace), `extension` (the one under
 * test), `workspace`; `suite` is the path of the suite's script inside `extension`: the editor runs none from elsewhere.
 */
export async function startHost(ask, folders) {
  const mounts = folders ? mountsOf(folders) : [];
  const page = folders ? await workbenchPage(folders) : () => '';
  const server = createServer(async (request, response) => {
    response.setHeader('Access-Control-Allow-Origin', '*');
    response.setHeader('Cross-Origin-Resource-Policy', 'cross-origin');
    try {
      const url = new URL(request.url, `http://${request.headers.host}`);
      if (url.pathname === '/') send(response, 'text/html', page(request.headers.host));
      else if (url.pathname === '/ask')
        send(response, 'application/json', JSON.stringify(await ask(await bodyOf(request))));
      else await sendFile(response, url, mounts);
    } catch (error) {
      response.statusCode = 500;
      response.end(String(error));
    }
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  return {
    address: `http://localhost:${server.address().port}`,
    close() {
      server.close();
      server.closeAllConnections();
    },
  };
}

const mountsOf = (folders) => [
  ['/code/', folders.code],
  ['/file-system/', folders.fileSystem],
  ['/extension/', folders.extension],
  // The path is the one that the file system extension asks for.
  ['/static/mount/', folders.workspace],
];

async function bodyOf(request) {
  let text = '';
  for await (const chunk of request) text += chunk;
  return JSON.parse(text);
}

function send(response, type, text) {
  response.setHeader('Content-Type', type);
  response.end(text);
}

async function sendFile(response, url, mounts) {
  const path = decodeURIComponent(url.pathname);
  const [prefix, root] = mounts.find(([prefix]) => path.startsWith(prefix) || `${path}/` === prefix) ?? [];
  const file = root && normalize(join(root, path.slice(prefix.length)));
  const inside = file && `${file}${sep}`.startsWith(`${normalize(root)}${sep}`);
  const found = inside ? await stat(file).catch(() => null) : null;
  if (url.searchParams.has('stat')) return send(response, types['.json'], JSON.stringify(statOf(found)));
  if (url.searchParams.has('readdir'))
    return send(response, types['.json'], JSON.stringify(await entriesOf(found, file)));
  if (!found?.isFile()) {
    response.statusCode = 404;
    return response.end('Not found');
  }
  if (file.endsWith(workbenchScript)) return send(response, types['.js'], withoutRemote(await readFile(file, 'utf8')));
  response.setHeader('Content-Type', types[extname(file)] ?? 'application/octet-stream');
  createReadStream(file).pipe(response);
}

/** File kinds as the editor numbers them: 1 a file, 2 a folder. */
const kindOf = (entry) => (entry.isDirectory() ? 2 : entry.isFile() ? 1 : 0);

const statOf = (found) =>
  found
    ? { type: kindOf(found), ctime: +found.ctime, mtime: +found.mtime, size: found.size }
    : { error: 'EntryNotFound' };

async function entriesOf(found, folder) {
  if (!found) return { error: 'EntryNotFound' };
  const entries = await readdir(folder, { withFileTypes: true });
  return entries.map((entry) => ({ name: entry.name, type: kindOf(entry) }));
}

/**
 * The build on npm is patched to always talk to the server that serves it and to keep the user's data there. Both are undone;
 * a build in which they read otherwise is refused, since it would silently run something else.
 */
function withoutRemote(script) {
  const patches = [
    [/,remoteAuthority:location\.host\}/, '}'],
    [
      /file\(this\.userDataPath\)\.with\(\{scheme:(\w+)\.vscodeRemote\}\)/,
      'file("/").with({scheme:$1.vscodeUserData})',
    ],
  ];
  return patches.reduce((text, [found, put]) => {
    if (!found.test(text)) throw new Error(`The browser build has changed: ${found} is not in it.`);
    return text.replace(found, put);
  }, script);
}

async function workbenchPage({ code, suite }) {
  const product = JSON.parse(await readFile(join(code, 'product.json'), 'utf8'));
  const template = await readFile(join(code, 'out/vs/code/browser/workbench/workbench.html'), 'utf8');
  return (host) => {
    const values = {
      WORKBENCH_WEB_CONFIGURATION: JSON.stringify(configuration(host, product, suite)).replaceAll('"', '&quot;'),
      WORKBENCH_WEB_BASE_URL: '/code',
      WORKBENCH_NLS_FALLBACK_URL: '/code/out/nls.messages.js',
      WORKBENCH_NLS_URL: '/code/out/nls.messages.js',
      WORKBENCH_SCRIPT_NONCE: 'suite',
    };
    return template.replace(/\{\{([A-Z_]+)\}\}/g, (_, name) => values[name] ?? '');
  };
}

function configuration(host, { commit, version }, suite) {
  const at = (path) => ({ scheme: 'http', authority: host, path });
  return {
    userDataPath: '/',
    folderUri: { scheme: 'vscode-test-web', authority: 'mount', path: '/' },
    additionalBuiltinExtensions: [at('/file-system')],
    // The build on npm asks for these three of its own, and stops without them.
    isEnabledFileDownloads: false,
    isEnabledFileUploads: false,
    isEnabledCoderGettingStarted: false,
    developmentOptions: {
      extensions: [at('/extension')],
      extensionTestsPath: at(`/extension/${suite}`),
      enableSmokeTestDriver: true,
    },
    productConfiguration: {
      quality: 'stable',
      commit,
      version,
      webEndpointUrlTemplate: `http://${host}/code`,
      webviewContentExternalBaseUrlTemplate: `http://${host}/code/out/vs/workbench/contrib/webview/browser/pre/`,
      extensionsGallery: undefined,
      enableTelemetry: false,
    },
    configurationDefaults: {
      'telemetry.telemetryLevel': 'off',
      'workbench.startupEditor': 'none',
      'security.workspace.trust.enabled': false,
      'workbench.secondarySideBar.defaultVisibility': 'hidden',
    },
  };
}
