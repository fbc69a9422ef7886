// Names for lines that stay the same while a line is moved or written on: by them a finding is known from version to version.
import type { Row } from '../syntax/types.ts';
import type { Replaced } from '../workspace/index.ts';

export class Identities {
  private readonly names = new WeakMap<Row, string>();
  private last = 0;

  /** The name of a line; a word. */
  of(row: Row): string {
    let name = this.names.get(row);
    if (name === undefined) {
      this.last += 1;
      name = `s${this.last.toString(36)}`;
      this.names.set(row, name);
    }
    return name;
  }

  /** Lines written in the place of others go by their names, in order; one that was only moved keeps its own. */
  follow({ old, rows }: Replaced): void {
    const gone = old.filter((row) => !rows.includes(row));
    const come = rows.filter((row) => !old.includes(row));
    for (const [n, row] of come.entries()) {
      const before = gone[n];
      if (!before) return;
      this.names.set(row, this.of(before));
    }
  }
}
