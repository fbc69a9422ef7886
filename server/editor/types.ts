// What the features answer in: small records with rows and offsets of our own, nothing of any editor's protocol.
import type { Edit } from '../checks/types.ts';
import type { Place } from '../syntax/types.ts';

export type { Edit };

/** A stretch of one file over whole or part rows; rows from 0, offsets in UTF-16 units, the end exclusive. */
export interface Stretch {
  readonly first: number;
  readonly from: number;
  readonly last: number;
  readonly to: number;
}

/** The same words twice: for readers that know Markdown, and for those that do not. */
export interface Hover {
  readonly at: Place;
  readonly markdown: string;
  readonly plain: string;
}

/** Which hints are wanted; the settings under `becket.hints`. */
export interface HintSettings {
  readonly totals: boolean;
  readonly parts: boolean;
  readonly legs: boolean;
  readonly crane: boolean;
}

export interface Hint {
  /** The end of the line it stands behind. */
  readonly at: Place;
  /** Complete in at most 40 characters; begins with `=`, `→` or `?`. */
  readonly label: string;
  readonly tooltip: string;
  /** What governs, such as the weakest sling; null where nothing does. */
  readonly leadsTo: Place | null;
}

export interface Completion {
  readonly label: string;
  /** Its figure: `11.5 lb/ft`; '' where it has none. */
  readonly detail: string;
  readonly help: string;
  /** What is replaced: never anything right of the caret. */
  readonly at: Place;
  readonly text: string;
  /** true: `text` is a snippet with `${1:…}` stops. */
  readonly snippet: boolean;
  readonly kind: 'statement' | 'clause' | 'unit' | 'name' | 'word' | 'material' | 'text' | 'snippet';
  /** More to change when it is taken, such as a `use` line. */
  readonly edits: readonly Edit[];
}

export interface Symbol {
  readonly name: string;
  readonly keyword: string;
  /** Weight, capacity used or state: the outline reads as a table. */
  readonly detail: string;
  readonly whole: Stretch;
  readonly at: Place;
  readonly children: readonly Symbol[];
}

/** A change of one place, or why there is none, in a sentence. */
export type Renaming =
  | { readonly edits: readonly { readonly at: Place; readonly text: string }[] }
  | { readonly refused: string };

export interface QuickFix {
  readonly title: string;
  readonly slug: string;
  readonly preferred: boolean;
  readonly finding: Place;
  readonly edits: readonly Edit[];
  readonly cursor: number | null;
}
