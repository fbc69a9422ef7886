// Reads files as they were at a revision, by asking git, which runs as a process of its own and is never written to.
import { spawnSync } from 'node:child_process';
import { folderOf, relativePath } from '../report/index.ts';
import { type Files, joined, mostBytes, notRelative } from '../workspace/index.ts';
import { seenBelow, within } from './files.ts';
import { CannotRun } from './usage.ts';

/** A repository at one revision; identities of files are the paths they have, or would have, on disk. */
export interface Revision {
  readonly files: Files;
  /** The file of that path, or every `.liftplan` file below it, in the order of their paths. */
  plansBelow(path: string): readonly string[];
}

/** Throws CannotRun where there is no git, or the repository at `root` has no such revision. */
export function revisionOf(root: string, name: string): Revision {
  // A name that begins with a hyphen would be an option.
  if (name === '' || name.startsWith('-')) throw new CannotRun(`"${name}" is no name of a revision.`);
  const id = sure(
    root,
    ['rev-parse', '--verify', '--quiet', `${name}^{commit}`],
    `There is no revision ${name} in ${root}.`,
  ).trim();
  const there = listed(root, id);
  const read = new Map<string, Buffer | null>();
  const content = (file: string): Buffer | null => {
    const path = there.get(file);
    if (path === undefined) return null;
    if (!read.has(file)) read.set(file, git(root, ['cat-file', '--filters', `${id}:${path}`]).output);
    return read.get(file) ?? null;
  };
  return {
    files: {
      read: (file) => content(file)?.toString('utf8') ?? null,
      bytes(file) {
        const bytes = content(file);
        return bytes && bytes.length <= mostBytes ? bytes : null;
      },
      resolve(from, path) {
        const reason = notRelative(path);
        const file = reason === null ? joined(folderOf(from), path) : null;
        if (file !== null && within(root, file)) return { file };
        return { reason: reason ?? `it lies outside ${root}, all that is read here` };
      },
      elsewhere(from, path) {
        const base = path.slice(path.lastIndexOf('/') + 1);
        return [...there.keys()]
          .filter((file) => file.endsWith(`/${base}`))
          .map((file) => relativePath(folderOf(from), file));
      },
    },
    plansBelow: (path) =>
      [...there.keys()].filter((file) => file === path || (file.endsWith('.liftplan') && seenBelow(path, file))).sort(),
  };
}

/** Files at a revision by identity. Links count as not there: what they point to may lie outside. */
function listed(root: string, id: string): ReadonlyMap<string, string> {
  const text = sure(root, ['ls-tree', '-r', '-z', id], `The files of ${root} cannot be listed.`);
  return new Map(
    text.split('\0').flatMap((entry) => {
      const [, mode = '', path = ''] = /^(\d+) blob [0-9a-f]+\t([^]*)$/.exec(entry) ?? [];
      return mode && mode !== link ? [[`${root}/${path}`, path] as const] : [];
    }),
  );
}

const link = '120000';
const mostOutput = 2 * mostBytes;

interface Answer {
  readonly output: Buffer | null; // null: it ended with an error
  readonly message: string;
}

function git(root: string, args: readonly string[]): Answer {
  const { status, stdout, stderr, error } = spawnSync('git', ['-C', root, ...args], {
    maxBuffer: mostOutput,
    windowsHide: true,
  });
  if ((error as NodeJS.ErrnoException | undefined)?.code === 'ENOENT')
    throw new CannotRun('git is not to be found here.');
  return { output: status === 0 ? stdout : null, message: stderr?.toString('utf8').trim() ?? '' };
}

/** What git prints; where it ends with an error the sentence, with git's own words. */
function sure(root: string, args: readonly string[], otherwise: string): string {
  const { output, message } = git(root, args);
  if (output === null) throw new CannotRun([otherwise, message].filter(Boolean).join(' '));
  return output.toString('utf8');
}
