// What the text says quietly in one version and not in the other: `spare`, `none`, `?`, `without`, `direct`, `waive`, `like`, `let`.
import { fold } from '../../plan/index.ts';
import type { Item } from '../../plan/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { type Quiet, quietIn } from '../sheet/quiet.ts';
import { takeEqual } from './equal.ts';
import { meaningOf } from './lines.ts';
import type { Pairing } from './pairs.ts';
import type { QuietChange } from './types.ts';

export function quietChanges(old: Snapshot, now: Snapshot, { pairs, spell }: Pairing): readonly QuietChange[] {
  const owners = new Map<Item, number>(
    pairs.flatMap((pair, i) => [[pair.old.item, i] as const, [pair.now.item, i] as const]),
  );
  const owner = ({ item, what }: Quiet) => {
    const number = owners.get(item);
    return number === undefined ? null : JSON.stringify([what, number]);
  };
  const left = { old: quietIn(old), now: quietIn(now) };
  takeEqual(left, (one, side) => {
    const key = owner(one);
    return (
      key && JSON.stringify([key, one.uses.map((use) => [use.keyword, meaningOf(use, side === 'old' ? spell : fold)])])
    );
  });
  const other = takeEqual(left, (one) => owner(one));
  return [
    ...left.now.map(({ what, text }): QuietChange => ({ kind: 'new', what, old: null, now: text })),
    ...other.map(([a, b]): QuietChange => ({ kind: 'changed', what: b.what, old: a.text, now: b.text })),
    ...left.old.map(({ what, text }): QuietChange => ({ kind: 'gone', what, old: text, now: null })),
  ];
}
