// Hover on `from` and `seen`: whether the paper is there, how large it is, and whether it is the one that was seen.
import { type Citation, seenMark } from '../../plan/index.ts';
import { words } from '../../quantities/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { clauseAt, itemAt, ownFile } from '../items.ts';
import type { Hover } from '../types.ts';
import { hoverOf, type Line, note } from './page.ts';

export function hoverPaper(s: Snapshot, row: number, offset: number): Hover | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  const cited = item && s.plan.cited.get(item);
  const where = s.tree.rows[row];
  if (!cited || !where) return null;
  const clause = clauseAt(item, { row: where }, offset);
  if (!clause || (clause !== cited.from && clause !== cited.seen)) return null;
  return hoverOf(s.plan, clause.at, note(cited.path ?? 'no file is named', { working: told(cited) }));
}

function told({ path, paper, seen, state }: Citation): readonly Line[] {
  if (path === null) return [{ says: '`from` names no file of the opened folder, so `seen` is held against nothing.' }];
  if (!paper) return [{ says: 'There is no such file in the opened folder, or it cannot be read: taken as words.' }];
  const mark = seenMark(paper);
  return [
    { says: `The file is there: ${words(paper.size, 'byte')}, marked ${mark}.` },
    {
      says:
        state === 'as seen'
          ? 'It is the one that was seen.'
          : seen
            ? 'It is not the one that was seen. Look again.'
            : `Which version was looked at is not said: seen "${mark}" would say so.`,
    },
  ];
}
