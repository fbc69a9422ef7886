// Puts a hover together: the result first, at most a dozen lines of working, then what it rests on and the cautions; never over 25 lines.
import type { BoundPlan } from '../../plan/types.ts';
import type { Place } from '../../syntax/types.ts';
import { spotOf } from '../items.ts';
import type { Hover } from '../types.ts';

/** A line of words, with a place to go to behind it. */
export interface Line {
  readonly says: string;
  readonly at?: Place | null;
}

export interface Note {
  readonly head: string;
  readonly working: readonly Line[];
  /** Sources and cautions: these are never left out. */
  readonly rests: readonly Line[];
  /** What the author wrote above the statement, and where it stands. */
  readonly about: readonly Line[];
}

export const note = (head: string, parts: Partial<Omit<Note, 'head'>> = {}): Note => ({
  head,
  working: [],
  rests: [],
  about: [],
  ...parts,
});

const mostLines = 25;
const mostWorking = 12;

/** The note in both forms, over the words it is about. */
export function hoverOf(plan: BoundPlan, at: Place, { head, working, rests, about }: Note): Hover {
  const room = mostLines - 1 - rests.length;
  const work = shortened(working, Math.min(mostWorking, room));
  const groups = [[{ says: head }], work, rests, about.slice(0, Math.max(0, room - work.length))].filter(
    (group) => group.length,
  );
  const linked = (line: Line) => ({ line, spot: line.at ? spotOf(plan, line.at) : null });
  const plain = groups.flatMap((group) =>
    group
      .map(linked)
      .map(({ line, spot }) => line.says + (spot ? ` (${whereOf(plan, line.at as Place, spot.row)})` : '')),
  );
  const markdown = groups.map((group, i) =>
    group
      .map(linked)
      .map(({ line, spot }) => {
        const words = i === 0 ? `**${escaped(line.says)}**` : escaped(line.says);
        return spot
          ? `${words} ([${escaped(whereOf(plan, line.at as Place, spot.row))}](${target((line.at as Place).row.file)}#L${spot.row + 1}))`
          : words;
      })
      .join('  \n'),
  );
  return { at, markdown: markdown.join('\n\n'), plain: plain.join('\n') };
}

/** The first lines, with a last one that counts the others. */
function shortened(lines: readonly Line[], most: number): readonly Line[] {
  if (lines.length <= most) return lines;
  return most < 1 ? [] : [...lines.slice(0, most - 1), { says: `and ${lines.length - most + 1} more, on the sheet` }];
}

/** `line 12`, with the file's name where it is another than the plan's own. */
const whereOf = (plan: BoundPlan, at: Place, row: number): string =>
  [at.row.file === plan.file ? '' : at.row.file.slice(at.row.file.lastIndexOf('/') + 1), `line ${row + 1}`]
    .filter(Boolean)
    .join(' ');

const target = (file: string): string =>
  file.replace(/[ ()<>]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`);

/** Plain words in Markdown: nothing in them is a mark of it. */
export const escaped = (text: string): string =>
  text
    .replace(/[\\`*_[\]<>|~&$]/g, '\\$&')
    .replace(
      /^(\s*)([#+=-]|\d+[.)](?=\s))/,
      (_, space: string, mark: string) => `${space}${mark.length > 1 ? mark.replace(/[.)]$/, '\\$&') : `\\${mark}`}`,
    );
