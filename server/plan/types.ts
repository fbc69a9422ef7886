// A plan once its names are resolved and its values are typed: items with their clauses, and the tables of names they live in.
import type { Dimension } from '../quantities/dimension.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type {
  AxisText,
  CompareValue,
  NameUse,
  Place,
  Problem,
  Related,
  SyntaxFacts,
  Tree,
  TreeNode,
} from '../syntax/types.ts';
import type { ClauseRow, StatementRow } from '../vocabulary/index.ts';
import type { Attachment } from './attached.ts';
import type { Citation } from './cited.ts';

/** A coordinate or cell that may be unknown (`?`), deliberately nothing (`none`), or could not be read (null). */
export type Cell = Quantity | 'unknown' | 'none' | null;

export type BoundValue =
  | { readonly kind: 'quantity'; readonly quantity: Quantity }
  | { readonly kind: 'unknown' } // ?
  | { readonly kind: 'none' }
  | { readonly kind: 'size'; readonly sides: readonly Quantity[] }
  | { readonly kind: 'point'; readonly at: readonly [Cell, Cell, Cell] }
  | { readonly kind: 'points'; readonly points: readonly (readonly [number, number])[] }
  | { readonly kind: 'line'; readonly corners: readonly (readonly [number, number, number])[]; readonly slack: number }
  | { readonly kind: 'names'; readonly names: readonly NameUse[] } // names, path, name
  | { readonly kind: 'axis'; readonly axis: AxisText }
  | { readonly kind: 'turn'; readonly angle: Quantity; readonly axis: AxisText }
  | { readonly kind: 'side'; readonly name: NameUse; readonly axis: AxisText }
  | { readonly kind: 'tilt'; readonly axis: AxisText; readonly from: Quantity; readonly to: Quantity | null }
  | { readonly kind: 'circle'; readonly diameter: Quantity; readonly axis: AxisText }
  | { readonly kind: 'row'; readonly head: Cell; readonly cells: readonly Cell[] }
  | { readonly kind: 'compare'; readonly text: CompareValue; readonly compare: Compare | null }
  | { readonly kind: 'subject'; readonly keyword: string; readonly names: readonly string[] }
  | { readonly kind: 'text'; readonly text: string } // text, label, word, designation
  | { readonly kind: 'date'; readonly iso: string }
  | { readonly kind: 'word'; readonly word: string; readonly amount: Quantity | null };

/** A bound on a result: `crane capacity used <= 75 %`. */
export interface Compare {
  readonly subject: { readonly kind: string; readonly names: readonly NameUse[] }; // kind 'plan' where none is written; no names: every one of that kind
  readonly result: string;
  readonly op: '<' | '<=' | '>' | '>=' | 'between'; // `= a ± b` is kept as between a − b and a + b
  readonly low: number; // SI in the result's unit; for a one-sided bound the bound itself
  readonly high: number;
}

export interface BoundClause {
  readonly keyword: string;
  readonly row: ClauseRow;
  readonly at: Place; // keyword and value
  readonly keywordAt: Place;
  readonly valueAt: Place; // the value; the keyword where there is none
  /** null: could not be read or does not fit; what rests on it is open. */
  readonly value: BoundValue | null;
}

/** A statement with its typed clauses (its own line's and its clause lines'), and its child statements. Immutable; kept while nothing it reads changes. */
export interface Item {
  readonly node: TreeNode;
  readonly file: string;
  readonly keyword: string;
  readonly row: StatementRow;
  /** Names it declares: none, one, or a range's; for statements named by their text value (`plan`, `role`) that text. */
  readonly names: readonly string[];
  readonly at: Place; // keyword
  readonly nameAt: Place; // name; keyword where there is none
  readonly value: BoundClause | null; // its own value, keyword ''
  readonly clauses: ReadonlyMap<string, readonly BoundClause[]>;
  readonly children: readonly Item[];
  readonly parentKeyword: string;
  /** Facts about this statement and its clause lines; not its child statements'. */
  readonly problems: readonly PlanProblem[];
  /** A line of it or under it could not be read: what it adds up to is open. The places say which. */
  readonly opens: readonly Place[];
}

export type TableKind =
  | 'let'
  | 'material'
  | 'load'
  | 'assembly'
  | 'part'
  | 'pick'
  | 'gear'
  | 'point'
  | 'bridle'
  | 'rig'
  | 'stage'
  | 'crane'
  | 'position'
  | 'chart'
  | 'deduction'
  | 'ground'
  | 'support'
  | 'obstruction'
  | 'set-down'
  | 'rules'
  | 'category'
  | 'weighing';

