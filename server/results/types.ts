// What is worked out from a bound plan: every value as a Derived, the state of each `expect`, and the facts found on the way.

import type { Box } from '../mechanics/index.ts';
import type { BoundPlan, Item, PlanFacts, Thing } from '../plan/types.ts';
import type { Derived } from '../quantities/derived.ts';
import type { Place, Problem, SyntaxFacts } from '../syntax/types.ts';
import type { Hanging } from './hang/hang.ts';
import type { LiftOff } from './lift-off.ts';

export interface Subject {
  readonly kind: string; // plan, load, assembly, part, pick, a gear keyword, crane, position, support, ground, weather
  readonly name: string | null;
  readonly path: readonly string[];
}

export interface Result {
  readonly subject: Subject;
  readonly result: string;
  readonly stage: string | null;
  readonly value: Derived;
  readonly at: Place; // the statement it belongs to
}

export interface Expectation {
  readonly item: Item;
  readonly text: string; // as written, without the keyword
  readonly state: 'met' | 'not met' | 'open';
  /** The result that decided: the worst one. */
  readonly worst: Result | null;
  readonly at: Place;
}

/** One part, assembly or load placed and summed up. */
export interface Body {
  readonly thing: Thing;
  readonly weight: Derived; // all copies
  readonly volume: Derived;
  readonly cog: readonly [Derived, Derived, Derived]; // in the load's axes
  readonly box: Box | null; // in the load's axes, all copies; null: not known
  readonly bodies: readonly Body[]; // assemblies: what is in them
  readonly working: Working | null; // parts: how the weight of one came about
}

/** How one part's weight was worked out, for hover and the working appendix. */
export interface Working {
  readonly shape: string;
  readonly each: Derived; // weight of one copy
  readonly volumeEach: Derived | null;
  readonly density: Derived | null; // kg/m3, kg/m or kg/m2
  readonly count: number;
}

export interface Candidate {
  readonly kind: 'calculated' | 'stated' | 'measured';
  readonly evidence: string | null;
  readonly weight: Derived; // with what is added and taken off, without allowance
  readonly allowance: number; // share added; 0.05 is 5 %
  readonly allowanceFrom: string; // in words: "contingency of the load", "built in for a marking" …
  readonly total: Derived; // with allowance
  readonly at: Place;
}

export interface LoadResult {
  readonly thing: Thing;
  readonly body: Body;
  readonly candidates: readonly Candidate[];
  readonly governing: Candidate | null; // null: not known
  readonly weight: Derived; // governing, with allowance
  readonly cog: readonly [Derived, Derived, Derived];
  readonly cogFrom: 'weighed' | 'stated' | 'calculated' | 'mixed';
}

/** One physical piece of gear that hangs, or lies ready. */
export interface GearUse {
  readonly thing: Thing;
  readonly kind: string; // its keyword
  readonly weight: Derived; // all of it: figure × count
  readonly each: Derived;
  readonly capacity: Derived;
  readonly length: Derived;
  readonly count: number;
  readonly hangs: 'leg' | 'hangs from' | 'left over' | null; // null: spare or not used: not counted
  readonly legs: readonly LegUse[];
  readonly crane: string | null; // of the rig it is in
}

export interface LegUse {
  readonly rig: Thing | null;
  readonly rigItem: Item;
  readonly item: Item; // the leg statement
  readonly steps: readonly { readonly thing: Thing; readonly at: Place }[]; // from the top down
  readonly broken: boolean;
}

/** What a leg ends at, by name, and its sling where another leg ends there too. */
export interface LegEnd {
  readonly to: string;
  readonly sling: string | null;
}

