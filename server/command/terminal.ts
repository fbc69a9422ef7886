// What a command may touch of the world around it, so that tests can give it another one.
import { realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';

export interface Terminal {
  readonly args: readonly string[];
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Whether results are read by a person at a screen. */
  readonly screen: boolean;
  /** Where the pages that explain findings lie. */
  readonly pages: string;
  /** Ends what would otherwise go on, such as `--watch`. */
  readonly stop: AbortSignal;
  input(): Promise<string>;
  out(text: string): void; // results
  say(text: string): void; // messages
}

/** The process itself. */
export function processTerminal(): Terminal {
  const stop = new AbortController();
  process.once('SIGINT', () => stop.abort());
  process.once('SIGTERM', () => stop.abort());
  for (const stream of [process.stdout, process.stderr]) stream.on('error', leaveQuietly);
  return {
    args: process.argv.slice(2),
    cwd: process.cwd(),
    env: process.env,
    screen: process.stdout.isTTY === true,
    pages: join(dirname(realpathSync(process.argv[1] ?? '.')), 'pages.json'),
    stop: stop.signal,
    input: readInput,
    out: (text) => void process.stdout.write(text),
    say: (text) => void process.stderr.write(text),
  };
}

async function readInput(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

/** Whoever read our output has closed it, such as `head`: there is nobody left to write to. */
function leaveQuietly(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit();
  throw error;
}
