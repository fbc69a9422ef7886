// Steel pipe flanges by nominal size, class and form, and the studs of their joints. A nominal size alone is no diameter.
import data from './flanges.json';
import { designationKey, nameKey } from './names.ts';
import { nearestRows, onFirstUse, printed, words } from './tables.ts';

const flangeForms = ['weld neck', 'slip on', 'threaded', 'socket weld', 'lap joint', 'blind'] as const;
export type FlangeForm = (typeof flangeForms)[number];

/** What one form has of its own; m and kg. */
export interface FormSize {
  readonly length: number; // through the hub, without the raised face
  readonly bore: number | null; // null where the pipe sets it
  readonly listed: number | null; // the heaviest listed weight, in carbon steel and of a standard bore
}

/** The dimensions of one size and class; lengths in m. */
export interface FlangeSize {
  readonly designation: string; // in the system asked for: NPS 8 or DN 200
  readonly pressureClass: string;
  readonly outside: number;
  readonly thickness: number; // the least one, without the raised face
  readonly thicker: number; // what the standard lets it be thicker
  readonly raisedFace: number; // diameter
  readonly faceHeight: number;
  readonly lapThickness: number; // of a lap joint flange, which has no raised face
  readonly hub: number; // diameter at its base
  readonly forms: Readonly<Partial<Record<FlangeForm, FormSize>>>; // a form that is not made is left out
  readonly holes: number;
  readonly hole: number;
  readonly circle: number;
  readonly bolt: string; // as designated: 3/4 in, M20
  readonly stud: number | null; // length for raised faces; null where the standard gives none
  readonly source: string;
  readonly listedSource: string;
}

/** `NPS 8` or `DN 200`, and a class: `150`, `300`, or `PN16`. */
export function flangeSize(designation: string, pressureClass: string): FlangeSize | undefined {
  return sizes().get(designationKey(designation))?.classes.get(classKey(pressureClass));
}

/** The classes that flanges of a size are made in, lowest first; none for a size not known. */
export function flangeClasses(designation: string): readonly string[] {
  const found = sizes().get(designationKey(designation))?.classes.values() ?? [];
  return [...found].map(({ pressureClass }) => pressureClass);
}

/** The sizes flanges are made in, each once, under its NPS. */
export function flangeDesignations(): readonly string[] {
  return [...sizes().values()].map(({ designation }) => designation).filter((name) => name.startsWith('NPS'));
}

/** The sizes nearest to one that flanges are not made in. */
export function nearestFlanges(designation: string, count = 3): readonly string[] {
  return nearestRows(designation, sizes(), count).map((size) => size.designation);
}

interface Size {
  readonly designation: string;
  readonly classes: ReadonlyMap<string, FlangeSize>;
}

/** `150#` and `150 lb` are class 150, `PN 16` is PN16. */
const classKey = (text: string): string => nameKey(text).replace(/^class|#$|lbs?$/g, '');
const mm = (text: string | undefined): number => Number(text) / 1000;
const inch = (text: string): number => printed(text) * 0.0254;
const pounds = (text: string | undefined): number | null => (text === '-' ? null : Number(text) * 0.45359237);

const sizes = onFirstUse((): ReadonlyMap<string, Size> => {
  const read = data.sizes.rows.flatMap((row) => {
    const [nps = '', dn = '', ...own] = words(row);
    return [`NPS ${nps}`, `DN ${dn}`].map((designation) => ({
      designation,
      classes: new Map(
        [
          ...data.classes.flatMap((table) => {
            const found = table.rows.find((text) => text.startsWith(`${nps} `));
            return found ? [made(designation, nps, own, table, words(found))] : [];
          }),
          ...data.pn.classes.flatMap((table) => {
            const found = table.rows.find((text) => text.startsWith(`${dn} `));
            return found ? [madeByPn(designation, table.class, words(found))] : [];
          }),
        ].map((row) => [classKey(row.pressureClass), row] as const),
      ),
    }));
  });
  return new Map(read.map((size) => [designationKey(size.designation), size]));
});

type Table = (typeof data.classes)[number];

function made(
  designation: string,
  nps: string,
  own: readonly string[],
  table: Table,
  row: readonly string[],
): FlangeSize {
  const [raisedFace, slipBore, lapBore] = own;
  const [, outside, thickness, hub, slip, lap, neck, holes, hole = '', bolt = '', circle, stud] = row;
  const [neckListed, slipListed, blindListed] = row.slice(12);
  const more = data.tolerance.rows.map(words).find(([most = '']) => printed(nps) <= Number(most));
  return {
    designation,
    pressureClass: String(table.class),
    outside: mm(outside),
    thickness: mm(thickness),
    thicker: mm(more?.[1]),
    raisedFace: mm(raisedFace),
    faceHeight: table.face / 1000,
    lapThickness: mm(thickness) + table.lap / 1000,
    hub: mm(hub),
    forms: {
      'weld neck': { length: mm(neck), bore: null, listed: pounds(neckListed) },
      // Threaded and socket-weld flanges have the hub and about the weight of a slip on; they are bored to the pipe behind thread or socket.
      ...(slip !== '-' && {
        'slip on': { length: mm(slip), bore: mm(slipBore), listed: pounds(slipListed) },
        threaded: { length: mm(slip), bore: null, listed: pounds(slipListed) },
        ...(printed(nps) <= 3 && { 'socket weld': { length: mm(slip), bore: null, listed: pounds(slipListed) } }),
      }),
      'lap joint': { length: mm(lap), bore: mm(lapBore), listed: null },
      blind: { length: mm(thickness), bore: 0, listed: pounds(blindListed) },
    },
    holes: Number(holes),
    hole: inch(hole),
    circle: mm(circle),
    bolt: `${bolt} in`,
    stud: mm(stud),
    source: data.source,
    listedSource: data.listed.source,
  };
}

/** By EN 1092-1, whose thickness and length count the raised face in; the pipe sets the bore of a weld neck. */
function madeByPn(designation: string, pressureClass: string, row: readonly string[]): FlangeSize {
  const [, outside, whole, hub, length, raisedFace, face, holes, hole, bolt = '', circle] = row;
  const thickness = mm(whole) - mm(face);
  const more = data.pn.tolerance.rows.map(words).find(([most = '']) => Number(whole) <= Number(most));
  return {
    designation,
    pressureClass,
    outside: mm(outside),
    thickness,
    thicker: mm(more?.[1]),
    raisedFace: mm(raisedFace),
    faceHeight: mm(face),
    lapThickness: thickness,
    hub: mm(hub),
    forms: {
      'weld neck': { length: mm(length) - mm(face), bore: null, listed: null },
      blind: { length: thickness, bore: 0, listed: null },
    },
    holes: Number(holes),
    hole: mm(hole),
    circle: mm(circle),
    bolt,
    stud: null,
    source: data.pn.source,
    listedSource: data.listed.source,
  };
}
