// Asks an item for its values by typed keys: a known quantity, an open one with its cause, or nothing written.
import type { Cause } from '../quantities/derived.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { NameUse, Place, TreeNode } from '../syntax/types.ts';
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
  item.children.filter((child) => child.keyword === keyword);

/** The names of a clause, or of the statement's own value with key ''. */
export function namesOf(item: Item, keyword: string): readonly NameUse[] {
  const value = (keyword === '' ? item.value : item.clauses.get(keyword)?.[0])?.value;
  return value?.kind === 'names' ? value.names : [];
}

/** Lines under an item, or below them, that could not be read, as causes. */
export function openLines(item: Item): readonly Cause[] {
  return item.opens.map((at) => cause('A line here cannot be read.', at));
}

const lost = new WeakMap<TreeNode, readonly Place[]>();

/** Lines anywhere under a node that nothing can be made of, or whose nesting is not clear: what they would have added is not known. */
export function lostLines(node: TreeNode): readonly Place[] {
  let places = lost.get(node);
  if (!places) {
    places = node.children.flatMap((child) => [
      ...(child.line.kind === 'unread' || child.problems.length || misplaced(child) ? [whole(child)] : []),
      ...lostLines(child),
    ]);
    lost.set(node, places);
  }
  return places;
}

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
