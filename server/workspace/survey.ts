// Which files of the opened folders are checked, which are due, and who takes in whom: the list behind "41 of 41 plans checked".
import type { BoundPlan } from '../plan/types.ts';
import type { Snapshot } from './types.ts';

/** Whether a plan names a file that is not there. */
export const missesFile = ({ files, attached }: BoundPlan): boolean =>
  files.some(({ uses }) => uses.some((use) => use.file === null)) ||
  [...attached.values()].some(({ bytes }) => bytes === null);

interface Checked {
  readonly plan: boolean; // has a `plan` statement; else it is a library
  readonly takesIn: readonly string[];
  readonly misses: boolean; // names a file that could not be read
}

export interface Counts {
  readonly checked: number;
  /** Plans; a file that was not looked at yet counts as one. */
  readonly total: number;
}

export class Survey {
  private readonly checked = new Map<string, Checked>();
  private readonly due = new Set<string>();

  /** A file that belongs to the list; due unless it was checked already. */
  add(file: string): void {
    if (!this.checked.has(file)) this.due.add(file);
  }

  remove(file: string): void {
    this.checked.delete(file);
    this.due.delete(file);
  }

  has(file: string): boolean {
    return this.checked.has(file) || this.due.has(file);
  }

  get files(): readonly string[] {
    return [...new Set([...this.checked.keys(), ...this.due])];
  }

  /** All of them, and the files that they take in: libraries, drawings, lists, papers. */
  get withTaken(): readonly string[] {
    return [...new Set([...this.files, ...[...this.checked.values()].flatMap(({ takesIn }) => takesIn)])];
  }

  /** A file has another text: it is due, and so is each that takes it in. */
  touch(file: string): void {
    if (this.has(file)) this.due.add(file);
    for (const [other, { takesIn }] of this.checked) if (takesIn.includes(file)) this.due.add(other);
  }

  /** Files came or went: whoever missed one is due. */
  touchMissing(): void {
    for (const [file, { misses }] of this.checked) if (misses) this.due.add(file);
  }

  /** The next file that is due. */
  next(): string | undefined {
    return this.due.values().next().value;
  }

  done(file: string, snapshot: Snapshot | null): void {
    this.due.delete(file);
    if (!snapshot) this.checked.delete(file);
    else {
      const { files, head, attached, cited } = snapshot.plan;
      const others = [...attached.values(), ...cited.values()].flatMap((one) => one.file ?? []);
      this.checked.set(file, {
        plan: head !== null,
        takesIn: [...files.map((part) => part.file), ...others],
        misses: missesFile(snapshot.plan),
      });
    }
  }

  /** Plans that take a file in, in the order of their names. */
  plansWith(file: string): readonly string[] {
    return [...this.checked]
      .filter(([other, { plan, takesIn }]) => plan && other !== file && takesIn.includes(file))
      .map(([other]) => other)
      .sort();
  }

  /** Plans and libraries that take a file in. */
  takersOf(file: string): readonly string[] {
    return [...this.checked]
      .filter(([other, { takesIn }]) => other !== file && takesIn.includes(file))
      .map(([other]) => other);
  }

  /** Files known to have no `plan` statement, in the order of their names. */
  libraries(): readonly string[] {
    return [...this.checked]
      .filter(([, { plan }]) => !plan)
      .map(([file]) => file)
      .sort();
  }

  counts(): Counts {
    let checked = 0;
    let total = 0;
    for (const file of this.files) {
      if (this.checked.get(file)?.plan === false) continue;
      total += 1;
      if (!this.due.has(file)) checked += 1;
    }
    return { checked, total };
  }
}
