// Compares gear figures with what such gear usually has, to catch a slipped comma or unit. Rough figures from memory of the trade.
import type { Item, Thing } from '../plan/index.ts';
import type { Derived } from '../quantities/derived.ts';
import type { Place } from '../syntax/types.ts';
import type { GearTable } from './gear.ts';
import type { Notes } from './notes.ts';

/** Capacity (kg) that slings of a diameter usually have: wire rope about 8 d² and chain about 32 d² kg, d in mm (field rules of riggers' training books). */
const usualSling = (construction: string, diameter: number): number | null => {
  const mm = diameter * 1000;
  return construction === 'wire rope' ? 8 * mm * mm : construction === 'chain' ? 32 * mm * mm : null;
};

/** Largest capacity (kg) seen of a kind of gear whatever its size; beyond it a figure is doubted. From memory. */
const largest: Readonly<Record<string, number>> = {
  shackle: 1.5e6,
  sling: 1e6,
  'master link': 1e6,
  link: 1e6,
  eyebolt: 5e4,
  'hoist ring': 3e5,
  turnbuckle: 1.5e5,
  'lever hoist': 5e4,
  'chain hoist': 2e5,
  clamp: 5e4,
};

/** A shackle of more than 2 t carries 1.5 to 6 t for each kg of its own; twice the most is doubted. From memory. */
const shackleLifts = { usual: 3_000, most: 12_000, from: 2_000 };

/** A shackle's own weight per capacity lies near 1 to 4 kg a tonne; gear that weighs more than it carries is doubted. From memory. */
const factor = 4;

/** Notes figures that are several times off what is usual. */
export function implausible(thing: Thing, weight: Derived, capacity: Derived, table: GearTable, notes: Notes): void {
  const { item } = thing;
  const own = item.clauses.get('capacity')?.[0] ?? item.clauses.get('diameter')?.[0];
  if (own && capacity.value !== null) {
    const usual = usualOf(thing, table);
    if (usual && (capacity.value > usual.value * factor || capacity.value < usual.value / 10))
      note(own.valueAt, 'capacity', capacity.value, usual.value, usual.size);
    else if (capacity.value > (largest[item.keyword] ?? Number.POSITIVE_INFINITY))
      note(own.valueAt, 'capacity', capacity.value, largest[item.keyword] as number, 'any size');
  }
  for (const [word, most] of [
    ['choker capacity', 1],
    ['basket capacity', 2],
  ] as const) {
    const tag = table.given(item, word);
    const at = table.clause(item, word)?.valueAt;
    if (
      at &&
      tag.state === 'known' &&
      capacity.value !== null &&
      tag.quantity.value > capacity.value * most * (1 + 1e-9)
    )
      note(at, word, tag.quantity.value, capacity.value * most, 'that vertical capacity');
  }
  const ownWeight = item.clauses.get('weight')?.[0];
  const light = own && ownWeight ? tooMuchForItsWeight(item, ownWeight.valueAt, weight, capacity) : null;
  if (own && light) note(own.valueAt, 'capacity', capacity.value as number, light.usual, light.size);
  const carriers = ['shackle', 'sling', 'master link', 'link', 'swivel', 'turnbuckle', 'eyebolt', 'hoist ring'];
  if (
    ownWeight &&
    weight.value !== null &&
    capacity.value !== null &&
    carriers.includes(item.keyword) &&
    weight.value > capacity.value
  )
    note(ownWeight.valueAt, 'weight', weight.value, capacity.value / 20, 'that capacity');

  function note(at: Parameters<Notes['add']>[1], clause: string, value: number, usual: number, size: string): void {
    notes.add(
      'gear-implausible',
      at,
      {
        item: thing.name,
        clause,
        value,
        unit: 'kg',
        times: value / usual,
        usual,
        size,
        readings: readings(at.row.text.slice(at.from, at.to)),
      },
      '',
    );
  }
}

/** What a shackle that light usually carries, where its capacity is far more; null where it is believed. */
function tooMuchForItsWeight(item: Item, at: Place, { value: own }: Derived, { value }: Derived) {
  const { usual, most, from } = shackleLifts;
  if (item.keyword !== 'shackle' || !own || value === null || value > (largest.shackle as number)) return null;
  return value > Math.max(from, own * most) ? { usual: own * usual, size: `a shackle of ${textAt(at)}` } : null;
}

const textAt = ({ row, from, to }: Place): string => row.text.slice(from, to);

const farFrom = (capacity: number, usual: number): boolean => capacity > usual * factor || capacity < usual / 10;

/** Is a capacity (kg) so far off that its number or unit is doubted? */
export function doubtedAsWritten(thing: Thing, capacity: number, table: GearTable): boolean {
  const usual = usualOf(thing, table);
  return usual !== null && farFrom(capacity, usual.value);
}

function usualOf(thing: Thing, table: GearTable): { readonly value: number; readonly size: string } | null {
  if (thing.item.keyword !== 'sling') return null;
  const construction = ['wire rope', 'chain'].find((word) => table.clause(thing.item, word));
  const diameter = table.given(thing.item, 'diameter');
  const value = construction && diameter.state === 'known' ? usualSling(construction, diameter.quantity.value) : null;
  const clause = table.clause(thing.item, 'diameter');
  return value && clause
    ? { value, size: `${construction} of ${clause.valueAt.row.text.slice(clause.valueAt.from, clause.valueAt.to)}` }
    : null;
}

/** Other readings of a number: a comma taken for a point. */
const readings = (text: string): readonly string[] =>
  /\d,\d{3}/.test(text) ? [text.replace(/(\d),(\d{3})/, '$1.$2')] : [];
