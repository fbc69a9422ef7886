// `becket report --verify`: whether sheets that are kept in a repository still show what their plans say.
import { readFileSync } from 'node:fs';
import { difference } from './difference.ts';
import { isFile } from './files.ts';
import type { Made } from './report.ts';
import { shownPath } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun } from './usage.ts';

/** Whether any sheet differs, line endings aside. A plan found in a folder need not have a sheet; one that is named must. */
export function verify(terminal: Terminal, made: readonly Made[]): boolean {
  const kept = made.filter(({ file, target }) => isFile(file) || target.named);
  const without = made.filter((sheet) => !kept.includes(sheet));
  if (!kept.length) throw new CannotRun('No sheet is kept here, so there is nothing to verify.');
  if (without.length)
    terminal.say(`No sheet kept for: ${without.map(({ target }) => shownPath(target.file, terminal)).join(', ')}.\n`);
  const stale = kept.filter((sheet) => differs(terminal, sheet));
  if (!stale.length)
    terminal.out(
      kept.length === 1
        ? 'The sheet shows what its plan says.\n'
        : `All ${kept.length} sheets show what their plans say.\n`,
    );
  return stale.length > 0;
}

const shownLines = 20;

function differs(terminal: Terminal, { target, file, text }: Made): boolean {
  const old = isFile(file) ? readFileSync(file, 'utf8').replace(/\r\n?/g, '\n') : null;
  if (old === text) return false;
  const [sheet, plan] = [shownPath(file, terminal), shownPath(target.file, terminal)];
  const changes = old === null ? [] : difference(old, text);
  const more = changes.length - shownLines;
  terminal.out(
    [
      old === null ? `${sheet} is missing: ${plan} has no sheet there.` : `${sheet} no longer shows what ${plan} says:`,
      ...changes.slice(0, shownLines).map((line) => `  ${line}`),
      ...(more > 0 ? [`  … and ${more} more lines`] : []),
      `Write it again with: becket report ${quotedPath(plan)} --output ${quotedPath(sheet)}`,
      '',
    ].join('\n'),
  );
  return true;
}

/** As a shell takes it. */
const quotedPath = (path: string): string => (/^[\w./-]+$/.test(path) ? path : `'${path.replace(/'/g, `'\\''`)}'`);
