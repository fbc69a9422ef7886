// Makes `dist/` from the sources: `node .build/bundle.mjs [--watch] [name …]`; without names, all of it.
//
// The pages that explain the findings ship as one file, `dist/pages.json`, beside the bundles rather than inside them: they
// are needed only when somebody asks, so no start pays for them. The client tells the server where the file lies
// (`StartOptions.pages`); the Node server and the command line read it from their own folder, and the browser's server
// fetches it through the client like any other file (`becket/readFile`).
import { chmod, mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { build, context } from 'esbuild';
import { readPages } from './pages.mjs';

const shared = {
  bundle: true,
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
  target: 'es2022',
  charset: 'utf8',
  loader: { '.ohm': 'text', '.css': 'text' },
};
const node = { ...shared, platform: 'node', format: 'cjs', target: 'node20', mainFields: ['module', 'main'] };
const browser = { ...shared, platform: 'browser' };
/** For a process of Node and a web worker alike: what belongs to one of them is loaded there only. */
const either = { ...node, conditions: ['browser', 'module'] };

const styles = (...paths) => ({
  contents: paths.map((path) => `@import './${path}';`).join('\n'),
  resolveDir: process.cwd(),
  loader: 'css',
});

/** Every bundle by the name of its file in `dist/`. */
const bundles = {
  'client.js': { ...either, entryPoints: ['client/main.ts'], external: ['vscode'] },
  'server.js': { ...either, entryPoints: ['server/protocol/main.ts'] },
  'becket.cjs': { ...node, entryPoints: ['server/command/main.ts'], banner: { js: '#!/usr/bin/env node' } },
  'sheet.js': { ...browser, format: 'iife', entryPoints: ['client/sheet/view.ts'] },
  // The same style that the page to be printed has, and over it the editor's colours.
  'sheet.css': { ...browser, loader: {}, stdin: styles('server/report/render/sheet.css', 'client/sheet/look.css') },
};

/** Builds the named files of `dist/` (all of them when none is named). */
export async function bundle(names = [...Object.keys(bundles), 'pages.json']) {
  await mkdir('dist', { recursive: true });
  await Promise.all(names.map(bundleOne));
}

async function bundleOne(name) {
  if (name === 'pages.json') return writeFile('dist/pages.json', JSON.stringify(await readPages()));
  const options = bundles[name];
  if (!options)
    throw new Error(`No bundle is called ${name}. There are: ${Object.keys(bundles).join(', ')}, pages.json.`);
  await build({ ...options, outfile: `dist/${name}` });
  if (name === 'becket.cjs') await chmod(`dist/${name}`, 0o755);
}

/** What an earlier build or a package left in `dist/` goes, once the new files stand. */
async function removeOthers() {
  const ours = [...Object.keys(bundles), 'pages.json'];
  const others = (await readdir('dist')).filter((name) => !ours.includes(name));
  await Promise.all(others.map((name) => rm(`dist/${name}`, { recursive: true })));
}

async function watch() {
  await bundle();
  for (const [name, options] of Object.entries(bundles)) {
    const running = await context({ ...options, outfile: `dist/${name}`, logLevel: 'info' });
    await running.watch();
  }
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const names = process.argv.slice(2).filter((word) => !word.startsWith('--'));
  if (process.argv.includes('--watch')) await watch();
  else {
    await bundle(names.length > 0 ? names : undefined);
    await removeOthers();
  }
}
