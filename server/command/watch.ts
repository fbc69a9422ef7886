// `becket report --watch`: writes again whenever a file that went into the report changes, until it is stopped.
import { type FSWatcher, watch as watchFolder } from 'node:fs';
import { folderOf } from '../report/index.ts';
import { exit } from './exit.ts';
import type { Terminal } from './terminal.ts';

const settle = 100; // ms: editors write a file in several steps

/** `write` does the work and names the files it read. */
export async function watch(terminal: Terminal, write: () => Promise<readonly string[]>): Promise<number> {
  let watchers: readonly FSWatcher[] = [];
  let timer: NodeJS.Timeout | undefined;
  const again = () => {
    clearTimeout(timer);
    timer = setTimeout(() => void round(), settle);
  };
  const round = async (): Promise<void> => {
    for (const watcher of watchers) watcher.close();
    const files = await write().catch((error: Error) => {
      terminal.say(`${error.message}\n`);
      return null;
    });
    if (terminal.stop.aborted) return;
    if (files) {
      watchers = watchersOf(files, again);
      terminal.say(`Written. Watching ${files.length === 1 ? '1 file' : `${files.length} files`}.\n`);
    } else timer = setTimeout(() => void round(), 10 * settle);
  };
  await round();
  await stopped(terminal.stop);
  clearTimeout(timer);
  for (const watcher of watchers) watcher.close();
  return exit.clean;
}

/** Folders are watched rather than files: editors replace a file by another one of its name. */
function watchersOf(files: readonly string[], changed: () => void): readonly FSWatcher[] {
  const names = new Map<string, Set<string>>();
  for (const file of files)
    names.set(folderOf(file), (names.get(folderOf(file)) ?? new Set()).add(file.slice(file.lastIndexOf('/') + 1)));
  return [...names].map(([folder, known]) =>
    watchFolder(folder, (_, name) => {
      if (name === null || known.has(name) || name.endsWith('.liftplan')) changed();
    }),
  );
}

const stopped = (stop: AbortSignal): Promise<void> =>
  new Promise((done) => {
    if (stop.aborted) done();
    else stop.addEventListener('abort', () => done(), { once: true });
  });