export interface ResultFacts extends PlanFacts {
  'word-unknown': SyntaxFacts['word-unknown']; // a word of another shape
  'geometry-impossible': { shape: string; reason: string; figures: readonly number[] };
  'cutout-outside': { cutout: string; volume: number; why: 'larger' | 'outside' | 'taken'; other: string | null };
  'part-unplaced': { part: string; copies: number };
  'weight-unknown': { load: string };
  'weight-unplaced': { load: string; governing: number; difference: number };
  'evidence-disagrees': {
    a: string;
    b: string;
    valueA: number;
    valueB: number;
    apart: number;
    limit: number;
    rule: string;
  };
  'measured-lighter': { reading: string; a: number; other: string; b: number; missing: readonly string[] };
  'gear-weight-missing': { item: string; nearest: readonly string[] };
  'gear-capacity-missing': { item: string };
  'gear-implausible': {
    item: string;
    clause: string;
    value: number;
    unit: 'kg' | 'm';
    times: number;
    usual: number;
    size: string;
    readings: readonly string[];
  };
  'connection-missing': { a: string; b: string };
  'hook-missing': { load: string };
  'left-unused': { item: string; pick: boolean };
  'contents-unstated': { part: string; volume: number; added: number; closed: boolean; fillable: boolean };
  'contingency-missing': { evidence: string; percent: number; rule: string };
  'holding-unstated': { load: string };
  'release-unstated': { load: string; by: string };
  /** kg; `cell`: what shows it, null: the crane's indicator; `low` and `most`: what is expected; `item` is used `used` of its capacity at the stop. */
  'stop-doubtful': {
    load: string;
    cell: string | null;
    kind: 'low' | 'high' | 'over';
    stop: number;
    low: number;
    most: number;
    item: string | null;
    used: number;
  };
  'material-doubtful': { material: string; low: number; high: number; used: number; choices: readonly string[] };
  /** `older`: it is from before the load was changed. */
  'reading-unclear': {
    reading: string;
    missing: readonly { readonly words: string; readonly clause: string }[];
    older: boolean;
  };
  'addition-unclear': { thing: string; twice: boolean };
  'cog-disagrees': {
    load: string;
    a: string;
    b: string;
    pointA: readonly (number | null)[];
    pointB: readonly (number | null)[];
    distance: number;
    limit: number;
  };
  /** An item in its outside size, or a drawing by its longest side (m) in the unit stated. */
  'weight-implausible': { item: string; weight: number } & (
    | { size: string; density: number; like: string }
    | { longest: number; unit: string }
  );
  'centre-assumed': { item: string; distance: number; bound: boolean };
  'expect-failed': {
    text: string;
    subject: string;
    condition: string;
    value: number | null;
    unit: string;
    result: string;
    cause: string | null;
    limit: number;
  };
  'hang-unsolved': { load: string; reason: string };
  /** Height of its centre above the level up to which it stays upright, or above the middle of its picks where that level is not known, m. */
  'hang-unstable': { load: string; height: number; above: 'limit' | 'picks' };
  /** Only friction keeps a basket where it is: running free the load turns over, or hangs otherwise by `angle`. */
  'friction-holds': { load: string; slings: readonly string[]; over: boolean; angle: number };
  'hang-tilted': { load: string; angle: number; end: string; limit: number; rule: string };
  'leg-slack': { leg: LegEnd; legs: readonly LegEnd[] };
  /** The leg that the worst of the ways to share pulls hardest, and those it leaves slack; null: too many ways to tell. */
  'leg-share-uncertain': { n: number; hardest: { leg: LegEnd; slack: readonly LegEnd[] } | null };
  'leg-overloaded': {
    item: string;
    leg: string;
    tension: number;
    /** What of it is there to break the load free, N. */
    breakout: number;
    capacity: number;
    used: number;
    limit: number;
    unit: string;
  };
  'angle-flat': { leg: string; angle: number; limit: number; rule: string };
  'capacity-basis-missing': { item: string; capacity: number; unit: string; usual: number; size: string };
  'bend-tight': {
    sling: string;
    d: number;
    over: string | null;
    D: number;
    ratio: number;
    least: number | null;
    falls: number;
  };
  'edge-bare': { sling: string; load: string };
  'pull-barred': { item: string; angle: number; limit: number; kind: string; source: string };
  'joint-wrong': { a: string; b: string; reason: 'pin' | 'hook'; pin: number | null; hole: number | null };
  'beam-angle-outside': { beam: string; least: number; angle: number };
  'temperature-outside': { item: string; from: number; to: number; source: string; temperature: number };
  'serial-repeated': { serial: string; a: string; b: string };
  'date-ahead': { what: string; date: string; lift: string };
  'date-passed': { what: string; item: string; until: string | null; lift: string | null };
  'clearance-short':
    | { a: string; b: string }
    | { position: string; needed: number; tip: number; limit: number; rule: string };
  'lift-off-swing': { distance: number; side: string; limit: number };
}
export type ResultProblem = { [S in keyof ResultFacts]: Problem<S, ResultFacts[S]> }[keyof ResultFacts];

/** A limit in force, with the rule it comes from. */
export interface Rule {
  readonly name: string; // "works rule 4", "built in"
  readonly value: number;
  readonly at: Place | null;
}

export interface Results {
  readonly plan: BoundPlan;
  readonly list: readonly Result[];
  readonly loads: readonly LoadResult[];
  /** By the item of a load, assembly or part; each is looked for when asked for. */
  readonly bodies: { get(item: Item): Body | undefined };
  readonly gear: readonly GearUse[];
  readonly legs: readonly LegUse[];
  readonly totals: {
    readonly loadWeight: Derived;
    readonly rigging: Derived;
    readonly deductions: Derived;
    readonly gross: Derived;
  };
  readonly expects: readonly Expectation[];
  readonly problems: readonly ResultProblem[];
  readonly hanging: Hanging;
  /** What is read while the load leaves the ground, and where the lift stops. */
  readonly liftOff: LiftOff;
  /** What this version does not judge, in words, for the sheet's head. */
  readonly notJudged: readonly string[];
  /** Results of some kinds of subjects, in the order of the list. */
  ofKinds(kinds: readonly string[]): readonly Result[];
  find(kind: string, name: string | null, result: string, stage?: string | null): Result | undefined;
}
