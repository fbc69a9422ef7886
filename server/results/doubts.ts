// What about a load's evidence is worth a second look: readings that leave things unsaid, centres that do not agree or are assumed, weights that no size fits.
import type { Box } from '../mechanics/index.ts';
import { childrenOf, type Item, namesOf, type Thing, textOf } from '../plan/index.ts';
import type { Derived } from '../quantities/derived.ts';
import { type Evidence, readings } from '../vocabulary/index.ts';
import type { Summed } from './bodies.ts';
import type { Notes } from './notes.ts';
import { isLiquid } from './place.ts';
import type { Candidate, LoadResult, ResultFacts } from './types.ts';

/** Densities (kg/m3) between which the weight of a thing in its outside box is believed: below it is lighter than cork, above heavier than tungsten. Handbook figures. */
const cork = 120;
const tungsten = 19_250;
/** An empty frame fills little of its box; only far below cork a weight is doubted. Judgement. */
const emptiness = 30;
/** Longest sides (m) between which a drawing is believed to be in the unit stated. Judgement. */
const shortDrawing = 0.025;
const longDrawing = 100;
/** Centres of items below this share of the load hardly move anything. Judgement. */
const small = 0.1;

const states = /\b(dry|empty|drained|net|without (?:contents|oil|water))\b/i;

/** What a figure leaves unsaid, in words, and the clause that would say it. */
export type Unsaid = ResultFacts['reading-unclear']['missing'][number];

/** What a reading, a paper, or a figure that may be older than the load as it is leaves unsaid. */
export function unclearReading(item: Item, candidate: Candidate, modified: string | null): readonly Unsaid[] {
  const by = candidate.evidence as Evidence | null;
  const has = (clause: string) => item.clauses.has(clause);
  const reading = by !== null && readings.includes(by);
  const tolerance =
    has('accuracy') ||
    (candidate.weight.value !== null && (candidate.weight.low as number) < (candidate.weight.high as number));
  const [, kind] = netOrGross.exec(textOf(item, 'state') ?? '') ?? [];
  const all: readonly (readonly [boolean, string, string])[] = [
    [by === 'shipping paper' && !has('state'), 'whether net, gross or as shipped', 'state'],
    [reading && !has('tare'), 'what hung on it or stood with it', 'tare'],
    [
      !reading && kind !== undefined && !has('tare') && !has('without'),
      `what packing or carriage is in the ${kind} weight, and what of it is lifted`,
      'tare',
    ],
    [reading && !has('state') && !has('without'), 'with what contents', 'state'],
    [reading && !tolerance, 'how accurate it is', 'accuracy'],
    [reading && !has('dated'), 'when it was read', 'dated'],
    ...(modified === null ? [] : aged(item, modified, reading)),
  ];
  return all.flatMap(([missing, words, clause]) => (missing ? [{ words, clause }] : []));
}

const netOrGross = /\b(net|gross)\b/i;

/** A figure from before the load was changed, or of nobody knows when, says nothing of the change unless it names what is not in it. */
function aged(item: Item, modified: string, reading: boolean): readonly (readonly [boolean, string, string])[] {
  const dated = textOf(item, 'dated');
  const named = item.clauses.has('without');
  return [
    [dated === null && !reading && !named, `whether it is older than the change of ${modified}`, 'dated'],
    [isOlder(item, modified), `whether the change of ${modified} is in it, for it is dated ${dated}`, 'without'],
  ];
}

function isOlder(item: Item, modified: string | null): boolean {
  const dated = textOf(item, 'dated');
  return modified !== null && dated !== null && dated < modified && !item.clauses.has('without');
}

/** A figure said to be dry or net while a liquid of the plan is neither in it nor named `without`: the liquids' parts, to be added. */
export function leftOut(stated: Item, body: Summed): readonly Thing[] {
  const state = textOf(stated, 'state');
  if (!state || !states.test(state)) return [];
  const named = new Set(
    namesOf(stated, 'without').map((name) => (name.parts.at(-1)?.text ?? '').toLowerCase().replace(/\s+/g, '')),
  );
  const inside = (one: Summed): readonly Summed[] => (one.part ? [one] : one.bodies.flatMap(inside));
  return inside(body)
    .filter(
      (one) =>
        isLiquid(one.thing.item) && !named.has(one.thing.key) && !(one.thing.owner && named.has(one.thing.owner.key)),
    )
    .map((one) => one.thing);
}

