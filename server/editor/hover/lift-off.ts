// Hover on `stop at` and `held by`: what is read while the load leaves the ground, and where the lift stops.
import type { Item } from '../../plan/types.ts';
import { type Derived, write } from '../../quantities/index.ts';
import type { Hold, Reading } from '../../results/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { clauseAt, itemAt, ownFile } from '../items.ts';
import type { Hover } from '../types.ts';
import { hoverOf, type Line, note } from './page.ts';

export function hoverLiftOff(s: Snapshot, row: number, offset: number): Hover | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  const where = s.tree.rows[row];
  if (!item || !where) return null;
  const { at } = item;
  const onKeyword = at.row === where && offset >= at.from && offset <= at.to;
  const clause = clauseAt(item, { row: where }, offset);
  if (item.keyword === 'held by' && (onKeyword || clause?.keyword === 'released' || clause?.keyword === 'breakout')) {
    const hold = s.results.liftOff.breakout.holds.find((one) => one.item === item);
    return hold ? hoverOf(s.plan, clause && !onKeyword ? clause.at : at, heldNote(s, hold)) : null;
  }
  return item.keyword === 'load' && clause?.keyword === 'stop at'
    ? hoverOf(s.plan, clause.at, stopNote(s, item))
    : null;
}

function heldNote(s: Snapshot, { pull }: Hold) {
  if (!pull) return note('let go before the load is lifted', { working: readingLines(s) });
  const head =
    pull.value === null
      ? 'how much more it pulls is not known'
      : `up to ${kg(s, pull.high as number)} more than its weight`;
  const says =
    pull.value === null
      ? pull.because.map(({ what, at }): Line => ({ says: what, at: at as never }))
      : [
          {
            says: 'Where it sticks is not said: each leg, and everything above it, is judged as if it took all of it.',
          },
        ];
  return note(head, { working: [...says, ...readingLines(s)] });
}

const stopNote = (s: Snapshot, item: Item) =>
  note(`stop reading of ${item.names[0] ?? 'the load'}`, { working: readingLines(s) });

/** Each instrument with what it shows hanging free, and where the lift stops on it. */
const readingLines = (s: Snapshot): readonly Line[] =>
  s.results.liftOff.readings.flatMap((reading) => linesOf(s, reading));

function linesOf(s: Snapshot, { on, slack, expected, breaking, stop }: Reading): readonly Line[] {
  const name = on?.name ?? "the crane's indicator";
  const at = on?.item.nameAt ?? null;
  const known = ({ value, high, because }: Derived): string =>
    value === null ? `not known: ${because[0]?.what ?? ''}` : kg(s, high ?? value);
  const range =
    expected.value === null
      ? known(expected)
      : `${kg(s, expected.low as number, 'down')} to ${kg(s, expected.high as number)}`;
  return [
    { says: `${name}, load hanging free: ${range}`, at },
    ...(slack && slack.value !== null ? [{ says: `of that gear: ${kg(s, slack.value)}` }] : []),
    ...(breaking ? [{ says: `while it is broken free: up to ${known(breaking)}` }] : []),
    { says: `stop at: ${stop.value === null ? known(stop) : kg(s, stop.value, 'down')}` },
  ];
}

const kg = (s: Snapshot, value: number, round: 'up' | 'down' = 'up'): string =>
  write(value, 'kg', { system: s.plan.units, round });
