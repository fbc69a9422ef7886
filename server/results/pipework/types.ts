// What is asked of the tables of pipework and bolting, and what they answer.
import type { Shape, ShapeKind } from '../../mechanics/index.ts';
import type { ShapeName } from '../../vocabulary/index.ts';

/** Sizes given by amounts, SI; two sides of a word stand under it with 0 and 1. */
export type Sizes = Readonly<Record<string, number>>;

export const sizeWords = ['projection', 'length', 'angle', 'nuts', 'washers'] as const;
type SizeWord = (typeof sizeWords)[number];
export const sizeOf = (sizes: Sizes, word: SizeWord): number | undefined => sizes[word];
export const sidesOf = (sizes: Sizes, word: 'pad'): readonly [number?, number?] => [
  sizes[`${word}0`],
  sizes[`${word}1`],
];

/** What stands behind a part of the tables: its body, and what its weight is more than that of the body. */
export interface BoughtIn {
  readonly make: (sizes: Sizes) => Shape;
  /** The same as light as its standard allows, where that differs. */
  readonly least?: BoughtIn['make'];
  /** What drilling takes off it besides, m3. */
  readonly drilled?: number;
  readonly source: string;
  readonly assumptions: readonly string[];
  /** Makers' weights over that of the nominal body, where they run heavier. */
  readonly allowance?: { readonly factor: number; readonly source: string };
  /** What it is of where nothing is said. */
  readonly material: 'carbon steel' | 'stainless steel';
}

/** Why the tables have nothing: which clause is at odds, and what is nearest. */
export interface NotListed {
  readonly clause: string; // the shape's own keyword, or one of its clauses
  readonly designation: string;
  readonly table: string;
  readonly nearest: readonly string[]; // to write in the clause
}
/** A clause that is due for this form or size, and what can stand in it. */
export interface Due {
  readonly due: string;
  readonly why: string;
}

export const pipeworkNames = [
  'flange',
  'pipe elbow',
  'pipe tee',
  'pipe reducer',
  'pipe cap',
  'nozzle',
  'manway',
  'bolt',
  'bolt set',
  'nut',
  'washer',
] as const satisfies readonly ShapeName[];
export type PipeworkName = (typeof pipeworkNames)[number];

const bodies: Readonly<Record<string, ShapeKind>> = {
  'pipe elbow': 'elbow',
  'pipe tee': 'tee',
  'pipe reducer': 'reducer',
  'pipe cap': 'dished head',
};

/** The kind of body that a shape's word stands for. */
export const bodyOf = (name: Exclude<ShapeName, 'item' | 'liquid'>): ShapeKind => bodies[name] ?? (name as ShapeKind);

/** What is written of a part: its designation or diameter (m), and the words of its clauses. */
export interface Written {
  readonly designation: string | null;
  readonly diameter: number | null;
  readonly words: Readonly<Partial<Record<'class' | 'form' | 'schedule', string | null>>>;
  /** Which sizes are given by amounts; their figures come with `make`. */
  readonly given: ReadonlySet<string>;
}
