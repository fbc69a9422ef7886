// The shapes that text takes once it is read: places, values, lines and the tree. Nothing here knows what a value means.

/** Half-open range in UTF-16 units of one line. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** One physical line of one file: the identity that places hold on to, wherever the line moves. */
export interface Row {
  readonly file: string;
  readonly text: string;
}

/** A place in the text: a row and a range of its own line, never an absolute offset. */
export interface Place extends Span {
  readonly row: Row;
}

/** How the value behind a keyword is written: one start rule of the grammar each. */
export type ValueType =
  | 'nothing' // the keyword alone
  | 'amount' // ? | none | sum [± sum]
  | 'size' // A x B [x C] [± sum]
  | 'size or amount' // `base` and `top`: a diameter or two sides
  | 'size or nothing' // `sheet` with or without two sides
  | 'point' // (a, b, c) [unit] [± …]
  | 'points' // (a, b) (c, d) … [unit]
  | 'line' // (a, b, c) (d, e, f) … [unit]
  | 'name'
  | 'names' // name[..name] and name …
  | 'path' // name > name > …
  | 'axis'
  | 'turn' // angle about axis
  | 'side' // name axis
  | 'tilt' // axis angle [to angle]
  | 'circle' // diameter about axis
  | 'row' // [amount:] amount; amount; …
  | 'compare' // [subject] result < amount …
  | 'subject' // statement keyword [names]
  | 'trigger' // a compare or one of the trigger phrases
  | 'text' // "…"
  | 'date' // 2026-05-18
  | 'label' // a word, number or text
  | 'word' // one of the phrases given with the clause
  | 'word and amount' // `contingency calculation 10 %` under rules
  | 'designation' // runs to the next separating comma
  | 'designation or amount' // `bar "#5"` or `bar 20 mm`
  | 'amount or nothing'; // `liquid` with or without a volume

// ---------------------------------------------------------------- values

/** A unit as written: `kg/m3`, `short ton`; looked up by the plan, never here. */
export interface UnitText {
  readonly text: string;
  readonly span: Span;
}

export interface QuantityPart {
  readonly value: number;
  readonly text: string; // the number as written
  readonly span: Span; // of the number
  readonly unit: UnitText | null;
}

export type Expression =
  | {
      readonly kind: 'quantity';
      readonly span: Span;
      readonly negative: boolean;
      readonly parts: readonly QuantityPart[];
    } // 12 ft 6 1/2 in has two parts
  | { readonly kind: 'name'; readonly span: Span; readonly name: string }
  | { readonly kind: 'call'; readonly span: Span; readonly fn: string; readonly args: readonly Expression[] }
  | { readonly kind: 'negative'; readonly span: Span; readonly of: Expression } // -(…) or -name
  | {
      readonly kind: 'binary';
      readonly span: Span;
      readonly op: '+' | '-' | '*' | '/';
      readonly left: Expression;
      readonly right: Expression;
    };

export type Amount =
  | { readonly kind: 'unknown'; readonly span: Span } // ?
  | { readonly kind: 'none'; readonly span: Span }
  | { readonly kind: 'sum'; readonly span: Span; readonly value: Expression; readonly tolerance: Expression | null };

/** A name as used: `S1`, `"Pump skid".NW`, `S1..S4`. `parts` from the outermost thing in; `until` is the range's last name. */
export interface NameUse {
  readonly span: Span;
  readonly parts: readonly { readonly text: string; readonly span: Span }[];
  readonly until: { readonly text: string; readonly span: Span } | null;
}

export type AxisText = 'x' | '-x' | 'y' | '-y' | 'z' | '-z';

export interface PointValue {
  readonly kind: 'point';
  readonly span: Span;
  readonly coordinates: readonly Amount[];
  readonly unit: UnitText | null;
  readonly tolerance: Expression | PointValue | null;
}

export interface CompareValue {
  readonly kind: 'compare';
  readonly span: Span;
  /** The words before the operator, as tokens: `load "Pump skid" calculated weight`. The plan sorts them by the table of results. */
  readonly subject: readonly CompareWord[];
  readonly subjectSpan: Span;
  readonly op: '<' | '<=' | '>' | '>=' | '=' | 'between';
  readonly left: Expression; // of `between`: the lower one
  readonly right: Expression | null; // of `between`: the upper; of `=`: the ±
}

