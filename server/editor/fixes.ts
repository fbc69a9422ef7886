// Ways out of findings: those of the rows asked for, and all that have one reading only, run to the end in one change.
import type { Finding } from '../checks/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { difference, edited } from './changes.ts';
import type { Edit, QuickFix, Stretch } from './types.ts';

/** The fixes of findings in those rows, preferred ones first for each finding. */
export function fixes(s: Snapshot, firstRow: number, lastRow: number): readonly QuickFix[] {
  const inRows = (finding: Finding) => {
    const row = s.tree.rowNumber(finding.at.row);
    return row >= firstRow && row <= lastRow && !finding.waived;
  };
  return s.own.filter(inRows).flatMap(fixesOf);
}

function fixesOf(finding: Finding): readonly QuickFix[] {
  const made = finding.fixes.map(
    ({ title, preferred, edits, cursor }): QuickFix => ({
      title,
      slug: finding.slug,
      preferred,
      finding: finding.at,
      edits,
      cursor,
    }),
  );
  return [...made.filter(({ preferred }) => preferred), ...made.filter(({ preferred }) => !preferred)];
}

/** Rounds after which fix-all stops: each must put something right that the one before brought out. */
const mostRounds = 20;

/**
 * Every fix of the file asked about that has one reading only, one round after the other until none is left, as one change; null where
 * there is none. `slug`: only fixes of that kind. `again` gives the snapshot of the same file with another text.
 */
export function fixAll(
  s: Snapshot,
  again: (text: string) => Snapshot,
  slug: string | null = null,
): { readonly at: Stretch; readonly text: string } | null {
  let now = s;
  for (let round = 0; round < mostRounds; round++) {
    const edits = certain(now, slug);
    if (!edits.length) break;
    now = again(edited(now.tree, edits).join(now.tree.newline));
  }
  const texts = ({ tree }: Snapshot) => tree.rows.map(({ text }) => text);
  return difference(texts(s), texts(now), s.tree.newline);
}

/** Edits of fixes with one reading, which leave nothing to fill in and change this file alone. */
function certain({ own, file }: Snapshot, slug: string | null): readonly Edit[] {
  const chosen: Edit[] = [];
  for (const finding of own) {
    if (finding.waived || (slug !== null && finding.slug !== slug)) continue;
    const sure = finding.fixes.filter(
      ({ preferred, cursor, edits }) =>
        preferred &&
        cursor === null &&
        edits.every((edit) => (edit.kind === 'replace' ? edit.at : edit.after).row.file === file),
    );
    const [only, second] = sure;
    if (only && !second && only.edits.every((edit) => chosen.every((other) => clear(edit, other))))
      chosen.push(...only.edits);
  }
  return chosen;
}

/** Whether two edits touch different text. */
function clear(a: Edit, b: Edit): boolean {
  if (a.kind !== 'replace' || b.kind !== 'replace' || a.at.row !== b.at.row) return true;
  return a.at.to < b.at.from || b.at.to < a.at.from;
}
