// Trees that can always be made: of a text on which reading fails, one whose rows were not read on.
import { language } from '../plan/index.ts';
import { editTree, type Problem, type Row, readTree, type SyntaxFacts, splitRows, type Tree } from '../syntax/index.ts';

/** The tree of a text; rows and nodes that did not change are the ones of `previous`. Never throws. */
export function treeOf(file: string, text: string, previous?: Tree): Tree {
  try {
    return readTree(file, text, language, previous);
  } catch {
    return new UnreadTree(file, splitRows(file, text));
  }
}

/** The tree of rows made from those of another. Never throws. */
export function editedTree(tree: Tree, rows: readonly Row[]): Tree {
  try {
    return editTree(tree, rows, language);
  } catch {
    return new UnreadTree(tree.file, rows);
  }
}

/** Rows that were not read on, because the program fails on them: whatever takes them in is open. */
export class UnreadTree implements Tree {
  readonly file: string;
  readonly rows: readonly Row[];
  readonly lines: readonly null[];
  readonly nodes = [];
  readonly newline = '\n';
  readonly problems: readonly Problem[];

  constructor(file: string, rows: readonly Row[]) {
    this.file = file;
    this.rows = rows;
    this.lines = rows.map(() => null);
    const row = rows[0] ?? { file, text: '' };
    const facts: SyntaxFacts['line-unreadable'] = {
      text: row.text.slice(0, 40),
      expected: 'a text that this program does not fail on',
      readings: [],
      parent: 'file',
    };
    this.problems = [{ slug: 'line-unreadable', at: { row, from: 0, to: row.text.length }, related: [], facts }];
  }

  get nodeAt(): readonly null[] {
    return this.lines;
  }

  get parentAt(): readonly null[] {
    return this.lines;
  }

  rowNumber(row: Row): number {
    return this.rows.indexOf(row);
  }
}
