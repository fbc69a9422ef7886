// How much of a sling's straight rating a hitch or a bend leaves. Where sources differ the lower capacity governs.
import data from './hitches.json';

/** A share of a rating, with the table it stands in. */
export interface Factor {
  readonly share: number;
  readonly source: string;
}

/** Constructions of slings that the tables tell apart, as the language names them. */
export const constructions = ['wire rope', 'chain', 'round', 'web', 'fibre rope', 'mesh'] as const;
export type Construction = (typeof constructions)[number];

const degree = Math.PI / 180;

/** Share of the vertical rating in a choker at its natural angle. */
export function chokerFactor(of: Construction): Factor {
  const row = data.choker.rows.find((one) => one.of === of) as (typeof data.choker.rows)[number];
  return { share: row.share, source: row.source };
}

/**
 * Share of the choker rating at a choke angle (rad). On the tag's own choker rating this alone counts; where the choker rating
 * is `reckoned` from the vertical one by that factor, older tables by vertical rating count too. A border counts to the lower row.
 */
export function chokeAngleFactor(angle: number, reckoned: number | null): Factor {
  const { rows, source } = data.chokeAngle;
  const row = rows.find((one) => angle <= one.upTo * degree * (1 + 1e-12)) ?? rows[0];
  const own = row?.ofChoker ?? 0;
  const older = reckoned !== null && row?.ofVertical ? row.ofVertical / reckoned : 1;
  return { share: Math.min(own, older), source };
}

/** Share of wire rope's strength on the US curve at a ratio D/d, straight between its points; null below its first. */
export function ropeBendOnCurve(ratio: number): number | null {
  const rows = data.ropeBend.rows as unknown as readonly (readonly [number, number])[];
  const next = rows.findIndex(([at]) => ratio <= at);
  if (next === 0) return ratio === rows[0]?.[0] ? rows[0][1] : null;
  if (next < 0) return rows.at(-1)?.[1] ?? null;
  const [[a, low], [b, high]] = [rows[next - 1], rows[next]] as [readonly [number, number], readonly [number, number]];
  return low + ((high - low) * (ratio - a)) / (b - a);
}

export const ropeBendSource = data.ropeBend.source;

/** Share of a chain's rating over a bend of D/d of its bar. */
export function chainBendFactor(ratio: number): Factor {
  const { rows, source } = data.chainBend;
  return { share: rows.find((one) => ratio <= one.upTo)?.share ?? 1, source };
}

/** The tightest bend of a wire rope body, D/d. */
export const leastBend = { ratio: data.leastBend.ratio, source: data.leastBend.source };
