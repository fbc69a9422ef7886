// Growing selections: number, quantity, value, clause, line, statement with what stands under it, and so on outwards.
import type { Expression, Span, TreeNode, Value } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { firstColumn, statementAt, wholeOf } from './items.ts';
import type { Stretch } from './types.ts';
import { expressionsIn } from './uses.ts';

/** The stretches around an offset, each inside the next. */
export function selection({ tree }: Snapshot, row: number, offset: number): readonly Stretch[] {
  const line = tree.lines[row];
  const text = tree.rows[row]?.text;
  if (!line || text === undefined) return [];
  const spans: Span[] = [...words(text), { from: firstColumn(text), to: text.trimEnd().length }];
  if (line.comment) spans.push(line.comment);
  for (const { keyword, span, value } of line.clauses) spans.push(keyword.span, span, ...(value ? inValue(value) : []));
  if (line.statement) {
    const { keyword, name, value } = line.statement;
    spans.push(
      keyword.span,
      { from: keyword.span.from, to: name?.span.to ?? keyword.span.to },
      ...(name ? [name.span] : []),
      ...(value ? inValue(value) : []),
    );
  }
  const here = spans
    .filter(({ from, to }) => offset >= from && offset <= to && to > from)
    .map(({ from, to }): Stretch => ({ first: row, from, last: row, to }));
  const blocks: Stretch[] = [];
  for (let node: TreeNode | null = statementAt(tree, row); node; node = tree.parentAt[tree.rowNumber(node.row)] ?? null)
    blocks.push(wholeOf(tree, node));
  const last = tree.rows.length - 1;
  return nested([...here, ...blocks, { first: 0, from: 0, last, to: tree.rows[last]?.text.length ?? 0 }]);
}

/** Words and texts of a line, whatever they are. */
const words = (text: string): readonly Span[] =>
  [...text.matchAll(/"(?:[^"]|"")*"|[\p{L}\p{N}_.]+/gu)].map((found) => ({
    from: found.index,
    to: found.index + found[0].length,
  }));

const inValue = (value: Value): readonly Span[] => [
  value.span,
  ...expressionsIn(value).flatMap(inExpression),
  ...(value.kind === 'names' || value.kind === 'path'
    ? value.names.flatMap(({ span, parts }) => [span, ...parts.map((part) => part.span)])
    : []),
];

function inExpression(expression: Expression): readonly Span[] {
  switch (expression.kind) {
    case 'quantity':
      return [
        expression.span,
        ...expression.parts.flatMap(({ span, unit }) => [
          span,
          ...(unit ? [unit.span, { from: span.from, to: unit.span.to }] : []),
        ]),
      ];
    case 'name':
      return [expression.span];
    case 'call':
      return [expression.span, ...expression.args.flatMap(inExpression)];
    case 'negative':
      return [expression.span, ...inExpression(expression.of)];
    case 'binary':
      return [expression.span, ...inExpression(expression.left), ...inExpression(expression.right)];
  }
}

/** The smallest first; one that does not lie around the one before is left out. */
function nested(all: readonly Stretch[]): readonly Stretch[] {
  const sorted = [...all].sort((a, b) => a.last - a.first - (b.last - b.first) || a.to - a.from - (b.to - b.from));
  const found: Stretch[] = [];
  for (const one of sorted) {
    const inner = found.at(-1);
    if (!inner || (contains(one, inner) && !contains(inner, one))) found.push(one);
  }
  return found;
}

const contains = (a: Stretch, b: Stretch): boolean =>
  (a.first < b.first || (a.first === b.first && a.from <= b.from)) &&
  (a.last > b.last || (a.last === b.last && a.to >= b.to));
