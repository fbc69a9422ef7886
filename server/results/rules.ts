// The limits in force: built-in ones, and what `rules` blocks of the plan and its libraries say instead; of several the strictest holds.
import type { BoundPlan, Item } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { builtInContingency, type Evidence } from '../vocabulary/index.ts';
import { because } from './notes.ts';
import type { Rule } from './types.ts';

const builtIn = 'built in';
const ruleName = (item: Item, block: Item): string => {
  const from = item.clauses.get('from')?.[0]?.value;
  return from?.kind === 'text' ? from.text : (block.names[0] ?? 'rules');
};

/** Statements of one keyword under any `rules` block (not under its categories). */
function statements(plan: BoundPlan, keyword: string): readonly { readonly item: Item; readonly block: Item }[] {
  return plan.items
    .filter((item) => item.keyword === 'rules')
    .flatMap((block) => block.children.filter((item) => item.keyword === keyword).map((item) => ({ item, block })));
}

/** How far two weights may differ, as a share of the heavier. */
export function agreement(plan: BoundPlan): Rule {
  const found = statements(plan, 'agreement').flatMap(({ item, block }) => {
    const value = item.value?.value;
    return value?.kind === 'quantity'
      ? [{ name: ruleName(item, block), value: value.quantity.value, at: item.at }]
      : [];
  });
  return found.sort((a, b) => a.value - b.value)[0] ?? { name: builtIn, value: 0.05, at: null };
}

/** Least contingency that rules ask for on a weight by that evidence; null where none does. */
export function leastContingency(plan: BoundPlan, by: Evidence): Rule | null {
  const found = statements(plan, 'contingency').flatMap(({ item, block }) => {
    const value = item.value?.value;
    return value?.kind === 'word' && value.word === by && value.amount
      ? [{ name: ruleName(item, block), value: value.amount.high, at: item.at }]
      : [];
  });
  return found.sort((a, b) => b.value - a.value)[0] ?? null;
}

/** Why nobody can say what the rules ask for on a weight by that evidence; empty where they say it, or nothing. */
export function unknownContingency(plan: BoundPlan, by: Evidence): readonly Cause[] {
  return statements(plan, 'contingency').flatMap(({ item, block }) => {
    const value = item.value?.value;
    return value?.kind === 'word' && value.word === by && !value.amount
      ? [because(`The contingency that ${ruleName(item, block)} asks for is not known.`, item.at)]
      : [];
  });
}

export const builtInRule = (by: Evidence | null): Rule => ({ name: builtIn, value: builtInContingency(by), at: null });

/** A bound on a result of a kind of subject: the strictest of the rules, else the built-in one given. */
export function limitOn(
  plan: BoundPlan,
  kinds: readonly string[],
  result: string,
  unless: number,
  side: 'most' | 'least',
): Rule {
  const found = statements(plan, 'limit').flatMap(({ item, block }) => {
    const compare = item.value?.value?.kind === 'compare' ? item.value.value.compare : null;
    if (!compare || compare.result !== result || !kinds.includes(compare.subject.kind) || compare.subject.names.length)
      return [];
    const fits =
      side === 'most' ? compare.op === '<' || compare.op === '<=' : compare.op === '>' || compare.op === '>=';
    return fits ? [{ name: ruleName(item, block), value: compare.low, at: item.at }] : [];
  });
  // What an item may carry is no rule's to raise: a limit on it may only be stricter than all of it.
  if (result === 'capacity used') found.push({ name: builtIn, value: unless, at: null as never });
  const strictest = found.sort((a, b) => (side === 'most' ? a.value - b.value : b.value - a.value))[0];
  return strictest ?? { name: builtIn, value: unless, at: null };
}
