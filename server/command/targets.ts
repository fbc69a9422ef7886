// Which plans a command line means: files, folders with all that is below them, or standard input.
import { folderOf, relativePath } from '../report/index.ts';
import { exists, identity, isFile, isFolder, plansBelow, within } from './files.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun } from './usage.ts';

export interface Target {
  readonly file: string; // identity
  /** Folder given, or the folder of the file given: reports name files as seen from here. */
  readonly base: string;
  /** The folder that `use` may not leave. */
  readonly root: string;
  /** Named itself, not found in a folder. */
  readonly named: boolean;
}

export interface Targets {
  readonly list: readonly Target[];
  /** A text that stands before what is on disk: standard input. */
  readonly texts: ReadonlyMap<string, string>;
  /** One file was named, nothing else. */
  readonly single: boolean;
}

/** `paths` as typed; `name` is what standard input (`-`) is called, so that `use` is found from there. */
export async function targetsOf(
  terminal: Terminal,
  paths: readonly string[],
  name: string | undefined,
): Promise<Targets> {
  if (!paths.length) throw new CannotRun('Name a plan, a folder, or - for standard input.');
  if (name !== undefined && !paths.includes('-'))
    throw new CannotRun('--named says what standard input is called: it goes with -.');
  const texts = new Map<string, string>();
  const found = new Map<string, Target>();
  for (const path of paths) {
    if (path === '-') texts.set(identity(name ?? 'input.liftplan', terminal.cwd), await terminal.input());
    for (const target of path === '-'
      ? [fileTarget(identity(name ?? 'input.liftplan', terminal.cwd), terminal)]
      : targets(path, terminal)) {
      if (!found.has(target.file)) found.set(target.file, target);
    }
  }
  const list = [...found.values()].sort((a, b) => (a.file < b.file ? -1 : 1));
  return { list, texts, single: paths.length === 1 && list.length === 1 && (list[0] as Target).named };
}

function targets(path: string, terminal: Terminal): readonly Target[] {
  const file = identity(path, terminal.cwd);
  if (isFolder(file)) return folderTargets(file, path, terminal);
  if (!isFile(file)) throw new CannotRun(`There is no file or folder ${path}.`);
  return [fileTarget(file, terminal)];
}

function folderTargets(folder: string, path: string, terminal: Terminal): readonly Target[] {
  const files = plansBelow(folder);
  if (!files.length) throw new CannotRun(`No file below ${path} ends in .liftplan.`);
  const root = rootOf(folder, terminal);
  return files.map((file) => ({ file, base: folder, root, named: false }));
}

function fileTarget(file: string, terminal: Terminal): Target {
  const base = folderOf(file);
  return { file, base, root: rootOf(base, terminal), named: true };
}

/**
 * What a plan may take in lies in here: the repository of the folder named; where there is none, the folder the command runs in,
 * if it holds what is named; else what is named itself.
 */
export function rootOf(folder: string, { cwd }: Terminal): string {
  for (let up = folder; up !== ''; up = folderOf(up)) if (exists(`${up}/.git`)) return up;
  const here = identity('.', cwd);
  return folder === here || within(here, folder) ? here : folder;
}

/** A path as a person at this terminal would type it. */
export function shownPath(file: string, { cwd }: Terminal): string {
  const path = relativePath(identity('.', cwd), file);
  return path.length < file.length ? path : file;
}
