// Puts edits into texts: for fix-all, which needs the text after one round before it can ask for the next.
import type { Tree } from '../syntax/types.ts';
import type { Edit, Stretch } from './types.ts';

/** The rows of a tree after edits of it; edits of other files are left alone. Of edits that overlap the first counts. */
export function edited(tree: Tree, edits: readonly Edit[]): readonly string[] {
  const mine = edits.filter((edit) => rowOf(edit).file === tree.file);
  return tree.rows.flatMap((row) => {
    const here = mine.filter((edit) => rowOf(edit) === row);
    const replaced = apart(here.flatMap((edit) => (edit.kind === 'replace' ? [edit] : [])))
      .sort((a, b) => b.at.from - a.at.from)
      .reduce((text, { at, text: put }) => text.slice(0, at.from) + put + text.slice(at.to), row.text);
    const inserted = (before: boolean) =>
      here.flatMap((edit) => (edit.kind === 'insert' && Boolean(edit.before) === before ? edit.lines : []));
    return [...inserted(true), ...replaced.split('\n'), ...inserted(false)];
  });
}

export const rowOf = (edit: Edit) => (edit.kind === 'replace' ? edit.at.row : edit.after.row);

type Replace = Extract<Edit, { kind: 'replace' }>;

function apart(edits: readonly Replace[]): Replace[] {
  const kept: Replace[] = [];
  for (const edit of edits) if (!kept.some(({ at }) => edit.at.from < at.to && at.from < edit.at.to)) kept.push(edit);
  return kept;
}

/** The one stretch in which two texts differ, with what stands there in the second; null where they are equal. */
export function difference(
  before: readonly string[],
  after: readonly string[],
  newline: string,
): { readonly at: Stretch; readonly text: string } | null {
  let first = 0;
  while (first < before.length && first < after.length && before[first] === after[first]) first++;
  if (first === before.length && first === after.length) return null;
  let end = 0;
  while (
    end < Math.min(before.length, after.length) - first &&
    before[before.length - 1 - end] === after[after.length - 1 - end]
  )
    end++;
  const old = before.slice(first, before.length - end);
  const put = after.slice(first, after.length - end);
  // Whole rows come or go together with the line end before or after them.
  if (!old.length && first < before.length)
    return { at: { first, from: 0, last: first, to: 0 }, text: put.map((row) => row + newline).join('') };
  if (!put.length && first > 0)
    return {
      at: {
        first: first - 1,
        from: (before[first - 1] ?? '').length,
        last: first + old.length - 1,
        to: (old.at(-1) ?? '').length,
      },
      text: '',
    };
  if (!old.length)
    return {
      at: {
        first: first - 1,
        from: (before[first - 1] ?? '').length,
        last: first - 1,
        to: (before[first - 1] ?? '').length,
      },
      text: put.map((row) => newline + row).join(''),
    };
  if (!put.length) return { at: { first: 0, from: 0, last: old.length, to: 0 }, text: '' };
  return {
    at: { first, from: 0, last: first + old.length - 1, to: (old.at(-1) ?? '').length },
    text: put.join(newline),
  };
}
