// Spaces inside hollow parts of which nothing says what is in them. A closed space leaves the weight open; one with open ends is worth a note.
import { closed, enclosed, interior, type Shape } from '../mechanics/index.ts';
import { fold, type Item, namesOf, textOf } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { Batch } from './batch.ts';
import { batchesOf, type Summed } from './bodies.ts';
import { coversOf } from './covers.ts';
import type { Notes } from './notes.ts';
import { isLiquid } from './place.ts';
import type { Solid } from './solid.ts';

const water = 1000; // kg/m3, what an unstated space is weighed with

/** Ends of vessels: one alone may be a bowl, but as a rule it closes something, so what is in it must be said. */
const heads = ['dished head', 'hemispherical head', 'conical head', 'pipe cap'];
const isHead = (item: Item): boolean => heads.some((head) => item.clauses.has(head));

/** The bore of a flange is too short to hold anything that the pipe on it does not: only a liquid that names it fills it. */
const isFlange = (item: Item): boolean => item.clauses.has('flange');
const isBlind = (item: Item): boolean => isFlange(item) && textOf(item, 'form') === 'blind';

/** Notes each hollow part of a load of which nothing is said; returns why the weight is open where a space is closed. */
export function unstatedContents(body: Summed, notes: Notes): readonly Cause[] {
  const said = keysSaid(body);
  const found = hollowIn(body, said);
  if (!found.length) return [];
  const against = shutIn(body);
  const covered = coversOf(solidsIn(body));
  return found.flatMap((one) => {
    const { item, name, part, rests } = one;
    const shape = part.shape as Shape;
    const { volume, fillable } = hollow(shape) as Space;
    const space = volume * (rests?.placed.count ?? 1) * (rests?.frames.length ?? 1);
    const shut = closed(shape) || isHead(item) || capped(one, against) || covered(one);
    const facts = { part: name, volume: space, added: space * water, closed: shut, fillable };
    const cause = notes.add('contents-unstated', item.nameAt, facts, `Nothing says what is inside ${name}.`);
    return shut ? [cause] : [];
  });
}

/** Hollow parts that nothing is said of, in the order of their lines. */
const hollowIn = ({ pieces }: Pick<Summed, 'pieces'>, said: ReadonlySet<string>): readonly Solid[] =>
  pieces.flatMap((piece): readonly Solid[] => {
    if (!(piece instanceof Batch)) return said.has(piece.thing.key) ? [] : hollowIn(piece, said);
    return hollowOf(piece).filter(({ name }) => !said.size || !said.has(fold(name)));
  });

const kept = new WeakMap<Batch, readonly Solid[]>();

/** Those in a batch that do not say themselves that they are empty; kept by the batch. */
function hollowOf(batch: Batch): readonly Solid[] {
  const known = kept.get(batch);
  if (known) return known;
  const found = batch.solids.filter(
    ({ item, part: { kind, shape } }) =>
      kind === 'solid' &&
      shape &&
      hollow(shape) !== null &&
      !isLiquid(item) &&
      !isFlange(item) &&
      !item.clauses.get('empty')?.[0]?.value,
  );
  kept.set(batch, found);
  return found;
}

interface Space {
  readonly volume: number; // m3
  readonly fillable: boolean; // a liquid finds its level in it
}

const spaces = new WeakMap<Shape, { readonly space: Space | null }>();

/** The space inside the shape of a solid part; null where it has none. Kept by the shape. */
function hollow(shape: Shape): Space | null {
  const known = spaces.get(shape);
  if (known) return known.space;
  const volume = enclosed(shape);
  const space = volume === null ? null : { volume, fillable: interior(shape) !== null };
  spaces.set(shape, { space });
  return space;
}

const solidsIn = (body: Summed): readonly Solid[] => batchesOf(body).flatMap(({ solids }) => solids);

/** Names of parts, or of what they stand in, that a liquid is said to be inside of. */
function keysSaid(body: Summed): ReadonlySet<string> {
  const liquids = batchesOf(body).flatMap((batch) =>
    batch.rests ? [] : batch.solids.filter(({ item }) => isLiquid(item)),
  );
  const names = liquids.flatMap(({ item }) => namesOf(item, 'inside'));
  return new Set(names.map((name) => fold(name.parts.at(-1)?.text ?? '')));
}

/** By the name of what they are set against: sides that a head shuts, a blind flange, or a flange that a blind one stands against. */
function shutIn(body: Summed): ReadonlyMap<string, ReadonlySet<string>> {
  const beside = solidsIn(body).flatMap(({ item, name }) => {
    const against = item.clauses.get('against')?.[0]?.value;
    const key = against?.kind === 'side' ? fold(against.name.parts.at(-1)?.text ?? '') : null;
    return key !== null && against?.kind === 'side' ? [{ item, name: fold(name), key, side: against.axis }] : [];
  });
  const blinded = new Set(beside.filter(({ item }) => isBlind(item)).map(({ key }) => key));
  const sides = new Map<string, Set<string>>();
  for (const { item, name, key, side } of beside)
    if (isHead(item) || isBlind(item) || (isFlange(item) && blinded.has(name)))
      sides.set(key, (sides.get(key) ?? new Set()).add(side));
  return sides;
}

/** A tube or pipe with a head or a blind flange set against each of its two ends is a vessel; led along corners, its ends may face any two sides. */
function capped({ item, name }: Solid, against: ReadonlyMap<string, ReadonlySet<string>>): boolean {
  const sides = against.get(fold(name)) ?? new Set();
  if (item.clauses.has('along')) return sides.size > 1;
  return ['x', 'y', 'z'].some((axis) => sides.has(axis) && sides.has(`-${axis}`));
}
