// Ways out as changes of text: a place replaced, a clause added to its line, a line put under its statement or before it.
import { fold } from '../plan/fold.ts';
import type { Place, Row, Tree, TreeNode } from '../syntax/types.ts';
import type { Asked, Edit, Fix } from './types.ts';

/** Stands in a text of these functions where the cursor goes, because something is missing there. */
export const here = '\uE000';

/** Replaces a place by a text: `Write 12 ft`. */
export function rewrite(at: Place, template: string, { title = '', preferred = false } = {}): Fix {
  const { text, cursor } = marked(template);
  return { title: title || `Write ${text.trim()}`, preferred, edits: [{ kind: 'replace', at, text }], cursor };
}

/** Takes a place out of its line. */
export const remove = (at: Place, title: string, preferred: boolean): Fix => ({
  title,
  preferred,
  edits: [{ kind: 'replace', at, text: '' }],
  cursor: null,
});

/** Adds a clause at the end of the line of a place, before its comment: `addClause(asked, at, `by ${here}`, …)`. */
export function addClause(asked: Asked, at: Place, template: string, title: string): Fix {
  const { text, cursor } = marked(template);
  const end = lineEnd(asked, at);
  return {
    title,
    preferred: false,
    edits: [{ kind: 'replace', at: end.at, text: end.joiner + text }],
    cursor: cursor === null ? null : end.joiner.length + cursor,
  };
}

/** Adds several clauses, each with its value left empty; the cursor goes to the first. */
export function addClauses(asked: Asked, at: Place, clauses: readonly string[]): Fix {
  const templates = clauses.map((clause, i) => emptyClause(clause, i === 0 ? here : ''));
  return addClause(asked, at, templates.join(', '), `Insert ${clauses.join(', ')}`);
}

function emptyClause(clause: string, cursor: string): string {
  if (clause === 'state') return `state "${cursor}"`;
  return clause === 'accuracy' ? `accuracy ${cursor} %` : `${clause} ${cursor}`;
}

/** Puts lines right under the statement of a place, as deep as what stands there already. */
export function addUnder(asked: Asked, at: Place, template: readonly string[], title: string): Fix {
  const node = statementAt(asked, at);
  const indent = node ? (node.children[0]?.line.indent ?? node.line.indent + 2) : 2;
  return insert(node ? placeOf(node) : at, template, indent, title);
}

/** Puts a line after the statement of a place and all under it, equally deep. */
export function addBeside(asked: Asked, at: Place, template: string, title: string): Fix {
  const node = statementAt(asked, at);
  return insert(node ? placeOf(lastOf(node)) : at, [template], node?.line.indent ?? 0, title);
}

/** Puts lines at file level before the statement a place is in. */
export function addBefore(asked: Asked, at: Place, template: readonly string[], title: string): Fix {
  const top = topAt(asked, at);
  return insert(top ? placeOf(top) : at, template, 0, title, true);
}

/** Puts a line into the first block of that keyword in the file of a place, after what is there; a new block before the place's own where there is none. */
export function addToBlock(asked: Asked, at: Place, block: string, template: string, title: string): Fix {
  const node = fileOf(asked, at)?.tree.nodes.find((top) => top.line.statement?.keyword.word === block);
  if (!node) return addBefore(asked, at, [block, `  ${template}`], title);
  const last = lastOf(node);
  return insert(placeOf(last), [template], node.children[0]?.line.indent ?? 2, title);
}

/** The name itself if nothing in the plan has it, else with the next free number: S1 gives S2, Rails gives Rails-2, Main block gives Main block 2. */
export function freeName(wanted: string, { results }: Asked): string {
  const taken = new Set(results.plan.names.things.map((thing) => thing.key));
  if (!taken.has(fold(wanted))) return wanted;
  const [, stem, digits] = /^(.*?)(\d+)$/.exec(wanted) ?? [null, `${wanted}${wanted.includes(' ') ? ' ' : '-'}`, '1'];
  for (let n = Number(digits) + 1; ; n++) if (!taken.has(fold(`${stem}${n}`))) return `${stem}${n}`;
}

/** The statement a place is in; of a clause line the statement it belongs to. */
export function statementAt(asked: Asked, { row }: Place): TreeNode | null {
  const tree = treeOf(asked, row);
  const number = tree?.rowNumber(row) ?? -1;
  const node = tree?.nodeAt[number] ?? null;
  return node?.line.kind === 'clauses' ? (tree?.parentAt[number] ?? node) : node;
}

/** A fix of several edits: the first one's, with more after it. */
export const withMore = (fix: Fix, more: readonly Edit[]): Fix => ({ ...fix, edits: [...fix.edits, ...more] });

/** Where something can be added at the end of the line of a place, with what joins it to what is there. */
export function lineEnd(asked: Asked, { row }: Place): { readonly at: Place; readonly joiner: string } {
  const tree = treeOf(asked, row);
  const line = tree?.lines[tree.rowNumber(row)] ?? null;
  const written = row.text.slice(0, line?.comment?.from ?? row.text.length).trimEnd();
  const alone =
    line?.kind === 'statement' && !line.statement?.value && !line.statement?.unread && line.clauses.length === 0;
  return {
    at: { row, from: written.length, to: written.length },
    joiner: /[,:]$/.test(written) ? ' ' : alone ? ': ' : ', ',
  };
}

function insert(after: Place, template: readonly string[], indent: number, title: string, before = false): Fix {
  const lines = template.map((line) => ' '.repeat(indent) + line);
  const { text, cursor } = marked(lines.join('\n'));
  return {
    title,
    preferred: false,
    edits: [{ kind: 'insert', after, lines: text.split('\n'), ...(before && { before }) }],
    cursor,
  };
}

function marked(template: string): { readonly text: string; readonly cursor: number | null } {
  const cursor = template.indexOf(here);
  return cursor < 0
    ? { text: template, cursor: null }
    : { text: template.slice(0, cursor) + template.slice(cursor + 1), cursor };
}

const fileOf = (asked: Asked, { row }: Pick<Place, 'row'>) =>
  asked.results.plan.files.find((part) => part.file === row.file);

/** The tree that holds a row. */
export const treeOf = (asked: Asked, row: Row): Tree | undefined => fileOf(asked, { row })?.tree;

function topAt(asked: Asked, at: Place): TreeNode | null {
  const tree = fileOf(asked, at)?.tree;
  let node = tree?.nodeAt[tree.rowNumber(at.row)] ?? null;
  for (let above = node; tree && above; above = tree.parentAt[tree.rowNumber(above.row)] ?? null) node = above;
  return node;
}

const placeOf = (node: TreeNode): Place => ({ row: node.row, from: node.line.indent, to: node.row.text.length });

function lastOf(node: TreeNode): TreeNode {
  const last = node.children.at(-1);
  return last ? lastOf(last) : node;
}
