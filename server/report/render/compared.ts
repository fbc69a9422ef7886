// Comparisons of plans as text for a terminal, as Markdown for a comment on a change, and for the editor.
import { cautions } from '../../checks/index.ts';
import { words } from '../../quantities/index.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { compare } from '../compare/index.ts';
import type { PathOf } from '../compare/said-tables.ts';
import type { Comparison } from '../compare/types.ts';
import { aloneSection, comparedSections, noChange } from '../compare/view.ts';
import type { Block, Section } from '../sheet/types.ts';
import { blockText, escape } from './markdown.ts';
import { sectionLines } from './text.ts';
import { visible } from './visible.ts';

/** One plan or library with what differs in it; null: not there in that version. */
export interface ComparedPlan {
  readonly path: string; // as its reader calls it
  readonly old: Snapshot | null;
  readonly now: Snapshot | null;
  readonly comparison: Comparison | null; // null: there in one version only
  readonly same: boolean;
  readonly sections: readonly Section[]; // the first one names the plan
}

/** Two versions of one file, at least one of which is there; files that are `apart` are compared by themselves. */
export function comparedPlan(
  { path, old, now }: Pick<ComparedPlan, 'path' | 'old' | 'now'>,
  pathOf: PathOf,
  apart: ReadonlySet<string>,
): ComparedPlan {
  const one = now ?? old;
  const comparison = old && now ? compare(old, now, apart) : null;
  const sections = comparison
    ? comparedSections(comparison, pathOf)
    : one
      ? [aloneSection(one, now ? 'new' : 'gone', pathOf)]
      : [];
  return { path, old, now, comparison, same: comparison?.same ?? false, sections };
}

/** For a terminal. Plans without a change are counted. */
export function comparedText(plans: readonly ComparedPlan[]): string {
  const parts = plans
    .filter(({ same }) => !same)
    .map(({ path, sections }) => sections.flatMap((section, i) => titled(section, i, visible(path))).join('\n'));
  return `${[cautions.pullRequest, ...parts, ...unchanged(plans)].join('\n\n')}\n`;
}

const titled = (section: Section, i: number, path: string): readonly string[] =>
  i === 0 ? [`${path}:`, ...sectionLines(section)] : ['', ...sectionLines(section)];

/** What became of the plans that are not shown. */
function unchanged(plans: readonly ComparedPlan[]): readonly string[] {
  const same = plans.filter((plan) => plan.same).length;
  if (!same) return [];
  return same === plans.length && same === 1
    ? [noChange]
    : [`No change in meaning in ${words(same, 'file')}${same < plans.length ? ' besides' : ''}.`];
}

/** Forges refuse comments of more than 65,536 characters. */
const mostCharacters = 60_000;

/** A table in a comment has no more rows than somebody reads there. */
const mostRows = 100;

/** For a comment on a change: the caution first, then each plan, shortened to what a forge takes, with what was left out counted. */
export function comparedMarkdown(plans: readonly ComparedPlan[]): string {
  const pieces = piecesOf(plans, mostRows);
  const kept = new Set<Piece>();
  let size = cautions.pullRequest.length;
  // Of every plan what it comes to, before the lists of any.
  for (const one of [...pieces.filter(({ list }) => !list), ...pieces.filter(({ list }) => list)]) {
    if (size + one.text.length > mostCharacters) break;
    size += one.text.length + 2;
    kept.add(one);
  }
  const left = pieces.length - kept.size;
  const more = `_Too long for a comment: ${words(left, 'section')} left out. \`becket compare\` prints them all._`;
  const texts = pieces.filter((one) => kept.has(one)).map(({ text }) => text);
  return assembled([...texts, ...(left ? [more] : [])], plans);
}

/** The same with nothing left out, for a document. */
export const comparedDocument = (plans: readonly ComparedPlan[]): string =>
  assembled(
    piecesOf(plans, Number.POSITIVE_INFINITY).map(({ text }) => text),
    plans,
  );

const assembled = (texts: readonly string[], plans: readonly ComparedPlan[]): string =>
  `${[cautions.pullRequest, ...texts, ...unchanged(plans)].join('\n\n')}\n`;

interface Piece {
  readonly text: string;
  readonly list: boolean;
}

/** Long lists that follow from what stands above them: folded where that can be done. */
const lists = new Set(['legs', 'totals', 'parts', 'text']);

const piecesOf = (plans: readonly ComparedPlan[], rows: number): readonly Piece[] =>
  plans
    .filter(({ same }) => !same)
    .flatMap(({ path, sections }) => sections.map((section, i) => piece(section, i === 0 ? path : null, rows)));

/** A section; with a path the first one, which names the plan. */
function piece({ id, title, blocks }: Section, path: string | null, most: number): Piece {
  const texts = titledOnce(blocks).flatMap((block) => shortened(block, most));
  if (path !== null) return { text: [`### ${escape(title)}`, escape(path), ...texts].join('\n\n'), list: false };
  if (!lists.has(id)) return { text: [`#### ${escape(title)}`, ...texts].join('\n\n'), list: false };
  const rows = blocks.reduce((sum, block) => sum + (block.kind === 'table' ? block.rows.length : 0), 0);
  const head = `<details><summary>${escape(title)}: ${words(rows, 'change')}</summary>`;
  return { text: [head, ...texts, '</details>'].join('\n\n'), list: true };
}

/** A table that stands alone needs no caption beside the title of its section. */
const titledOnce = (blocks: readonly Block[]): readonly Block[] =>
  blocks.filter(({ kind }) => kind === 'table').length === 1
    ? blocks.map((block) => (block.kind === 'table' ? { ...block, caption: '' } : block))
    : blocks;

function shortened(block: Block, most: number): readonly string[] {
  if (block.kind !== 'table' || block.rows.length <= most) return blockText(block, '');
  const more = `_and ${words(block.rows.length - most, 'more row', 'more rows')}: \`becket compare\` prints them all_`;
  return [...blockText({ ...block, rows: block.rows.slice(0, most) }, ''), more];
}
