// What the extension does inside a real VS Code: `run()` is called by the extension host (tests/vscode/run.mjs).
import { endChecks } from './checks.ts';
import { checkEnding } from './ending-checks.ts';
import { checkSheet } from './sheet-checks.ts';
import { checkWriting } from './writing-checks.ts';

/** Which of the runner's hosts this is; put in by the bundler. */
declare const HOST: 'browser' | 'node' | 'desktop';

export async function run(): Promise<void> {
  await checkWriting();
  await checkSheet();
  // In the browser the server is a thread of the extension host: there is no process to end.
  if (HOST === 'node') await checkEnding();
  endChecks();
}
