// Gear outside the legs that hangs all the same: from a load, a pick, other gear or a hook, or nobody says from what.
import { type BoundPlan, fold, namesOf, type Thing } from '../../plan/index.ts';
import { type Cause, unique } from '../../quantities/derived.ts';
import type { GearUse } from '../types.ts';

/** Weights in kg, at the heavy end of their tolerance. */
export interface HungGear {
  readonly on: ReadonlyMap<Thing, number>; // by what carries it
  readonly anywhere: number; // nothing says where: every hook counts it
  readonly because: readonly Cause[]; // not empty: what hangs beside the legs is not known
}

export function hungGear(gear: readonly GearUse[], plan: BoundPlan): HungGear {
  const beside = gear.filter(({ hangs }) => hangs === 'hangs from' || hangs === 'left over');
  const uses = new Map(beside.map((use) => [use.thing, use]));
  const on = new Map<Thing, number>();
  let anywhere = 0;
  for (const use of beside) {
    const kg = use.weight.high;
    if (kg === null) continue;
    const carrier = carrierOf(use, uses, plan);
    if (carrier) on.set(carrier, (on.get(carrier) ?? 0) + kg);
    else anywhere += kg;
  }
  return { on, anywhere, because: unique(beside.flatMap(({ weight }) => weight.because)) };
}

/** What a piece hangs from at last, where that hangs from something itself; null: nothing says. */
export function carrierOf(use: GearUse, uses: ReadonlyMap<Thing, GearUse>, plan: BoundPlan): Thing | null {
  const seen = new Set<Thing>();
  for (let one: GearUse | undefined = use; one && !seen.has(one.thing); ) {
    seen.add(one.thing);
    const key = fold(namesOf(one.thing.item, 'hangs from')[0]?.parts.at(-1)?.text ?? '');
    const [found] = (['gear', 'pick', 'load', 'point'] as const).flatMap((kind) => plan.names.find(kind, key));
    if (!found) return null;
    const next = uses.get(found);
    if (!next) return found;
    one = next;
  }
  return null;
}
