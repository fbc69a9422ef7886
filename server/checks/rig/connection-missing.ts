// Two items of a leg meet with nothing named that joins them.
import type { Place } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { addClause, addToBlock, freeName, here, withMore } from '../edits.ts';
import type { Asked, Fix } from '../types.ts';
import { named } from '../wording.ts';

export const connectionMissing = check({
  slug: 'connection-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${named(facts.a)} goes straight onto ${named(facts.b)}. If a shackle or link joins them, its weight and capacity are not counted.`,
  fixes: ({ at }, asked) => [
    insertShackle(asked, at),
    addClause(asked, at, `direct "${here}"`, 'Say why it goes on directly'),
  ],
});

/** A shackle in the gear, its figures left empty, and in the leg. */
function insertShackle(asked: Asked, at: Place): Fix {
  const name = freeName('K1', asked);
  const gear = addToBlock(
    asked,
    at,
    'gear',
    `shackle ${name}: weight ${here}, capacity `,
    `Insert shackle ${name} in gear and leg`,
  );
  return withMore(gear, [{ kind: 'replace', at: { ...at, to: at.from }, text: `${name} > ` }]);
}
