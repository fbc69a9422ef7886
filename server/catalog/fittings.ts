// What fittings may take by the angle of the pull, in what temperatures gear may be used, and what ratings are usual.
import data from './fittings.json';
import type { Factor } from './hitches.ts';

const degree = Math.PI / 180;

/** Share of a shackle's rating at an angle off its line (rad); null beyond what is allowed. */
export const shackleFactor = (angle: number): Factor | null => stepAt(data.shackle, angle);

/** Share of an eyebolt's straight rating at an angle off its bolt (rad); null beyond what is allowed. For one with a shoulder. */
export const eyeboltFactor = (angle: number): Factor | null => stepAt(data.eyebolt, angle);

/** The greatest angle (rad) each may be pulled at. */
export const barredBeyond = {
  shackle: { angle: (data.shackle.rows.at(-1)?.upTo ?? 0) * degree, source: data.shackle.source },
  eyebolt: { angle: (data.eyebolt.rows.at(-1)?.upTo ?? 0) * degree, source: data.eyebolt.source },
  spread: { angle: data.shackleSpread.most * degree, source: data.shackleSpread.source },
};

/** Up to here (rad) a pull counts as straight. */
export const straight = data.straight.most * degree;

/** A table of steps: the first row that reaches the angle; within rounding of a border the row below it. */
function stepAt(
  table: { readonly rows: readonly { readonly upTo: number; readonly share: number }[]; readonly source: string },
  angle: number,
): Factor | null {
  const row = table.rows.find((one) => angle <= one.upTo * degree + 1e-9);
  return row ? { share: row.share, source: table.source } : null;
}

/** Lowest and highest temperature (degC) of a construction of sling or kind of gear; null where no table speaks of it. */
export function temperatureRange(
  of: string,
): { readonly from: number; readonly to: number; readonly source: string } | null {
  return data.temperature.rows.find((one) => one.of === of) ?? null;
}

/** Least breaking strength over rating of a construction or kind: for information only. */
export function designFactor(of: string): { readonly factor: number; readonly source: string } | null {
  return data.designFactor.rows.find((one) => one.of === of) ?? null;
}

/** The most (kg) that one straight leg of a sling of this diameter (m) is rated for in published tables; null where none are kept. */
export function greatestRating(of: string, diameter: number): number | null {
  const row = data.ratingPerBar.rows.find((one) => one.of === of);
  return row ? row.most * (diameter * 1000) ** 2 : null;
}
