// How an item is turned, and where its copies stand: the clauses that parts, assemblies and cut-outs share.
import {
  inCircle,
  inSteps,
  laid,
  multiply,
  type Placement,
  type ShapeKind,
  still,
  turn,
  type Vec3,
} from '../mechanics/index.ts';
import { given, type Item } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { shapeNames } from '../vocabulary/index.ts';
import { because, notYet } from './notes.ts';
import { bodyOf } from './pipework/types.ts';

/** How an item is turned: `axis` first, then the turns as written. Angles that could not be read leave it unturned; the item is open then. */
export function rotationOf(item: Item): Placement['R'] {
  const axis = item.clauses.get('axis')?.[0]?.value;
  let R = axis?.kind === 'axis' ? laid(ownKind(item), axis.axis) : still.R;
  for (const clause of item.clauses.get('turn') ?? [])
    if (clause.value?.kind === 'turn') R = multiply(turn(clause.value.angle.value, clause.value.axis), R);
  return R;
}

/** The kind of body an item is; null for assemblies and items of known weight. */
function ownKind(item: Item): ShapeKind | null {
  const name = shapeNames.find((one) => item.clauses.has(one) && !(one === 'hole' && item.keyword === 'part'));
  if (name === 'rope' || name === 'chain') return 'section'; // stretched out along x like one
  return !name || name === 'item' || name === 'liquid' ? null : bodyOf(name);
}

/** Copies by `count`, `every` and `circle`; null where they are not said to stand anywhere. */
export function copiesOf(item: Item, first: Placement): readonly Placement[] | null {
  const count = countOf(item);
  if (count === null) return null;
  const circle = item.clauses.get('circle')?.[0];
  if (circle)
    return circle.value?.kind === 'circle'
      ? inCircle(first, circle.value.diameter.value, circle.value.axis, count)
      : null;
  if (count === 1) return [first];
  const every = pointOf(item, 'every');
  return every === null || every === 'open' ? null : inSteps(first, every, count);
}

/** How many copies; null where `count` could not be read. */
export function countOf(item: Item): number | null {
  const count = given(item, 'count');
  return count.state === 'absent' ? 1 : count.state === 'known' ? count.quantity.value : null;
}

/** Why the number of copies is not known. */
export function countOpen(item: Item, name: string): Cause {
  const clause = item.clauses.get('count')?.[0];
  return clause?.value?.kind === 'unknown'
    ? notYet(`How many of ${name} there are is`, clause.at)
    : because(`How many of ${name} there are is not known.`, item.at);
}

/** A point clause whose coordinates are all known; null where it is not written. */
export function pointOf(item: Item, word: string): Vec3 | null | 'open' {
  const clause = item.clauses.get(word)?.[0];
  if (!clause) return null;
  if (clause.value?.kind !== 'point') return 'open';
  const cells = clause.value.at.map((cell) => (cell && typeof cell !== 'string' ? cell.value : null));
  return cells.includes(null) ? 'open' : (cells as unknown as Vec3);
}
