// Paths of files that a text may name: libraries behind `use`, drawings behind `mesh`, bills of material behind `list`, papers behind `from`.
import { endings } from '../../plan/index.ts';
import type { Slot } from '../../syntax/index.ts';
import { inQuotes } from '../spelling.ts';
import type { Completion } from '../types.ts';
import { type Asked, completion } from './types.ts';

/** Whether a place takes the path of a file, so that files are worth listing. */
export const namesFile = ({ statement, clause }: Slot): boolean =>
  clause === null ? statement === 'use' || statement === 'list' : clause === 'mesh' || clause === 'from';

/** Files of the kind that the place takes; nothing where it takes no path. */
export function paths(asked: Asked): readonly Completion[] {
  const { slot, files } = asked;
  if (!namesFile(slot)) return [];
  if (slot.statement === 'use' && slot.clause === null) return libraries(asked);
  const kind = slot.clause === 'mesh' ? endings.mesh : slot.clause === 'from' ? paper : endings.list;
  return files
    .filter((path) => kind.test(path))
    .map((path) => completion(asked, 'text', path, { text: inQuotes(path) }));
}

/** What a figure rests on may be any file but a plan. */
const paper = /(?<!\.liftplan)$/;

/** Plans without a `plan` statement that are not used yet, each with how many names it brings. */
function libraries(asked: Asked): readonly Completion[] {
  const taken = new Set(asked.s.plan.files[0]?.uses.map(({ path }) => path));
  return asked.libraries
    .filter(({ path }) => !taken.has(path))
    .map(({ path, plan }) =>
      completion(asked, 'text', path, { text: inQuotes(path), detail: `${plan.names.things.length} names` }),
    );
}
