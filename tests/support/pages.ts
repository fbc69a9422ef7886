// Reads the pages that explain the findings, and runs their plans.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Edit, Finding, Fix } from '../../server/checks/types.ts';
import type { Derived } from '../../server/quantities/derived.ts';
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';
import { CURSOR, type Fixture, fixture, type Mark } from './fixture.ts';

export interface Page {
  readonly slug: string;
  readonly markdown: string;
  readonly words: number; // of prose
  readonly raises: readonly Fence[];
  readonly nearMisses: readonly Fence[];
  readonly fixed: readonly Fence[];
}

/** One plan of a page. Behind its first words may stand `figure: load "Tank" weight` and `fix: 2`. */
export interface Fence {
  readonly text: string;
  readonly fixture: Fixture;
  readonly figure: string | null; // what the finding opens, makes heavier or leaves alone
  readonly fix: number | null; // from 1
}

const folder = join(import.meta.dirname, '../../server/checks');

/** Every page beside a check, by its slug. */
export function readPages(): readonly Page[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.md'));
  return files.sort().map((file) => readPage(basename(file, '.md'), readFileSync(join(folder, file), 'utf8')));
}

function readPage(slug: string, markdown: string): Page {
  const fences = [...markdown.matchAll(/^```liftplan (raises|near miss|fixed)([^\n]*)\n(.*?)^```$/gms)];
  const of = (kind: string): readonly Fence[] =>
    fences
      .filter((found) => found[1] === kind)
      .map((found) => fence(found[2] ?? '', (found[3] ?? '').replace(/\n$/, '')));
  const prose = markdown.replace(/^```.*?^```$/gms, ' ').replace(/^#.*$/gm, ' ');
  return {
    slug,
    markdown,
    words: prose.split(/\s+/).filter((word) => /\w/.test(word)).length,
    raises: of('raises'),
    nearMisses: of('near miss'),
    fixed: of('fixed'),
  };
}

const fence = (info: string, text: string): Fence => ({
  text,
  fixture: fixture(text),
  figure: /figure: (.+?)(?=, fix:|$)/.exec(info)?.[1] ?? null,
  fix: Number(/fix: (\d+)/.exec(info)?.[1] ?? 0) || null,
});

/** The plan of a fence, checked. */
export const run = ({ files, file }: Pick<Fixture, 'files' | 'file'>): Snapshot => check({ ...files }, file);

/** Findings as marks, so that they compare with those of the text. */
export const marksOf = (snapshot: Snapshot): readonly Mark[] =>
  snapshot.findings.map(({ at, slug }) => ({
    file: at.row.file,
    line: lineOf(snapshot, at.row),
    from: at.from,
    to: Math.max(at.to, at.from + 1),
    slug,
  }));

const treeOf = ({ plan }: Snapshot, file: string) => plan.files.find((part) => part.file === file)?.tree;
const lineOf = (snapshot: Snapshot, row: Finding['at']['row']): number =>
  treeOf(snapshot, row.file)?.rowNumber(row) ?? -1;

/** A figure by the words that an `expect` line would use: `gross load`, `load "Tank" weight`, `sling S1 angle`. */
export function figureOf({ results }: Snapshot, words: string): Derived {
  const named = /^(?<kind>[a-z -]+) (?:"(?<quoted>[^"]+)"|(?<word>[A-Z]\w*)) (?<result>[a-z ]+)$/.exec(words)?.groups;
  const found = named
    ? results.find(named.kind ?? '', named.quoted ?? named.word ?? null, named.result ?? '')
    : results.find('plan', null, words);
  if (!found) throw new Error(`There is no figure called ${words}.`);
  return found.value;
}

/** The texts after a fix, and where the cursor stands then. */
export function applied(
  snapshot: Snapshot,
  files: Readonly<Record<string, string>>,
  fix: Fix,
): Pick<Fixture, 'files' | 'cursor'> {
  const marked = fix.edits.map((edit, i) => (i === 0 && fix.cursor !== null ? withCursor(edit, fix.cursor) : edit));
  const texts = Object.entries(files).map(([file, text]) => [file, edited(snapshot, file, text, marked)]);
  const all = fixture(texts.map(([file, text]) => `--- ${file}\n${text}`).join('\n'));
  return { files: all.files, cursor: all.cursor };
}

function withCursor(edit: Edit, cursor: number): Edit {
  const text = edit.kind === 'replace' ? edit.text : edit.lines.join('\n');
  const marked = text.slice(0, cursor) + CURSOR + text.slice(cursor);
  return edit.kind === 'replace' ? { ...edit, text: marked } : { ...edit, lines: marked.split('\n') };
}

function edited(snapshot: Snapshot, file: string, text: string, edits: readonly Edit[]): string {
  const places = edits
    .map((edit) => ({ edit, at: edit.kind === 'replace' ? edit.at : edit.after }))
    .filter(({ at }) => at.row.file === file);
  const lines = text.split('\n').map((line, i) => {
    const here = places.filter(({ at }) => lineOf(snapshot, at.row) === i);
    const replaced = here
      .flatMap(({ edit }) => (edit.kind === 'replace' ? [edit] : []))
      .sort((a, b) => b.at.from - a.at.from)
      .reduce((now, { at, text: put }) => now.slice(0, at.from) + put + now.slice(at.to), line);
    const inserts = here.flatMap(({ edit }) => (edit.kind === 'insert' ? [edit] : []));
    return [
      ...inserts.flatMap((edit) => (edit.before ? edit.lines : [])),
      replaced,
      ...inserts.flatMap((edit) => (edit.before ? [] : edit.lines)),
    ];
  });
  return lines.flat().join('\n');
}
