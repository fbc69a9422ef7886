// What differs in meaning between two versions of a plan: the same data for text, Markdown, JSON and the editor.
import type { Finding } from '../../checks/index.ts';
import type { Derived } from '../../quantities/index.ts';
import type { Basis, Expectation, Share, Subject } from '../../results/index.ts';
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';

export interface Comparison {
  readonly old: Snapshot;
  readonly now: Snapshot;
  /** Nothing differs in meaning: neither a figure nor anything said. */
  readonly same: boolean;
  readonly figures: readonly FigureChange[];
  readonly expects: readonly ExpectChange[];
  readonly findings: readonly FindingChange[];
  readonly statements: readonly StatementChange[];
  readonly quiet: readonly QuietChange[];
  readonly refined: readonly Refinement[];
  readonly rests: readonly RestChange[];
}

/** A result that is another one, or there only once. */
export interface FigureChange {
  readonly subject: Subject; // as it is called now; as it was where it is gone
  readonly result: string;
  readonly stage: string | null;
  readonly old: Derived | null; // null: not there
  readonly now: Derived | null;
}

export type Presence = 'gone' | 'new' | 'changed';

export interface ExpectChange {
  readonly kind: Presence;
  readonly old: Expectation | null;
  readonly now: Expectation | null;
  /** Whether the bound lets more or less through than before; null where that cannot be said, or it is the same. */
  readonly bound: 'looser' | 'tighter' | null;
}

export interface FindingChange {
  readonly kind: Presence;
  readonly old: Finding | null;
  readonly now: Finding | null;
}

/** A statement that came, went, says something else, has another name, or stands under another one. */
export interface StatementChange {
  readonly kind: Presence | 'renamed' | 'moved' | 'order';
  readonly keyword: string;
  readonly heading: string; // as it stands now; as it stood where it is gone
  /** The heading it had, where it has another name or kind. */
  readonly was: string | null;
  /** What it stood under and stands under, where that is another statement. */
  readonly under: { readonly old: string; readonly now: string } | null;
  readonly clauses: readonly ClauseChange[];
  /** Statements that came or went with it, because they stand under it. */
  readonly below: number;
  readonly oldAt: Place | null;
  readonly nowAt: Place | null;
}

/** A clause, `''` for the statement's own value; null: not said. */
export interface ClauseChange {
  readonly keyword: string;
  readonly old: string | null;
  readonly now: string | null;
}

/** Something that a reader could pass over although it changes what is counted or judged. */
export interface QuietChange {
  readonly kind: Presence;
  readonly what: string;
  readonly old: string | null;
  readonly now: string | null;
}

/** A part that rests on something else now. */
export interface Refinement {
  readonly name: string;
  readonly old: Footing;
  readonly now: Footing;
}

export interface Footing {
  /** assembly: the sum of the parts in it. */
  readonly basis: Basis | 'assembly';
  readonly evidence: string | null; // as in `by`
  readonly parts: number; // in an assembly
  readonly weight: Derived;
}

/** What the parts of a load rest on; null: a part is not known, or there are none. */
export interface RestChange {
  readonly load: string;
  readonly old: readonly Share[] | null;
  readonly now: readonly Share[] | null;
}
