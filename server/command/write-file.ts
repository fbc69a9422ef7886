// Writes a file whole or not at all, so that nobody ever reads half a sheet.
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { CannotRun } from './usage.ts';

/** Replaces the file in one step; folders on the way to it are made. Throws CannotRun where that is not allowed. */
export function writeFile(file: string, text: string): void {
  const beside = `${file}.${process.pid}.part`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(beside, text);
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    throw new CannotRun(`${file} cannot be written: ${(error as Error).message}`);
  }
}
