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

/** Why a run has no length: a figure that is missing, or a sling that is too short for what it goes round. */
export interface NoRun {
  readonly missing: string;
  readonly what: string;
  readonly short?: true;
}

/** What a run is worked out from beside its edge. */
export interface Lengths {
  readonly table: GearTable;
  readonly uses: ReadonlyMap<Thing, GearUse>;
  readonly hung: number; // all that hangs, N: for stiffness where nothing is known
  /** Straight distance between picks of one load, m; null where it is not known. */
  readonly apart: (a: Thing, b: Thing) => number | null;
}

/** The run of an edge, or the item whose figure is missing. */
export function runOf(edge: Edge, from: Lengths): Run | NoRun {
  const { table, uses, hung } = from;
  let length = 0;
  let tolerance = 0;
  let compliance = 0;
  let assumed = false;
  let slingWeight = 0;
  const lumps: { at: number; weight: number }[] = [];
  const spent = spentOf(edge, from.apart);
  if (typeof spent !== 'number') return spent;
  let left = spent;
  const things = edge.bottom.kind === 'gear' && !edge.over.length ? [...edge.items, edge.bottom.thing] : edge.items;
  for (const thing of things) {
    const part = lengthOf(thing, edge, table, left);
    if ('missing' in part) return part;
    if (thing.item.keyword === 'sling') left = 0;
    const weight = uses.get(thing)?.weight.high ?? null;
    if (weight === null) return { missing: thing.name, what: 'weight' };
    if (thing.item.keyword === 'sling') {
      const stated = table.given(thing.item, 'stiffness');
      if (stated.state === 'open') return { missing: thing.name, what: 'stiffness' };
      const ea =
        (stated.state === 'known'
          ? stated.quantity.value
          : (assumedStiffness(thing, uses.get(thing), table) ?? 100 * hung)) * part.parts;
      assumed ||= stated.state !== 'known';
      compliance += part.length / ea;
      slingWeight += edge.halved ? weight / 2 : weight;
    } else if (thing !== edge.bottom.thing) lumps.push({ at: length + part.length / 2, weight });
    length += part.length;
    tolerance += part.tolerance;
  }
  const down = (at: number): number => (length > 0 ? at / length : 0.5);
  // What a run passes over takes nothing of its fittings: they hang at the nearer end.
  const shares = lumps.map((lump) => ({
    weight: lump.weight,
    down: edge.over.length ? Math.round(down(lump.at)) : down(lump.at),
  }));
  return {
    length,
    tolerance,
    assumed,
    slingWeight,
    stiffness: compliance > 0 ? length / compliance : null,
    upper: shares.reduce((sum, one) => sum + one.weight * (1 - one.down), 0),
    lower: shares.reduce((sum, one) => sum + one.weight * one.down, 0),
  };
}

/** What one item adds to the run: a sling its length less what is spent on what it goes round, halved or doubled; a hoist its setting. */
function lengthOf(
  thing: Thing,
  edge: Edge,
  table: GearTable,
  spent: number,
): { readonly length: number; readonly tolerance: number; readonly parts: number } | NoRun {
  const { item } = thing;
  const stated = table.given(item, 'length');
  if (stated.state === 'open') return { missing: thing.name, what: 'length' };
  const half = stated.state === 'known' ? (stated.quantity.high - stated.quantity.low) / 2 : 0;
  if (item.keyword === 'sling') {
    const own = ownLength(thing, table);
    if (!own) return { missing: thing.name, what: 'length' };
    const parts = partsOf(edge);
    const length = (own.length - spent) / (edge.halved ? 2 : parts);
    if (!(length > 0)) return { missing: thing.name, what: 'length left for its leg', short: true };
    return { length, tolerance: own.tolerance / (edge.halved ? 2 : parts), parts };
  }
  const set = adjustable(item, table);
  if (set === null) return { missing: thing.name, what: '`set`' };
  return { length: (stated.state === 'known' ? stated.quantity.value : 0) + set, tolerance: half, parts: 1 };
}

/** A sling bearing to bearing: its length, of an endless one half its circumference. */
function ownLength({ item }: Thing, table: GearTable): { readonly length: number; readonly tolerance: number } | null {
  for (const [word, share] of [
    ['length', 1],
    ['circumference', 0.5],
  ] as const) {
    const given = table.given(item, word);
    if (given.state === 'known')
      return {
        length: given.quantity.value * share,
        tolerance: ((given.quantity.high - given.quantity.low) / 2) * share,
      };
  }
  return null;
}

/** How many parts of the sling lie side by side along the run and share its pull: two in a doubled sling and in a basket that comes back up to its own eye. */
export const partsOf = (edge: Edge): 1 | 2 =>
  edge.hitch === 'doubled' || (edge.hitch === 'basket' && !edge.halved && !edge.over.length) ? 2 : 1;

/** What of the sling lies on the load and is in no leg, m: a choker spends pi times `around`, a basket half that, or the `wrap` said; a basket over picks lies straight through them. */
function spentOf(edge: Edge, apart: (a: Thing, b: Thing) => number | null): number | NoRun {
  if (!edge.halved && !edge.over.length && edge.hitch !== 'choker' && edge.hitch !== 'basket') return 0;
  const said = wrapOf(edge);
  if (said !== null && typeof said !== 'number') return said;
  const lies = edge.under.length
    ? edge.under
    : edge.over.map((node) => node.thing).filter((thing) => thing.kind === 'pick');
  const spans = lies
    .slice(1)
    .map((pick, i) => (said !== null || edge.under.length ? apart(lies[i] as Thing, pick) : 0));
  const gap = spans.indexOf(null);
  if (gap >= 0) return { missing: lies[gap + 1]?.name ?? '', what: 'place that is known' };
  const through = spans.reduce<number>((sum, span) => sum + (span ?? 0), 0);
  if (edge.hitch === 'choker' && said === null)
    return { missing: edge.items.find((thing) => thing.item.keyword === 'sling')?.name ?? '', what: '`around`' };
  if (edge.under.length) return said ?? through;
  return said === null ? 0 : said - through;
}

/** The `wrap` of an edge, or what its hitch spends on what it goes `around`; null where neither is said. */
function wrapOf(edge: Edge): number | NoRun | null {
  for (const { item } of edge.legs)
    for (const [word, times] of [
      ['wrap', 1],
      ['around', edge.hitch === 'choker' ? Math.PI : Math.PI / 2],
    ] as const) {
      const clause = item.clauses.get(word)?.[0];
      if (clause?.value?.kind === 'quantity') return clause.value.quantity.value * times;
      if (clause)
        return {
          missing: edge.items.find((thing) => thing.item.keyword === 'sling')?.name ?? '',
          what: `\`${word}\` that is known`,
        };
    }
  return null;
}

/** Items whose length can be changed where they hang. */
export const adjusters: ReadonlySet<string> = new Set(['turnbuckle', 'chain hoist', 'lever hoist']);

/** How far a turnbuckle or hoist is let out; null where it could be, but nothing says how far. */
function adjustable(item: Item, table: GearTable): number | null {
  if (!adjusters.has(item.keyword)) return 0;
  const set = table.given(item, 'set');
  const most = table.given(item, 'take-up');
  if (set.state === 'known')
    return most.state === 'known' && set.quantity.value > most.quantity.value ? null : set.quantity.value;
  return set.state === 'absent' && most.state === 'absent' ? 0 : null;
}
