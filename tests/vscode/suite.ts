// What the extension does inside a real VS Code: `run()` is called by the extension host (tests/vscode/run.mjs).
import { endChecks } from './checks.ts';
import { checkSheet } from './sheet-checks.ts';
import { checkWriting } from './writing-checks.ts';

export async function run(): Promise<void> {
  await checkWriting();
  await checkSheet();
  endChecks();
}
