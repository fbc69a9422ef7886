// The immutable picture of one plan or library at one version: what every feature, sheet and command reads.
import type { Finding } from '../checks/types.ts';
import type { BoundPlan } from '../plan/types.ts';
import type { Results } from '../results/types.ts';
import type { Tree } from '../syntax/types.ts';

export interface Snapshot {
  readonly file: string; // identity of the file asked about
  readonly version: number; // of the open text; 0 for a file on disk
  readonly tree: Tree; // of that file
  readonly plan: BoundPlan;
  readonly results: Results;
  readonly findings: readonly Finding[]; // of the plan and all it takes in
  /** Findings whose place is in this file. */
  readonly own: readonly Finding[];
  /** The program failed on this file: only its spelling is looked at until its text changes. */
  readonly setAside: boolean;
}

/** Larger drawings, lists and papers are not read: a mesh of so many bytes has two million triangles. */
export const mostBytes = 100_000_084;

/** Reads files for the workspace: from disk, from the editor, or from memory in tests. */
export interface Files {
  /** Text of a file; null where it cannot be read, undefined while it is still being fetched. */
  read(file: string): string | null | undefined;
  /**
   * What stands in a file of any kind, at most `mostBytes` of it; null where it cannot be read or is larger, undefined while
   * it is still being fetched.
   */
  bytes(file: string): Uint8Array | null | undefined;
  /** The path `use` names, relative to a file, inside the opened folder; null with the reason where that is not allowed. */
  resolve(from: string, path: string): { readonly file: string } | { readonly reason: string };
  /** Files of that base name somewhere in the opened folder, as paths relative to the file. */
  elsewhere(from: string, path: string): readonly string[];
}

/** A change of an open text: a stretch replaced, as the editor counts lines and UTF-16 units, or all of it. */
export interface TextChange {
  readonly range: { readonly start: Spot; readonly end: Spot } | null; // null: the whole text
  readonly text: string;
}

/** A place between two characters. Beyond the end of its line it means the line's end; beyond the last line, the text's end. */
export interface Spot {
  readonly line: number;
  readonly character: number;
}
