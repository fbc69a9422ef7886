// Compares two versions of a plan in meaning: figures, what is judged, and what the text says; never how it is laid out.
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { figureChanges } from './figures.ts';
import { expectChanges, findingChanges } from './judged.ts';
import { pairUp } from './pairs.ts';
import { quietChanges } from './quiet.ts';
import { refinements, restChanges } from './rests.ts';
import { statementChanges } from './statements.ts';
import type { Comparison } from './types.ts';

/**
 * Pure: the same two snapshots give the same comparison. Files named as `apart` are compared by themselves: what is said in them
 * is not said again of each plan that takes them in, but the figures that follow from it are.
 */
export function compare(old: Snapshot, now: Snapshot, apart: ReadonlySet<string> = new Set()): Comparison {
  const own = (before: Place | undefined | null, after: Place | undefined | null) => {
    const file = (after ?? before)?.row.file;
    return file === undefined || file === now.file || file === old.file || !apart.has(file);
  };
  const pairing = pairUp(old.plan, now.plan);
  const lists = {
    figures: figureChanges(old.results, now.results, pairing),
    expects: expectChanges(old.results, now.results, pairing),
    findings: findingChanges(old, now, pairing).filter((one) => own(one.old?.at, one.now?.at)),
    statements: statementChanges(old.plan, now.plan, pairing).filter((one) => own(one.oldAt, one.nowAt)),
    quiet: quietChanges(old, now, pairing),
    refined: refinements(old.results, now.results, pairing),
    rests: restChanges(old.results, now.results, pairing),
  };
  return { old, now, ...lists, same: Object.values(lists).every((list) => list.length === 0) };
}
