// The sheet as Markdown, to be committed beside its plan and read in a pull request: no date, no version of this program,
// one line of the plan a line of the sheet, so that a change of one figure is a change of one line.
import { addressOf, beside } from '../paths.ts';
import type { Block, Cell, Column, Paragraph, Row, Section, Sheet, Table } from '../sheet/types.ts';
import { visible } from './visible.ts';

/** Raised when the arrangement changes, so that a reader of a difference knows why all of it changed. */
export const sheetFormat = 1;

/** `from` is the plan's path as seen from the sheet: line numbers link there, and the head names it. */
export function markdown(sheet: Sheet, from: string): string {
  const head = `<!-- Do not edit: written by \`becket report\` from ${comment(from)}. Sheet format ${sheetFormat}. -->`;
  return `${[head, ...sheet.sections.flatMap((section) => sectionText(section, from))].join('\n\n')}\n`;
}

/** What stands in an HTML comment must not end it. */
const comment = (text: string) => visible(text).replace(/[<>]/g, '').replace(/-{2,}/g, '-');

function sectionText({ id, title, blocks }: Section, from: string): readonly string[] {
  const heading = `${id === 'head' ? '#' : '##'} ${escape(title)}`;
  const texts = blocks.flatMap((block) => blockText(block, from));
  return id === 'working'
    ? [heading, '<details><summary>Each figure, step by step</summary>', ...texts, '</details>']
    : [heading, ...texts];
}

/** A paragraph or table as Markdown; `from` is the plan's path as seen from the text, for links to its lines. */
export function blockText(block: Block, from: string): readonly string[] {
  if (block.kind === 'paragraph') return [paragraph(block)];
  if (block.kind !== 'table') return []; // forges take drawings out; the tables beside them have every figure
  const caption = block.caption ? [`**${escape(block.caption)}**`] : [];
  return [...caption, block.columns.length ? table(block, from) : list(block, from)];
}

const paragraph = ({ look, text }: Paragraph) =>
  look === 'plain' ? escape(text) : look === 'alert' ? `> **${escape(text)}**` : `> ${escape(text)}`;

function table({ columns, rows }: Table, from: string): string {
  const head = line(columns.map(({ title }) => escape(title)));
  const rule = line(columns.map(({ figures }) => (figures ? '---:' : ':---')));
  return [head, rule, ...rows.map((row) => line(rowText(row, columns, from)))].join('\n');
}

const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;

function rowText(row: Row, columns: readonly Column[], from: string): readonly string[] {
  return columns.map((_, i) => {
    const cell = row.cells[i];
    const text = cell ? cellText(cell, from) : '';
    const whole = row.total && text && !cell?.is ? `**${text}**` : text;
    return i === 0 ? `${'– '.repeat(row.depth ?? 0)}${whole}` : whole;
  });
}

/** A table of two columns without heads reads better as a list: one value a line. */
const list = ({ rows }: Table, from: string): string =>
  rows
    .map((row) => {
      const [name, ...cells] = row.cells.map((cell) => cellText(cell, from));
      return `${'  '.repeat(row.depth ?? 0)}- **${name}**${cells.some(Boolean) ? `: ${cells.filter(Boolean).join(' ')}` : ''}`;
    })
    .join('\n');

function cellText({ text, is, link, document }: Cell, from: string): string {
  const words = escape(text);
  const named = document === undefined ? words : `[${words}](${addressOf(beside(from, document))})`;
  const shown = is === 'over' ? `**${named}**` : is === 'not known' ? `_${named}_` : named;
  if (!link) return shown;
  const where = [link.path, `line ${link.line}`].filter(Boolean).join(', ');
  const target = link.path ? beside(from, link.path) : from;
  return [shown, `[${escape(where)}](${addressOf(target)}#L${link.line})`].filter(Boolean).join(' ');
}

/**
 * Text that stays text: nothing in it is markup, a link, a mention or a cell's end. The signs are those that CommonMark lets a
 * backslash protect; what forges make of `@`, `#1`, `://` and `www.` on their own is broken up by entities.
 */
export const escape = (text: string): string =>
  visible(text)
    .trim()
    .replace(signs, (found) => entities[found] ?? entities[found.toLowerCase()] ?? `\\${found}`)
    .replace(starts, '$1\\$2');

const signs = /[<@\\`*_[\]|~$]|&(?=[#a-z])|#(?=\w)|:\/\/|www(?=\.)/gi;

const entities: Readonly<Record<string, string>> = {
  '@': '@&#8203;',
  '#': '#&#8203;',
  '://': '&#58;//',
  www: 'w&#119;w',
};

/** At a line's start these begin a heading, a quotation, a list, a rule or the line under a heading. */
const starts = /^(\d{1,9}(?=[.)](?:\s|$))|(?=>|[-+#](?:\s|$)|#{2,6}(?:\s|$)|[-=]+$))([-+#=.)>])/;
