// Fetches what a host is made of from npm, once, into a folder that git ignores.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Puts the packages, by name and version, into `folder`, unless just these are there already; `path` is where programs are
 * looked for meanwhile, `options` are further ones of npm. What an install that broke off left behind is thrown away.
 */
export function install(folder, packages, { path = process.env.PATH, options = [] } = {}) {
  const whole = join(folder, 'whole.json');
  const wanted = JSON.stringify(packages);
  if (existsSync(whole) && readFileSync(whole, 'utf8') === wanted) return;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  const names = Object.entries(packages).map(([name, version]) => `${name}@${version}`);
  execFileSync('npm', ['install', '--no-audit', '--no-fund', '--prefix', folder, ...options, ...names], {
    stdio: 'inherit',
    env: { ...withoutNpm(process.env), PATH: path },
  });
  writeFileSync(whole, wanted);
}

/** An npm that runs this script would have it told which Node it has, which need not be the one on the path. */
const withoutNpm = (env) => Object.fromEntries(Object.entries(env).filter(([name]) => !/^npm_/i.test(name)));
