// What a finding is: a fact given words, a severity, an effect and ways out.
import type { ResultFacts, Results } from '../results/types.ts';
import type { Place, Problem } from '../syntax/types.ts';

export type Severity = 'error' | 'warning' | 'note';
/** open: the figure shows `?`; heavier: the safer candidate is used; stands: unchanged; opens centre: weight stands, centre is open. */
export type Effect = 'open' | 'heavier' | 'stands' | 'opens centre';

/** A change of text: replaces a range of a row, or puts whole lines after a row (before it where `before` is true). */
export type Edit =
  | { readonly kind: 'replace'; readonly at: Place; readonly text: string }
  | { readonly kind: 'insert'; readonly after: Place; readonly lines: readonly string[]; readonly before?: boolean };

export interface Fix {
  readonly title: string; // plain words: what is written
  readonly preferred: boolean; // only one reading is possible
  readonly edits: readonly Edit[];
  /** Where the cursor goes because a figure is missing: in the first edit's text, as an offset; null: nowhere. */
  readonly cursor: number | null;
}

export interface Finding {
  readonly slug: string;
  readonly severity: Severity;
  readonly message: string;
  readonly at: Place;
  readonly related: readonly { readonly at: Place; readonly message: string }[];
  readonly fixes: readonly Fix[];
  readonly waived: { readonly reason: string; readonly approvedBy: string } | null;
}

/** What a check may ask beside the fact itself. */
export interface Asked {
  readonly results: Results;
  /** Figures in the plan's units, loads rounded up, capacities down. */
  readonly system: 'US' | 'metric';
}

export interface Check<S extends keyof ResultFacts = keyof ResultFacts> {
  readonly slug: S;
  readonly severity: Severity | ((problem: Problem<S, ResultFacts[S]>) => Severity);
  readonly effect: Effect;
  readonly says: (problem: Problem<S, ResultFacts[S]>, asked: Asked) => string;
  readonly fixes?: (problem: Problem<S, ResultFacts[S]>, asked: Asked) => readonly Fix[];
}
