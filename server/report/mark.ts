// The content mark: a short digest of what a plan means, with all it takes in. Layout, order of lines, comments, notes, unit
// spellings and names of values do not change it; any figure, name or word that counts does.

import { digest, printOf } from '../plan/digest.ts';
import { fold } from '../plan/fold.ts';
import type { BoundPlan, Item } from '../plan/types.ts';
import { clauseMeaning, words } from './meaning.ts';

/**
 * Twelve hexadecimal digits in groups of four, such as `1c9f-04be-77a2`. Left out are notes, `use` and `let` (what they bring
 * in counts where it is used), and approvals, permits and records: these are written about a mark, so they cannot change it.
 */
export function contentMark(plan: BoundPlan): string {
  const [own = '', ...used] = plan.files.map(({ items }) => block(items, 'file'));
  const drawings = [...plan.attached].flatMap(([item, { bytes }]) =>
    item.keyword === 'list' ? [] : bytes ? printOf(bytes) : '?',
  );
  const more = drawings.length ? [packed(drawings.sort())] : [];
  const papers = [...plan.cited.values()].flatMap(({ paper }) => paper?.print ?? []);
  if (papers.length) more.push(packed(['papers', ...papers.sort()]));
  const hex = digest(packed([own, packed(used.sort()), packed(plan.opens.map(words).sort()), ...more]));
  return [0, 4, 8].map((at) => hex.slice(at, at + 4)).join('-');
}

/** Texts one behind the other, each with its length before it, so that no two lists look alike. */
const packed = (texts: readonly string[]): string => texts.map((text) => `${text.length}:${text}`).join('');

const aside = new Set(['use', 'let', 'approval', 'permit', 'record']);

/** Statements in an order of their own: only steps mean something by standing one after the other. */
function block(items: readonly Item[], parent: string): string {
  const texts = items.filter(({ keyword }) => !aside.has(keyword)).map(statement);
  return packed(parent === 'steps' ? texts : texts.sort());
}

/** Kept by item: an item stays the same object while nothing that it says has changed. */
const kept = new WeakMap<Item, string>();

function statement(item: Item): string {
  const before = kept.get(item);
  if (before !== undefined) return before;
  const clauses = [...item.clauses]
    .filter(([keyword]) => keyword !== 'note')
    .map(([keyword, uses]) => packed([keyword, ...uses.map((use) => clauseMeaning(use))]));
  const own = item.value ? clauseMeaning(item.value) : '';
  const text = packed([
    item.keyword,
    packed(item.names.map(fold)),
    own,
    packed(clauses.sort()),
    packed(item.opens.map(words).sort()),
    block(item.children, item.keyword),
  ]);
  kept.set(item, text);
  return text;
}
