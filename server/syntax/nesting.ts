// Nests rows by their indentation. Given what was nested before, it works only on the rows that changed and the lines above them.
import { isSpace, leadingSpace, plain } from './characters.ts';
import { readLine } from './line.ts';
import type { Shared } from './rows.ts';
import { indentOf } from './scan.ts';
import { isMergeMark, silent } from './text.ts';
import type { Language, Problem, ReadLine, Row, SyntaxFacts, Tree, TreeNode } from './types.ts';

/** Lines nested deeper than this are not read; the top level is the first. */
export const DEEPEST_LEVEL = 32;

/** What nesting makes of rows; the next version goes on from it. */
export interface Nested {
  readonly lines: Tree['lines'];
  readonly nodes: Tree['nodes'];
  readonly nodeAt: Tree['nodeAt'];
  readonly parents: Int32Array; // by row: number of the row it belongs to, -1 for the file
  /** No mark of an unfinished merge, nothing too deep: every row nests by the rows above it alone. */
  readonly ordinary: boolean;
  readonly problems: readonly Problem[];
}

/** The version before: what it made of its rows, and which rows are still there. */
export interface Before {
  readonly nested: Nested;
  readonly shared: Shared;
}

/** A line that may still get children. */
interface Open {
  readonly at: number; // row number; -1: the file itself
  readonly indent: number;
  readonly line: ReadLine | null;
  readonly block: string;
  /** Words its children are read by; null: nobody knows, so nothing is said of them. */
  readonly childBlock: string | null;
  readonly slot: number; // its place among its parent's children
  readonly problems: readonly Problem[];
  readonly children: TreeNode[];
  level: number; // how deep its first child stands; -1: it has none
}

const NONE: readonly never[] = [];
// Stands among children for a line whose own children are not all known yet.
const LATER = undefined as unknown as TreeNode;

export class Nesting {
  private lines: (ReadLine | null)[] = [];
  private nodeAt: (TreeNode | null)[] = [];
  private readonly parents: Int32Array;
  private readonly stack: Open[] = [
    { at: -1, indent: -1, line: null, block: '', childBlock: 'file', slot: 0, problems: NONE, children: [], level: -1 },
  ];
  private merging = false;
  private tooDeep = false;
  private ordinary = true;

  constructor(
    private readonly rows: readonly Row[],
    private readonly language: Language,
    private readonly before?: Before,
  ) {
    this.parents = new Int32Array(rows.length);
  }

  nest(): Nested {
    const known = this.before?.nested.ordinary ? this.before : undefined;
    let at = known ? this.resume(known) : 0;
    while (at < this.rows.length && !(known && at >= known.shared.tail && this.rejoin(at, known))) this.take(at++);
    const file = this.stack[0] as Open;
    this.close(1);
    return {
      lines: this.lines,
      nodes: file.children,
      nodeAt: this.nodeAt,
      parents: this.parents,
      ordinary: this.ordinary,
      problems: NONE,
    };
  }

  // ---- going on from the version before

  /** Takes over the rows unchanged at the start, with the lines that are open behind them; the number of the next row. */
  private resume({ nested, shared: { same } }: Before): number {
    this.lines = nested.lines.slice(0, same);
    this.nodeAt = nested.nodeAt.slice(0, same);
    this.parents.set(nested.parents.subarray(0, same));
    const chain: number[] = [];
    let last = same - 1;
    while (last >= 0 && !nested.nodeAt[last]) last--;
    for (let at = last; at >= 0; at = nested.parents[at] ?? -1) chain.unshift(at);
    for (const at of chain) this.reopen(at, nested);
    return same;
  }

  private reopen(at: number, nested: Nested): void {
    const parent = this.stack[this.stack.length - 1] as Open;
    const siblings = childrenAt(parent.at, nested);
    const node = nested.nodeAt[at] as TreeNode;
    const slot = siblings.lastIndexOf(node);
    for (let n = 0; n < slot; n++) parent.children.push(siblings[n] as TreeNode);
    parent.level = siblings[0]?.line.indent ?? -1;
    const { line, block, problems } = node;
    const clauses = line.kind === 'clauses';
    parent.children.push(clauses ? node : LATER);
    if (!clauses)
      this.stack.push({
        at,
        indent: line.indent,
        line,
        block,
        childBlock: childBlockOf(line),
        slot,
        problems,
        children: [],
        level: -1,
      });
  }

