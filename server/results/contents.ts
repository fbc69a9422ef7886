// Spaces inside hollow parts of which nothing says what is in them. A closed space leaves the weight open; one with open ends is worth a note.
import { closed, interior, type Shape, solid } from '../mechanics/index.ts';
import { fold, type Item, namesOf, type Thing, textOf } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { coversOf } from './covers.ts';
import type { Notes } from './notes.ts';
import { partOf } from './part.ts';
import { isLiquid, type Layout } from './place.ts';

const water = 1000; // kg/m3, what an unstated space is weighed with

/** Ends of vessels: one alone may be a bowl, but as a rule it closes something, so what is in it must be said. */
const heads = ['dished head', 'hemispherical head', 'conical head', 'pipe cap'];
const isHead = ({ item }: Thing): boolean => heads.some((head) => item.clauses.has(head));

/** What stands against an end of a pipe and lets nothing out: a head, a blind flange, or a flange that a blind one stands against. */
function shuts({ item, key }: Thing, things: readonly Thing[]): boolean {
  if (heads.some((head) => item.clauses.has(head))) return true;
  if (!isFlange(item)) return false;
  return textOf(item, 'form') === 'blind' || things.some((other) => besideWhat(other)?.key === key && isBlind(other));
}
/** The bore of a flange is too short to hold anything that the pipe on it does not: only a liquid that names it fills it. */
const isFlange = (item: Item): boolean => item.clauses.has('flange');
const isBlind = ({ item }: Thing): boolean => isFlange(item) && textOf(item, 'form') === 'blind';

/** What a thing stands against, and on which side of it. */
function besideWhat({ item }: Thing): { readonly key: string; readonly side: string } | null {
  const against = item.clauses.get('against')?.[0]?.value;
  return against?.kind === 'side' ? { key: fold(against.name.parts.at(-1)?.text ?? ''), side: against.axis } : null;
}

/** Notes each hollow part of a load of which nothing is said; returns why the weight is open where a space is closed. */
export function unstatedContents(layout: Layout, notes: Notes): ReadonlyMap<Thing, Cause> {
  const inLoad = layout.plan.names.kind('part').filter((thing) => thing.load === layout.load);
  const said = saidInside(inLoad, layout);
  const covered = coversOf(inLoad, layout);
  const open = new Map<Thing, Cause>();
  for (const thing of inLoad) {
    const { item } = thing;
    if (said.has(thing) || item.clauses.get('empty')?.[0]?.value || isLiquid(item) || isFlange(item)) continue;
    const part = partOf(item, layout.plan);
    const volume = part.kind === 'solid' && part.shape ? hollow(part.shape) : null;
    if (volume === null || !part.shape) continue;
    const count = layout.place(item).count ?? 1;
    const shut = closed(part.shape) || isHead(thing) || capped(thing, inLoad) || covered(thing);
    const facts = {
      part: thing.name,
      volume: volume * count,
      added: volume * count * water,
      closed: shut,
    };
    const cause = notes.add('contents-unstated', item.nameAt, facts, `Nothing says what is inside ${thing.name}.`);
    if (shut) open.set(thing, cause);
  }
  return open;
}

const spaces = new WeakMap<Shape, { readonly volume: number | null }>();

/** The space inside a shape, m3; null where it has none, or cannot be. */
function hollow(shape: Shape): number | null {
  let space = spaces.get(shape);
  if (!space) {
    const inside = interior(shape);
    space = { volume: inside && !('impossible' in solid(shape)) ? inside.volume : null };
    spaces.set(shape, space);
  }
  return space.volume;
}

/** Parts that a liquid is said to be inside of, alone or as part of an assembly. */
function saidInside(things: readonly Thing[], layout: Layout): ReadonlySet<Thing> {
  const said = new Set<Thing>();
  for (const liquid of things.filter((thing) => isLiquid(thing.item)))
    for (const name of namesOf(liquid.item, 'inside')) {
      const key = fold(name.parts.at(-1)?.text ?? '');
      for (const thing of things) if (thing.key === key || within(thing, key, layout)) said.add(thing);
    }
  return said;
}

const within = (thing: Thing, key: string, layout: Layout): boolean => {
  for (let owner = thing.owner; owner && owner !== layout.load; owner = owner.owner) if (owner.key === key) return true;
  return false;
};

/** A tube or pipe with a head or a blind flange set against each of its two ends is a vessel. */
function capped(thing: Thing, things: readonly Thing[]): boolean {
  const sides = new Set<string>();
  for (const other of things) {
    const beside = besideWhat(other);
    if (beside?.key === thing.key && shuts(other, things)) sides.add(beside.side);
  }
  return ['x', 'y', 'z'].some((axis) => sides.has(axis) && sides.has(`-${axis}`));
}
