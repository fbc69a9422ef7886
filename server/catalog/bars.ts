// Steel bars by designation: reinforcing bars, US and Canadian, and metric round bars.
import data from './bars.json';
import { designationKey } from './names.ts';
import { byKey, inch, nearestRows, onFirstUse, poundPerFoot, printed, steelDensity, words } from './tables.ts';

export interface Bar {
  readonly designation: string;
  readonly massPerLength: number; // kg/m, of steel
  readonly diameter: number; // m, nominal, without the ribs
  readonly low: number;
  readonly high: number;
  readonly density: number; // kg/m3 that the mass is for: of another material it scales with this
  readonly source: string;
}

/** `#5` or `No. 5` (US), `16 mm` or `Ø16` (metric), `15M` (Canadian). */
export function bar(designation: string): Bar | undefined {
  return index().get(barKey(designation));
}

export function bars(): readonly Bar[] {
  return all();
}

/** Bars of the same system nearest in size to one that is not made. */
export function nearestBars(designation: string, count = 3): Bar[] {
  return nearestRows(barKey(designation), index(), count);
}

const all = onFirstUse((): readonly Bar[] => {
  const { us, metric, canadian } = data;
  return [
    ...us.rows.map((row) => {
      const [designation = '', diameter = '', pounds, kilograms] = words(row);
      return made(designation, printed(diameter) * inch, [Number(pounds) * poundPerFoot, Number(kilograms)], us.source);
    }),
    ...metric.rows.map((row) => {
      const diameter = Number.parseFloat(row) / 1000;
      const exact = (Math.PI / 4) * diameter ** 2 * steelDensity;
      return made(row, diameter, [exact, Number(exact.toPrecision(3))], metric.source);
    }),
    ...canadian.rows.map((row) => {
      const [designation = '', diameter, kilograms] = words(row);
      return made(designation, Number(diameter) / 1000, [Number(kilograms)], canadian.source);
    }),
  ];
});

const index = onFirstUse(() => byKey(all()));

function made(designation: string, diameter: number, masses: readonly number[], source: string): Bar {
  const high = Math.max(...masses);
  return { designation, massPerLength: high, diameter, low: Math.min(...masses), high, density: steelDensity, source };
}

function barKey(designation: string): string {
  return designationKey(designation.replace(/^\s*no\.?\s*(?=\d)/i, '#')).replace(/^D(?=\d)/, 'MM');
}
