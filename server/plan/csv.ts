// Splits a CSV text into rows of fields, with the line of the file on which each begins. The only place that knows the library.
import Papa from 'papaparse';

export interface CsvRow {
  readonly line: number; // from 1
  readonly fields: readonly string[];
}

/** Rows of fields parted by commas; `unclosed` is the line of a field whose quotation marks do not close, else null. */
export function csvRows(text: string): { readonly rows: readonly CsvRow[]; readonly unclosed: number | null } {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: ',', header: false });
  let line = 1;
  const rows = data.map((fields): CsvRow => {
    const row = { line, fields };
    line += 1 + fields.reduce((breaks, field) => breaks + (field.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
    return row;
  });
  const bad = errors.find(({ type }) => type === 'Quotes');
  return { rows, unclosed: bad ? (rows[bad.row ?? 0]?.line ?? 1) : null };
}
