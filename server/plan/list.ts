// Reads a bill of materials, a bar schedule or a list of members (CSV) into items: one part a row, with its weight and its place; or why a row cannot be used.
//
// The first row names the columns: name and weight of a bill, or size and length of bars and sections; count, x, y and z may stand there,
// others are passed over. A unit stands in the head (`weight kg`, `x (mm)`) or in the cell. Nothing is guessed: a row that could
// be read in two ways is a fault.
import { bar, nearestBars, nearestSections, section } from '../catalog/index.ts';
import { dimensions, same } from '../quantities/dimension.ts';
import { quantity } from '../quantities/quantity.ts';
import { asMass, joined } from '../quantities/units.ts';
import { write } from '../quantities/write.ts';
import { clausesOf, statements } from '../vocabulary/index.ts';
import { type CsvRow, csvRows } from './csv.ts';
import { fold } from './fold.ts';
import type { BoundClause, BoundValue, Item } from './types.ts';

/** A row that cannot be used, by its line in the file, from 1. */
export interface ListFault {
  readonly line: number;
  readonly reason: string;
}

interface ListRead {
  readonly items: readonly Item[];
  readonly faults: readonly ListFault[];
}

/** More rows than this are not read. */
export const mostRows = 5_000;

const kept = new WeakMap<Item, { readonly bytes: Uint8Array; readonly read: ListRead }>();

/** The rows of a list as items; the same objects as before while statement and file are the same. */
export function listOf(list: Item, bytes: Uint8Array): ListRead {
  const before = kept.get(list);
  if (before?.bytes === bytes) return before.read;
  const { entries, faults } = entriesOf(bytes);
  const read = { items: entries.map((entry) => itemOf(list, entry)), faults };
  kept.set(list, { bytes, read });
  return read;
}

/** One row: `mass` (kg) is that of all its copies together, `at` (m) the centre of them. */
export interface Entry {
  readonly line: number;
  readonly name: string;
  readonly mass: number;
  readonly count: number;
  readonly each: string; // the cell of the weight, or what the bar is, for the source
  readonly worked: boolean; // from a size and a length, not stated
  readonly at: readonly [number, number, number] | null;
}

const notUtf8 = 'the file is not in UTF-8; save it as CSV in UTF-8';
const fileFault = (line: number, reason: string) => ({ entries: [], faults: [{ line, reason }] });

/** The rows of a bill in a file's bytes. Never throws. */
export function entriesOf(bytes: Uint8Array): {
  readonly entries: readonly Entry[];
  readonly faults: readonly ListFault[];
} {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return fileFault(1, notUtf8);
  }
  if (text.includes('\0')) return fileFault(1, notUtf8);
  const { rows, fault } = csvRows(text);
  if (fault)
    return fileFault(
      fault.line,
      fault.kind === 'unclosed' ? 'its quotation marks do not close' : 'something stands behind its quotation marks',
    );
  const filled = rows.filter(({ fields }) => fields.some((field) => field.trim() !== ''));
  const [head, ...body] = filled;
  if (!head) return fileFault(1, 'the file is empty');
  const columns = columnsOf(head);
  if (typeof columns === 'string') return fileFault(head.line, columns);
  if (!body.length) return fileFault(head.line, 'no row stands under it');
  if (body.length > mostRows) return fileFault(body[mostRows]?.line ?? 1, 'it has more than 5,000 rows');
  const pointed = body.some(({ fields }) => numbersOf(columns, fields).some(surelyDecimal));
  const entries: Entry[] = [];
  const faults: ListFault[] = [];
  const names = new Set<string>();
  for (const row of body) {
    const entry = entryOf(row, columns, pointed);
    if (typeof entry === 'string') faults.push({ line: row.line, reason: entry });
    else {
      const name = names.has(fold(entry.name)) ? `${entry.name} (row ${row.line})` : entry.name;
      names.add(fold(name));
      entries.push({ ...entry, name });
    }
  }
  return { entries, faults };
}

