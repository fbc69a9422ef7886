// The steel in concrete: a share of its volume, a weight in each volume of it, or a weight in all of it.
import { type BoundClause, clauseOf, fit, given, has, type Item } from '../plan/index.ts';
import { type Cause, type Derived, known, open, sum } from '../quantities/derived.ts';
import { nameOf } from '../quantities/dimension.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { because, type Notes } from './notes.ts';

/** Structural and reinforcing steel, kg/m3. */
export const steelDensity = 7850;
const onTop = 'steel counted on top of the concrete, of which nothing is taken off for it: the heavier way';

/** What a `reinforcement` is: a share of the volume, kg/m3, or kg; null: none of them. */
function asSteel(
  quantity: Quantity,
): { readonly kind: 'share' | 'per volume' | 'weight'; readonly steel: Quantity } | null {
  for (const [kind, measure] of [
    ['share', 'percent'],
    ['per volume', 'density'],
    ['weight', 'weight'],
  ] as const) {
    const fits = fit(quantity, measure);
    if (fits && fits !== 'missing') return { kind, steel: fits };
  }
  return null;
}

/** The density of a material with what `reinforcement` adds to each volume of it. */
export function reinforced(item: Item, plain: Derived, notes: Notes): Derived {
  const stated = given(item, 'reinforcement');
  if (stated.state === 'absent') return plain;
  const causes =
    stated.state === 'open'
      ? stated.because
      : stated.state === 'none'
        ? [because('reinforcement is none.', stated.at)]
        : [];
  const read = stated.state === 'known' ? asSteel(stated.quantity) : null;
  const fault = stated.state === 'known' ? faultOf(item, stated.quantity, read, notes) : null;
  if (plain.value === null || !read || fault || stated.state !== 'known')
    return open('kg/m3', [...plain.because, ...causes, ...(fault ? [fault] : [])], { at: plain.at });
  if (read.kind === 'weight') return plain;
  return read.kind === 'share' ? shared(plain, read.steel, stated.at) : added(plain, read.steel, stated.at);
}

/** What is no such figure, or more steel than there is room for. */
function faultOf(
  item: Item,
  { bare, dimension }: Quantity,
  read: ReturnType<typeof asSteel>,
  notes: Notes,
): Cause | null {
  const { valueAt, keywordAt } = clauseOf(item, 'reinforcement') as BoundClause;
  if (has(item, 'liquid')) {
    const facts = { keyword: 'reinforcement', parent: 'liquid', parents: ['solid shapes'] };
    return notes.add('place-wrong', keywordAt, facts, 'A liquid has no reinforcement.');
  }
  const text = valueAt.row.text.slice(valueAt.from, valueAt.to);
  if (!read) {
    const wanted = 'a share in %, a weight per volume, or a weight';
    const facts = {
      clause: 'reinforcement',
      wanted,
      text,
      found: bare ? 'a plain number' : nameOf(dimension),
      sum: false,
    };
    return notes.add('dimension-mismatch', valueAt, facts, 'The reinforcement could not be read.');
  }
  const room = read.kind === 'share' ? 1 : read.kind === 'per volume' ? steelDensity : Number.POSITIVE_INFINITY;
  if (read.steel.high <= room) return null;
  const facts = { clause: 'reinforcement', value: text, reason: 'it is more than steel alone would be' };
  return notes.add('value-outside', valueAt, facts, 'There is more reinforcement than room for it.');
}

/** A share of the volume is steel in the place of the material. */
function shared(plain: Derived, { value, low, high }: Quantity, at: Derived['at']): Derived {
  const mixed = (density: number, share: number) => density + (steelDensity - density) * share;
  const density = plain.value as number;
  const ends = [plain.low ?? density, plain.high ?? density].flatMap((one) => [mixed(one, low), mixed(one, high)]);
  return known(
    mixed(density, value),
    'kg/m3',
    {
      formula: 'density * (1 - reinforcement) + steel * reinforcement',
      inputs: [
        { label: 'density', value: plain },
        { label: 'reinforcement', value: known(value, '1', { at, source: 'typed here' }, low, high) },
        {
          label: 'steel',
          value: known(steelDensity, 'kg/m3', { source: 'reinforcing steel at 7,850 kg/m3 (EN 10080, ASTM A615)' }),
        },
      ],
      source: plain.source,
      assumptions: plain.assumptions,
      at,
    },
    Math.min(...ends),
    Math.max(...ends),
  );
}

/** So much steel in each volume, on top of the material. */
function added(plain: Derived, { value, low, high }: Quantity, at: Derived['at']): Derived {
  const steel = known(value, 'kg/m3', { at, source: 'typed here' }, low, high);
  return sum([plain, steel], 'kg/m3', {
    formula: 'density + reinforcement',
    inputs: [
      { label: 'density', value: plain },
      { label: 'reinforcement', value: steel },
    ],
    source: plain.source,
    assumptions: [...plain.assumptions, onTop],
    at,
  });
}

/** A part's mass with the steel that is stated by its weight, which is that in each copy. */
export function withSteel(item: Item, mass: Derived, source: string): Derived {
  const stated = given(item, 'reinforcement');
  const read = stated.state === 'known' ? asSteel(stated.quantity) : null;
  if (read?.kind !== 'weight' || mass.value === null || stated.state !== 'known') return mass;
  const { value, low, high } = read.steel;
  const steel = known(value, 'kg', { at: stated.at, source }, low, high);
  return sum([mass, steel], 'kg', {
    formula: 'concrete + reinforcement',
    inputs: [
      { label: 'concrete', value: mass },
      { label: 'reinforcement', value: steel },
    ],
    source: mass.source,
    assumptions: [...mass.assumptions, onTop],
    at: mass.at,
  });
}
