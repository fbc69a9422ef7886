// Types one statement: its names, its value and clauses held against the vocabulary's rows. Kept by tree node while the names it reads stay.
import { nearest } from '../quantities/nearest.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { share, write } from '../quantities/write.ts';
import type { ClauseText, Expression, NameUse, Place, Span, TreeNode, Value } from '../syntax/types.ts';
import { type ClauseRow, clausesOf, type StatementRow, statements, statementsUnder } from '../vocabulary/index.ts';
import { bindCompare } from './compare.ts';
import { amount, evaluate, measured, note, point, type Sheet, size } from './evaluate.ts';
import { expandRange } from './range.ts';
import type { BoundClause, BoundValue, Item, PlanProblem } from './types.ts';

/** What binding a statement reads beside its own text: the values of `let` names. A new object means: read again. */
export interface Environment {
  readonly lets: Sheet['lets'];
  readonly names: readonly string[]; // of `let`, for nearest names
}

const kept = new WeakMap<TreeNode, { readonly environment: Environment; readonly item: Item }>();

/** The item of a statement node; the same object as before while node and environment are the same. */
export function bindItem(node: TreeNode, environment: Environment, parentKeyword: string): Item {
  const known = kept.get(node);
  if (known?.environment === environment) return known.item;
  const item = bind(node, environment, parentKeyword);
  kept.set(node, { environment, item });
  return item;
}

function bind(node: TreeNode, environment: Environment, parentKeyword: string): Item {
  const statement = node.line.statement as NonNullable<TreeNode['line']['statement']>;
  const keyword = statement.keyword.word;
  const row = statements[keyword] as StatementRow;
  const problems: PlanProblem[] = [];
  const sheetOf = (of: TreeNode): Sheet => ({
    row: of.row,
    lets: environment.lets,
    nearest: (name) => nearest(name, environment.names),
    problems,
  });
  const sheet = sheetOf(node);
  const place = (span: Span): Place => ({ row: node.row, from: span.from, to: span.to });

  const value = row.value ? boundValue(statement, row.value, keyword, sheet) : null;
  const clauses = new Map<string, BoundClause[]>();
  for (const line of [node, ...node.children.filter((child) => child.line.kind === 'clauses')])
    for (const clause of line.line.clauses) collect(clauses, clause, keyword, sheetOf(line));
  single(clauses, keyword, problems);
  const names = statement.name ? expandRange(statement.name, row.names === 'range', sheet, keyword) : [];
  const children = node.children
    .filter((child) => child.line.kind === 'statement')
    .map((child) => bindItem(child, environment, keyword));
  const item: Item = {
    node,
    file: node.row.file,
    keyword,
    row,
    names: names.length || value?.value?.kind !== 'text' ? names : [value.value.text],
    at: place(statement.keyword.span),
    nameAt: place(statement.name?.span ?? statement.keyword.span),
    value,
    clauses,
    children,
    parentKeyword,
    problems,
    opens: opens(node),
  };
  missing(item, statement.unread, problems);
  for (const line of [node, ...node.children])
    if (line.line.opens && !line.line.problems.length && (line.line.kind !== 'statement') === (line !== node))
      unsaid(line, item, problems);
  return item;
}

/** A line that opens its parent always says so, whatever the reason was. */
function unsaid(line: TreeNode, item: Item, problems: PlanProblem[]): void {
  const at: Place = { row: line.row, from: Math.min(line.line.indent, line.row.text.length), to: line.row.text.length };
  problems.push({
    slug: 'line-unreadable',
    at,
    related: [],
    facts: { text: line.row.text.trim(), expected: `what ${item.keyword} takes`, readings: [], parent: item.keyword },
  });
}

/** A statement under a parent that does not take it: whatever it was meant for is open. */
export const misplaced = (node: TreeNode): boolean =>
  node.line.statement !== null && !(node.line.statement.keyword.word in statementsUnder(node.block));

