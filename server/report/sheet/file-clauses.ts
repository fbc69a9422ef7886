// Clauses that stand at file level, under no statement: notes and assumptions for the whole plan.
import type { BoundPlan } from '../../plan/types.ts';
import type { Place } from '../../syntax/types.ts';

/** The texts of one keyword in the plan's own file, in order. */
export function fileClauses(
  plan: BoundPlan,
  keyword: string,
): readonly { readonly text: string; readonly at: Place }[] {
  const nodes = plan.files.filter(({ file }) => file === plan.file).flatMap(({ tree }) => tree.nodes);
  return nodes.flatMap(({ row, line }) =>
    line.kind !== 'clauses'
      ? []
      : line.clauses.flatMap(({ keyword: { word }, value, span }) =>
          word === keyword && value?.kind === 'text' ? [{ text: value.text, at: { row, ...span } }] : [],
        ),
  );
}
