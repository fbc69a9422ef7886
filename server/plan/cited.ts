// Papers in the opened folder that a `from` names: which file it is, and whether that still holds what was seen.
import type { Place } from '../syntax/types.ts';
import { joined, keptAlong } from './along.ts';
import { printOf } from './digest.ts';
import type { Source } from './files.ts';
import type { BoundClause, Item, PlanFile, PlanProblem } from './types.ts';

/** What is kept of a paper: nothing of its content but a print of it. */
export interface Paper {
  readonly size: number; // bytes
  readonly print: string; // SHA-256, 64 hexadecimal digits
}

export interface Citation {
  readonly from: BoundClause | null; // null: `seen` stands without a `from`
  /** The path in the text of `from`, without quotes and remark; null where that names no file. */
  readonly at: Place | null;
  readonly path: string | null;
  /** Identity; null where the path leads nowhere it may. */
  readonly file: string | null;
  /** Null: there is no such file, or it cannot be read. */
  readonly paper: Paper | null;
  readonly seen: BoundClause | null;
  /** Changed: `seen` is not a mark of what the file holds now, or there is no file to hold it against. */
  readonly state: 'not marked' | 'as seen' | 'changed';
}

/** Endings of files that people keep papers in. */
export const paperEndings: readonly string[] =
  'pdf png jpg jpeg webp heic tif tiff gif bmp svg txt md html htm rtf csv xls xlsx ods doc docx odt eml msg dwg dxf stp step ifc stl obj xml'.split(
    ' ',
  );

const path = new RegExp(
  `^(?![A-Za-z][A-Za-z0-9+.-]*:)[^":*?<>|,]+?\\.(?:${paperEndings.join('|')})(?=$|[,;]?\\s)`,
  'i',
);

/** The path a text begins with: up to the ending of a file's name, with nothing or a remark behind it. Null for any other text. */
export const pathIn = (text: string): string | null => path.exec(text)?.[0] ?? null;

export const paperOf = (bytes: Uint8Array): Paper => ({ size: bytes.length, print: printOf(bytes) });

/** The mark that `seen` takes: twelve digits of the print, in groups of four. */
export const seenMark = ({ print }: Paper): string => [0, 4, 8].map((at) => print.slice(at, at + 4)).join('-');

const digitsIn = (text: string): string => text.toLowerCase().replace(/[\s-]/g, '');

/** Whether a text can be the mark of any paper. */
export const isMark = (text: string): boolean => /^[0-9a-f]{12,64}$/.test(digitsIn(text));

/** Whether a text is the mark of a paper; more digits of its print are one too. */
const marks = (text: string, { print }: Paper): boolean => isMark(text) && print.startsWith(digitsIn(text));

/** What the items of those files cite, by item, and a fact for each paper that is not the one that was seen. */
export function cite(
  files: readonly PlanFile[],
  source: Source,
): { readonly cited: ReadonlyMap<Item, Citation>; readonly problems: readonly PlanProblem[] } {
  const cited = new Map<Item, Citation>();
  for (const { file, items } of files)
    for (const item of items.flatMap(citing)) cited.set(item, citationOf(item, file, source));
  const problems = [...cited].flatMap(([item, citation]) => changed(item, citation, cited) ?? []);
  return { cited, problems };
}

/** The items in and under an item that name a file as their source, or say which version of it was seen. */
function citing(item: Item): readonly Item[] {
  const under = joined(along(item.node.row, item.children, citing));
  return pathIn(sourceOf(item)) !== null || item.clauses.has('seen') ? [item, ...under] : under;
}

const along = keptAlong<Item, readonly Item[]>();

const textIn = (clause: BoundClause | undefined): string => (clause?.value?.kind === 'text' ? clause.value.text : '');
const sourceOf = (item: Item): string => textIn(item.clauses.get('from')?.[0]);

function citationOf(item: Item, file: string, source: Source): Citation {
  const from = item.clauses.get('from')?.[0] ?? null;
  const seen = item.clauses.get('seen')?.[0] ?? null;
  const named = pathIn(sourceOf(item));
  const found = named === null ? null : source.resolve(file, named);
  const paper = found && 'file' in found ? source.paper(found.file) : null;
  return {
    from,
    at: from && named !== null ? placeOf(from, named) : null,
    path: named,
    file: found && 'file' in found ? found.file : null,
    paper,
    seen,
    state:
      !seen || seen.value?.kind === 'unknown'
        ? 'not marked'
        : paper && marks(textIn(seen), paper)
          ? 'as seen'
          : 'changed',
  };
}

/** The path within the text as it is written. */
function placeOf({ valueAt: { row, from, to } }: BoundClause, named: string): Place {
  const start = row.text.slice(from, to).indexOf(named);
  return start < 0 ? { row, from, to } : { row, from: from + start, to: from + start + named.length };
}

function changed(item: Item, citation: Citation, cited: ReadonlyMap<Item, Citation>): PlanProblem | null {
  const { seen, paper, path: named, file } = citation;
  if (!seen || citation.state !== 'changed') return null;
  const own = numbersOf(item);
  const others = [...cited].flatMap(([other, { file: theirs }]) =>
    file !== null && theirs === file && other !== item ? numbersOf(other) : [],
  );
  return {
    slug: 'evidence-changed',
    at: citation.at ?? seen.at,
    related: [...own, ...others].map(({ at }) => ({ at, says: 'rests on it' })),
    facts: {
      paper: named,
      on: own.length ? own.map(({ text }) => text) : [headingOf(item)],
      seen: textIn(seen),
      seenAt: seen.valueAt,
      now: paper && seenMark(paper),
    },
  };
}

/** The figures a statement gives, as written: its own and those of statements under it that name no source of their own. */
function numbersOf(item: Item): readonly { readonly text: string; readonly at: Place }[] {
  const clauses = [...(item.value ? [item.value] : []), ...[...item.clauses.values()].flat()];
  const own = clauses
    .filter(({ keyword }) => keyword !== 'contingency') // the planner's own, not the paper's
    .filter(({ value }) => value && figures.has(value.kind) && (value.kind !== 'word' || value.amount))
    .map(({ keyword, valueAt: at }) => ({ text: [keyword, written(at)].filter(Boolean).join(' '), at }));
  return [...own, ...item.children.filter(({ clauses: of }) => !of.has('from')).flatMap(numbersOf)];
}

const figures = new Set(['quantity', 'size', 'point', 'points', 'line', 'word', 'row', 'tilt']);

const headingOf = ({ keyword, names: [name] }: Item): string => (name === undefined ? keyword : `${keyword} "${name}"`);

const written = ({ row, from, to }: Place): string => row.text.slice(from, to).trim();
