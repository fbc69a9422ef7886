// `becket compare`: what differs in meaning between two files, two folders, or a file or folder and what it was at a revision.
import {
  type ComparedPlan,
  comparedJson,
  comparedMarkdown,
  comparedPlan,
  comparedText,
  folderOf,
  type PathOf,
  relativePath,
} from '../report/index.ts';
import type { Snapshot, Workspace } from '../workspace/index.ts';
import { exit } from './exit.ts';
import { exists, filesIn, identity, isFile, isFolder, plansBelow } from './files.ts';
import { revisionOf } from './git.ts';
import { workspaceOf } from './opened.ts';
import { rootOf, shownPath } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun, oneOf, readArgs } from './usage.ts';

/** Found: something differs in meaning. */
export async function compare(terminal: Terminal, args: readonly string[]): Promise<number> {
  const { values, positionals } = readArgs(args, {
    since: { type: 'string' },
    until: { type: 'string' },
    format: { type: 'string' },
  });
  const format = oneOf('format', values.format, formats, 'text');
  const files =
    values.since === undefined
      ? twoPaths(terminal, positionals, values.until)
      : revisions(terminal, positionals, values.since, values.until);
  const apart = new Set(files.flatMap(({ old, now }) => [old?.file ?? [], now?.file ?? []].flat()));
  const read = files.map(({ path, old, now }) => ({ path, old: old && snapshotOf(old), now: now && snapshotOf(now) }));
  const sound = read.filter(({ old, now }) => !old?.setAside && !now?.setAside);
  const plans = sound.map((pair) => comparedPlan(pair, pathOf, apart));
  terminal.out(format === 'json' ? comparedJson(plans, pathOf) : texts[format](plans));
  if (sound.length < read.length) return exit.failed;
  return plans.every(({ same }) => same) ? exit.clean : exit.found;
}

const texts: Readonly<Record<'text' | 'markdown', (plans: readonly ComparedPlan[]) => string>> = {
  text: comparedText,
  markdown: comparedMarkdown,
};
const formats = ['text', 'markdown', 'json'] as const;

const pathOf: PathOf = ({ plan }, file) => relativePath(folderOf(plan.file), file);

/** A file in the workspace that holds it as it was then. */
interface Version {
  readonly file: string;
  readonly workspace: Workspace;
}

interface Versions {
  readonly path: string; // as shown
  readonly old: Version | null;
  readonly now: Version | null;
}

function snapshotOf({ file, workspace }: Version): Snapshot {
  const snapshot = workspace.snapshot(file);
  if (!snapshot) throw new CannotRun(`${file} cannot be read.`);
  return snapshot;
}

/** `OLD NEW`: two files whatever they are called, or two folders, whose files belong together by their paths. */
function twoPaths(terminal: Terminal, paths: readonly string[], until: string | undefined): readonly Versions[] {
  const [old, now, more] = paths;
  if (until !== undefined) throw new CannotRun('--until goes with --since.');
  if (old === undefined || now === undefined || more !== undefined)
    throw new CannotRun('Name two files or two folders, the older one first; or a revision with --since, and a path.');
  const [before, after] = [onDisk(terminal, old), onDisk(terminal, now)];
  if (before.folder !== after.folder) throw new CannotRun(`${old} and ${now} are not both files, nor both folders.`);
  if (!before.folder)
    return [
      { path: shownPath(after.path, terminal), old: before.files.get('') ?? null, now: after.files.get('') ?? null },
    ];
  if (!before.files.size && !after.files.size) throw new CannotRun(`No file below ${old} or ${now} ends in .liftplan.`);
  return [...new Set([...before.files.keys(), ...after.files.keys()])].sort().map((path) => ({
    path,
    old: before.files.get(path) ?? null,
    now: after.files.get(path) ?? null,
  }));
}

/** Plans by their path below the folder, or the one file under `''`. */
function onDisk(terminal: Terminal, path: string) {
  const file = identity(path, terminal.cwd);
  const folder = isFolder(file);
  if (!folder && !isFile(file)) throw new CannotRun(`There is no file or folder ${path}.`);
  const workspace = workspaceOf(filesIn(rootOf(folder ? file : folderOf(file), terminal)), terminal);
  const version = (one: string): Version => ({ file: one, workspace });
  const files = folder
    ? plansBelow(file).map((one) => [relativePath(file, one), version(one)] as const)
    : [['', version(file)] as const];
  return { path: file, folder, files: new Map<string, Version>(files) };
}

/** `--since REVISION PATH…`: as it was at the revision, and as it is on disk or was at another one. */
function revisions(
  terminal: Terminal,
  paths: readonly string[],
  since: string,
  until: string | undefined,
): readonly Versions[] {
  if (!paths.length) throw new CannotRun('Name a plan or a folder behind --since and its revision.');
  const found = paths.flatMap((path) => revised(terminal, path, since, until));
  return [...new Map(found.map((one) => [one.path, one])).values()];
}

function revised(terminal: Terminal, path: string, since: string, until: string | undefined): readonly Versions[] {
  const file = identity(path, terminal.cwd);
  const root = rootOf(isFolder(file) ? file : folderOf(file), terminal);
  if (!exists(`${root}/.git`)) throw new CannotRun(`${path} is in no git repository.`);
  const [before, after] = [
    at(terminal, root, since, file),
    until === undefined ? present(terminal, root, file) : at(terminal, root, until, file),
  ];
  const files = [...new Set([...before.keys(), ...after.keys()])].sort();
  if (!files.length) throw new CannotRun(`There is no plan at ${path}, neither before nor now.`);
  return files.map((one) => ({
    path: shownPath(one, terminal),
    old: before.get(one) ?? null,
    now: after.get(one) ?? null,
  }));
}

function at(terminal: Terminal, root: string, name: string, path: string): ReadonlyMap<string, Version> {
  const revision = revisionOf(root, name);
  const workspace = workspaceOf(revision.files, terminal);
  return new Map(revision.plansBelow(path).map((file) => [file, { file, workspace }]));
}

function present(terminal: Terminal, root: string, path: string): ReadonlyMap<string, Version> {
  const workspace = workspaceOf(filesIn(root), terminal);
  const files = isFolder(path) ? plansBelow(path) : isFile(path) ? [path] : [];
  return new Map(files.map((file) => [file, { file, workspace }]));
}