  /** Takes over all rows from `at` on, if they nest just as before. */
  private rejoin(at: number, known: Before): boolean {
    const { nested, shared } = known;
    const old = at + shared.shift;
    const node = nested.nodeAt[old];
    if (!node) return false;
    this.close(this.depthOf(node.line.indent));
    const chain = this.oldChain(old, node.line.indent, known);
    if (!chain) return false;
    chain.forEach(({ parent, child }, depth) => {
      const open = this.stack[depth] as Open;
      const siblings = childrenAt(parent, nested);
      const from = siblings.indexOf(nested.nodeAt[child] as TreeNode) + (child === old ? 0 : 1);
      for (let n = from; n < siblings.length; n++) open.children.push(siblings[n] as TreeNode);
      if (open.level < 0) open.level = node.line.indent;
    });
    this.lines = this.lines.concat(nested.lines.slice(old));
    this.nodeAt = this.nodeAt.concat(nested.nodeAt.slice(old));
    for (let n = at; n < this.rows.length; n++)
      this.parents[n] = this.moved(nested.parents[n + shared.shift] ?? -1, shared);
    return true;
  }

  /** What was open above an old row, from the file down, if just that is open now and stands as deep; else null. */
  private oldChain(
    row: number,
    indent: number,
    { nested, shared }: Before,
  ): { parent: number; child: number }[] | null {
    const chain: { parent: number; child: number }[] = [];
    let child = row;
    for (let depth = this.stack.length - 1; depth >= 0; depth--) {
      const open = this.stack[depth] as Open;
      const parent = nested.parents[child] ?? -1;
      const level = open.level < 0 ? indent : open.level;
      if (this.moved(parent, shared) !== open.at || level !== childrenAt(parent, nested)[0]?.line.indent) return null;
      if (parent >= 0 && (nested.lines[parent] !== open.line || nested.nodeAt[parent]?.block !== open.block))
        return null;
      chain.unshift({ parent, child });
      child = parent;
    }
    return child === -1 ? chain : null;
  }

  /** New number of an old row; -2: it is gone. */
  private moved(old: number, { same, tail, shift }: Shared): number {
    if (old < same) return old;
    return old >= tail + shift ? old - shift : -2;
  }

  /** The old number of a row; -1: it is new. */
  private oldNumber(at: number): number {
    if (!this.before) return -1;
    const { same, tail, shift } = this.before.shared;
    return at < same ? at : at >= tail ? at + shift : -1;
  }

  // ---- one row after the other

  private take(at: number): void {
    const row = this.rows[at] as Row;
    const known = this.before?.nested.lines[this.oldNumber(at)] ?? null;
    const indent = known ? known.indent : indentOf(row.text);
    this.lines.push(null);
    this.nodeAt.push(null);
    if (known ? known.kind === 'blank' || known.kind === 'comment' : isIdle(row.text))
      return this.takeIdle(at, row, known, indent);
    if (isMergeMark(row.text)) return this.takeMergeMark(at, row);
    this.close(this.depthOf(indent));
    const parent = this.stack[this.stack.length - 1] as Open;
    this.parents[at] = parent.at;
    if (this.stack.length > DEEPEST_LEVEL) return this.takeTooDeep(at, row, parent);
    const line = this.read(row, parent.childBlock, known, at);
    this.lines[at] = line;
    const problems = this.unclear(row, indent, parent);
    if (parent.level < 0) parent.level = indent;
    const open = {
      at,
      indent,
      line,
      block: parent.childBlock ?? '',
      childBlock: childBlockOf(line),
      slot: parent.children.length,
      problems,
      children: [],
      level: -1,
    };
    // A clause has nothing under it: what stands deeper belongs to the clause's own statement.
    parent.children.push(line.kind === 'clauses' ? this.node(open) : LATER);
    if (line.kind !== 'clauses') this.stack.push(open);
  }

  /** Blank and comment lines never nest anything; they belong to the nearest line above that is indented less. */
  private takeIdle(at: number, row: Row, known: ReadLine | null, indent: number): void {
    this.lines[at] = known ?? readLine(row.text, this.language.under('file'), this.language);
    this.parents[at] = (this.stack[this.depthOf(indent) - 1] as Open).at;
  }

  /** How many open lines stand less deep than `indent`, the file counted. */
  private depthOf(indent: number): number {
    let depth = this.stack.length;
    while (depth > 1 && (this.stack[depth - 1] as Open).indent >= indent) depth--;
    return depth;
  }

  private read(row: Row, block: string | null, known: ReadLine | null, at: number): ReadLine {
    if (known && this.before?.nested.nodeAt[this.oldNumber(at)]?.block === (block ?? '')) return known;
    return block === null
      ? silent(row.text, this.language)
      : readLine(row.text, this.language.under(block), this.language);
  }

