// What is left between a crane's tip and the rigging at each of its positions, in the attitude of its stage, else as drawn.
import { type BoundPlan, fold, given, type Item, namesOf } from '../../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../../quantities/derived.ts';
import type { GearTable } from '../gear.ts';
import { because, type Notes } from '../notes.ts';
import { limitOn } from '../rules.ts';
import type { GearUse } from '../types.ts';
import type { Hanging } from './hang.ts';

export interface HeadroomInput {
  readonly plan: BoundPlan;
  readonly hanging: Hanging;
  readonly gear: readonly GearUse[];
  readonly table: GearTable;
  readonly notes: Notes;
}

/**
 * Headroom of every position that states its tip height: tip height - lift height (of the load's lowest point) - load height - rigging length,
 * m. Open where a piece of gear has no length, for each of them takes some.
 */
export function headrooms(input: HeadroomInput): ReadonlyMap<Item, Derived> {
  const found = new Map<Item, Derived>();
  const cranes = input.plan.items.filter((item) => item.keyword === 'crane' && item.file === input.plan.file);
  for (const position of cranes.flatMap((crane) => crane.children.filter((child) => child.keyword === 'position')))
    if (position.clauses.has('tip height')) {
      const headroom =
        cranes.length > 1
          ? open('m', [because('Which load hangs at this crane is not worked out.', position.at)])
          : at(position, input);
      found.set(position, headroom);
      short(position, headroom, input);
    }
  return found;
}

function at(position: Item, { hanging, gear, table }: HeadroomInput): Derived {
  const origin = { at: position.at };
  const [tip, lift] = [given(position, 'tip height'), given(position, 'lift height')];
  const causes: Cause[] = [tip, lift].flatMap((one) => (one.state === 'open' ? one.because : []));
  if (lift.state === 'absent') causes.push(because('The lift height is not stated.', position.at));
  for (const { thing, legs, kind } of gear)
    if (
      legs.length &&
      kind !== 'spreader' &&
      kind !== 'lifting beam' &&
      table.given(thing.item, 'length').state !== 'known' &&
      table.given(thing.item, 'circumference').state !== 'known'
    )
      causes.push(because(`${thing.name} has no length.`, thing.item.nameAt));
  const reach = reachIn(position, hanging, table);
  if ('because' in reach) causes.push(...reach.because);
  if (causes.length || tip.state !== 'known' || lift.state !== 'known' || 'because' in reach)
    return open('m', unique(causes), origin);
  const values = [tip.quantity.value, lift.quantity.value, reach.height, reach.rigging] as const;
  const loose = (tip.quantity.high - tip.quantity.low + lift.quantity.high - lift.quantity.low) / 2 + reach.loose;
  const left = values[0] - values[1] - values[2] - values[3];
  const inputs = ['tip height', 'lift height', 'load height', 'rigging length'].map((label, i) => ({
    label,
    value: known(values[i] as number, 'm'),
  }));
  return known(
    left,
    'm',
    { formula: 'tip height - lift height - load height - rigging length', inputs, ...origin },
    left - loose,
    left + loose,
  );
}

/** Height of what hangs, from its top to the upper end of the hook or block, and how much the tolerances of the legs may add, m. */
function reachIn(
  position: Item,
  hanging: Hanging,
  table: GearTable,
):
  | { readonly height: number; readonly rigging: number; readonly loose: number }
  | { readonly because: readonly Cause[] } {
  const [name] = namesOf(position, 'stage');
  const stage = name ? hanging.stages.find((one) => fold(one.name) === fold(name.parts.at(-1)?.text ?? '')) : null;
  const from = stage ?? hanging;
  if (name && !stage) return { because: [because('The stage of this position is not known.', position.at)] };
  if (from.because.length) return from;
  const below = from.loads.map((load) => load.below);
  if (!below.length || below.includes(null))
    return { because: [because('How high the hook stands over the load is not known.', position.at)] };
  const reaches = below.flatMap((one) => one as NonNullable<typeof one>);
  const block = ({ hook }: (typeof reaches)[number]): number => {
    const length = table.given(hook.item, 'length');
    return length.state === 'known' ? length.quantity.high : 0;
  };
  const lowest = Math.max(...reaches.map((one) => one.lowest + block(one)));
  const height = Math.max(...reaches.map((one) => one.lowest - one.highest));
  return {
    height,
    rigging: lowest - height,
    loose: (hanging.built?.edges ?? []).reduce((sum, one) => sum + one.run.tolerance, 0),
  };
}

/** Notes a position where the rigging does not fit under the tip. */
function short(position: Item, headroom: Derived, { plan, notes }: HeadroomInput): void {
  const rule = limitOn(plan, ['crane', 'position'], 'headroom', 0, 'least');
  if (headroom.value === null || (headroom.low as number) >= rule.value - 1e-9) return;
  const [tip, lift, load, rigging] = headroom.inputs.map((input) => input.value.value as number) as [
    number,
    number,
    number,
    number,
  ];
  const needed = lift + load + rigging + ((headroom.value as number) - (headroom.low as number));
  notes.add(
    'clearance-short',
    position.clauses.get('tip height')?.[0]?.at ?? position.at,
    { position: position.names[0] ?? 'this position', needed, tip, limit: rule.value, rule: rule.name },
    '',
    rule.at ? [{ at: rule.at, says: rule.name }] : [],
  );
}