/** Places of lines that could not be read and belong to this very statement: its own, clause lines, and unread lines under it. */
function opens(node: TreeNode): readonly Place[] {
  const own: Place[] = [];
  const whole = (of: TreeNode): Place => ({ row: of.row, from: of.line.indent, to: of.row.text.length });
  if (node.line.opens || node.problems.length) own.push(whole(node));
  for (const child of node.children) {
    if (child.line.kind !== 'statement') {
      if (child.line.opens || child.line.kind === 'unread' || child.problems.length || child.children.length)
        own.push(whole(child));
    } else if (child.problems.length || misplaced(child)) own.push(whole(child));
  }
  return own;
}

function boundValue(
  statement: NonNullable<TreeNode['line']['statement']>,
  row: ClauseRow,
  keyword: string,
  sheet: Sheet,
): BoundClause | null {
  if (!statement.value && !statement.unread) return null;
  const span = statement.value?.span ?? statement.keyword.span;
  const at: Place = { row: sheet.row, from: span.from, to: span.to };
  const value = statement.value ? bindValue(statement.value, row, keyword, sheet) : null;
  return {
    keyword: '',
    row,
    at,
    keywordAt: { row: sheet.row, from: statement.keyword.span.from, to: statement.keyword.span.to },
    valueAt: at,
    value,
  };
}

function collect(clauses: Map<string, BoundClause[]>, clause: ClauseText, block: string, sheet: Sheet): void {
  const row = clausesOf(block)[clause.keyword.word];
  if (!row) return; // a word of another block: syntax has said so
  const at = (span: Span): Place => ({ row: sheet.row, from: span.from, to: span.to });
  const value: BoundValue | null = clause.unread
    ? null
    : clause.value
      ? bindValue(clause.value, row, clause.keyword.word, sheet)
      : { kind: 'text', text: clause.keyword.word };
  const bound: BoundClause = {
    keyword: clause.keyword.word,
    row,
    at: at(clause.span),
    keywordAt: at(clause.keyword.span),
    valueAt: at(clause.value?.span ?? clause.keyword.span),
    value,
  };
  const list = clauses.get(clause.keyword.word);
  if (list) list.push(bound);
  else clauses.set(clause.keyword.word, [bound]);
}

/** A clause given twice is stated twice: its value is open. */
function single(clauses: Map<string, BoundClause[]>, keyword: string, problems: PlanProblem[]): void {
  for (const [word, list] of clauses) {
    const [first, second] = list;
    if (!first || !second || first.row.repeat) continue;
    problems.push({
      slug: 'stated-twice',
      at: second.at,
      related: [{ at: first.at, says: 'stated here' }],
      facts: { name: `"${word}"`, place: `this ${keyword}` },
    });
    clauses.set(word, [{ ...first, value: null }]);
  }
}

/** Required clauses and values. Gear weights and capacities are the rig's business: it knows what hangs. */
function missing(item: Item, unread: boolean, problems: PlanProblem[]): void {
  const say = (clause: string, why: string) =>
    problems.push({ slug: 'clause-missing', at: item.at, related: [], facts: { item: described(item), clause, why } });
  if (item.row.value?.need === 'always' && !item.value && !unread) say('a value', item.row.value.help);
  if (item.row.names !== 'none' && item.row.names !== 'optional' && !item.names.length && !item.node.line.opens)
    say('a name', item.row.nameHelp ?? item.row.help);
  if (item.row.group === 'gear' && item.keyword !== 'point' && item.keyword !== 'bridle') return;
  for (const [word, row] of Object.entries(item.row.clauses))
    if (row.need === 'always' && !item.clauses.has(word) && !item.node.line.opens) say(word, row.help);
}

/** A statement in words: `part "Rails"`, `stated`. */
export const described = (item: Item): string => {
  const statement = item.node.line.statement;
  return statement?.name
    ? `${item.keyword} ${item.node.row.text.slice(statement.name.span.from, statement.name.span.to)}`
    : item.keyword;
};

