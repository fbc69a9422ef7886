// Files of a folder for the workspace, read from disk once each; nothing outside the folder is ever opened.
import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { resolve, sep } from 'node:path';
import { folderOf, relativePath } from '../report/index.ts';
import { type Files, joined, mostBytes, notRelative } from '../workspace/index.ts';

/** Identities are absolute paths with `/`. A text stays as it was when it was first read. */
export function filesIn(root: string): Files {
  const read = new Map<string, string | null>();
  const contents = new Map<string, Uint8Array | null>();
  let known: readonly string[] | null = null;
  return {
    read(file) {
      if (!read.has(file)) read.set(file, inside(root, file) ? readText(file) : null);
      return read.get(file) ?? null;
    },
    bytes(file) {
      if (!contents.has(file)) contents.set(file, inside(root, file) ? readBytes(file) : null);
      return contents.get(file) ?? null;
    },
    resolve(from, path) {
      const reason = notRelative(path);
      if (reason !== null) return { reason };
      const file = joined(folderOf(from), path);
      return file !== null && within(root, file)
        ? { file }
        : { reason: `it lies outside ${root}, all that is read here; run this from a folder that holds both` };
    },
    elsewhere(from, path) {
      known ??= filesBelow(root);
      const name = path.slice(path.lastIndexOf('/') + 1);
      return known.filter((file) => file.endsWith(`/${name}`)).map((file) => relativePath(folderOf(from), file));
    },
  };
}

/** An absolute path with `/`, as files are known by here. */
export const identity = (path: string, cwd: string): string => slashed(resolve(cwd, path));

/** Every `.liftplan` file below a folder, in the order of their paths. */
export const plansBelow = (folder: string): readonly string[] => filesBelow(folder, '.liftplan');

/** Every file below a folder whose name ends so, in the order of their paths; hidden folders and installed packages are left out. */
function filesBelow(folder: string, ending = ''): readonly string[] {
  const found: string[] = [];
  const visit = (current: string): void => {
    for (const entry of readdirSync(current, { withFileTypes: true })) {
      const path = `${current}/${entry.name}`;
      if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules') visit(path);
      else if (entry.name.endsWith(ending) && isFile(path)) found.push(path);
    }
  };
  visit(folder);
  return found.sort();
}

/** Whether a search below a folder comes upon a file: not in hidden folders and installed packages. */
export const seenBelow = (folder: string, file: string): boolean =>
  within(folder, file) && !/(?:^|\/)(?:\.[^/]*|node_modules)\//.test(file.slice(folder.length));

export const exists = (path: string): boolean => existsSync(path);
export const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() === true;
export const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

const slashed = (path: string): string => (sep === '/' ? path : path.split(sep).join('/'));

export const within = (root: string, file: string): boolean => file.startsWith(root.endsWith('/') ? root : `${root}/`);

/** A link inside the folder may point out of it: what it points to counts. */
function inside(root: string, file: string): boolean {
  try {
    return within(slashed(realpathSync(root)), slashed(realpathSync(file)));
  } catch {
    return false; // no such file
  }
}

function readBytes(file: string): Uint8Array | null {
  try {
    return statSync(file).size <= mostBytes ? readFileSync(file) : null;
  } catch {
    return null; // the plan that names it says so
  }
}

function readText(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null; // the plan that uses it says so
  }
}
