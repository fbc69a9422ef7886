// What all tables share: the units they are printed in, building on first use, and the nearest rows.
import { editDistance } from '../quantities/nearest.ts';
import { joined, type Unit } from '../quantities/units.ts';
import { designationKey, sizeDistance } from './names.ts';

export const inch = (joined('in') as Unit).factor; // m
export const poundPerFoot = (joined('lb/ft') as Unit).factor; // kg/m
export const poundPerSquareFoot = (joined('lb/ft2') as Unit).factor; // kg/m2

/** The density every table of steel rests on, kg/m3 (490 lb/ft3). */
export const steelDensity = 7850;

/** What all rows of all tables of sizes have. */
export interface Sized {
  readonly designation: string;
}

/** Built on the first call, kept since: starting reads no table. */
export function onFirstUse<T>(build: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= build();
    return made;
  };
}

/** Rows by their key; two rows of one key would be a mistake in the data, the tests look for it. */
export function byKey<T extends Sized>(rows: readonly T[]): ReadonlyMap<string, T> {
  return new Map(rows.map((row) => [designationKey(row.designation), row]));
}

/** The rows nearest to a designation that is not in the table: by size where the kind is known, else by spelling. */
export function nearestRows<T extends Sized>(designation: string, rows: ReadonlyMap<string, T>, count: number): T[] {
  const wanted = designationKey(designation);
  const distances = [...rows].map(([key, row]) => ({ row, bySize: sizeDistance(wanted, key), key }));
  const alike = distances.filter((entry) => entry.bySize !== null);
  const limit = Math.max(1, Math.floor((wanted.length + 1) / 3));
  const ranked =
    alike.length > 0
      ? alike.map(({ row, bySize }) => ({ row, distance: bySize ?? 0 }))
      : distances
          .map(({ row, key }) => ({ row, distance: editDistance(wanted, key, limit) }))
          .filter(({ distance }) => distance <= limit);
  return ranked
    .sort((a, b) => a.distance - b.distance)
    .slice(0, count)
    .map(({ row }) => row);
}

export function words(row: string): string[] {
  return row.split(' ');
}

/** A number as the tables print it: `3-1/2`, `3/8`, `.375`. */
export function printed(text: string): number {
  const [, whole, over, under] = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(text) ?? [];
  return over === undefined ? Number(text) : Number(whole ?? 0) + Number(over) / Number(under);
}
