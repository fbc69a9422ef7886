// The command line's way in.
import { run } from './run.ts';
import { processTerminal } from './terminal.ts';

void run(processTerminal()).then((code) => {
  if (code !== null) process.exitCode = code;
});
