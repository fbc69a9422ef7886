// Hover: a list of small answers, the first that knows answers.
import type { Snapshot } from '../workspace/types.ts';
import { hoverLiftOff } from './hover/lift-off.ts';
import { hoverName } from './hover/name.ts';
import { hoverPaper } from './hover/paper.ts';
import { hoverQuantity } from './hover/quantity.ts';
import { hoverResult } from './hover/result.ts';
import { hoverTable } from './hover/table.ts';
import { hoverWord } from './hover/word.ts';
import type { Hover } from './types.ts';

/** What is known about the words at an offset of a row: the result first, then its working; null where nothing is. */
export function hover(s: Snapshot, row: number, offset: number): Hover | null {
  const comment = s.tree.lines[row]?.comment;
  if (comment && offset >= comment.from) return null;
  for (const answer of [hoverLiftOff, hoverResult, hoverQuantity, hoverName, hoverPaper, hoverTable, hoverWord]) {
    const found = answer(s, row, offset);
    if (found) return found;
  }
  return null;
}
