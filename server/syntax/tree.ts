// Nests the lines of a file by their indentation. What did not change keeps its identity from version to version.
import { plain } from './characters.ts';
import { readLine } from './line.ts';
import { changedRows, newlineOf, numberIn, numberRows, splitRows } from './rows.ts';
import { indentOf } from './scan.ts';
import { isMergeMark, silent } from './text.ts';
import type { Language, Problem, ReadLine, Row, SyntaxFacts, Tree, TreeNode } from './types.ts';

/** A file of more UTF-16 units than this is not read. */
export const LARGEST_FILE = 4 * 1024 * 1024;
/** Lines nested deeper than this are not read; the top level is the first. */
export const DEEPEST_LEVEL = 32;

/** The tree of a text. With `previous`, rows and nodes that did not change are the ones of that tree. */
export function readTree(file: string, text: string, language: Language, previous?: Tree): Tree {
  const known = previous?.file === file ? previous : undefined;
  const rows = known ? changedRows(file, text, known.rows) : splitRows(file, text);
  return treeOf(file, rows, language, newlineOf(text), known);
}

/** The tree of rows made from those of `previous`, such as by `editRows`; far cheaper than reading the text again. */
export function editTree(previous: Tree, rows: readonly Row[], language: Language): Tree {
  return treeOf(previous.file, rows, language, previous.newline, previous);
}

function treeOf(file: string, rows: readonly Row[], language: Language, newline: Tree['newline'], previous?: Tree): Tree {
  if (previous && rows === previous.rows && newline === previous.newline) return previous;
  numberRows(rows);
  if (sizeOf(rows) > LARGEST_FILE) return tooLarge(file, rows, newline);
  return new Nesting(file, rows, language, previous).tree(newline);
}

const sizeOf = (rows: readonly Row[]): number => rows.reduce((size, row) => size + row.text.length + 1, 0);

function tooLarge(file: string, rows: readonly Row[], newline: Tree['newline']): Tree {
  const none = rows.map(() => null);
  const first = rows[0] as Row;
  const facts: SyntaxFacts['line-unreadable'] = { text: first.text.slice(0, 40), expected: 'a file of at most 4 MB', readings: [], parent: 'file' };
  const problem: Problem = { slug: 'line-unreadable', at: { row: first, from: 0, to: first.text.length }, related: [], facts };
  return new FileTree(file, rows, newline, none, [], none, none, [problem]);
}

class FileTree implements Tree {
  constructor(
    readonly file: string,
    readonly rows: readonly Row[],
    readonly newline: Tree['newline'],
    readonly lines: Tree['lines'],
    readonly nodes: Tree['nodes'],
    readonly nodeAt: Tree['nodeAt'],
    readonly parentAt: Tree['parentAt'],
    readonly problems: readonly Problem[],
  ) {}

  rowNumber(row: Row): number {
    return numberIn(this.rows, row);
  }
}

/** A line that may still get children. */
interface Open {
  readonly at: number; // row number; -1: the file itself
  readonly indent: number;
  readonly line: ReadLine | null;
  readonly block: string;
  /** Words its children are read by; null: nobody knows, so nothing is said of them. */
  readonly childBlock: string | null;
  readonly children: TreeNode[];
  readonly slot: number; // its place among its parent's children
  readonly problems: readonly Problem[];
  level: number; // how deep its first child stands; -1: it has none
}

const NONE: readonly never[] = [];

class Nesting {
  private readonly lines: (ReadLine | null)[];
  private readonly nodeAt: (TreeNode | null)[];
  private readonly parents: Int32Array;
  private readonly stack: Open[] = [{ at: -1, indent: -1, line: null, block: '', childBlock: 'file', children: [], slot: 0, problems: NONE, level: -1 }];
  private readonly same: number; // rows unchanged at the start
  private readonly shift: number; // number of a row of the unchanged end in `previous`, less its number here
  private readonly tail: number; // number of the first row of the unchanged end
  private merging = false;
  private tooDeep = false;

  constructor(
    private readonly file: string,
    private readonly rows: readonly Row[],
    private readonly language: Language,
    private readonly previous?: Tree,
  ) {
    this.lines = new Array(rows.length).fill(null);
    this.nodeAt = new Array(rows.length).fill(null);
    this.parents = new Int32Array(rows.length).fill(-1);
    const old = previous?.rows ?? [];
    let same = 0;
    while (same < rows.length && same < old.length && rows[same] === old[same]) same++;
    let end = 0;
    while (end < Math.min(rows.length, old.length) - same && rows[rows.length - 1 - end] === old[old.length - 1 - end]) end++;
    this.same = same;
    this.tail = rows.length - end;
    this.shift = old.length - rows.length;
  }

  tree(newline: Tree['newline']): Tree {
    for (let at = 0; at < this.rows.length; at++) this.take(at);
    const file = this.close(0) as Open;
    const parentAt = Array.from(this.parents, (parent) => (parent < 0 ? null : (this.nodeAt[parent] ?? null)));
    return new FileTree(this.file, this.rows, newline, this.lines, file.children, this.nodeAt, parentAt, NONE);
  }

  /** Number of a row in the previous tree; -1: it is new. */
  private before(at: number): number {
    if (at < this.same) return at;
    return at >= this.tail ? at + this.shift : -1;
  }

