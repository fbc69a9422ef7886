// `npm run bench`: measures the bundled server against the JSON language server of vscode-langservers-extracted, in one run.
// The peer is fetched into .cache/bench, which is never committed. Sizes in lines may be given: `npm run bench -- 1000 10000`.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const cache = '.cache/bench';
const peer = 'vscode-langservers-extracted@4.10.0';

if (!existsSync(`${cache}/node_modules/vscode-langservers-extracted`)) {
  mkdirSync(cache, { recursive: true });
  writeFileSync(`${cache}/package.json`, '{ "private": true }\n');
  execFileSync('npm', ['install', '--no-audit', '--no-fund', '--ignore-scripts', peer], {
    cwd: cache,
    stdio: 'inherit',
  });
}
const outfile = `${cache}/bench.mjs`;
await build({
  entryPoints: ['tests/bench/bench.ts'],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  external: ['mathjs'],
  loader: { '.ohm': 'text', '.css': 'text' },
});
const { bench } = await import(pathToFileURL(outfile).href);
await bench(process.argv.slice(2).map(Number).filter(Boolean));
