// Reads the plans of one command: every file once, whichever plans take it in.
import { type Files, type Snapshot, Workspace } from '../workspace/index.ts';
import { filesIn } from './files.ts';
import type { Target, Targets } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun } from './usage.ts';

export interface Opened {
  readonly plans: readonly { readonly target: Target; readonly snapshot: Snapshot }[];
  /** The program itself failed on a file: it is left out, and the command ends with exit code 3. */
  readonly failed: boolean;
}

/** The snapshot of every target. Throws CannotRun where a file cannot be read. */
export function opened(targets: Targets, terminal: Terminal): Opened {
  const all = [...opening(targets, terminal)];
  const plans = all.filter(({ snapshot }) => !snapshot.setAside);
  return { plans, failed: plans.length < all.length };
}

/** The same one after the other, also those on which the program failed: who lets go of each has few at a time, of however many plans. */
export function* opening({ list, texts }: Targets, terminal: Terminal): Generator<Opened['plans'][number]> {
  const folders = new Map<string, Workspace>();
  for (const target of list) {
    const workspace = folders.get(target.root) ?? open(target.root, texts, terminal);
    folders.set(target.root, workspace);
    const snapshot = workspace.snapshot(target.file);
    if (!snapshot) throw new CannotRun(`${target.file} cannot be read.`);
    yield { target, snapshot };
  }
}

function open(root: string, texts: ReadonlyMap<string, string>, terminal: Terminal): Workspace {
  const workspace = workspaceOf(filesIn(root), terminal);
  for (const [file, text] of texts) workspace.openText(file, 0, text);
  return workspace;
}

/** A workspace that says on the terminal where the program itself fails. */
export const workspaceOf = (files: Files, terminal: Terminal): Workspace =>
  new Workspace(files, (file, error) =>
    terminal.say(
      `An error in this program at ${file}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    ),
  );
