// What is left between a crane's tip and the rigging at each of its positions, as the load hangs as drawn.
import { boxCorners } from '../../mechanics/hang/index.ts';
import { rotate, type Vec3 } from '../../mechanics/index.ts';
import { type BoundPlan, given, type Item } from '../../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../../quantities/derived.ts';
import type { Summed } from '../bodies.ts';
import type { GearTable } from '../gear.ts';
import { because, type Notes } from '../notes.ts';
import { limitOn } from '../rules.ts';
import type { GearUse, LoadResult } from '../types.ts';
import type { Hanging } from './hang.ts';

export interface HeadroomInput {
  readonly plan: BoundPlan;
  readonly hanging: Hanging;
  readonly loads: readonly (LoadResult & { readonly body: Summed })[];
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
  for (const position of cranes.flatMap((crane) => crane.children.filter((child) => child.keyword === 'position'))) if (position.clauses.has('tip height')) {
    const headroom = cranes.length > 1 ? open('m', [because('Which load hangs at this crane is not worked out.', position.at)]) : at(position, input);
    found.set(position, headroom);
    short(position, headroom, input);
  }
  return found;
}

function at(position: Item, { hanging, loads, gear, table }: HeadroomInput): Derived {
  const origin = { at: position.at };
  const [tip, lift] = [given(position, 'tip height'), given(position, 'lift height')];
  const causes: Cause[] = [tip, lift].flatMap((one) => (one.state === 'open' ? one.because : []));
  if (lift.state === 'absent') causes.push(because('The lift height is not stated.', position.at));
  if (position.clauses.has('stage')) causes.push(because('Headroom is worked out only as the load is drawn.', position.at));
  for (const { thing, legs, kind } of gear) if (legs.length && kind !== 'spreader' && kind !== 'lifting beam' && table.given(thing.item, 'length').state !== 'known' && table.given(thing.item, 'circumference').state !== 'known') causes.push(because(`${thing.name} has no length.`, thing.item.nameAt));
  const spans = spanOf(hanging, loads);
  if (!spans) causes.push(...(hanging.because.length ? hanging.because : [because('How high the hook stands over the load is not worked out.', position.at)]));
  if (causes.length || tip.state !== 'known' || lift.state !== 'known' || !spans) return open('m', unique(causes), origin);
  const block = hanging.built?.hooks.map((hook) => table.given(hook.item, 'length')).reduce((most, length) => (length.state === 'known' ? Math.max(most, length.quantity.high) : most), 0) ?? 0;
  const values = [tip.quantity.value, lift.quantity.value, spans.height, spans.rigging + block] as const;
  const loose = (tip.quantity.high - tip.quantity.low + lift.quantity.high - lift.quantity.low) / 2 + spans.loose;
  const left = values[0] - values[1] - values[2] - values[3];
  const inputs = ['tip height', 'lift height', 'load height', 'rigging length'].map((label, i) => ({ label, value: known(values[i] as number, 'm') }));
  return known(left, 'm', { formula: 'tip height - lift height - load height - rigging length', inputs, ...origin }, left - loose, left + loose);
}

/** Height of the load as it hangs, from its top to the hook, and how much the legs' tolerances may add, m. */
function spanOf({ built, solved }: Hanging, loads: HeadroomInput['loads']): { readonly height: number; readonly rigging: number; readonly loose: number } | null {
  if (!built || !solved) return null;
  const ends = built.bodies.flatMap(({ thing }, b): readonly (readonly number[] | null)[] => {
    if (thing.kind !== 'load') return [];
    const box = loads.find((load) => load.thing === thing)?.body.box;
    const place = solved.rest.bodies[b];
    if (!box || !place) return [null];
    const middle = box.min.map((low, i) => (low + (box.max[i] as number)) / 2) as unknown as Vec3;
    const half = box.max.map((high, i) => (high - (box.min[i] as number)) / 2) as unknown as Vec3;
    return [boxCorners(middle, half).map((corner) => rotate(place.rotation, corner)[2] + place.position[2])];
  });
  if (!ends.length || ends.includes(null)) return null;
  const heights = ends.flatMap((one) => one as readonly number[]);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const hook = Math.max(...built.model.anchors.map((anchor) => anchor.at[2]));
  return { height: high - low, rigging: hook - high, loose: built.edges.reduce((sum, one) => sum + one.run.tolerance, 0) };
}

/** Notes a position where the rigging does not fit under the tip. */
function short(position: Item, headroom: Derived, { plan, notes }: HeadroomInput): void {
  const rule = limitOn(plan, ['crane', 'position'], 'headroom', 0, 'least');
  if (headroom.value === null || (headroom.low as number) >= rule.value - 1e-9) return;
  const [tip, lift, load, rigging] = headroom.inputs.map((input) => input.value.value as number) as [number, number, number, number];
  const needed = lift + load + rigging + ((headroom.value as number) - (headroom.low as number));
  notes.add('clearance-short', position.clauses.get('tip height')?.[0]?.at ?? position.at, { position: position.names[0] ?? 'this position', needed, tip, limit: rule.value, rule: rule.name }, '', rule.at ? [{ at: rule.at, says: rule.name }] : []);
}
