// Reads the words of a command line, and says in plain words what cannot be done with them.
import { type ParseArgsConfig, parseArgs } from 'node:util';

/** The command could not run as it was called: exit code 2, with the sentence. */
export class CannotRun extends Error {}

type Options = NonNullable<ParseArgsConfig['options']>;

/** Options and paths of one command. Throws CannotRun for an option it does not have. */
export function readArgs<T extends Options>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new CannotRun(sentence(error as NodeJS.ErrnoException, args));
  }
}

/** One of the words an option may have. */
export function oneOf<T extends string>(name: string, value: string | undefined, words: readonly T[], otherwise: T): T {
  if (value === undefined) return otherwise;
  const found = words.find((word) => word === value);
  if (found === undefined)
    throw new CannotRun(`--${name} takes one of: ${words.join(', ')}. "${value}" is none of them.`);
  return found;
}

function sentence({ code, message }: NodeJS.ErrnoException, args: readonly string[]): string {
  const name = /--?[\w-]+/.exec(message)?.[0] ?? args.find((word) => word.startsWith('-')) ?? '';
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') return `There is no option ${name} here.`;
  return message.includes('does not take') ? `${name} takes no value.` : `${name} needs a value behind it.`;
}
