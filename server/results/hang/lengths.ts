// How long an edge is, how stiff, and where along it its items' weights sit.
import type { Item, Thing } from '../../plan/index.ts';
import type { GearTable } from '../gear.ts';
import type { GearUse } from '../types.ts';
import type { Edge } from './network.ts';

export interface Run {
  readonly length: number; // unstretched, m
  readonly tolerance: number; // ± m, only where stated
  readonly stiffness: number | null; // EA, N; null: rigid
  readonly assumed: boolean; // stiffness assumed by construction
  readonly slingWeight: number; // kg, spread evenly
  readonly upper: number; // kg, of other items, at the top
  readonly lower: number; // kg, of other items, at the bottom
}

/** Assumed stiffness EA (N) where the plan states none: wire rope 4.0e10 d², chain 8.5e10 d², web and round slings WLL / 0.03, fibre rope and mesh WLL / 0.08; else 300 WLL. From memory of stretch tables; a determinate rig does not depend on it. */
function assumedStiffness(thing: Thing, use: GearUse | undefined, table: GearTable): number | null {
  const diameter = table.given(thing.item, 'diameter');
  const d = diameter.state === 'known' ? diameter.quantity.value : null;
  if (table.clause(thing.item, 'wire rope') && d) return 4.0e10 * d * d;
  if (table.clause(thing.item, 'chain') && d) return 8.5e10 * d * d;
  const rated = use?.capacity.value ? use.capacity.value * 9.80665 : null;
  if (!rated) return null;
  if (table.clause(thing.item, 'web') || table.clause(thing.item, 'round')) return rated / 0.03;
  if (table.clause(thing.item, 'fibre rope') || table.clause(thing.item, 'mesh')) return rated / 0.08;
  return 300 * rated;
}

/** The run of an edge, or the item whose figure is missing. `hung` is all that hangs, in N, for stiffness where nothing is known. */
export function runOf(edge: Edge, table: GearTable, uses: ReadonlyMap<Thing, GearUse>, hung: number): Run | { readonly missing: string; readonly what: string } {
  let length = 0;
  let tolerance = 0;
  let compliance = 0;
  let assumed = false;
  let slingWeight = 0;
  const lumps: { at: number; weight: number }[] = [];
  const things = edge.bottom.kind === 'gear' ? [...edge.items, edge.bottom.thing] : edge.items;
  for (const thing of things) {
    const part = lengthOf(thing, edge, table);
    if ('missing' in part) return part;
    const weight = uses.get(thing)?.weight.value ?? null;
    if (weight === null) return { missing: thing.name, what: 'weight' };
    if (thing.item.keyword === 'sling') {
      const stated = table.given(thing.item, 'stiffness');
      if (stated.state === 'open') return { missing: thing.name, what: 'stiffness' };
      const ea = (stated.state === 'known' ? stated.quantity.value : (assumedStiffness(thing, uses.get(thing), table) ?? 100 * hung)) * part.parts;
      assumed ||= stated.state !== 'known';
      compliance += part.length / ea;
      slingWeight += weight;
    } else if (thing !== edge.bottom.thing) lumps.push({ at: length + part.length / 2, weight });
    length += part.length;
    tolerance += part.tolerance;
  }
  const shares = lumps.map((lump) => ({ weight: lump.weight, down: length > 0 ? lump.at / length : 0.5 }));
  return {
    length, tolerance, assumed, slingWeight,
    stiffness: compliance > 0 ? length / compliance : null,
    upper: shares.reduce((sum, one) => sum + one.weight * (1 - one.down), 0),
    lower: shares.reduce((sum, one) => sum + one.weight * one.down, 0),
  };
}

/** What one item adds to the run: a choker spends its girth, a doubled sling half its length, a hoist its setting. */
function lengthOf(thing: Thing, edge: Edge, table: GearTable): { readonly length: number; readonly tolerance: number; readonly parts: number } | { readonly missing: string; readonly what: string } {
  const { item } = thing;
  const stated = table.given(item, 'length');
  if (stated.state === 'open') return { missing: thing.name, what: 'length' };
  const half = stated.state === 'known' ? (stated.quantity.high - stated.quantity.low) / 2 : 0;
  if (item.keyword === 'sling') {
    const around = table.given(item, 'circumference');
    const own = stated.state === 'known' ? stated.quantity.value : around.state === 'known' ? around.quantity.value / 2 : null;
    if (own === null) return { missing: thing.name, what: 'length' };
    if (edge.hitch === 'doubled') return { length: own / 2, tolerance: half / 2, parts: 2 };
    if (edge.hitch !== 'choker') return { length: own, tolerance: half, parts: 1 };
    const girth = girthOf(edge);
    return girth === null ? { missing: thing.name, what: '`around`' } : { length: own - girth, tolerance: half, parts: 1 };
  }
  const set = adjustable(item, table);
  if (set === null) return { missing: thing.name, what: '`set`' };
  return { length: (stated.state === 'known' ? stated.quantity.value : 0) + set, tolerance: half, parts: 1 };
}

/** What a choker spends: pi times what it goes round, or the `wrap` said. */
function girthOf(edge: Edge): number | null {
  for (const leg of edge.legs) {
    const wrap = leg.item.clauses.get('wrap')?.[0]?.value;
    if (wrap?.kind === 'quantity') return wrap.quantity.value;
    const around = leg.item.clauses.get('around')?.[0]?.value;
    if (around?.kind === 'quantity') return Math.PI * around.quantity.value;
  }
  return null;
}

const adjusters = new Set(['turnbuckle', 'chain hoist', 'lever hoist']);

/** How far a turnbuckle or hoist is let out; null where it could be, but nothing says how far. */
function adjustable(item: Item, table: GearTable): number | null {
  if (!adjusters.has(item.keyword)) return 0;
  const set = table.given(item, 'set');
  const most = table.given(item, 'take-up');
  if (set.state === 'known') return most.state === 'known' && set.quantity.value > most.quantity.value ? null : set.quantity.value;
  return set.state === 'absent' && most.state === 'absent' ? 0 : null;
}
