// What every part of completion is asked with, and the small makers of its answers.
import type { BoundPlan } from '../../plan/types.ts';
import type { Row, Slot } from '../../syntax/index.ts';
import type { ClauseRow } from '../../vocabulary/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { inQuotes } from '../spelling.ts';
import type { Completion } from '../types.ts';

/** A library that could be used, with the path to write. */
export interface Library {
  readonly path: string;
  readonly plan: BoundPlan;
}

/** What lies around the file asked about. */
export interface Around {
  /** Files whose names may be taken, and are then used. */
  readonly libraries: readonly Library[];
  /** Every file in the opened folders that a text may name, by its path from the file asked about. */
  readonly files: readonly string[];
}

export interface Asked extends Around {
  readonly s: Snapshot;
  readonly row: Row;
  readonly number: number;
  readonly offset: number;
  readonly slot: Slot;
  /** The clause, or the statement's own value, that the place is in; null: none. */
  readonly clause: ClauseRow | null;
}

/** Where the text of a value begins, and what of it stands left of the caret. */
export interface Begun {
  readonly from: number;
  readonly text: string;
}

/** The value of the clause the place is in, from behind its keyword to the caret. */
export function begun({ row, offset, slot }: Asked): Begun {
  const keyword = slot.clause ?? slot.statement ?? '';
  const before = row.text.slice(0, offset);
  const pattern = new RegExp(`(?:^|[,:]|\\s)\\s*${keyword.replace(/[^\w ]/g, '\\$&')}(?=[\\s:]|$)[\\s:]*`, 'g');
  const last = [...before.matchAll(pattern)].at(-1);
  const from = last && keyword ? last.index + last[0].length : slot.from;
  return { from, text: before.slice(from) };
}

type Parts = Partial<Pick<Completion, 'detail' | 'help' | 'snippet' | 'edits' | 'text'>> & { readonly from?: number };

/** An answer that replaces what is typed of it, and nothing right of the caret. */
export function completion(
  { row, slot, offset }: Asked,
  kind: Completion['kind'],
  label: string,
  parts: Parts = {},
): Completion {
  const { detail = '', help = '', text = label, snippet = false, edits = [], from = slot.from } = parts;
  const typedQuote = /^["“”„]/.test(row.text.slice(from, offset));
  const quoted = typedQuote && !text.startsWith('"') && !snippet ? inQuotes(text) : text;
  // The editor has closed the quotation marks already: the second one stands right of the caret.
  const closed = typedQuote && quoted.endsWith('"') && row.text.charAt(offset) === '"';
  return {
    label,
    detail,
    help,
    at: { row, from, to: offset },
    text: closed ? quoted.slice(0, -1) : quoted,
    snippet,
    kind,
    edits,
  };
}

/** A phrase of several words, of which some may stand there already. */
export function phrase(
  asked: Asked,
  kind: Completion['kind'],
  words: string,
  value: Begun,
  parts: Parts = {},
): Completion {
  const typed = value.text;
  for (let at = 0; at < typed.length; at = nextWord(typed, at)) {
    if (typed.charAt(at) !== ' ' && words.startsWith(typed.slice(at)))
      return completion(asked, kind, words, { ...parts, from: value.from + at });
  }
  return completion(asked, kind, words, parts);
}

const nextWord = (text: string, at: number): number => {
  const space = text.indexOf(' ', at);
  return space < 0 ? text.length : space + 1;
};
