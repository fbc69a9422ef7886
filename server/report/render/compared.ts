// Comparisons of plans as text for a terminal, as Markdown for a comment on a change, and for the editor.
import { cautions } from '../../checks/index.ts';
import { words } from '../../quantities/index.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { compare } from '../compare/index.ts';
import type { PathOf } from '../compare/said-tables.ts';
import type { Comparison } from '../compare/types.ts';
import { aloneSection, comparedSections, noChange } from '../compare/view.ts';
import type { Section } from '../sheet/types.ts';
import { blockText, escape } from './markdown.ts';
import { sectionLines } from './text.ts';

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
    .map(({ path, sections }) => sections.flatMap((section, i) => titled(section, i, path)).join('\n'));
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

/** For a comment: the caution first, then each plan; what does not fit is counted, the text's own words before the figures. */
export function comparedMarkdown(plans: readonly ComparedPlan[], most = mostCharacters): string {
  const pieces = plans
    .filter(({ same }) => !same)
    .flatMap(({ path, sections }) => sections.map((section, i) => piece(section, i, path)));
  const kept: string[] = [cautions.pullRequest];
  let size = cautions.pullRequest.length;
  let left = 0;
  for (const text of pieces) {
    if (left === 0 && size + text.length <= most) {
      kept.push(text);
      size += text.length + 2;
    } else left += 1;
  }
  const more = left
    ? [`_Too long for a comment: ${words(left, 'table')} left out. \`becket compare\` prints them all._`]
    : [];
  return `${[...kept, ...more, ...unchanged(plans)].join('\n\n')}\n`;
}

/** Long lists that follow from what stands above are folded. */
const folded = new Set(['legs', 'totals', 'parts', 'text']);

function piece({ id, title, blocks }: Section, i: number, path: string): string {
  const texts = blocks.flatMap((block) => blockText(block, ''));
  if (i === 0) return [`### ${escape(title)}`, escape(path), ...texts].join('\n\n');
  if (!folded.has(id)) return [`#### ${escape(title)}`, ...texts].join('\n\n');
  const rows = blocks.reduce((sum, block) => sum + (block.kind === 'table' ? block.rows.length : 0), 0);
  return [`<details><summary>${escape(title)}: ${words(rows, 'change')}</summary>`, ...texts, '</details>'].join(
    '\n\n',
  );
}
