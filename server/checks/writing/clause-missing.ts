// Something that a statement needs is not there.
import type { Place } from '../../syntax/types.ts';
import { clausesOf } from '../../vocabulary/index.ts';
import { check } from '../check.ts';
import { addClause, here, statementAt } from '../edits.ts';
import type { Asked, Fix } from '../types.ts';
import { capital, unstopped } from '../wording.ts';

export const clauseMissing = check({
  slug: 'clause-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${capital(facts.item)} needs ${facts.clause}: ${withinSentence(facts.why)}.`,
  fixes: ({ at, facts }, asked) => facts.clause.split(' or ').flatMap((clause) => insertion(asked, at, clause)),
});

/** The help of a clause begins with a capital and names nothing. */
const withinSentence = (help: string): string =>
  unstopped(help).replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());

/** The clause with its value left empty; none where what is missing is not a clause. */
function insertion(asked: Asked, at: Place, clause: string): readonly Fix[] {
  const row = clausesOf(statementAt(asked, at)?.line.statement?.keyword.word ?? '')[clause];
  if (!row) return [];
  const value =
    row.takes === 'text'
      ? `"${here}"`
      : row.takes === 'point'
        ? `(${here})`
        : row.measures === 'percent'
          ? `${here} %`
          : here;
  return [addClause(asked, at, `${clause} ${value}`, `Insert ${clause}`)];
}
