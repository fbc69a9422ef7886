// Runs the command line inside the test, in a folder of its own, and keeps what it prints.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import { run } from '../../server/command/run.ts';
import type { Terminal } from '../../server/command/terminal.ts';

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly said: string;
}

/** A folder with these files, gone when the test is over. */
export function folder(files: Readonly<Record<string, string>>): string {
  const path = mkdtempSync(join(tmpdir(), 'becket-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), text);
  }
  return path;
}

/** What `becket …` does in a folder. */
export async function becket(cwd: string, args: readonly string[], more: Partial<Terminal> = {}): Promise<Ran> {
  let [out, said] = ['', ''];
  const code = await run({
    args,
    cwd,
    env: {},
    screen: false,
    pages: join(cwd, 'pages.json'),
    stop: new AbortController().signal,
    input: async () => '',
    out: (text) => {
      out += text;
    },
    say: (text) => {
      said += text;
    },
    ...more,
  });
  return { code, out, said };
}
