// Asks an item for its values by typed keys: a known quantity, an open one with its cause, or nothing written.
import type { Cause } from '../quantities/derived.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { NameUse, Place, TreeNode } from '../syntax/types.ts';
import { joined, keptAlong } from './along.ts';
import { misplaced } from './bind.ts';
import type { BoundClause, Item } from './types.ts';

/** What a clause gives: `absent` where it is not written. */
export type Given =
  | { readonly state: 'known'; readonly quantity: Quantity; readonly at: Place }
  | { readonly state: 'open'; readonly because: readonly Cause[]; readonly at: Place }
  | { readonly state: 'none'; readonly at: Place }
  | { readonly state: 'absent' };

const cause = (what: string, at: Place): Cause => ({ what, at });

/** The quantity of a clause (or of the statement's own value with key ''). */
export function given(item: Item, keyword: string): Given {
  const clause = keyword === '' ? item.value : item.clauses.get(keyword)?.[0];
  return clause ? givenBy(clause, keyword || item.keyword) : { state: 'absent' };
}

export function givenBy(clause: BoundClause, label: string): Given {
  const { value, at } = clause;
  if (!value) return { state: 'open', because: [cause(`What ${label} says could not be read.`, at)], at };
  if (value.kind === 'unknown')
    return { state: 'open', because: [{ ...cause(`${label} is not known yet (?).`, at), deliberate: true }], at };
  if (value.kind === 'none') return { state: 'none', at };
  if (value.kind === 'quantity') return { state: 'known', quantity: value.quantity, at };
  if (value.kind === 'word' && value.amount) return { state: 'known', quantity: value.amount, at };
  return { state: 'open', because: [cause(`${label} gives no figure.`, at)], at };
}

/** The text, word, label or date of a clause; null where it is not written or could not be read. */
export function textOf(item: Item, keyword: string): string | null {
  const value = (keyword === '' ? item.value : item.clauses.get(keyword)?.[0])?.value;
  return value?.kind === 'text'
    ? value.text
    : value?.kind === 'word'
      ? value.word
      : value?.kind === 'date'
        ? value.iso
        : null;
}

export const has = (item: Item, keyword: string): boolean => item.clauses.has(keyword);
export const clauseOf = (item: Item, keyword: string): BoundClause | undefined => item.clauses.get(keyword)?.[0];
export const childrenOf = (item: Item, keyword: string): readonly Item[] =>
  (keyword === 'part' ? item.children : besideParts(item)).filter((child) => child.keyword === keyword);

const aside = keptAlong<Item, readonly Item[]>();
const beside = new WeakMap<Item, readonly Item[]>();

/** What stands right under an item beside its parts, of which a load may have thousands; kept by the item. */
function besideParts(item: Item): readonly Item[] {
  const known = beside.get(item);
  if (known) return known;
  const found = joined(aside(item.node.row, item.children, (child) => (child.keyword === 'part' ? none : [child])));
  beside.set(item, found);
  return found;
}

/** The names of a clause, or of the statement's own value with key ''. */
export function namesOf(item: Item, keyword: string): readonly NameUse[] {
  const value = (keyword === '' ? item.value : item.clauses.get(keyword)?.[0])?.value;
  return value?.kind === 'names' ? value.names : [];
}

/** Lines under an item, or below them, that could not be read, as causes. */
export function openLines(item: Item): readonly Cause[] {
  return item.opens.map((at) => cause('A line here cannot be read.', at));
}

const lost = keptAlong<TreeNode, readonly Place[]>();

/** Lines anywhere under a node that nothing can be made of, or whose nesting is not clear: what they would have added is not known. */
export const lostLines = (node: TreeNode): readonly Place[] => joined(lost(node.row, node.children, lostIn));

function lostIn(child: TreeNode): readonly Place[] {
  const own = child.line.kind === 'unread' || child.problems.length || misplaced(child) ? [whole(child)] : none;
  return child.children.length ? [...own, ...lostLines(child)] : own;
}

const none: readonly never[] = [];

/** Every line under an item that could not be read in full. */
export const allOpen = (item: Item): readonly Place[] => [
  ...item.opens,
  ...lostLines(item.node),
  ...item.children.flatMap(allOpen),
];

const whole = (node: TreeNode): Place => ({ row: node.row, from: node.line.indent, to: node.row.text.length });

/** The same as causes. */
export const lostCauses = (item: Item): readonly Cause[] =>
  lostLines(item.node).map((at) => cause('A line here cannot be read.', at));