/** One declared thing: an item, which of its names, and what it stands in. */
export interface Thing {
  readonly kind: TableKind;
  readonly name: string; // as declared
  readonly key: string; // for comparing: case and spaces folded
  readonly item: Item;
  readonly owner: Thing | null; // load or assembly of a part, beam of a point, crane of a position
  readonly load: Thing | null; // the load a part, assembly or pick is in
  readonly path: readonly string[]; // from the outermost thing in
  readonly fromLibrary: boolean; // declared in a used file
  readonly clash: boolean; // stated twice: neither counts
}

/** All names a plan can see. Parts, of which there may be thousands, become things when `things`, `inside` or the kind `part` is asked for. */
export interface Names {
  readonly things: readonly Thing[];
  /** Those whose name is stated twice. */
  readonly clashing: readonly Thing[];
  /** By kind, then key; a name that stands for several things lists them all. */
  find(kind: TableKind, key: string): readonly Thing[];
  /** All of one kind, in the order of the files. */
  kind(kind: TableKind): readonly Thing[];
  /** What stands right in a thing. */
  inside(owner: Thing): readonly Thing[];
  of(item: Item): readonly Thing[]; // the things an item declares
}

export interface PlanFacts extends SyntaxFacts {
  'value-outside': { clause: string; value: string; reason: string };
  'not-judged': { thing: string; result: string };
  'unit-missing': { number: string; clause: string; dimension: string; units: readonly string[]; unit?: string };
  'unit-unknown': { unit: string; dimension: string; nearest: readonly string[] };
  'unit-ambiguous': { unit: string; meanings: readonly { unit: string; size: string }[] };
  'dimension-mismatch': { clause: string; wanted: string; text: string; found: string; sum: boolean };
  'name-unknown': {
    name: string;
    nearest: readonly string[];
    wanted: string;
    is: string | null;
    declare: string | null;
    /** A thing of the name `S1-S4`, which was meant as the range `S1..S4` that holds the name. */
    meant?: { written: string; range: string; at: Place };
  };
  'file-missing': { path: string; reason: string; elsewhere: readonly string[] };
  'list-row-unclear': { file: string; line: number; reason: string; more: number };
  'definition-circle': { names: readonly string[] };
  'material-unknown': { name: string; nearest: readonly { name: string; density: number }[]; woods?: true };
  'size-unknown': {
    designation: string;
    table: string;
    nearest: readonly ({ name: string } & ({ massPerLength: number } | { massPerArea: number } | { mass: number }))[];
  };
  'path-broken': { where: string; nearest: readonly string[] };
  'evidence-missing': { number: string };
  /** `now`: the mark of what the file holds; null where there is none. `paper`: null where `from` names no file. */
  'evidence-changed': {
    paper: string | null;
    on: readonly string[];
    seen: string;
    seenAt: Place;
    now: string | null;
  };
}

export type PlanProblem = { [S in keyof PlanFacts]: Problem<S, PlanFacts[S]> }[keyof PlanFacts];

/** One file the plan takes in. */
export interface PlanFile {
  readonly file: string; // identity: URI or path as the workspace names it
  readonly tree: Tree;
  readonly items: readonly Item[]; // top level
  readonly uses: readonly { readonly at: Place; readonly path: string; readonly file: string | null }[];
}

/** A plan or library with all it takes in. Everything later reads this. */
export interface BoundPlan {
  readonly file: string;
  readonly files: readonly PlanFile[]; // its own first, then in order of first use
  readonly head: Item | null; // the `plan` statement; null: a library
  readonly units: 'US' | 'metric';
  readonly names: Names;
  /** Drawings and lists that its parts and loads name, by the item that names one. */
  readonly attached: ReadonlyMap<Item, Attachment>;
  /** Papers that statements name as their source, by the statement. */
  readonly cited: ReadonlyMap<Item, Citation>;
  /** Top-level statements of the plan's own file, then of what it uses. */
  readonly items: readonly Item[];
  /** Facts of names, files and things no single statement knows. */
  readonly problems: readonly PlanProblem[];
  /** Lines at file level that could not be read: the plan's sums are open. */
  readonly opens: readonly Place[];
}

export type { Dimension, Place, Related };
