// Formats a file, broken or not: white space and the colon behind a name change, and nothing that a reader would call the text.
import { leadingSpace, withoutEndSpace } from './characters.ts';
import { type Scanned, scan, type Token } from './scan.ts';
import { readTree } from './tree.ts';
import type { Language, ReadLine, Span, Tree, TreeNode } from './types.ts';

/** A row whose text changes, and the text it gets. */
export interface RowEdit {
  readonly row: number;
  readonly text: string;
}

/**
 * The rows of a file that formatting changes. Two spaces a level, one space between words, the colon where it belongs; lines that
 * cannot be read keep all but their indentation and the spaces at their end, and nothing is re-indented whose nesting is not clear.
 */
export function format(tree: Tree, language: Language): RowEdit[] {
  const indents = newIndents(tree);
  return tree.rows.flatMap(({ text }, row) => {
    const line = tree.lines[row];
    if (!line) return [];
    const content = contentOf(line, language);
    const formatted = content === '' ? '' : (indents[row] ?? leadingSpace(text)) + content;
    return formatted === text ? [] : [{ row, text: formatted }];
  });
}

/** The whole text, formatted; its line ends stay as they are. */
export function formatText(text: string, language: Language): string {
  const edits = new Map(format(readTree('', text, language), language).map((edit) => [edit.row, edit.text]));
  const mark = text.charCodeAt(0) === 0xfeff ? text.charAt(0) : '';
  const parts = text.slice(mark.length).split(/(\r\n|\n|\r)/);
  return mark + parts.map((part, n) => (n % 2 === 0 ? (edits.get(n / 2) ?? part) : part)).join('');
}

// ---- indentation

/** The white space each row begins with once formatted; null: as it is. */
function newIndents(tree: Tree): (string | null)[] {
  const indents: (string | null)[] = tree.rows.map(() => null);
  const anyUnclear = tree.nodes.some((node) => node.problems.length > 0);
  for (const node of tree.nodes) if (!anyUnclear && !unclear(node)) indent(node, 0, tree, indents);
  tree.lines.forEach((line, row) => {
    if (line?.kind === 'comment') indents[row] = ofComment(tree, row, line.indent, indents);
  });
  return indents;
}

const unclear = (node: TreeNode): boolean => node.problems.length > 0 || node.children.some(unclear);

function indent(node: TreeNode, level: number, tree: Tree, indents: (string | null)[]): void {
  const row = tree.rowNumber(node.row);
  indents[row] = '  '.repeat(level);
  for (const child of node.children) indent(child, level + 1, tree, indents);
}

/** A comment goes with the line below it that stands as deep, else with one above: the last line or what that belongs to. */
function ofComment(tree: Tree, row: number, indent: number, indents: readonly (string | null)[]): string | null {
  let below = row + 1;
  while (below < tree.rows.length && !tree.nodeAt[below]) below++;
  if (tree.nodeAt[below]?.line.indent === indent) return indents[below] ?? null;
  let above = row - 1;
  while (above >= 0 && !tree.nodeAt[above]) above--;
  for (let node = tree.nodeAt[above]; node; ) {
    const at = tree.rowNumber(node.row);
    if (node.line.indent === indent) return indents[at] ?? null;
    node = tree.parentAt[at];
  }
  return null;
}

// ---- the words of a line

function contentOf(line: ReadLine, language: Language): string {
  const written = withoutEndSpace(line.text.slice(leadingSpace(line.text).length));
  if (line.kind === 'blank' || line.kind === 'comment' || line.opens) return written;
  const scanned = scan(line.text, language);
  const content = joined(line, scanned);
  return content === written || sameTokens(scanned, scan(content, language)) ? content : written;
}

function joined(line: ReadLine, { text, tokens, comment }: Scanned): string {
  const colonAfter = missingColon(line, tokens);
  const verbatim = line.clauses.flatMap(({ value }) =>
    value && (value.kind === 'designation' || value.kind === 'label') ? [value.span] : [],
  );
  let content = '';
  tokens.forEach((token, n) => {
    const before = tokens[n - 1];
    if (before) content += before.to === colonAfter ? ': ' : gap(before, token, text, verbatim);
    content +=
      token.sign === 'T' ? text.slice(token.from, token.to) : text.slice(token.from, token.to).replace(/\s+/g, ' ');
  });
  const last = tokens.at(-1);
  return comment && last
    ? content + text.slice(last.to, comment.from) + withoutEndSpace(text.slice(comment.from))
    : content;
}

/** Where the colon is missing: behind the name, the text that names the statement, or a keyword that has neither; -1: nowhere. */
function missingColon({ statement }: ReadLine, tokens: readonly Token[]): number {
  if (!statement || statement.colon) return -1;
  const { name, value, keyword } = statement;
  const names = value?.kind === 'text' || value?.kind === 'label' ? value : null;
  if (value && !name && !names) return -1;
  const end = (name ?? names ?? keyword).span.to;
  const next = tokens.find((token) => token.from >= end);
  return next && !',=:'.includes(next.sign) ? end : -1;
}

/** The white space between two tokens. */
function gap(before: Token, token: Token, text: string, verbatim: readonly Span[]): string {
  const asIs = token.spaced ? ' ' : '';
  if (verbatim.some((span) => before.from >= span.from && token.to <= span.to)) return asIs;
  if (',;:).‥'.includes(token.sign) || '(.‥~^'.includes(before.sign)) return '';
  if (before.sign === 'F' && token.sign === '(') return '';
  if (token.sign === 'U' && text.charAt(token.from) === '°') return asIs;
  return ' ';
}

/** Whether both lines have the same tokens, but for colons put in. */
function sameTokens(before: Scanned, after: Scanned): boolean {
  let at = 0;
  for (const token of after.tokens) {
    const old = before.tokens[at];
    const same = old?.sign === token.sign && old.text.replace(/\s+/g, ' ') === token.text.replace(/\s+/g, ' ');
    if (same) at++;
    else if (token.sign !== ':') return false;
  }
  return at === before.tokens.length;
}
