// `becket format`: sets plans in order on disk, or names those that are not.
import { readFileSync } from 'node:fs';
import { language } from '../plan/index.ts';
import { formatText } from '../syntax/index.ts';
import { exit } from './exit.ts';
import { shownPath, type Targets, targetsOf } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun, readArgs } from './usage.ts';
import { writeFile } from './write-file.ts';

/** Found: with `--verify`, a text that formatting would change. Standard input is formatted to the output. */
export async function format(terminal: Terminal, args: readonly string[]): Promise<number> {
  const { values, positionals } = readArgs(args, { verify: { type: 'boolean' }, named: { type: 'string' } });
  const targets = await targetsOf(terminal, positionals, values.named);
  const texts = targets.list.map(({ file }) => {
    const text = textOf(file, targets);
    return { file, text, formatted: formatText(text, language) };
  });
  const changed = texts.filter(({ text, formatted }) => text !== formatted);
  for (const { file, text, formatted } of values.verify ? changed : texts) {
    if (values.verify) terminal.out(`${shownPath(file, terminal)}\n`);
    else if (targets.texts.has(file)) terminal.out(formatted);
    else if (text !== formatted) writeFile(file, formatted);
  }
  if (values.verify && changed.length) terminal.say(`Set in order with: becket format ${positionals.join(' ')}\n`);
  return values.verify && changed.length ? exit.found : exit.clean;
}

/** Not UTF-8: a byte that could not be read would come back as another one, so nothing is written over it. */
function textOf(file: string, { texts }: Targets): string {
  const given = texts.get(file);
  if (given !== undefined) return given;
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(file));
  } catch (error) {
    throw new CannotRun(`${file} cannot be read: ${(error as Error).message}`);
  }
}