export type CompareWord =
  | { readonly kind: 'word'; readonly text: string; readonly span: Span }
  | { readonly kind: 'name'; readonly use: NameUse; readonly span: Span }; // quoted, dotted or a range

export type Value =
  | { readonly kind: 'amount'; readonly span: Span; readonly amount: Amount }
  | {
      readonly kind: 'size';
      readonly span: Span;
      readonly sides: readonly Expression[];
      readonly tolerance: Expression | null;
    }
  | PointValue
  | {
      readonly kind: 'points';
      readonly span: Span;
      readonly points: readonly (readonly Amount[])[];
      readonly unit: UnitText | null;
      readonly tolerance: Expression | null; // of a line's corners, along each axis
    }
  | { readonly kind: 'names'; readonly span: Span; readonly names: readonly NameUse[] } // name and names
  | { readonly kind: 'path'; readonly span: Span; readonly names: readonly NameUse[] }
  | { readonly kind: 'axis'; readonly span: Span; readonly axis: AxisText }
  | { readonly kind: 'turn'; readonly span: Span; readonly angle: Expression; readonly axis: AxisText }
  | { readonly kind: 'side'; readonly span: Span; readonly name: NameUse; readonly axis: AxisText }
  | {
      readonly kind: 'tilt';
      readonly span: Span;
      readonly axis: AxisText;
      readonly angle: Expression;
      readonly to: Expression | null;
    }
  | { readonly kind: 'circle'; readonly span: Span; readonly diameter: Expression; readonly axis: AxisText }
  | { readonly kind: 'row'; readonly span: Span; readonly head: Amount | null; readonly cells: readonly Amount[] }
  | CompareValue
  | { readonly kind: 'subject'; readonly span: Span; readonly words: readonly CompareWord[] }
  | { readonly kind: 'text'; readonly span: Span; readonly text: string }
  | { readonly kind: 'date'; readonly span: Span; readonly text: string } // as written; the plan looks whether there is such a day
  | { readonly kind: 'label'; readonly span: Span; readonly text: string }
  | { readonly kind: 'word'; readonly span: Span; readonly word: string; readonly amount: Amount | null }
  | { readonly kind: 'designation'; readonly span: Span; readonly text: string };

// ---------------------------------------------------------------- lines

export interface KeywordUse {
  readonly word: string; // as the vocabulary spells it
  readonly span: Span;
}

export interface ClauseText {
  readonly keyword: KeywordUse;
  readonly span: Span; // keyword and value
  /** null: the clause takes none, or what stands there could not be read (then `unread` is true). */
  readonly value: Value | null;
  readonly unread: boolean;
}

export type TokenClass = 'keyword' | 'clause' | 'name' | 'text' | 'number' | 'unit' | 'operator' | 'comment' | 'word';
export interface ColouredSpan extends Span {
  readonly class: TokenClass;
}

/** A line as read under one kind of parent. Immutable; shared by all rows of the same text under the same parent. */
export interface ReadLine {
  readonly text: string;
  readonly kind: 'blank' | 'comment' | 'statement' | 'clauses' | 'unread';
  readonly indent: number; // columns, a tab counted as two
  readonly statement: {
    readonly keyword: KeywordUse;
    readonly name: NameUse | null;
    readonly colon: Span | null;
    readonly value: Value | null;
    readonly unread: boolean; // its own value could not be read
  } | null;
  readonly clauses: readonly ClauseText[];
  readonly comment: Span | null;
  /** Of a line whose keyword is not known: the keyword most likely meant. What stands under the line is read by it. */
  readonly meant: string | null;
  /** Something on the line could not be read: whatever it belongs to stays open. */
  readonly opens: boolean;
  readonly problems: readonly LineProblem[];
  readonly colours: readonly ColouredSpan[];
}

/** A statement or clause line with what belongs to it. Keeps its identity from version to version while nothing in it changes. */
export interface TreeNode {
  readonly row: Row;
  readonly line: ReadLine;
  /** Id of the words it was read by: its parent's keyword, `file` at the top. */
  readonly block: string;
  readonly children: readonly TreeNode[];
  readonly problems: readonly Problem[]; // of nesting: indent-unclear, place-wrong
}

