// Splits a CSV text (RFC 4180, commas) into rows of fields, with the line of the file on which each begins. The only place that knows the library.
import { csvParseRows } from 'd3-dsv';

export interface CsvRow {
  readonly line: number; // from 1
  readonly fields: readonly string[];
}

/** Rows of fields; `unclosed` is the line of the row whose quotation marks do not close, else null. */
export function csvRows(text: string): { readonly rows: readonly CsvRow[]; readonly unclosed: number | null } {
  let line = 1;
  const rows = csvParseRows(text).map((fields): CsvRow => {
    const row = { line, fields };
    line += 1 + fields.reduce((breaks, field) => breaks + (field.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
    return row;
  });
  const closed = (text.match(/"/g)?.length ?? 0) % 2 === 0; // a quotation mark within quotes is written twice
  return { rows, unclosed: closed ? null : (rows.at(-1)?.line ?? 1) };
}
