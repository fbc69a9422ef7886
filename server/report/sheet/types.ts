// The sheet as every output shows it: ordered sections of finished words, each line tied to the statements it speaks of.
import type { Vec3 } from '../../mechanics/index.ts';
import type { System } from '../../quantities/index.ts';
import type { Basis } from '../../results/index.ts';
import type { Place } from '../../syntax/types.ts';

export interface Sheet {
  readonly title: string; // the plan's name; a library's path
  readonly ofLibrary: boolean;
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

export type Block = Paragraph | Table | Bars | Stack | Sketch | Curve;

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
  /** A file that the text names, as seen from the plan's folder; what shows the sheet in a page of its own makes a link of it. */
  readonly document?: string;
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

/** One bar of pieces that make up a whole, each with its words and figures. */
export interface Stack {
  readonly kind: 'stack';
  readonly id: string; // for the ids of its title, description and patterns
  readonly title: string;
  readonly description: string;
  readonly pieces: readonly StackPiece[];
  readonly note: string; // stands below it
}

export interface StackPiece {
  readonly look: Basis;
  readonly label: string;
  readonly figure: string;
  readonly share: string;
  readonly from: number; // shares of the whole, 0 to 1
  readonly to: number;
  readonly at: readonly Place[];
}

/** What hangs, drawn to scale. All elevations and plans of one sketch share one scale. */
export interface Sketch {
  readonly kind: 'sketch';
  readonly system: System; // of the scale bar's length
  readonly views: readonly SketchView[];
  readonly note: string; // what the signs mean
}

export interface SketchView {
  readonly id: string; // for the ids of its title and description
  readonly view: 'elevation' | 'plan' | 'oblique';
  /** half: two stand side by side. */
  readonly width: 'whole' | 'half';
  readonly title: string;
  readonly description: string;
  readonly scene: Scene;
}

/** Things in space, m: x across the page, z up. */
export interface Scene {
  readonly strokes: readonly Stroke[];
  readonly signs: readonly Sign[];
  readonly boxes: readonly BoxOutline[];
  readonly axes: readonly [Vec3, Vec3, Vec3] | null; // directions of the load's x, y and z
  /** Why there are no figures; '' where there are. */
  readonly open: string;
}

export interface Stroke {
  readonly is: 'leg' | 'slack' | 'beam' | 'plumb';
  readonly path: readonly Vec3[];
  readonly closed?: true;
  readonly label: Label | null;
  readonly at: readonly Place[];
}

export interface Sign {
  readonly is: 'hook' | 'ring' | 'point' | 'pick' | 'centre';
  readonly place: Vec3;
  readonly label: Label | null;
  readonly at: readonly Place[];
}

export interface BoxOutline {
  readonly corners: readonly Vec3[]; // eight: x runs fastest low to high, then y, then z
  readonly label: Label;
  readonly at: readonly Place[];
}

export interface Label {
  readonly name: string; // in every view
  readonly figures: string; // in elevations, behind the name; '' where there are none
  readonly over?: true;
}

/** A few plain lines over one axis, each named at its end. */
export interface Curve {
  readonly kind: 'curve';
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly across: readonly Tick[]; // marks of the axis below, shares of it from 0 to 1
  readonly up: readonly Tick[]; // marks of the axis at the side
  readonly acrossTitle: string;
  readonly upTitle: string;
  readonly lines: readonly CurveLine[];
}

export interface Tick {
  readonly at: number;
  readonly text: string;
}

export interface CurveLine {
  readonly label: string;
  /** Share across and share up; null where it is not known: the line breaks there. */
  readonly points: readonly (readonly [number, number] | null)[];
  readonly at: readonly Place[];
}
