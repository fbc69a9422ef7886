// The sheet as every output shows it: ordered sections of finished words, each line tied to the statements it speaks of.
import type { Place } from '../../syntax/types.ts';

export interface Sheet {
  readonly title: string; // the plan's name; a library's path
  readonly library: boolean;
  readonly revision: string; // as written; 'not stated' where the plan gives none
  readonly mark: string; // the content mark
  readonly foot: string; // the caution that stands on every page
  readonly sections: readonly Section[];
}

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block = Paragraph | Table | Bars;

export interface Paragraph {
  readonly kind: 'paragraph';
  /** caution: stands in a frame; alert: a caution that something is not known, over or set aside; plain: everything else. */
  readonly look: 'plain' | 'caution' | 'alert';
  readonly text: string;
  readonly at: readonly Place[];
}

export interface Table {
  readonly kind: 'table';
  readonly caption: string;
  /** Empty: no head row; then the first cell of each row is its heading. */
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

export interface Column {
  readonly title: string;
  readonly figures?: true; // set to the right, so that digits stand under digits
}

export interface Row {
  readonly cells: readonly Cell[]; // as many as there are columns; the first one names the row
  /** The statements it speaks of, the one it stands for first; empty: none. */
  readonly at: readonly Place[];
  readonly depth?: number; // how deep it is nested: parts in an assembly
  readonly total?: true;
  /** The statement's own row stands elsewhere on the sheet. */
  readonly repeat?: true;
}

export interface Cell {
  readonly text: string;
  /** over: beyond a limit; the word stands in the text. not known: open. */
  readonly is?: 'over' | 'not known';
  /** A place to go to, written behind the text as `line 12`, with its file where that is another one. */
  readonly link?: Link;
}

export interface Link {
  readonly path: string; // '' for the plan's own file
  readonly line: number; // from 1
}

/** Plain horizontal bars over one scale, with a labelled mark where the figure in force stands. */
export interface Bars {
  readonly kind: 'bars';
  readonly id: string; // for the ids of its title and description
  readonly title: string;
  readonly description: string;
  readonly bars: readonly Bar[];
  readonly mark: { readonly label: string; readonly at: number } | null; // share of the scale
}

export interface Bar {
  readonly label: string;
  readonly text: string; // the figure
  readonly from: number; // shares of the scale, 0 to 1
  readonly to: number;
  /** part: a part; added: allowance or weight that no part accounts for. */
  readonly look: 'part' | 'added';
  readonly at: readonly Place[];
}
