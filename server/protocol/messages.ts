// Our own messages between server and client, beside those of the language server protocol: names and shapes, nothing else.
// Plain data that survives JSON; positions are those of the protocol (line and UTF-16 character from 0). Numbers for people
// arrive as finished text: only the server knows how to write one.

/** A place in a text, as the protocol writes it. */
export interface Position {
  line: number;
  character: number;
}

/** A stretch of one document, as the protocol writes it. */
export interface Location {
  uri: string;
  range: { start: Position; end: Position };
}

/**
 * Given to the server when it starts (`initializationOptions`); all of it may be left out. A client that gives any of it knows the
 * messages below: no other is sent `STATUS` and `SHEET_CHANGED`.
 */
export interface StartOptions {
  /** Where the pages that explain the findings lie: one JSON file, `{ [slug]: ExplainAnswer }`, beside the server's bundle. */
  pages?: string;
  /** Documents at which an earlier server ended: this one answers for their spelling only, until their text changes. */
  setAside?: string[];
}

/** The settings under `becket`, as `workspace/configuration` hands them over. None changes an engineering result. */
export interface Settings {
  hints: { totals: boolean; parts: boolean; legs: boolean; crane: boolean };
  findings: { when: 'typing' | 'pause' | 'save' };
  sheet: { refresh: 'typing' | 'save' };
}

/** Server → client, notification: what the language status item shows for one document. */
export const STATUS = 'becket/status';
export interface StatusParams {
  uri: string;
  version: number;
  /** In words, worst first, as the sheet's Standing section heads it: `1 over, 3 not known`. */
  standing: string;
  /** With its unit, as written on the sheet; null where the document is no plan or the gross load is not known. */
  grossLoad: string | null;
  plansChecked: number;
  plansTotal: number;
}

/** Server → client, notification: the sheet of this document is no longer the one last asked for. */
export const SHEET_CHANGED = 'becket/sheetChanged';
export interface SheetChangedParams {
  uri: string;
  version: number;
}

/** Client → server, request: the sheet, less the sections that the asker already has. Null for a document not known. */
export const SHEET = 'becket/sheet';
export interface SheetParams {
  uri: string;
  /** The hash of each section that the asker holds, by section id. */
  known: Record<string, string>;
}
export interface SheetSection {
  id: string;
  hash: string;
  /** Finished HTML with every text of the plan escaped; elements that show a statement carry its ids in `data-id`. */
  html: string;
}
export interface SheetAnswer {
  uri: string;
  /** The version of the text that the sheet is of. */
  version: number;
  title: string;
  /** The ids of all sections, in reading order. */
  order: string[];
  /** Only those whose hash differs from the one in `known`. */
  sections: SheetSection[];
  /** True where the document is a library: its sheet says which plans use it. */
  ofLibrary: boolean;
}

/** Client → server, request: the ids of the statements at a position, innermost first, as `data-id` has them. */
export const MARKS_AT = 'becket/marksAt';
export interface MarksAtParams {
  uri: string;
  position: Position;
}
export interface MarksAtAnswer {
  ids: string[];
}

/** Client → server, request: where the statement with this id stands (`uri` is the plan whose sheet names it), or null. */
export const PLACE_OF = 'becket/placeOf';
export interface PlaceOfParams {
  uri: string;
  id: string;
}

/** Client → server, request: the whole sheet as one file, or null for a document not known. */
export const EXPORT_SHEET = 'becket/exportSheet';
export type SheetFormat = 'html' | 'markdown' | 'json' | 'lines';
export interface ExportSheetParams {
  uri: string;
  format: SheetFormat;
}
export interface ExportSheetAnswer {
  /** A file name without a folder, from the plan's own: `skid.html`. */
  name: string;
  text: string;
}

/**
 * Client → server, request: what differs in meaning between an earlier text of a document and the open one, as Markdown; null where
 * it cannot be said. Files that the plan uses count as they are now, for both.
 */
export const COMPARE = 'becket/compare';
export interface CompareParams {
  uri: string;
  /** The earlier text. */
  text: string;
  /** What it is called: `the saved file`. */
  name: string;
}
export interface CompareAnswer {
  markdown: string;
}

/** Client → server, request: the page that explains one kind of finding, or null for a slug not known. */
export const EXPLAIN = 'becket/explain';
export interface ExplainParams {
  slug: string;
}
export interface ExplainAnswer {
  title: string;
  markdown: string;
}

/** Client → server, request: answered once nothing is pending, with the version of each open document. For tests. */
export const IDLE = 'becket/idle';
export interface IdleAnswer {
  versions: Record<string, number>;
}

/** Server → client, request: the text of a file, or null where there is none. Asked by the browser's server, which has no files. */
export const READ_FILE = 'becket/readFile';
export interface ReadFileParams {
  uri: string;
}
export interface ReadFileAnswer {
  text: string | null;
}

/** Server → client, request: what stands in a drawing, list or paper, at most `most` bytes; null where it cannot be read or is larger. */
export const READ_BYTES = 'becket/readBytes';
export interface ReadBytesParams {
  uri: string;
  most: number;
}
export interface ReadBytesAnswer {
  base64: string | null;
}

/** Server → client, request: the files below a folder, at most `most` plans and as many others. Asked by the browser's server. */
export const LIST_FILES = 'becket/listFiles';
export interface ListFilesParams {
  folderUri: string;
  most: number;
}
export interface ListFilesAnswer {
  uris: string[];
}
