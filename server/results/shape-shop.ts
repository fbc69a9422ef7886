// Weld metal, coils, heaps and hollow-core slabs: what goes with what in their clauses, and what is taken where nothing is said.
import { closestPacking, type Shape } from '../mechanics/index.ts';
import { type BoundClause, type Item, textOf } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { welds } from '../vocabulary/index.ts';
import type { Notes } from './notes.ts';
import { type Done, missing, type Refuse, type ShapeGiven } from './shape.ts';
import { label } from './shape-clauses.ts';
import { notRound } from './shape-forms.ts';

type Sizes = Readonly<Record<string, Quantity>>;

/** Share of a weld above its flat where nothing is said. */
const billed = 0.5;
const asBilled = 'half as much again as drawn, as fillets are billed (Iowa DOT I.M. 569)';
const onItsLine = 'its centre at the middle of its box';

export function weld(
  item: Item,
  sizes: Sizes,
  clause: BoundClause,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const kind = textOf(item, 'weld') ?? '';
  const prepared = welds[kind as keyof typeof welds] ?? null;
  const fillet = kind === 'fillet';
  const fault = belongs(item, kind, fillet ? butt : filletWords, notes) ?? due(item, sizes, kind, clause, notes);
  if (fault) return refuse(fault);
  const assumptions = [...('excess' in sizes ? [] : [asBilled]), onItsLine];
  return done(
    ({ length, excess = billed, leg, leg0, leg1, throat, thickness, gap = 0, rootFace = 0, bevel = 0 }) => {
      if (!fillet)
        return { kind: 'weld', length, excess, thickness, gap, rootFace, bevel, prepared } as unknown as Shape;
      const even = leg ?? Math.SQRT2 * (throat ?? 0);
      return { kind: 'weld', length, excess, leg: [leg0 ?? even, leg1 ?? even] } as unknown as Shape;
    },
    '',
    assumptions,
  );
}

const butt = ['thickness', 'gap', 'root face', 'bevel'];
const filletWords = ['leg length', 'throat'];

/** A clause of the other kind of weld. */
function belongs(item: Item, kind: string, others: readonly string[], notes: Notes): Cause | null {
  const strange = [...others, ...(kind === 'square butt' ? ['bevel', 'root face'] : [])].find((word) =>
    item.clauses.has(word),
  );
  if (strange === undefined) return null;
  const parents = filletWords.includes(strange)
    ? ['fillet']
    : [kind === 'fillet' ? 'butt welds' : 'V and bevel butt welds'];
  const at = item.clauses.get(strange)?.[0]?.keywordAt ?? item.at;
  return notes.add(
    'place-wrong',
    at,
    { keyword: strange, parent: kind, parents },
    `${strange} does not belong to a ${kind}.`,
  );
}

/** What a weld of its kind is given by. */
function due(item: Item, sizes: Sizes, kind: string, clause: BoundClause, notes: Notes): Cause | null {
  if (kind !== 'fillet') {
    const words = {
      thickness: 'how thick the plates are',
      gap: 'the root opening, 0 where the edges touch',
      bevel: 'the angle of one edge from square',
    };
    const lacking = Object.entries(words).find(
      ([word]) => !(word in sizes) && !(word === 'bevel' && kind === 'square butt'),
    );
    return lacking ? missing(item, 'weld', lacking[0], lacking[1], notes) : null;
  }
  const leg = 'leg' in sizes || 'leg0' in sizes;
  if (leg !== 'throat' in sizes) return null;
  if (!leg) return missing(item, 'weld', 'leg length', 'how long its legs are, or its `throat`', notes);
  return twice(item, 'size', 'leg length', clause, notes);
}

/** A size that two clauses give; `first` is one of them. */
function twice(item: Item, what: string, first: string, clause: BoundClause, notes: Notes): Cause {
  const facts = { name: `the ${what} of ${label(item)}`, place: `"${first}"` };
  const stated = item.clauses.get(first)?.[0]?.at ?? clause.at;
  return notes.add('stated-twice', clause.at, facts, `Its ${what} is stated twice.`, [
    { at: stated, says: 'stated here' },
  ]);
}

/** Solid where nothing is said; of wire as close as round wires lie, or by its length. */
export function coil(sizes: Sizes, done: Done): ShapeGiven {
  const wire = 'wire' in sizes;
  const taken = wire ? 'wound as close as round wires can lie' : 'solid metal from bore to outside';
  const said = 'fillFactor' in sizes || (wire && 'length' in sizes);
  return done(
    (s) => ({ kind: 'coil', fillFactor: wire ? closestPacking : 1, ...s }) as unknown as Shape,
    '',
    said ? [] : [taken],
  );
}

export function heap(
  item: Item,
  sizes: Sizes,
  clause: BoundClause,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const sides = notRound(sizes, clause, refuse, notes);
  if (sides) return sides;
  const [height, angle] = [sizes.height !== undefined, sizes.angle !== undefined];
  if (height && angle) return refuse(twice(item, 'steepness', 'angle', clause, notes));
  if (!height && !angle) return refuse(missing(item, 'heap', 'angle', 'its angle of repose, or its `height`', notes));
  return done((s) => ({ kind: 'heap', ...s }) as unknown as Shape);
}

export const hollowCore = ({ core, core0, core1, ...s }: Readonly<Record<string, number>>): Shape =>
  ({ kind: 'hollow core', ...s, coreWidth: core0 ?? core, coreHeight: core1 ?? core }) as unknown as Shape;
