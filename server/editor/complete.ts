// Completion: what may stand at a place, each with its figure; due clauses first, then units that fit, names nearby, the rest.
import { language, seenMark } from '../plan/index.ts';
import { type Slot, slotAt } from '../syntax/index.ts';
import type { Snapshot } from '../workspace/types.ts';
import { compared } from './complete/compare.ts';
import { keywords, rowOf } from './complete/keywords.ts';
import { itemHere, names } from './complete/names.ts';
import { namesFile, paths } from './complete/paths.ts';
import { snippets } from './complete/snippets.ts';
import { mostListed } from './complete/tables.ts';
import { type Around, type Asked, begun, completion } from './complete/types.ts';
import { units } from './complete/units.ts';
import { nearby, values } from './complete/values.ts';
import { inQuotes } from './spelling.ts';
import type { Completion } from './types.ts';

export type { Around, Library } from './complete/types.ts';

export interface Completions {
  readonly items: readonly Completion[];
  /** More come once more is typed. */
  readonly incomplete: boolean;
}

/** The character that brought the question up; null where the user asked for it. */
export type Trigger = ' ' | '>' | '"' | '/' | null;

const none: Completions = { items: [], incomplete: false };
const nothingAround: Around = { libraries: [], files: [] };

/** What may stand at an offset of a row. */
export function complete(
  s: Snapshot,
  row: number,
  offset: number,
  trigger: Trigger = null,
  around: Around = nothingAround,
): Completions {
  const where = s.tree.rows[row];
  if (!where || !answers(where.text.slice(0, offset), trigger)) return none;
  const slot = slotOf(s, row, offset);
  if (trigger === '/' && !(slot.kind === 'text' && namesFile(slot))) return none;
  const asked: Asked = {
    s,
    row: where,
    number: row,
    offset,
    slot,
    clause: rowOf(slot.block, slot.statement, slot.clause),
    ...around,
  };
  const items = offered(asked).filter((item) => !stands(item));
  return { items, incomplete: items.length >= mostListed };
}

/** Whether the path of a file may stand at an offset of a row: then `complete` wants to know the files around. */
export function wantsFiles(s: Snapshot, row: number, offset: number): boolean {
  const slot = s.tree.rows[row] ? slotOf(s, row, offset) : null;
  return slot?.kind === 'text' && namesFile(slot);
}

function slotOf({ tree }: Snapshot, row: number, offset: number): Slot {
  const parent = tree.parentAt[row];
  const block = tree.nodeAt[row]?.block || (parent?.line.statement?.keyword.word ?? parent?.line.meant ?? 'file');
  return slotAt(tree.rows[row]?.text ?? '', offset, language.under(block), language);
}

/** Words after which a space asks: something listed comes next. A figure asks for its unit. */
const asking = /(?:[:,>]|\d|(?:^|\s)(?:of|on|inside|by|from|like))$/;

function answers(before: string, trigger: Trigger): boolean {
  if (trigger !== ' ') return true;
  return asking.test(before.trimEnd());
}

/** Whether an item would change nothing: it is typed already. */
const stands = ({ at, text }: Completion): boolean => at.row.text.slice(at.from, at.to) === text;

function offered(asked: Asked): readonly Completion[] {
  const { slot } = asked;
  switch (slot.kind) {
    case 'comment':
      return [];
    case 'keyword':
      return withSnippets(asked, keywords(asked));
    case 'unit': // figures may begin a designation: 60E1, 6x36
      return slot.type === 'designation' ? values(asked) : units(asked);
    case 'name':
      return sided(asked) ? values(asked) : names(asked);
    case 'text':
      return bound(asked) ? compared(asked) : texts(asked);
    case 'value':
      return bound(asked) ? compared(asked) : values(asked);
  }
}

/** Texts that the same clause has elsewhere in this file, then files that it may name; behind `seen` the mark alone. */
function texts(asked: Asked): readonly Completion[] {
  if (asked.slot.clause === 'seen') return seen(asked);
  const before = nearby(asked, inQuotes, 'text');
  const said = new Set(before.map(({ label }) => label));
  return [...before, ...paths(asked).filter(({ label }) => !said.has(label))];
}

/** The mark of the paper that the line cites; never that of another one, which was seen for something else. */
function seen(asked: Asked): readonly Completion[] {
  const item = itemHere(asked);
  const paper = item && asked.s.plan.cited.get(item)?.paper;
  if (!paper) return [];
  const mark = seenMark(paper);
  return [completion(asked, 'text', mark, { text: inQuotes(mark), help: 'What the file holds now.' })];
}

const bound = ({ slot: { type } }: Asked): boolean => type === 'compare' || type === 'trigger' || type === 'subject';

/** Whether the axis of a side is due: its name stands already. */
const sided = (asked: Asked): boolean =>
  asked.slot.type === 'side' && /^(?:"(?:[^"]|"")*"|[\w.-]+)\s+\S*$/.test(begun(asked).text);

/** On an empty line each snippet stands behind its keyword; elsewhere they come last, where a statement may begin. */
function withSnippets(asked: Asked, words: readonly Completion[]): readonly Completion[] {
  const { row, slot } = asked;
  if (slot.statement !== null || row.text.slice(0, slot.from).trim() !== '') return words;
  const made = snippets(asked);
  const plain = ({ keyword: _keyword, ...item }: (typeof made)[number]): Completion => item;
  if (row.text.trim() !== '') return [...words, ...made.map(plain)];
  return words.flatMap((word) => [word, ...made.filter(({ keyword }) => keyword === word.label).map(plain)]);
}