/** One value held against its row; null after a problem has been noted. */
function bindValue(value: Value, row: ClauseRow, clause: string, sheet: Sheet): BoundValue | null {
  const measure = row.measures ?? 'any';
  switch (value.kind) {
    case 'amount': {
      const cell = amount(value.amount, sheet, clause, measure);
      if (cell === null) return null;
      return typeof cell === 'string'
        ? { kind: cell }
        : inside({ kind: 'quantity', quantity: cell }, row, clause, value.span, sheet);
    }
    case 'size': {
      const sides = size(value.sides, value.tolerance, sheet, clause, measure);
      if (row.sides && sides && sides.length !== row.sides && row.sides !== '2 or 3')
        return note(sheet, 'value-outside', value.span, {
          clause,
          value: sheet.row.text.slice(value.span.from, value.span.to),
          reason: `it takes ${row.sides} sides, joined by x`,
        });
      return sides && inside({ kind: 'size', sides }, row, clause, value.span, sheet);
    }
    case 'point': {
      const at = point(value, sheet, clause);
      return at && (at.includes(null) ? null : { kind: 'point', at });
    }
    case 'points':
    case 'turn':
    case 'tilt':
    case 'circle':
      return bindDrawn(value, row, sheet, clause);
    case 'names':
    case 'path':
      return { kind: 'names', names: value.names };
    case 'axis':
      return { kind: 'axis', axis: value.axis };
    case 'side':
      return { kind: 'side', name: value.name, axis: value.axis };
    case 'row':
      return bindRow(value, row, clause, sheet);
    case 'compare':
      return { kind: 'compare', text: value, compare: bindCompare(value, sheet) };
    case 'subject':
      return bindSubject(value, sheet);
    case 'date':
      return bindDate(value.text, value.span, sheet, clause);
    case 'word': {
      const cell = value.amount && amount(value.amount, sheet, clause, measure);
      return { kind: 'word', word: value.word, amount: typeof cell === 'object' ? cell : null };
    }
    case 'text':
    case 'label':
    case 'designation':
      if (value.text.trim()) return { kind: 'text', text: value.text };
      return note(sheet, 'value-outside', value.span, { clause, value: '""', reason: 'it says nothing' });
  }
}

/** Corners of an outline, two coordinates each, or of a line, three. */
function bindCorners(
  value: Extract<Value, { kind: 'points' }>,
  row: ClauseRow,
  sheet: Sheet,
  clause: string,
): BoundValue | null {
  const due = row.takes === 'line' ? 3 : 2;
  const cells = value.points.map((corner) => corner.map((cell) => amount(cell, sheet, clause, 'length', value.unit)));
  if (cells.some((corner) => corner.length !== due))
    return note(sheet, 'value-outside', value.span, {
      clause,
      value: sheet.row.text.slice(value.span.from, value.span.to),
      reason: `a corner takes ${due === 3 ? 'three' : 'two'} coordinates`,
    });
  const numbers = cells.map((corner) => corner.map((cell) => (cell && typeof cell !== 'string' ? cell.value : null)));
  if (numbers.some((corner) => corner.includes(null))) return null;
  if (due === 2) return { kind: 'points', points: numbers as [number, number][] };
  const slack = value.tolerance && toleranceOf(value.tolerance, sheet, clause);
  if (value.tolerance && !slack) return null;
  return { kind: 'line', corners: numbers as [number, number, number][], slack: slack?.value ?? 0 };
}

/** A tolerance of a length on its own. */
const toleranceOf = (tolerance: Expression, sheet: Sheet, clause: string): Quantity | null =>
  measured(evaluate(tolerance, sheet, clause, 'length'), tolerance.span, sheet, clause, 'length');

/** Values that draw: corners, turns, inclines and circles. */
function bindDrawn(
  value: Extract<Value, { kind: 'points' | 'turn' | 'tilt' | 'circle' }>,
  row: ClauseRow,
  sheet: Sheet,
  clause: string,
): BoundValue | null {
  switch (value.kind) {
    case 'points':
      return bindCorners(value, row, sheet, clause);
    case 'turn': {
      const angle = measured(evaluate(value.angle, sheet, clause, 'angle'), value.angle.span, sheet, clause, 'angle');
      return angle && { kind: 'turn', angle, axis: value.axis };
    }
    case 'tilt': {
      const from = measured(evaluate(value.angle, sheet, clause, 'angle'), value.angle.span, sheet, clause, 'angle');
      const to =
        value.to && measured(evaluate(value.to, sheet, clause, 'angle'), value.to.span, sheet, clause, 'angle');
      return from && (!value.to || to) ? { kind: 'tilt', axis: value.axis, from, to } : null;
    }
    case 'circle': {
      const diameter = measured(
        evaluate(value.diameter, sheet, clause, 'length'),
        value.diameter.span,
        sheet,
        clause,
        'length',
      );
      return diameter && { kind: 'circle', diameter, axis: value.axis };
    }
  }
}