  /** Marks of an unfinished merge stand for themselves at the top; only the first of them speaks. */
  private takeMergeMark(at: number, row: Row): void {
    const opens = row.text.startsWith('<');
    const line =
      this.merging && !opens
        ? silent(row.text, this.language)
        : readLine(row.text, this.language.under('file'), this.language);
    this.merging = !row.text.startsWith('>') && (this.merging || opens);
    this.ordinary = false;
    this.lines[at] = line;
    this.parents[at] = -1;
    this.stack[0]?.children.push(
      this.node({
        at,
        indent: 0,
        line,
        block: 'file',
        childBlock: null,
        slot: 0,
        problems: NONE,
        children: [],
        level: -1,
      }),
    );
  }

  /** Beyond the deepest level nothing is read; the first such line says so. */
  private takeTooDeep(at: number, row: Row, parent: Open): void {
    this.ordinary = false;
    if (this.tooDeep) return;
    this.tooDeep = true;
    const line = silent(row.text, this.language);
    const from = leadingSpace(row.text).length;
    const facts: SyntaxFacts['line-unreadable'] = {
      text: row.text.trim().slice(0, 40),
      expected: `at most ${DEEPEST_LEVEL} levels`,
      readings: [],
      parent: parent.block,
    };
    const problems = [{ slug: 'line-unreadable', at: { row, from, to: row.text.length }, related: [], facts }];
    parent.children.push(
      this.node({
        at,
        indent: 0,
        line,
        block: parent.childBlock ?? '',
        childBlock: null,
        slot: 0,
        problems,
        children: [],
        level: -1,
      }),
    );
  }

  /** A line must stand as deep as the others of its parent, and without tabs. */
  private unclear(row: Row, indent: number, parent: Open): readonly Problem[] {
    const { text } = row;
    let blank = 0;
    let tab = false;
    for (let code = text.charCodeAt(0); isSpace(code); code = text.charCodeAt(++blank)) tab ||= code === 9;
    if (!tab && (parent.level < 0 || parent.level === indent)) return NONE;
    const levels = [...new Set(this.stack.map((open) => open.level).filter((level) => level >= 0))].sort(
      (a, b) => a - b,
    );
    const facts: SyntaxFacts['indent-unclear'] = { found: indent, levels, tab };
    return [
      {
        slug: 'indent-unclear',
        at: { row, from: 0, to: blank || (/^\S+/.exec(text)?.[0].length ?? 0) },
        related: [],
        facts,
      },
    ];
  }

  /** Closes open lines until `depth` of them are left. */
  private close(depth: number): void {
    while (this.stack.length > depth) {
      const open = this.stack.pop() as Open;
      const parent = this.stack[this.stack.length - 1] as Open;
      parent.children[open.slot] = this.node(open);
    }
  }

  /** The node of a line whose children are all known: the one before where nothing in it changed. */
  private node({ at, line, block, children, problems }: Open): TreeNode {
    const row = this.rows[at] as Row;
    const known = this.before?.nested.nodeAt[this.oldNumber(at)];
    const same =
      known &&
      known.line === line &&
      known.block === block &&
      sameItems(known.children, children) &&
      sameProblems(known.problems, problems);
    const node = same ? known : { row, line: line as ReadLine, block, children, problems };
    this.nodeAt[at] = node;
    return node;
  }
}

const childrenAt = (at: number, nested: Nested): readonly TreeNode[] =>
  at < 0 ? nested.nodes : (nested.nodeAt[at]?.children ?? []);

/** The words by which the children of a line are read; null where they cannot be known. */
const childBlockOf = (line: ReadLine): string | null => (line.statement ? line.statement.keyword.word : line.meant);

/** Whether a line has no words: only white space, or a comment. */
function isIdle(text: string): boolean {
  let at = 0;
  while (text.charCodeAt(at) === 32) at++;
  const code = text.charCodeAt(at);
  if (code > 32 && code < 127) return code === 35;
  const first = plain(text).trimStart().charAt(0);
  return first === '' || first === '#';
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let n = 0; n < a.length; n++) if (a[n] !== b[n]) return false;
  return true;
}

function sameProblems(a: readonly Problem[], b: readonly Problem[]): boolean {
  return (
    a.length === b.length && a.every((problem, n) => JSON.stringify(problem.facts) === JSON.stringify(b[n]?.facts))
  );
}
