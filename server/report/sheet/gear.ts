// The section "Gear that hangs": every item between hook and load with its weight, what it may carry and the legs it is in.
import { sum } from '../../quantities/index.ts';
import type { GearUse } from '../../results/types.ts';
import { type Context, section } from './context.ts';
import { figure, row, unitAt } from './figures.ts';
import type { Row, Section } from './types.ts';
import { quoted } from './written.ts';

export function gearSection(context: Context): readonly Section[] {
  const { gear } = context.snapshot.results;
  const used = gear.filter(({ hangs, thing }) => hangs !== null || !thing.fromLibrary);
  if (!used.length) return [];
  const hanging = used.filter(({ hangs }) => hangs !== null);
  const idle = used.filter(({ hangs }) => hangs === null);
  return section('gear', 'Gear that hangs', [
    {
      kind: 'table',
      caption: 'Each item that hangs, with its weight and what it may carry in one straight vertical leg',
      columns: [
        { title: 'Item' },
        { title: 'Kind' },
        { title: 'Count', figures: true },
        { title: 'Each', figures: true },
        { title: 'Weight', figures: true },
        { title: 'Capacity', figures: true },
        { title: 'Hangs' },
      ],
      rows: [...groups(hanging).map((group) => gearRow(context, group)), total(context)],
    },
    ...(idle.length ? [spare(idle)] : []),
  ]);
}

/** Items of one statement that hang alike stand in one row. */
function groups(gear: readonly GearUse[]): readonly (readonly GearUse[])[] {
  const found = new Map<string, GearUse[]>();
  const statements = new Map<unknown, number>();
  for (const use of gear) {
    const { item } = use.thing;
    if (!statements.has(item)) statements.set(item, statements.size);
    const key = [statements.get(item), use.hangs, use.crane, use.capacity.value].join(' ');
    found.set(key, [...(found.get(key) ?? []), use]);
  }
  return [...found.values()];
}

function gearRow({ system }: Context, group: readonly GearUse[]): Row {
  const first = group[0] as GearUse;
  const count = group.reduce((sum, { count }) => sum + count, 0);
  const weight =
    group.length === 1
      ? first.weight
      : sum(
          group.map((use) => use.weight),
          'kg',
        );
  return row(
    [first.thing.item.at],
    group.map(({ thing }) => quoted(thing.name)).join(', '),
    first.kind,
    String(count),
    figure(first.each, system),
    figure(weight, system),
    figure(first.capacity, system, 'down', unitAt(first.capacity)),
    hangs(group),
  );
}

function hangs(group: readonly GearUse[]): string {
  const { hangs: way, crane } = group[0] as GearUse;
  const legs = [...new Set(group.flatMap((use) => use.legs))].length;
  const where =
    way === 'leg'
      ? legs === 1
        ? 'in one leg'
        : `in ${legs} legs`
      : way === 'left over'
        ? 'in no leg, counted all the same'
        : 'hangs from another thing';
  return crane ? `${where}, on ${quoted(crane)}` : where;
}

const total = ({ snapshot, system }: Context): Row => ({
  ...row([], 'All gear that hangs', '', '', '', figure(snapshot.results.totals.rigging, system), '', ''),
  total: true,
});

/** Named, since a reviewer must see what somebody decided not to count. */
const spare = (idle: readonly GearUse[]) => ({
  kind: 'table' as const,
  caption: 'Lies ready and is not counted (spare)',
  columns: [{ title: 'Item' }, { title: 'Kind' }],
  rows: groups(idle).map((group) =>
    row(
      [(group[0] as GearUse).thing.item.at],
      group.map(({ thing }) => quoted(thing.name)).join(', '),
      (group[0] as GearUse).kind,
    ),
  ),
});