/** Doubts about one load, noted once everything about it is known. Returns the centre that does not agree with the one used, if there is one. */
export function doubts(
  load: Pick<LoadResult, 'thing' | 'candidates' | 'cog'> & { readonly body: Summed },
  centres: readonly { readonly name: string; readonly at: Candidate['at']; readonly cog: readonly Derived[] }[],
  span: number | null,
  limit: number,
  notes: Notes,
): readonly Derived[] | null {
  const lighter = notes.problems.some((problem) => problem.slug === 'measured-lighter');
  const modified = textOf(load.thing.item, 'modified');
  for (const candidate of load.candidates) {
    const item = [...childrenOf(load.thing.item, 'stated'), ...childrenOf(load.thing.item, 'weighed')].find(
      (one) => one.at === candidate.at,
    );
    if (!item) continue;
    const by = candidate.evidence as Evidence | null;
    const reading = by !== null && readings.includes(by);
    const missing = lighter && reading ? [] : unclearReading(item, candidate, modified);
    if (missing.length)
      notes.add(
        'reading-unclear',
        candidate.at,
        { reading: reading ? 'reading' : (by ?? 'figure'), missing, older: isOlder(item, modified) },
        '',
      );
  }
  assumed(load.body, load.body.weight.value, notes);
  implausible(load.thing, load.body, notes);
  return disagreeing(load.thing, centres, span, limit, notes);
}

/** Two centres further apart than the agreement, as a share of the span of the picks. */
function disagreeing(
  load: Thing,
  centres: readonly { readonly name: string; readonly at: Candidate['at']; readonly cog: readonly Derived[] }[],
  span: number | null,
  limit: number,
  notes: Notes,
): readonly Derived[] | null {
  if (!span) return null;
  for (const [i, a] of centres.entries())
    for (const b of centres.slice(i + 1)) {
      const apart = Math.hypot(
        ...[0, 1, 2].map(
          (axis) => (a.cog[axis]?.value ?? b.cog[axis]?.value ?? 0) - (b.cog[axis]?.value ?? a.cog[axis]?.value ?? 0),
        ),
      );
      if (!(apart > limit * span)) continue;
      notes.add(
        'cog-disagrees',
        a.at,
        {
          load: load.name,
          a: a.name,
          b: b.name,
          pointA: point(a.cog),
          pointB: point(b.cog),
          distance: apart,
          limit: limit * span,
        },
        '',
        [{ at: b.at, says: b.name }],
      );
      return b.cog;
    }
  return null;
}
const point = (cog: readonly Derived[]): readonly (number | null)[] => cog.map((axis) => axis.value);

/** Bought-in items and spaces counted as full whose weight counts and whose centre nobody states. */
function assumed(body: Summed, whole: number | null, notes: Notes): void {
  for (const one of body.bodies) assumed(one, whole, notes);
  const { item } = body.thing;
  const weight = body.weight.value;
  const { part } = body;
  const bound = part?.shapeName === 'envelope';
  if (!bound && (part?.kind !== 'item' || part.point || item.clauses.has('centre'))) return;
  if (weight === null || !whole || weight < small * whole) return;
  const size = item.clauses.get(bound ? 'envelope' : 'size')?.[0]?.value;
  const half = size?.kind === 'size' ? Math.max(...size.sides.map((side) => side.value)) / 2 : 0;
  notes.add('centre-assumed', item.nameAt, { item: body.thing.name, distance: half, bound }, '');
}

/** A drawing whose longest side is hardly that of anything lifted: its unit is doubted. */
function drawnInAnotherUnit({ part, thing: { item, name }, working }: Summed, notes: Notes): void {
  const weight = working?.each.value ?? null;
  if (part?.shape?.kind !== 'mesh' || weight === null) return;
  const { min, max } = part.shape;
  const longest = Math.max(...max.map((end, i) => end - (min[i] as number)));
  if (longest < shortDrawing || longest > longDrawing)
    notes.add('weight-implausible', item.nameAt, { item: name, weight, longest, unit: textOf(item, 'unit') ?? '' }, '');
}

/** Items whose weight does not go with the box they are said to fill. */
function implausible(load: Thing, body: Summed, notes: Notes): void {
  for (const one of body.bodies) implausible(load, one, notes);
  drawnInAnotherUnit(body, notes);
  if (body.part?.kind !== 'item' || body.part.point || !body.box || body.weight.value === null) return;
  const size = body.thing.item.clauses.get('size')?.[0]?.value;
  const each = body.working?.each.value ?? null;
  if (size?.kind !== 'size' || each === null) return;
  const volume = size.sides.reduce((product, side) => product * side.value, 1);
  const density = volume > 0 ? each / volume : Number.POSITIVE_INFINITY;
  if (density > tungsten || (density < emptiness && each > 0))
    notes.add(
      'weight-implausible',
      body.thing.item.nameAt,
      {
        item: body.thing.name,
        weight: each,
        size: sizeText(body.thing.item),
        density,
        like: density > tungsten ? 'heavier than tungsten' : `lighter than a quarter of cork (${cork} kg/m3)`,
      },
      '',
    );
}

const sizeText = (item: Item): string => {
  const at = item.clauses.get('size')?.[0]?.valueAt;
  return at ? at.row.text.slice(at.from, at.to) : '';
};

/** Distance between the picks that lie furthest apart in plan; null with fewer than two. */
export function spanOf(points: readonly Box['min'][]): number | null {
  let most = 0;
  for (const a of points) for (const b of points) most = Math.max(most, Math.hypot(a[0] - b[0], a[1] - b[1]));
  return most > 0 ? most : null;
}
