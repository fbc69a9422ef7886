// Sections as plain text for a terminal: tables in columns, one line a row, nothing cut off.
import type { Block, Row, Section, Table } from '../sheet/types.ts';
import { visible } from './visible.ts';

/** A section under its title, set in; its tables have columns as wide as what stands in them, the last one runs on. */
export function sectionLines({ title, blocks }: Section): readonly string[] {
  const several = blocks.filter(({ kind }) => kind === 'table').length > 1;
  return [visible(title), ...blocks.flatMap((block) => blockLines(block, several)).map((line) => `  ${line}`)];
}

/** Captions only where there are several tables to tell apart. */
function blockLines(block: Block, captions: boolean): readonly string[] {
  if (block.kind === 'paragraph') return [visible(block.text)];
  if (block.kind !== 'table') return [];
  return captions ? [visible(block.caption), ...tableLines(block).map((line) => `  ${line}`)] : tableLines(block);
}

/** No column is set wider than this: what is longer stands for itself, and the rest of its line behind it. */
const widest = 44;

function tableLines({ columns, rows }: Table): readonly string[] {
  const head = columns.some(({ title }) => title) ? [columns.map(({ title }) => title)] : [];
  const lines = [...head, ...rows.map(cellTexts)];
  const widths = columns.map((_, i) =>
    Math.max(...lines.map((line) => (line[i] ?? '').length).filter((length) => length <= widest), 0),
  );
  return lines.map((line) =>
    line
      .map((text, i) => (columns[i]?.figures && i > 0 ? text.padStart(widths[i] ?? 0) : text.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}

const cellTexts = ({ cells }: Row): readonly string[] => cells.map(({ text }) => visible(text));