/** Chart rows: one closing unit holds for all bare cells. */
function bindRow(value: Extract<Value, { kind: 'row' }>, row: ClauseRow, clause: string, sheet: Sheet): BoundValue {
  const measure = row.measures ?? 'any';
  const last = [...value.cells].reverse().find((cell) => cell.kind === 'sum');
  const quantityUnit =
    last?.kind === 'sum' && last.value.kind === 'quantity' && last.value.parts.length === 1
      ? (last.value.parts[0]?.unit ?? null)
      : null;
  const bare = (cell: (typeof value.cells)[number]) =>
    cell.kind === 'sum' && cell.value.kind === 'quantity' && cell.value.parts.every((part) => !part.unit);
  const cells = value.cells.map((cell) =>
    amount(cell, sheet, clause, measure, cell !== last && bare(cell) ? quantityUnit : null),
  );
  return { kind: 'row', head: value.head && amount(value.head, sheet, clause, 'length'), cells };
}

function bindSubject(value: Extract<Value, { kind: 'subject' }>, sheet: Sheet): BoundValue | null {
  const words = value.words.filter((word) => word.kind === 'word').map((word) => word.text);
  for (let n = words.length; n > 0; n--) {
    const keyword = words.slice(0, n).join(' ');
    if (!(keyword in statements)) continue;
    return {
      kind: 'subject',
      keyword,
      names: value.words.slice(n).map((word) => (word.kind === 'word' ? word.text : lastPart(word.use))),
    };
  }
  return note(sheet, 'name-unknown', value.span, {
    name: words.join(' '),
    nearest: nearest(words.join(' '), Object.keys(statements)),
    wanted: 'a kind of statement',
    is: null,
    declare: null,
  });
}
const lastPart = (use: NameUse): string => use.parts.at(-1)?.text ?? '';

/** Bounds of the vocabulary's row: what is outside them is a finding, and open. */
function inside(value: BoundValue, row: ClauseRow, clause: string, span: Span, sheet: Sheet): BoundValue | null {
  const all = value.kind === 'quantity' ? [value.quantity] : value.kind === 'size' ? value.sides : [];
  const outside = (reason: string) =>
    note(sheet, 'value-outside', span, { clause, value: sheet.row.text.slice(span.from, span.to), reason });
  for (const q of all) {
    if (row.measures === 'density' && (q.low < (row.least ?? 0) || q.high > (row.most ?? q.high)))
      return outside(`nothing solid or liquid is that ${q.low < (row.least ?? 0) ? 'light' : 'heavy'}; check the unit`);
    if (row.measures === 'whole' && !Number.isInteger(q.value)) return outside('it takes a whole number');
    if (row.above !== undefined && !(q.low > row.above))
      return outside(q.value > row.above ? 'its tolerance reaches down to zero or below' : 'it must be more than zero');
    if (row.least !== undefined && q.low < row.least)
      return outside(row.least === 0 ? 'it cannot be less than zero' : `the least is ${row.least}`);
    if (row.most !== undefined && q.high > row.most)
      return outside(
        row.measures === 'percent'
          ? `it cannot be more than ${share(row.most, 'down')}`
          : row.measures === 'angle'
            ? `it cannot be more than ${write(row.most, 'rad', { system: 'metric', round: 'near' })}`
            : `the most is ${row.most}`,
      );
  }
  return value;
}

function bindDate(text: string, span: Span, sheet: Sheet, clause: string): BoundValue | null {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && isDay(text)) return { kind: 'date', iso: text };
  return note(sheet, 'value-outside', span, {
    clause,
    value: text,
    reason: 'there is no such day; write year-month-day',
  });
}

/** Is there such a day? */
function isDay(iso: string): boolean {
  const [year, month, day] = iso.split('-').map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}

export type { PlanProblem };
