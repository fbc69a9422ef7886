// "Mark this paper as seen": writes which version of a file a figure rests on, where a `from` names one and nothing says so yet.
import { seenMark } from '../plan/index.ts';
import type { Snapshot } from '../workspace/types.ts';
import { itemAt, itemsIn, ownFile } from './items.ts';
import type { Edit } from './types.ts';

/** One for each statement on those rows that cites a file that is there. */
export function markSeen(
  s: Snapshot,
  firstRow: number,
  lastRow: number,
): readonly { readonly title: string; readonly edits: readonly Edit[] }[] {
  const file = ownFile(s);
  if (!file) return [];
  const first = itemAt(file, firstRow); // of a line of clauses the statement above it
  const items = new Set([...(first ? [first] : []), ...itemsIn(file, firstRow, lastRow)]);
  return [...items].flatMap((item) => {
    const cited = s.plan.cited.get(item);
    if (!cited?.from || !cited.paper || cited.seen) return [];
    const { row, to } = cited.from.at;
    const text = `, seen "${seenMark(cited.paper)}"`;
    return [
      {
        title: `Mark this paper as seen: ${cited.path}`,
        edits: [{ kind: 'replace', at: { row, from: to, to }, text }],
      },
    ];
  });
}