type Field = 'name' | 'weight' | 'size' | 'length' | 'count' | 'x' | 'y' | 'z';
interface Column {
  readonly index: number;
  readonly unit: string | null;
}
type Columns = Partial<Record<Field, Column>> & { readonly width: number };

/** Columns that each kind of list reads, the due ones first: a bill of materials; bars or members. */
const kinds: readonly { readonly due: readonly Field[]; readonly others: readonly Field[] }[] = [
  { due: ['name', 'weight'], others: ['count', 'x', 'y', 'z'] },
  { due: ['size', 'length'], others: ['name', 'count', 'x', 'y', 'z'] },
];

/** Which column is what; a sentence where the first row does not say. */
function columnsOf({ fields }: CsvRow): Columns | string {
  const one = fields.length === 1 ? partedBy(fields) : null;
  if (one !== null) return one;
  const heads = fields.flatMap(headOf);
  const has = (field: Field) => heads.some((head) => head.field === field);
  const kind = kinds.find(({ due }) => due.every(has));
  if (!kind) return partedBy(fields) ?? `it names no column "${lacking(has)}"`;
  const read = heads.filter(({ field }) => kind.due.includes(field) || kind.others.includes(field));
  for (const { field, unit } of read) {
    if (read.filter((one) => one.field === field).length > 1) return `it has two columns "${field}"`;
    const wrong = unit === null ? null : wrongUnit(field, unit);
    if (wrong) return wrong;
  }
  const many = has('count') ? undefined : fields.find((text) => howMany.test(text.trim()));
  if (many !== undefined)
    return `its column "${many.trim()}" may say how many there are: call it "count", or leave it out where each ${kind.due[1]} is of all together`;
  const axes = (['x', 'y', 'z'] as const).filter(has);
  if (axes.length !== 0 && axes.length !== 3) return 'a place takes three columns: x, y and z';
  const found = Object.fromEntries(read.map(({ field, index, unit }) => [field, { index, unit }]));
  return { ...found, width: fields.length };
}

/** The column that is due and not there, of the kind of list that the others look like. */
function lacking(has: (field: Field) => boolean): Field {
  if (has('name')) return 'weight';
  return has('size') ? 'length' : 'name';
}

/** What the head of a column names; nothing where it names none of these. */
function headOf(text: string, index: number): readonly (Column & { readonly field: Field })[] {
  const [, word = '', bracketed, bare] =
    /^(name|weight|size|length|count|x|y|z)(?:\s*[([]([^)\]]+)[)\]]|\s+(.+))?$/i.exec(text.trim()) ?? [];
  return word ? [{ field: word.toLowerCase() as Field, index, unit: (bracketed ?? bare)?.trim() ?? null }] : [];
}

