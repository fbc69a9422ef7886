// What a row of the language's tables says: one row teaches reading, checking, completion, hover, colours and the reference.
import type { DimensionName } from '../quantities/dimension.ts';

/** How a value is written; the same words as syntax's value types (a test keeps the two lists equal). */
export type Takes =
  | 'nothing'
  | 'amount'
  | 'size'
  | 'size or amount'
  | 'size or nothing'
  | 'point'
  | 'points'
  | 'line'
  | 'name'
  | 'names'
  | 'path'
  | 'axis'
  | 'turn'
  | 'side'
  | 'tilt'
  | 'circle'
  | 'row'
  | 'compare'
  | 'subject'
  | 'trigger'
  | 'text'
  | 'date'
  | 'label'
  | 'word'
  | 'word and amount'
  | 'designation'
  | 'designation or amount'
  | 'amount or nothing';

/** What a value measures. `weight` takes mass or force and is kept as mass; `whole` and `number` are plain numbers. */
export type Measure =
  | DimensionName
  | 'weight'
  | 'weight per length'
  | 'weight per area'
  | 'density'
  | 'whole'
  | 'number'
  | 'percent'
  | 'any';

/** What the names of a clause may name. */
export type Kind =
  | 'part'
  | 'pick'
  | 'gear'
  | 'rig'
  | 'crane'
  | 'chart'
  | 'stage'
  | 'material'
  | 'sling'
  | 'load'
  | 'box'
  | 'contents'
  | 'anything';

export interface ClauseRow {
  readonly takes: Takes;
  readonly measures?: Measure;
  readonly sides?: 2 | 3 | '2 or 3'; // of a size
  readonly words?: readonly string[];
  readonly names?: Kind;
  readonly need?: 'always' | 'when loaded'; // `!` of the table; gear capacity is due when the gear carries load
  readonly repeat?: true; // `*`
  readonly least?: number; // SI; the value may not be below (0 where negative makes no sense)
  readonly above?: number; // SI; the value must be greater
  readonly most?: number; // SI
  readonly help: string;
  readonly example?: string;
}

export interface StatementRow {
  /** Blocks it stands under; `file` is the top level. */
  readonly under: readonly string[];
  readonly group: 'plan' | 'load' | 'gear' | 'rig' | 'crane' | 'site' | 'papers' | 'rules';
  readonly names: 'none' | 'required' | 'optional' | 'range';
  readonly nameHelp?: string;
  readonly value?: ClauseRow;
  readonly equals?: true;
  readonly once?: true; // at most one under its parent
  readonly clauses: Readonly<Record<string, ClauseRow>>;
  readonly help: string;
  readonly example: string;
  /** The kind of thing it declares, for name look-up; none: nothing is named. */
  readonly declares?:
    | Kind
    | 'support'
    | 'ground'
    | 'position'
    | 'weighing'
    | 'bridle'
    | 'point'
    | 'deduction'
    | 'obstruction'
    | 'set-down'
    | 'rules'
    | 'category'
    | 'let'
    | 'assembly';
}

export type Vocabulary = Readonly<Record<string, StatementRow>>;

export interface ShapeRow {
  readonly form: ClauseRow; // what follows the shape's keyword itself
  readonly clauses: Readonly<Record<string, ClauseRow>>; // its own, beside material and place
  readonly under: readonly ('part' | 'less')[];
  readonly material: 'of' | 'none' | 'steel unless said';
  readonly hollow?: true; // has an inside that can hold liquid
  readonly axis: string; // for the reference: own axis and datum point
  readonly help: string;
  readonly example: string;
}

export interface ResultRow {
  readonly measures: Measure;
  readonly unit: 'kg' | 'N' | 'm' | 'm3' | 'rad' | 'Pa' | 'm/s' | '1';
  /** Which end is the worse one for a reader who knows nothing else: printed figures round that way. */
  readonly worse: 'up' | 'down' | 'either';
  readonly help: string;
}
