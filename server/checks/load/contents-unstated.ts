// A hollow part with nothing said about its inside.
import { check } from '../check.ts';
import { addBeside, addUnder, here } from '../edits.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const contentsUnstated = check({
  slug: 'contents-unstated',
  severity: ({ facts }) => (facts.closed ? 'error' : 'note'),
  effect: 'open',
  says: ({ facts }, { system }) => {
    const { volume, weight } = figures(system);
    const say = facts.closed
      ? `Say ${facts.fillable ? 'what is in it (`liquid`, or `empty` with who saw it)' : '`empty` with who saw it, or with the part that holds its contents, a liquid with a place of its own'}; full`
      : 'It is open at its ends and counts as empty; full';
    return `${named(facts.part)} encloses ${volume(facts.volume)}. ${say} of water it would weigh ${weight(facts.added)} more.`;
  },
  fixes: ({ at, facts }, asked) => [
    addUnder(asked, at, [`empty "${here}"`], 'Insert empty: who saw it'),
    ...(facts.fillable
      ? [
          addBeside(
            asked,
            at,
            `part "Contents of ${facts.part}": liquid, fill ${here}, of , inside ${named(facts.part)}`,
            'Insert a liquid inside it',
          ),
        ]
      : []),
  ],
});
