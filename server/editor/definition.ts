// Where a name is declared and used: go to definition, find references, and the places marked while the cursor rests on a name.
import type { Thing } from '../plan/types.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { ownFile, samePlace } from './items.ts';
import { type Use, useAt, usesIn } from './uses.ts';

/** Where what is named at an offset is declared; the first row of the file for the path of a `use` line. */
export function definition(s: Snapshot, row: number, offset: number): readonly Place[] {
  const path = ownFile(s)?.uses.find(({ at }) => at.row === s.tree.rows[row] && offset >= at.from && offset <= at.to);
  const first = path && s.plan.files.find(({ file }) => file === path.file)?.tree.rows[0];
  if (path) return first ? [{ row: first, from: 0, to: 0 }] : [];
  const places = (useAt(s, row, offset)?.things ?? []).map((thing) => declaredAt(thing));
  return places.filter((place, i) => places.findIndex((other) => samePlace(place, other)) === i);
}

/** The name where a thing is declared; of a range all of it. */
export const declaredAt = ({ item }: Thing): Place =>
  item.node.line.statement?.name ? item.nameAt : (item.value?.valueAt ?? item.nameAt);

export interface Reference {
  readonly at: Place;
  readonly declares: boolean;
}

/**
 * Every place of what is named at an offset, in all files of the plan and of the plans given: those that use this file.
 * A range is a place of each thing in it.
 */
export function references(
  s: Snapshot,
  row: number,
  offset: number,
  users: readonly Snapshot[] = [],
): readonly Reference[] {
  const use = useAt(s, row, offset);
  return use ? usesOfThings(use.things, [s, ...users]).map(({ at, declares }) => ({ at, declares })) : [];
}

/** Every use of things in the files of these plans, each place once. */
export function usesOfThings(things: readonly Thing[], snapshots: readonly Snapshot[]): readonly Use[] {
  const found = new Map<string, Use>();
  for (const { plan } of snapshots) {
    for (const file of plan.files) {
      for (const use of usesIn(file, plan)) {
        const key = `${file.tree.rowNumber(use.at.row)}:${use.at.from}:${file.file}`;
        if (!found.has(key) && use.things.some((thing) => things.some((wanted) => sameThing(thing, wanted))))
          found.set(key, use);
      }
    }
  }
  return [...found.values()];
}

/** The same declared thing, though each plan that takes it in has bound it for itself. */
export const sameThing = (a: Thing, b: Thing): boolean =>
  a === b ||
  (a.kind === b.kind &&
    a.key === b.key &&
    a.item.file === b.item.file &&
    a.item.node.row.text === b.item.node.row.text &&
    a.path.join('\n') === b.path.join('\n'));

/** The places of what is named at an offset in the file asked about; `declares` marks where it is declared. */
export function highlights(s: Snapshot, row: number, offset: number): readonly Reference[] {
  const [use, file] = [useAt(s, row, offset), ownFile(s)];
  if (!use || !file) return [];
  return usesIn(file, s.plan)
    .filter(({ things }) => things.some((thing) => use.things.includes(thing)))
    .map(({ at, declares }) => ({ at, declares }));
}
