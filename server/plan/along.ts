// What is worked out of each child of a statement, taken over for every child that is still the one of the version before.
import type { Row } from '../syntax/types.ts';

/** Fewer children are gone through anew: what is worked out of each is kept by the child itself. */
const few = 16;

/**
 * A keeper of values along the children of a statement. It rests on three things alone: the row of the statement, which stays
 * the same while its text does; the children, compared one by one; and `base`, whatever else the values are made from. One
 * version is kept for each row, and goes with it. A key that is pressed changes one child of thousands, so that all values but
 * one are copied as a block.
 */
export function keptAlong<C, V>(): (
  row: Row,
  children: readonly C[],
  of: (child: C) => V,
  base?: readonly unknown[],
) => readonly V[] {
  const kept = new WeakMap<Row, Kept<C, V>>();
  return (row, children, of, base = none) => {
    if (children.length < few) return children.map((child) => of(child));
    const before = kept.get(row);
    const based = before?.base.length === base.length && before.base.every((one, i) => one === base[i]);
    if (based && before.children === children) return before.values;
    const values = based ? patched(before, children, of) : children.map((child) => of(child));
    kept.set(row, { children, base, values });
    return values;
  };
}

interface Kept<C, V> {
  readonly children: readonly C[];
  readonly base: readonly unknown[];
  readonly values: readonly V[];
}

function patched<C, V>(before: Kept<C, V>, children: readonly C[], of: (child: C) => V): readonly V[] {
  const old = before.children;
  const least = Math.min(children.length, old.length);
  let start = 0;
  while (start < least && children[start] === old[start]) start++;
  let end = 0;
  while (end < least - start && children[children.length - 1 - end] === old[old.length - 1 - end]) end++;
  const made = children.slice(start, children.length - end).map((child) => of(child));
  const same = children.length === old.length && made.every((value, i) => value === before.values[start + i]);
  return same ? before.values : before.values.slice(0, start).concat(made, before.values.slice(old.length - end));
}

const none: readonly never[] = [];

const together = new WeakMap<readonly unknown[], readonly unknown[]>();

/** Lists one behind the other, where most of them are empty; kept by the list of lists, which `keptAlong` leaves the same while nothing in it changes. */
export function joined<V>(lists: readonly (readonly V[])[]): readonly V[] {
  const known = together.get(lists) as readonly V[] | undefined;
  if (known) return known;
  const filled = lists.filter((list) => list.length > 0);
  const all = filled.length > 1 ? filled.flat() : (filled[0] ?? none);
  together.set(lists, all);
  return all;
}
