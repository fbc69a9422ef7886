// Helpers of the tests of this room: read a line under a parent and say what came out, in words rather than in numbers.
import { language } from '../../../server/plan/language.ts';
import { readLine } from '../../../server/syntax/line.ts';
import { readTree } from '../../../server/syntax/tree.ts';
import type { Expression, LineProblem, ReadLine, Span, Tree, TreeNode, Value } from '../../../server/syntax/types.ts';

export { language };

/** A line as read under a parent of that keyword. */
export const read = (block: string, text: string): ReadLine => readLine(text, language.under(block), language);

export const tree = (text: string, previous?: Tree): Tree => readTree('plan.liftplan', text, language, previous);

export const under = (text: string, span: Span): string => text.slice(span.from, span.to);

/** Problems of a line: slug, the words under the place, and the facts. */
export const problemsOf = (block: string, text: string) =>
  read(block, text).problems.map((problem) => told(text, problem));
export const told = (text: string, { slug, span, facts }: LineProblem) => ({
  slug,
  at: under(text, span),
  ...(facts as object),
});

/** The value of the first clause, or of the statement where it has one, read under that parent. */
export function value(block: string, text: string): Value | null {
  const line = read(block, text);
  return line.statement?.value ?? line.clauses[0]?.value ?? null;
}

/** A sum in brackets and plain numbers: `((4 * 55 ft) * 1.1 lb/ft)`. */
export function written(sum: Expression | null | undefined): string {
  if (!sum) return '';
  if (sum.kind === 'quantity')
    return (
      (sum.negative ? '-' : '') +
      sum.parts.map((part) => [part.value, part.unit?.text].filter((text) => text !== undefined).join(' ')).join(' ')
    );
  if (sum.kind === 'name') return sum.name;
  if (sum.kind === 'negative') return `-(${written(sum.of)})`;
  if (sum.kind === 'call') return `${sum.fn}(${sum.args.map(written).join(', ')})`;
  return `(${written(sum.left)} ${sum.op} ${written(sum.right)})`;
}

/** The amount of a value as `written`, with its tolerance. */
export function amount(found: Value | null): string {
  if (found?.kind !== 'amount') return `no amount: ${found?.kind}`;
  if (found.amount.kind !== 'sum') return found.amount.kind;
  return written(found.amount.value) + (found.amount.tolerance ? ` ± ${written(found.amount.tolerance)}` : '');
}

/** Every problem of a tree: of the file, of nesting, of lines. */
export function allProblems(of: Tree): string[] {
  const inNode = (node: TreeNode): string[] =>
    [...node.line.problems, ...node.problems].map((problem) => problem.slug).concat(node.children.flatMap(inNode));
  return [...of.problems.map((problem) => problem.slug), ...of.nodes.flatMap(inNode)];
}

/** Nodes as nested text, without what the lines say. */
export const outline = (nodes: readonly TreeNode[]): unknown[] =>
  nodes.map((node) => [node.row.text.trim(), node.block, ...outline(node.children)]);
