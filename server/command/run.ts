// Runs the command that a command line names and turns what happens into an exit code.
import { version } from '../../package.json';
import { check } from './check.ts';
import { compare } from './compare.ts';
import { exit } from './exit.ts';
import { explain } from './explain.ts';
import { format } from './format.ts';
import { help } from './help.ts';
import { report } from './report.ts';
import { server } from './server.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun } from './usage.ts';

type Command = (terminal: Terminal, args: readonly string[]) => Promise<number | null>;

const commands: Readonly<Record<string, Command>> = { check, report, compare, format, explain, server };

/** The exit code; null where the command goes on by itself, as a server does. */
export async function run(terminal: Terminal): Promise<number | null> {
  const [name, ...args] = terminal.args;
  try {
    if (name === 'help' || [name, ...args].includes('--help') || name === '-h') return print(terminal, help);
    if (name === 'version' || name === '--version') return print(terminal, `${version}\n`);
    const command = name !== undefined && Object.hasOwn(commands, name) ? commands[name] : undefined;
    if (!command) throw new CannotRun(name === undefined ? 'Say what to do.' : `There is no command ${name}.`);
    return await command(terminal, args);
  } catch (error) {
    if (error instanceof CannotRun) {
      terminal.say(`${error.message}\n"becket help" lists what can be done.\n`);
      return exit.cannotRun;
    }
    terminal.say(
      `An error in this program, not in your plan: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    return exit.failed;
  }
}

function print(terminal: Terminal, text: string): number {
  terminal.out(text);
  return exit.clean;
}