export interface Tree {
  readonly file: string;
  readonly rows: readonly Row[]; // every line, blank ones too
  readonly lines: readonly (ReadLine | null)[]; // by row; null where the file was not read on
  readonly nodes: readonly TreeNode[]; // top level
  readonly nodeAt: readonly (TreeNode | null)[]; // by row
  readonly parentAt: readonly (TreeNode | null)[]; // by row: the node the row belongs to
  readonly newline: '\n' | '\r\n' | '\r';
  readonly problems: readonly Problem[]; // of the file as a whole (too large, too deep)
  /** Line number from 0 of a row of this tree; -1 if it is not of this tree. */
  rowNumber(row: Row): number;
}

// ---------------------------------------------------------------- the words, given from above

/** How one statement keyword is written. */
export interface StatementForm {
  readonly name: 'none' | 'required' | 'optional' | 'range'; // range: required, and `S1..S4` allowed
  /** The statement's own value behind keyword and name; null: none. `needed` false: it may be missing. */
  readonly value: ValueType | null;
  readonly needed: boolean;
  readonly words?: readonly string[]; // for 'word' and 'trigger' values
  readonly equals?: boolean; // `let NAME = AMOUNT`
}
export interface ClauseForm {
  readonly value: ValueType;
  readonly words?: readonly string[];
}
/** What may stand under one kind of parent. */
export interface Words {
  readonly id: string;
  readonly statements: ReadonlyMap<string, StatementForm>;
  readonly clauses: ReadonlyMap<string, ClauseForm>;
}
/** The language's words as syntax needs them; the vocabulary room makes one. */
export interface Language {
  /** Words under a parent of that keyword; under an unknown one: none. */
  under(block: string): Words;
  /** Blocks under which a keyword may stand, as statement or clause. */
  placesOf(keyword: string): readonly string[];
  /** All keywords in any block, for nearest words. */
  readonly keywords: readonly string[];
  isUnit(word: string): boolean; // exact spelling, without `/`
  readonly functions: readonly string[]; // sqrt min max sin cos tan
  /** The candidates nearest to a word, nearest first, at most three; capitals do not count. */
  nearest(word: string, candidates: Iterable<string>): readonly string[];
}

// ---------------------------------------------------------------- problems: facts, never words

/** A slip with names: words without quotes, a range with a dash, several names where one is due (or a range), a path with commas. */
export type NameSlip = 'words' | 'range' | 'names' | 'names or range' | 'path';

/** What each writing problem that syntax can see has to say. Texts are as written. */
export interface SyntaxFacts {
  'line-unreadable': {
    text: string;
    expected: string;
    readings: readonly string[];
    parent: string;
    slip?: NameSlip;
  };
  'word-unknown': { word: string; nearest: readonly string[]; all?: readonly string[] }; // all that can stand there, where nothing is near
  'place-wrong': { keyword: string; parent: string; parents: readonly string[] };
  'hidden-character': { character: string };
  'indent-unclear': { found: number; levels: readonly number[]; tab: boolean };
  'foot-inch-marks': { rewrite: string };
  'hash-after-number': { rest: string };
  'decimal-comma': { text: string; a: string; b: string | null }; // null: only one of the two gives a point its numbers
  'number-doubtful': { text: string; short: string; unit: string; other: string };
  'name-reserved': { name: string; as: 'unit' | 'keyword' | 'function' | 'material' };
  'clause-missing': { item: string; clause: string; why: string };
  'stated-twice': { name: string; place: string };
}

export interface Related {
  readonly at: Place;
  readonly says: string; // a few words, such as "stated here"
}

/** A fact found by a stage: checks give it words, severity and fixes. */
export interface Problem<S extends string = string, F = unknown> {
  readonly slug: S;
  readonly at: Place;
  readonly related: readonly Related[];
  readonly facts: F;
}

/** A problem of one line, its place still a span of that line. */
export interface LineProblem<S extends string = string, F = unknown> {
  readonly slug: S;
  readonly span: Span;
  readonly facts: F;
}
