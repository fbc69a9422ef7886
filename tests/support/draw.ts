// Answers of the editor's features drawn back into the plan they are about, so that a test reads like a screen.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { edited } from '../../server/editor/changes.ts';
import type { Around } from '../../server/editor/complete/types.ts';
import { complete, type Trigger } from '../../server/editor/complete.ts';
import { hints } from '../../server/editor/hints.ts';
import { hover } from '../../server/editor/hover.ts';
import { tokens } from '../../server/editor/tokens.ts';
import type { Completion, Edit, HintSettings, Stretch } from '../../server/editor/types.ts';
import type { Place } from '../../server/syntax/types.ts';
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';
import { CURSOR, fixture } from './fixture.ts';

export const allHints: HintSettings = { totals: true, parts: true, legs: true, crane: true };

/** A text with a cursor, checked. */
export interface Opened {
  readonly s: Snapshot;
  readonly files: Readonly<Record<string, string>>;
  readonly row: number;
  readonly offset: number;
}

/** The file the cursor is in; the first one where there is none. */
export function opened(text: string): Opened {
  const { files, file, cursor } = fixture(text);
  return { s: check({ ...files }, cursor?.file ?? file), files, row: cursor?.line ?? 0, offset: cursor?.column ?? 0 };
}

/** The line of the cursor with what the hover is about underlined, then what it says. */
export function hoverAt(text: string): string {
  const { s, row, offset } = opened(text);
  const found = hover(s, row, offset);
  return found ? `${underlined(found.at)}\n${found.plain}` : 'nothing';
}

/** A line with a place in it underlined. */
export function underlined({ row, from, to }: Place): string {
  const indent = row.text.length - row.text.trimStart().length;
  return `${row.text.trim()}\n${' '.repeat(Math.max(0, from - indent))}${'~'.repeat(Math.max(1, to - from))}`;
}

/** The plan with each hint behind its line. */
export function withHints(text: string, settings: HintSettings = allHints): string {
  const { s } = opened(text);
  const found = hints(s, 0, s.tree.rows.length - 1, settings);
  return s.tree.rows
    .map((row) => [row.text, ...found.filter(({ at }) => at.row === row).map(({ label }) => `‹${label}›`)].join(' '))
    .join('\n');
}

/** Each word of a plan with its class below it: `keyword`, `variable.declaration`. */
export function withTokens(text: string): string {
  const { s } = opened(text);
  return s.tree.rows
    .flatMap((row, n) => {
      const said = tokens(s, n, n).map(
        ({ from, to, type, modifiers }) => `${row.text.slice(from, to)} ${[type, ...modifiers].join('.')}`,
      );
      return [row.text, ...(said.length ? [`  ${said.join(' | ')}`] : [])];
    })
    .join('\n');
}

/** What completion offers at the cursor. */
export function offers(
  text: string,
  trigger: Trigger = null,
  { libraries = [], files = [] }: Partial<Around> = {},
): readonly Completion[] {
  const { s, row, offset } = opened(text);
  return complete(s, row, offset, trigger, { libraries, files }).items;
}

/** The first so many offers, each with its figure. */
export const offered = (text: string, count = 5, trigger: Trigger = null): readonly string[] =>
  offers(text, trigger)
    .slice(0, count)
    .map(({ label, detail }) => (detail ? `${label} · ${detail}` : label));

/** The text after an offer is taken, with the cursor behind what it put in. */
export function taken(text: string, label: string): string {
  const { s, row, offset } = opened(text);
  const item = complete(s, row, offset).items.find((one) => one.label === label);
  if (!item) return `not offered: ${label}`;
  return s.tree.rows
    .map((line, n) =>
      n === row ? line.text.slice(0, item.at.from) + item.text + CURSOR + line.text.slice(item.at.to) : line.text,
    )
    .join('\n');
}

/** The texts of a plan's files after edits. */
export function afterEdits(
  s: Snapshot,
  files: Readonly<Record<string, string>>,
  edits: readonly Edit[],
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(files).map(([file, text]) => {
      const tree = s.plan.files.find((one) => one.file === file)?.tree;
      return [file, tree ? edited(tree, edits).join(tree.newline) : text];
    }),
  );
}

/** The same for places with the text that replaces them, found in any of several plans. */
export function afterReplacing(
  plans: readonly Snapshot[],
  files: Readonly<Record<string, string>>,
  edits: readonly { readonly at: Place; readonly text: string }[],
): Readonly<Record<string, string>> {
  const lineOf = (row: Place['row']) =>
    Math.max(
      ...plans.flatMap(({ plan }) =>
        plan.files.filter(({ file }) => file === row.file).map(({ tree }) => tree.rowNumber(row)),
      ),
    );
  const put = edits
    .map(({ at, text }) => ({ file: at.row.file, line: lineOf(at.row), from: at.from, to: at.to, text }))
    .sort((a, b) => b.from - a.from);
  return Object.fromEntries(
    Object.entries(files).map(([file, text]) => {
      const lines = text.split('\n');
      for (const one of put)
        if (one.file === file)
          lines[one.line] =
            (lines[one.line] ?? '').slice(0, one.from) + one.text + (lines[one.line] ?? '').slice(one.to);
      return [file, lines.join('\n')];
    }),
  );
}

/** The words of a stretch, its line ends as they are. */
export function wordsOf({ tree }: Snapshot, { first, from, last, to }: Stretch): string {
  return tree.rows
    .slice(first, last + 1)
    .map(({ text }, i) => text.slice(i === 0 ? from : 0, first + i === last ? to : undefined))
    .join('\n');
}

const folder = join(import.meta.dirname, '../../samples');

/** Every file of the samples by its path, those of one cause each among them. */
export function sampleFiles(): Readonly<Record<string, string>> {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.liftplan'))
    .sort();
  return Object.fromEntries(
    paths.map((path) => [path.replaceAll('\\', '/'), readFileSync(join(folder, path), 'utf8')]),
  );
}

/** The samples that are complete: plans and libraries, not those that show one finding each. */
export const goodSamples = (): readonly string[] =>
  Object.keys(sampleFiles()).filter((path) => !path.startsWith('wrong/'));

export const sample = (path: string): Snapshot => check(sampleFiles(), path);
