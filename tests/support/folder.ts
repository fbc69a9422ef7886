// Folders of plans on disk for tests that need real files; each is gone after the test that made it.
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onTestFinished } from 'vitest';

export interface Folder {
  readonly path: string;
  readonly uri: string;
  /** Address of a file in it. */
  of(name: string): string;
  write(name: string, text: string): void;
  remove(name: string): void;
}

export function folder(files: Readonly<Record<string, string>> = {}): Folder {
  const path = realpathSync(mkdtempSync(join(tmpdir(), 'becket-test-')));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  const made: Folder = {
    path,
    uri: pathToFileURL(path).toString(),
    of: (name) => pathToFileURL(join(path, name)).toString(),
    write(name, text) {
      mkdirSync(dirname(join(path, name)), { recursive: true });
      writeFileSync(join(path, name), text);
    },
    remove: (name) => rmSync(join(path, name), { recursive: true }),
  };
  for (const [name, text] of Object.entries(files)) made.write(name, text);
  return made;
}