  private take(at: number): void {
    const row = this.rows[at] as Row;
    const known = this.previous?.lines[this.before(at)] ?? null;
    const indent = known ? known.indent : indentOf(row.text);
    if (known ? known.kind === 'blank' || known.kind === 'comment' : isIdle(row.text)) return this.takeIdle(at, row, known, indent);
    if (row.text.charCodeAt(0) > 32 && isMergeMark(row.text)) return this.takeMergeMark(at, row);
    this.close(this.depthOf(indent));
    const parent = this.stack[this.stack.length - 1] as Open;
    this.parents[at] = parent.at;
    if (this.stack.length > DEEPEST_LEVEL) return this.takeTooDeep(at, row, parent);
    const line = this.read(row, parent.childBlock, known, at);
    this.lines[at] = line;
    const problems = this.unclear(row, indent, parent);
    if (parent.level < 0) parent.level = indent;
    const open = { at, indent, line, block: parent.childBlock ?? '', childBlock: childBlockOf(line), children: [], slot: parent.children.length, problems, level: -1 };
    // A clause has nothing under it: what stands deeper belongs to the clause's own statement.
    if (line.kind === 'clauses') parent.children.push(this.node(open));
    else {
      parent.children.push(undefined as unknown as TreeNode); // filled when the line's last child is known
      this.stack.push(open);
    }
  }

  /** Blank and comment lines never nest anything; they belong to the nearest line above that is indented less. */
  private takeIdle(at: number, row: Row, known: ReadLine | null, indent: number): void {
    const parent = this.stack[this.depthOf(indent) - 1] as Open;
    this.lines[at] = known ?? readLine(row.text, this.language.under('file'), this.language);
    this.parents[at] = parent.at;
  }

  /** How many open lines stand less deep than `indent`, the file counted. */
  private depthOf(indent: number): number {
    let depth = this.stack.length;
    while (depth > 1 && (this.stack[depth - 1] as Open).indent >= indent) depth--;
    return depth;
  }

  private read(row: Row, block: string | null, known: ReadLine | null, at: number): ReadLine {
    if (known && (this.previous?.nodeAt[this.before(at)]?.block ?? null) === (block ?? '')) return known;
    return block === null ? silent(row.text, this.language) : readLine(row.text, this.language.under(block), this.language);
  }

  /** Marks of an unfinished merge stand for themselves at the top; only the first of them speaks. */
  private takeMergeMark(at: number, row: Row): void {
    const file = this.stack[0] as Open;
    const opens = row.text.startsWith('<');
    const line = this.merging && !opens ? silent(row.text, this.language) : readLine(row.text, this.language.under('file'), this.language);
    this.merging = !row.text.startsWith('>') && (this.merging || opens);
    this.lines[at] = line;
    file.children.push(this.node({ at, indent: 0, line, block: 'file', childBlock: null, children: [], slot: 0, problems: NONE, level: -1 }));
  }

  /** Beyond the deepest level nothing is read; the first such line says so. */
  private takeTooDeep(at: number, row: Row, parent: Open): void {
    if (this.tooDeep) return;
    this.tooDeep = true;
    const line = silent(row.text, this.language);
    const from = row.text.length - row.text.trimStart().length;
    const facts: SyntaxFacts['line-unreadable'] = { text: row.text.trim().slice(0, 40), expected: `at most ${DEEPEST_LEVEL} levels`, readings: [], parent: parent.block };
    const problems = [{ slug: 'line-unreadable', at: { row, from, to: row.text.length }, related: [], facts }];
    parent.children.push(this.node({ at, indent: 0, line, block: parent.childBlock ?? '', childBlock: null, children: [], slot: 0, problems, level: -1 }));
  }

  /** A line must stand as deep as the others of its parent, and without tabs. */
  private unclear(row: Row, indent: number, parent: Open): readonly Problem[] {
    const blank = row.text.length - row.text.trimStart().length;
    const tab = row.text.slice(0, blank).includes('\t');
    if (!tab && (parent.level < 0 || parent.level === indent)) return NONE;
    const levels = [...new Set(this.stack.map((open) => open.level).filter((level) => level >= 0))].sort((a, b) => a - b);
    const facts: SyntaxFacts['indent-unclear'] = { found: indent, levels, tab };
    return [{ slug: 'indent-unclear', at: { row, from: 0, to: blank || (/^\S+/.exec(row.text)?.[0].length ?? 0) }, related: [], facts }];
  }

  /** Closes open lines until `depth` of them are left; the last one closed. */
  private close(depth: number): Open | undefined {
    let open: Open | undefined;
    while (this.stack.length > depth) {
      open = this.stack.pop() as Open;
      const parent = this.stack[this.stack.length - 1];
      if (parent) parent.children[open.slot] = this.node(open);
    }
    return open;
  }

  /** The node of a line whose children are all known: the previous one where nothing in it changed. */
  private node(open: Open): TreeNode {
    const { at, block, children, problems } = open;
    const row = this.rows[at] as Row;
    const line = open.line as ReadLine;
    const known = this.previous?.nodeAt[this.before(at)];
    const same = known && known.line === line && known.block === block && sameItems(known.children, children) && sameProblems(known.problems, problems);
    const node = same ? known : { row, line, block, children, problems };
    this.nodeAt[at] = node;
    return node;
  }
}

/** The words by which the children of a line are read; null where they cannot be known. */
function childBlockOf(line: ReadLine): string | null {
  return line.statement ? line.statement.keyword.word : line.meant;
}

/** Whether a line has no words: only white space, or a comment. */
function isIdle(text: string): boolean {
  const first = plain(text).trimStart().charAt(0);
  return first === '' || first === '#';
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let n = 0; n < a.length; n++) if (a[n] !== b[n]) return false;
  return true;
}

function sameProblems(a: readonly Problem[], b: readonly Problem[]): boolean {
  return a.length === b.length && a.every((problem, n) => JSON.stringify(problem.facts) === JSON.stringify(b[n]?.facts));
}