/** Heads of columns that may mean `count`; passed over, one would be weighed where there are many. */
const howMany = /^(?:qty|quantity|pcs|pieces|nos|no\. off|number off)\.?(?:\s*[([].*)?$/i;
/** Names of rows that may be the sum of others. */
const sumOfOthers = /^(?:grand |sub-?)?total$|^sum$/i;

function partedBy(fields: readonly string[]): string | null {
  const other = /[;\t|]/.exec(fields.join(''))?.[0];
  return other ? `its columns are parted by ${other === '\t' ? 'tabs' : `"${other}"`}; save it with commas` : null;
}

function wrongUnit(field: Field, unit: string): string | null {
  if (field === 'name' || field === 'count') return `"${field}" takes no unit, "${unit}" stands behind it`;
  return scaleOf(field, unit) === null
    ? `"${unit}" is no unit of ${field === 'weight' ? 'weight' : 'length'} known here`
    : null;
}

/** kg or m in one such unit. */
function scaleOf(field: Field, unit: string): number | null {
  const known = joined(unit);
  if (known?.offset !== 0) return null;
  const one = quantity(known.factor, known.dimension);
  if (field === 'weight') return asMass(one)?.value ?? null;
  return same(known.dimension, dimensions.length) ? known.factor : null;
}

function entryOf({ line, fields }: CsvRow, columns: Columns, pointed: boolean): Entry | string {
  if (fields.length > columns.width && fields.slice(columns.width).some((field) => field.trim() !== ''))
    return 'it has more fields than the first row; a comma in a name or number needs quotation marks round it';
  if (fields.length < columns.width) return 'it has fewer fields than the first row';
  const cell = (field: Field): string => fields[columns[field]?.index ?? -1]?.trim() ?? '';
  const name = (columns.name ? cell('name') : cell('size')).replace(/\s+/g, ' ');
  if (name === '') return columns.name ? 'it has no name' : 'it has no size';
  if (/[\p{Cc}\p{Cf}]/u.test(name)) return 'its name has a character that does not show';
  if (sumOfOthers.test(name)) return `"${name}" may be the sum of other rows; leave it out, or call it what it is`;
  const one = columns.size ? memberOf(cell, columns, pointed) : weightOf(cell, columns, pointed);
  if (typeof one === 'string') return one;
  const count = columns.count ? countOf(cell('count')) : 1;
  if (typeof count === 'string') return count;
  const at = placeOf(cell, columns, pointed);
  if (typeof at === 'string') return at;
  return { line, name, mass: one.mass * count, count, each: one.each, worked: columns.size !== undefined, at };
}

type Cells = (field: Field) => string;
type Each = { readonly mass: number; readonly each: string };

/** The weight of each, as a bill states it. */
function weightOf(cell: Cells, columns: Columns, pointed: boolean): Each | string {
  const [text, unit] = [cell('weight'), columns.weight?.unit ?? null];
  const mass = figure(text, 'weight', unit, pointed);
  if (typeof mass === 'string') return mass;
  if (!(mass > 0)) return 'its weight is not above zero; a weight that is not known cannot stand in a list';
  return { mass, each: unit !== null && /\d$/.test(text) ? `${text} ${unit}` : text };
}

/** The weight of each bar or member: its length by the table's weight of its size. */
function memberOf(cell: Cells, columns: Columns, pointed: boolean): Each | string {
  const unit = columns.size?.unit ?? null;
  const size = unit !== null && /^[\d.]+$/.test(cell('size')) ? `${cell('size')} ${unit}` : cell('size');
  const found = bar(size) ?? section(size);
  if (!found) {
    const near = [...nearestBars(size, 2), ...nearestSections(size, 2)].map(({ designation }) => designation);
    const hint = near.length ? `; near it are ${near.join(', ')}` : '';
    return `its size "${cell('size')}" is no bar or section known here${hint}`;
  }
  const length = figure(cell('length'), 'length', columns.length?.unit ?? null, pointed);
  if (typeof length === 'string') return length;
  if (!(length > 0)) return 'its length is not above zero; a length that is not known cannot stand in a list';
  const style = { system: 'metric', round: 'up' } as const;
  const [long, heavy] = [write(length, 'm', style), write(found.massPerLength, 'kg/m', style)];
  return {
    mass: found.massPerLength * length,
    each: `${found.designation}, ${long} long, at ${heavy} (${found.source})`,
  };
}

function countOf(text: string): number | string {
  const count = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return count >= 1 && count <= 10_000 ? count : `its count "${text}" is not a whole number from 1 to 10,000`;
}

function placeOf(cell: (field: Field) => string, columns: Columns, pointed: boolean): Entry['at'] | string {
  const axes = ['x', 'y', 'z'] as const;
  if (!columns.x || axes.every((axis) => cell(axis) === '')) return null;
  const figures = axes.map((axis) => figure(cell(axis), axis, columns[axis]?.unit ?? null, pointed));
  return figures.find((one) => typeof one === 'string') ?? (figures as unknown as [number, number, number]);
}

/** A number as written for people: grouped by commas or not, with a point before its decimals. */
const numeric = /^([-+\u2212]?)(\d{1,3}(?:,\d{3})+|\d+)(\.\d+)?/;

/** A cell in kg or m; a sentence where it is none. */
function figure(text: string, field: Field, unit: string | null, pointed: boolean): number | string {
  if (text === '') return `it has no ${field}`;
  const said = `its ${field} "${text}"`;
  if (/^[-+\u2212]?\d+,\d+(?!,?\d)/.test(text) && !numeric.exec(text)?.[2]?.includes(','))
    return `${said} has a comma where decimals begin; write a point`;
  const [all, sign = '', whole = '', decimals = ''] = numeric.exec(text) ?? [];
  if (all === undefined) return `${said} is not a number`;
  const rest = text.slice(all.length).trim();
  const own = rest === '' ? unit : rest;
  if (/^[,.\d]/.test(rest)) return `${said} is not a number`;
  if (decimals.length === 4 && whole.length <= 3 && whole !== '0' && !whole.includes(',') && !pointed)
    return `${said} may mean thousands or decimals; write ${whole},${decimals.slice(1)} in quotation marks, or ${whole}${decimals}0`;
  const value = Number(whole.replaceAll(',', '') + decimals) * (sign === '' || sign === '+' ? 1 : -1);
  if (own === null)
    return value === 0 && field !== 'weight' ? 0 : `${said} has no unit, in the cell or in the first row`;
  const scale = scaleOf(field, own);
  return scale === null
    ? `${said}: "${own}" is no unit of ${field === 'weight' ? 'weight' : 'length'} known here`
    : value * scale;
}

const numbersOf = (columns: Columns, fields: readonly string[]): readonly string[] =>
  (['weight', 'length', 'x', 'y', 'z'] as const).map((field) => fields[columns[field]?.index ?? -1]?.trim() ?? '');

/** A number that shows the point to be that of decimals: `0.350`, `12.5`, `1250.125`, `1,250.125`. */
const surelyDecimal = (text: string): boolean => {
  const [, , whole = '', decimals = ''] = numeric.exec(text) ?? [];
  return decimals !== '' && (decimals.length !== 4 || whole.length > 3 || whole === '0');
};

/** A part of that weight, standing for its row; its places are the path in the list's line. */
function itemOf(list: Item, entry: Entry): Item {
  const at = list.value?.valueAt ?? list.at;
  const rows = clausesOf('part');
  const clause = (keyword: string, value: BoundValue): [string, readonly BoundClause[]] => [
    keyword,
    [{ keyword, row: rows[keyword] as BoundClause['row'], at, keywordAt: at, valueAt: at, value }],
  ];
  const path = list.value?.value?.kind === 'text' ? list.value.value.text : '';
  const copies = entry.count === 1 && !entry.worked ? '' : `, ${entry.count} of ${entry.each}`;
  const lengths = entry.at?.map((x) => quantity(x, dimensions.length));
  const by = list.clauses.get('by');
  const standing = ['at', 'inside'].flatMap((word): [string, readonly BoundClause[]][] => {
    const own = list.clauses.get(word);
    return own ? [[word, own]] : [];
  });
  return {
    node: list.node,
    file: list.file,
    keyword: 'part',
    row: statements.part as Item['row'],
    names: [entry.name],
    at,
    nameAt: at,
    value: null,
    clauses: new Map([
      clause('item', { kind: 'quantity', quantity: quantity(entry.mass, dimensions.mass) }),
      clause('from', { kind: 'text', text: `${path}, row ${entry.line}${copies}` }),
      ...(lengths ? [clause('at', { kind: 'point', at: lengths as unknown as BoundPoint['at'] })] : standing),
      ...(by ? [['by', by] as [string, readonly BoundClause[]]] : []),
    ]),
    children: [],
    parentKeyword: list.parentKeyword,
    problems: [],
    opens: [],
  };
}

type BoundPoint = Extract<BoundValue, { kind: 'point' }>;
