// Fetches what a host is made of from npm, once, into a folder that git ignores.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Puts the packages, by name and version, into `folder`; `extra` are further options of npm. */
export function install(folder, packages, path, extra = []) {
  const missing = Object.entries(packages).filter(([name, version]) => versionIn(folder, name) !== version);
  if (missing.length === 0) return;
  mkdirSync(folder, { recursive: true });
  if (!existsSync(join(folder, 'package.json'))) writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  const wanted = missing.map(([name, version]) => `${name}@${version}`);
  execFileSync('npm', ['install', '--no-audit', '--no-fund', '--prefix', folder, ...extra, ...wanted], {
    stdio: 'inherit',
    env: { ...withoutNpm(process.env), PATH: path },
  });
}

/** An npm that runs this script would have it told which Node it has, which need not be the one on the path. */
const withoutNpm = (env) => Object.fromEntries(Object.entries(env).filter(([name]) => !/^npm_/i.test(name)));

function versionIn(folder, name) {
  const file = join(folder, 'node_modules', name, 'package.json');
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).version : undefined;
}
