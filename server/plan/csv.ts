// Splits a CSV text (RFC 4180, commas) into rows of fields, with the line of the file on which each begins. The only place that knows the library.
import { csvParseRows } from 'd3-dsv';

export interface CsvRow {
  readonly line: number; // from 1
  readonly fields: readonly string[];
}

/** A field in quotation marks that does not end as it should, by the line it begins on. */
export interface CsvFault {
  readonly line: number;
  /** `unclosed`: no second mark; `more`: something stands between the second mark and the next comma or line. */
  readonly kind: 'unclosed' | 'more';
}

/** Rows of fields; with a fault they cannot be relied on. A mark within a field that has none at its beginning is a mark like any: `pipe 2"`. */
export function csvRows(text: string): { readonly rows: readonly CsvRow[]; readonly fault: CsvFault | null } {
  let line = 1;
  const rows = csvParseRows(text).map((fields): CsvRow => {
    const row = { line, fields };
    line += 1 + fields.reduce((breaks, field) => breaks + breaksIn(field), 0);
    return row;
  });
  return { rows, fault: faultIn(text) };
}

const breaksIn = (text: string): number => text.match(/\r\n|\n|\r/g)?.length ?? 0;

/** A field: in quotation marks, within which one is written twice, or up to the next comma or end of line. */
const field = /"(?:[^"]|"")*("?)|[^,\r\n]*/y;

function faultIn(text: string): CsvFault | null {
  let line = 1;
  for (let at = 0; at < text.length; at += 1) {
    field.lastIndex = at;
    const [all = '', closing] = field.exec(text) ?? [];
    if (closing === '') return { line, kind: 'unclosed' };
    at += all.length;
    const end = text.charAt(at);
    if (!['', ',', '\r', '\n'].includes(end)) return { line, kind: 'more' };
    line += breaksIn(all) + (end === '\n' || (end === '\r' && text.charAt(at + 1) !== '\n') ? 1 : 0);
  }
  return null;
}
