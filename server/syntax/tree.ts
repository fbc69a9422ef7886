// Makes the tree of a file, new or from the one before; what did not change keeps its identity from version to version.
import { type Nested, Nesting } from './nesting.ts';
import { changedRows, newlineOf, numberIn, numberRows, type Shared, sharedRows, splitRows } from './rows.ts';
import type { Language, Problem, Row, SyntaxFacts, Tree, TreeNode } from './types.ts';

/** A file of more UTF-16 units than this is not read. */
export const LARGEST_FILE = 4 * 1024 * 1024;

/** The tree of a text. With `previous`, rows and nodes that did not change are the ones of that tree. */
export function readTree(file: string, text: string, language: Language, previous?: Tree): Tree {
  const known = previous instanceof FileTree && previous.file === file ? previous : undefined;
  const rows = known ? changedRows(file, text, known.rows) : splitRows(file, text);
  return treeOf(file, rows, language, newlineOf(text), known);
}

/** The tree of rows made from those of `previous`, such as by `editRows`; far cheaper than reading the text again. */
export function editTree(previous: Tree, rows: readonly Row[], language: Language): Tree {
  return treeOf(previous.file, rows, language, previous.newline, previous instanceof FileTree ? previous : undefined);
}

function treeOf(
  file: string,
  rows: readonly Row[],
  language: Language,
  newline: Tree['newline'],
  previous?: FileTree,
): Tree {
  if (previous && rows === previous.rows && newline === previous.newline) return previous;
  const shared = sharedRows(rows, previous?.rows ?? []);
  numberRows(rows, shared.same, shared.shift === 0 ? shared.tail : rows.length);
  const size = sizeOf(rows, shared, previous);
  if (size > LARGEST_FILE) return new FileTree(file, rows, newline, unread(rows), size);
  // A file that was not read has nothing to go on from.
  const known = previous && previous.size <= LARGEST_FILE ? { nested: previous.nested, shared } : undefined;
  return new FileTree(file, rows, newline, new Nesting(rows, language, known).nest(), size);
}

/** Characters of all rows, line ends counted as one; of a changed file only the changed rows are looked at. */
function sizeOf(rows: readonly Row[], { same, tail, shift }: Shared, previous?: FileTree): number {
  let size = previous?.size ?? 0;
  for (let n = same; n < tail; n++) size += (rows[n]?.text.length ?? 0) + 1;
  for (let n = same; n < tail + shift; n++) size -= (previous?.rows[n]?.text.length ?? 0) + 1;
  return size;
}

function unread(rows: readonly Row[]): Nested {
  const none = rows.map(() => null);
  const first = rows[0] as Row;
  const facts: SyntaxFacts['line-unreadable'] = {
    text: first.text.slice(0, 40),
    expected: 'a file of at most 4 MB',
    readings: [],
    parent: 'file',
  };
  const problem: Problem = {
    slug: 'line-unreadable',
    at: { row: first, from: 0, to: first.text.length },
    related: [],
    facts,
  };
  return {
    lines: none,
    nodes: [],
    nodeAt: none,
    parents: new Int32Array(rows.length).fill(-1),
    ordinary: false,
    problems: [problem],
  };
}

function parentsOf({ parents, nodeAt }: Nested): (TreeNode | null)[] {
  const found = new Array<TreeNode | null>(parents.length);
  for (let row = 0; row < parents.length; row++) {
    const parent = parents[row] as number;
    found[row] = parent < 0 ? null : (nodeAt[parent] ?? null);
  }
  return found;
}

class FileTree implements Tree {
  readonly lines: Tree['lines'];
  readonly nodes: Tree['nodes'];
  readonly nodeAt: Tree['nodeAt'];
  readonly parentAt: Tree['parentAt'];
  readonly problems: readonly Problem[];
  readonly #nested: Nested;
  readonly #size: number;

  constructor(
    readonly file: string,
    readonly rows: readonly Row[],
    readonly newline: Tree['newline'],
    nested: Nested,
    size: number,
  ) {
    this.#nested = nested;
    this.#size = size;
    this.lines = nested.lines;
    this.nodes = nested.nodes;
    this.nodeAt = nested.nodeAt;
    this.parentAt = parentsOf(nested);
    this.problems = nested.problems;
  }

  get nested(): Nested {
    return this.#nested;
  }
  get size(): number {
    return this.#size;
  }

  rowNumber(row: Row): number {
    return numberIn(this.rows, row);
  }
}
