// Bolts, nuts and washers by size: heads and nuts as hexagons. Metric by M, inch sizes by their diameter.
import data from './bolts.json';
import { designationKey } from './names.ts';
import { nearestRows, onFirstUse, printed, words } from './tables.ts';

/** Across flats and height, m. */
export interface HexagonSize {
  readonly flats: number;
  readonly height: number;
}

/** All that is bought for one diameter; lengths in m, null where the tables have none. */
export interface BoltSize {
  readonly designation: string; // M24 or 3/4 in
  readonly diameter: number;
  readonly head: HexagonSize | null;
  readonly structuralHead: HexagonSize | null;
  readonly nut: HexagonSize | null;
  readonly heavyNut: HexagonSize;
  readonly washer: { readonly outside: number; readonly bore: number; readonly thickness: number } | null;
  readonly source: string;
}

/** `M24`, `3/4 in`, `1-1/8 in`. */
export function boltSize(designation: string): BoltSize | undefined {
  return index().get(designationKey(designation));
}

/** The size of a diameter, m: 3/4 in, or 24 mm of M24. */
export function boltOf(diameter: number): BoltSize | undefined {
  return all().find((size) => Math.abs(size.diameter - diameter) < 1e-6);
}

export function boltSizes(): readonly BoltSize[] {
  return all();
}

/** Sizes of the same system nearest to one that is not made. */
export function nearestBolts(designation: string, count = 3): readonly BoltSize[] {
  return nearestRows(designation, index(), count);
}

const all = onFirstUse((): readonly BoltSize[] => [
  ...data.metric.rows.map((row) => made(words(row), (size) => size, 0.001, data.metric.source)),
  ...data.inch.rows.map((row) => made(words(row), (size) => `${size} in`, 0.0254, data.inch.source)),
]);
const index = onFirstUse(() => new Map(all().map((size) => [designationKey(size.designation), size])));

function made(row: readonly string[], named: (size: string) => string, unit: number, source: string): BoltSize {
  const [size = '', ...figures] = row;
  const length = (at: number): number => Number(figures[at]) * unit;
  const hexagon = (at: number): HexagonSize | null =>
    figures[at] === '-' ? null : { flats: length(at), height: length(at + 1) };
  return {
    designation: named(size),
    diameter: printed(size.replace(/^M/, '')) * unit,
    head: hexagon(0),
    structuralHead: hexagon(2),
    nut: hexagon(4),
    heavyNut: hexagon(6) as HexagonSize,
    washer: figures[8] === '-' ? null : { outside: length(8), bore: length(9), thickness: length(10) },
    source,
  };
}
