// `becket server --stdio`: the language server for any editor that speaks the protocol.
import type { Terminal } from './terminal.ts';
import { CannotRun, readArgs } from './usage.ts';

/** Runs until the client ends it; then the exit code is the protocol's own. */
export async function server(_: Terminal, args: readonly string[]): Promise<number | null> {
  const { values } = readArgs(args, { stdio: { type: 'boolean' } });
  if (!values.stdio) throw new CannotRun('The server speaks over standard input and output: add --stdio.');
  const { start } = await import('../protocol/node.ts');
  start();
  return null;
}
