// Makes the picture of one file from the trees it rests on: bound, worked out, checked. Keeps nothing.
import { findings } from '../checks/index.ts';
import { bindPlan, type Source } from '../plan/index.ts';
import { workOut } from '../results/index.ts';
import type { Snapshot } from './types.ts';

/** The snapshot of a plan or library. Throws where the source has no tree of that file. */
export function snapshotOf(file: string, version: number, source: Source): Snapshot {
  const tree = source.tree(file);
  if (!tree) throw new Error(`There is no text of ${file}.`);
  const results = workOut(bindPlan(file, source));
  const all = findings(results);
  return {
    file,
    version,
    tree,
    plan: results.plan,
    results,
    findings: all,
    own: all.filter(({ at }) => at.row.file === file),
    setAside: false,
  };
}
