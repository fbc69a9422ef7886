// Butt-weld pipe fittings by nominal size: how long they are, and how far makers' weights run over the nominal body.
import { designationKey } from './names.ts';
import data from './pipe-fittings.json';
import { nearestRows, onFirstUse, printed, words } from './tables.ts';

/** What the standard says of the fittings of one size; lengths in m, allowances as factors on the weight of the nominal body. */
export interface FittingSize {
  readonly designation: string; // in the system asked for
  readonly nominal: number; // in
  /** Short ones are made from NPS 1 on. */
  readonly bendRadius: { readonly 'long radius': number; readonly 'short radius': number | null };
  readonly elbow: { readonly allowance: number };
  readonly tee: { readonly toEnd: number; readonly allowance: number } | null;
  readonly reducer: { readonly length: number; readonly least: number; readonly allowance: number } | null; // least: NPS, in
  readonly cap: {
    readonly length: number;
    readonly greatestWall: number;
    readonly thickLength: number | null; // of a wall above the greatest; null: by agreement
    readonly allowance: number;
  };
  readonly source: string;
  readonly allowanceSource: string;
}

/** `NPS 8` or `DN 200`. */
export function fittingSize(designation: string): FittingSize | undefined {
  return sizes().get(designationKey(designation));
}

/** The sizes fittings are made in, each once, under its NPS. */
export function fittingDesignations(): readonly string[] {
  return [...sizes().values()].map(({ designation }) => designation).filter((name) => name.startsWith('NPS'));
}

/** The reducers that are made, large end first: `NPS 8 x 6`. */
export function reducerDesignations(): readonly string[] {
  const all = [...sizes().values()].filter(({ designation }) => designation.startsWith('NPS'));
  return all.flatMap((large) =>
    all
      .filter(({ nominal }) => nominal < large.nominal && nominal >= (large.reducer?.least ?? large.nominal))
      .map((small) => `${large.designation} x ${small.designation.replace('NPS ', '')}`),
  );
}

/** The sizes nearest to one that fittings are not made in. */
export function nearestFittings(designation: string, count = 3): readonly string[] {
  return nearestRows(designation, sizes(), count).map((size) => size.designation);
}

const inch = 0.0254;

const sizes = onFirstUse((): ReadonlyMap<string, FittingSize> => {
  const read = data.rows.flatMap((row) => {
    const [nps = '', dn = '', ...figures] = words(row);
    return [`NPS ${nps}`, `DN ${dn}`].map((designation) => made(designation, printed(nps), figures));
  });
  return new Map(read.map((size) => [designationKey(size.designation), size]));
});

function made(designation: string, nominal: number, figures: readonly string[]): FittingSize {
  const [elbow, toEnd, tee, length, least = '', reducer, cap, wall, thick] = figures;
  const mm = (text: string | undefined): number => Number(text) / 1000;
  return {
    designation,
    nominal,
    // NPS 1/2 and 3/4 bend as NPS 1 does with a long radius.
    bendRadius: {
      'long radius': 1.5 * Math.max(1, nominal) * inch,
      'short radius': nominal < 1 ? null : nominal * inch,
    },
    elbow: { allowance: Number(elbow) },
    tee: toEnd === '-' ? null : { toEnd: mm(toEnd), allowance: Number(tee) },
    reducer: length === '-' ? null : { length: mm(length), least: printed(least), allowance: Number(reducer) },
    cap: {
      length: mm(cap),
      greatestWall: mm(wall),
      thickLength: thick === '-' ? null : mm(thick),
      allowance: data.capAllowance,
    },
    source: data.source,
    allowanceSource: data.allowance,
  };
}
