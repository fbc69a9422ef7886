// Statements shown as they are written: their names, values and clauses in the words of the text, nothing worked out.
import type { BoundClause, Item } from '../../plan/types.ts';
import type { Place } from '../../syntax/types.ts';
import { row } from './figures.ts';
import type { Row, Table } from './types.ts';

/** The value of a clause in its own words; a text without its quotes. */
export function valueText({ value, valueAt, keywordAt, row: { takes } }: BoundClause): string {
  if (takes === 'nothing') return 'yes';
  if (value?.kind === 'text') return value.text;
  if (value?.kind === 'date') return value.iso;
  const bare = valueAt.row === keywordAt.row && valueAt.from === keywordAt.from && valueAt.to === keywordAt.to;
  return bare ? 'cannot be read' : slice(valueAt);
}

/** All values of one clause keyword, one behind the other; '' where it is not stated. */
export const clauseText = (item: Item, keyword: string): string =>
  (item.clauses.get(keyword) ?? []).map(valueText).join('; ');

/** What stands behind keyword and name: value and clauses, less those named. */
export function statementText(item: Item, without: readonly string[] = []): string {
  const own = item.value ? [valueText(item.value)] : [];
  const clauses = [...item.clauses].filter(([keyword]) => !without.includes(keyword));
  return [...own, ...clauses.flatMap(([keyword, uses]) => uses.map((use) => clausePhrase(keyword, use)))].join(', ');
}

function clausePhrase(keyword: string, use: BoundClause): string {
  const text = valueText(use);
  if (use.row.takes === 'nothing') return keyword;
  return use.value?.kind === 'text' ? `${keyword} “${text}”` : `${keyword} ${text}`;
}

/** Keyword and names, `crane “Yard crane 2”`; where nothing is named keyword and value, `stated 4,850 lb`. */
export function heading(item: Item): string {
  if (item.names.length) return `${item.keyword} ${namesText(item)}`;
  if (!item.value) return item.keyword;
  const value = valueText(item.value);
  return `${item.keyword} ${item.value.value?.kind === 'text' ? `“${value}”` : value}`;
}

/** The names as written, `S1..S4` included, in our quotes where they have several words. */
export const namesText = (item: Item): string => {
  const written = slice(item.nameAt);
  return item.names.length > 1 ? written : quoted(item.names[0] ?? written);
};

export const quoted = (name: string): string => (/^[\p{L}][\p{L}\p{N}_-]*$/u.test(name) ? name : `“${name}”`);

/** One statement as a table of two columns: its value and clauses, then what stands under it. */
export function writtenTable(item: Item, caption = capital(heading(item))): Table {
  const own = item.value && item.names.length ? [row([item.at], item.keyword, valueText(item.value))] : [];
  return {
    kind: 'table',
    caption,
    columns: [],
    rows: [...own, ...clauseRows(item), ...item.children.flatMap((child) => childRows(child, 0))],
  };
}

const clauseRows = (item: Item): readonly Row[] =>
  [...item.clauses].flatMap(([keyword, uses]) => uses.map((use) => row([use.at], keyword, valueText(use))));

/** A statement under another: one row, those under it set in. */
function childRows(item: Item, depth: number): readonly Row[] {
  const own: Row = {
    ...row([item.at], heading(item), statementText(item.names.length ? item : { ...item, value: null })),
    depth,
  };
  return [own, ...item.children.flatMap((child) => childRows(child, depth + 1))];
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const slice = ({ row: { text }, from, to }: Place): string => text.slice(from, to).trim();
