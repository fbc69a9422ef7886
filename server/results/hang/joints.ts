// Joints that cannot be made as the leg says: a pin that is thicker than its hole, a hook over what it cannot close on.
import { given } from '../../plan/index.ts';
import { wordOf } from './baskets.ts';
import { pickKind } from './bends.ts';
import type { HangInput } from './hang.ts';

/** Notes them. A pick's `diameter` is that of its hole, unless it is round or a trunnion. */
export function joints({ legs, table, notes }: Pick<HangInput, 'legs' | 'table' | 'notes'>): void {
  for (const leg of legs)
    if (!leg.broken)
      leg.steps.forEach(({ thing, at }, i) => {
        for (const near of [leg.steps[i - 1]?.thing, leg.steps[i + 1]?.thing]) {
          if (thing.kind !== 'pick' || !near) continue;
          const solid = ['round', 'trunnion', 'edge'].includes(pickKind(thing) ?? '');
          const related = [
            { at: near.item.nameAt, says: near.name },
            { at: thing.item.nameAt, says: thing.name },
          ];
          const pin = table.given(near.item, 'pin diameter');
          const hole = given(thing.item, 'diameter');
          if (
            near.item.keyword === 'shackle' &&
            !solid &&
            pin.state === 'known' &&
            hole.state === 'known' &&
            pin.quantity.high > hole.quantity.low * (1 + 1e-9)
          )
            notes.add(
              'joint-wrong',
              at,
              { a: near.name, b: thing.name, reason: 'pin', pin: pin.quantity.high, hole: hole.quantity.low },
              '',
              related,
            );
          const end = near.item.keyword === 'sling' ? table.clause(near.item, 'lower end')?.value : null;
          if (
            solid &&
            end?.kind === 'word' &&
            end.word === 'hook' &&
            !['choker', 'basket', 'doubled'].includes(wordOf(leg.item, 'hitch') ?? '')
          )
            notes.add(
              'joint-wrong',
              at,
              { a: near.name, b: thing.name, reason: 'hook', pin: null, hole: null },
              '',
              related,
            );
        }
      });
}
