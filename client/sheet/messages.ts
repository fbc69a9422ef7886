// What the sheet's panel and its page say to each other. Each side reads only what it knows; all else is dropped.
import type { SheetAnswer } from '../../server/protocol/messages.ts';

/** Panel → page. */
export type ToPage =
  | ({ type: 'sheet' } & SheetAnswer)
  /** The statements under the cursor, innermost first. */
  | { type: 'marks'; ids: string[] }
  /** How the page stands to the text: level with it, behind it, or with nobody left to ask. */
  | { type: 'state'; state: 'level' | 'behind' | 'unsaved' | 'stopped' };

/** Page → panel. */
export type FromPage =
  | { type: 'ready' }
  | { type: 'stay'; on: boolean }
  /** Show where a statement stands; with `go`, put the cursor there as well. */
  | { type: 'reveal'; id: string; go: boolean }
  | { type: 'print' }
  | { type: 'export' };

/** What the page keeps for itself when the editor is closed and opened again. */
export interface KeptState {
  uri: string;
  stay: boolean;
  paper: boolean;
}

/** A message from the page, or null for anything that is none. */
export function readFromPage(value: unknown): FromPage | null {
  if (!isRecord(value)) return null;
  switch (value.type) {
    case 'ready':
    case 'print':
    case 'export':
      return { type: value.type };
    case 'stay':
      return typeof value.on === 'boolean' ? { type: 'stay', on: value.on } : null;
    case 'reveal':
      return typeof value.id === 'string' && typeof value.go === 'boolean'
        ? { type: 'reveal', id: value.id, go: value.go }
        : null;
    default:
      return null;
  }
}

/** The state a page kept, or null for anything else. */
export function readKept(value: unknown): KeptState | null {
  if (!isRecord(value) || typeof value.uri !== 'string') return null;
  return { uri: value.uri, stay: value.stay === true, paper: value.paper === true };
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
