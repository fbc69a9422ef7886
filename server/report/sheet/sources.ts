// The section "Sources and assumptions": what the figures rest on, and what is taken as true although nobody confirmed it.
import type { Derived } from '../../quantities/index.ts';
import { words } from '../../quantities/index.ts';
import type { Item } from '../../plan/types.ts';
import type { Place } from '../../syntax/types.ts';
import { figuresOf, workingOf } from '../working.ts';
import { type Context, section } from './context.ts';
import { row } from './figures.ts';
import { fileClauses } from './file-clauses.ts';
import type { Block, Row, Section } from './types.ts';
import { capital, heading, valueText } from './written.ts';

export const sourcesSection = (context: Context): readonly Section[] =>
  section('sources', 'Sources and assumptions', [
    ...table('Taken as true; nobody has confirmed it for this lift', ['Assumption', 'Stands with'], assumptions(context)),
    ...table('Documents and persons named', ['Named as source', 'For'], documents(context)),
    ...table('Tables and rules of this program; none of them is a rule of your site or country', ['Source', 'Rests on it'], tables(context)),
  ]);

const table = (caption: string, titles: readonly [string, string], rows: readonly Row[]): readonly Block[] =>
  rows.length ? [{ kind: 'table', caption, columns: titles.map((title) => ({ title })), rows }] : [];

/** Written assumptions, then those the working had to make. */
function assumptions(context: Context): readonly Row[] {
  const written = context.snapshot.plan.items.flatMap((item) => clausesIn(item, 'assumption'));
  const own = fileClauses(context.snapshot.plan, 'assumption').map(({ text, at }) => row([at], text, 'the whole plan'));
  const made = grouped(figures(context).flatMap(({ derived }) => derived.assumptions.map((text) => ({ text, derived }))));
  return [...own, ...written, ...made.filter(({ text }) => !written.some(({ cells }) => cells[0]?.text === text)).map(({ text, count }) => row([], capital(text), words(count, 'figure')))];
}

const documents = (context: Context): readonly Row[] =>
  context.snapshot.plan.items.filter(({ file }) => file === context.snapshot.plan.file).flatMap((item) => [...clausesIn(item, 'from'), ...clausesIn(item, 'compared by')]);

function clausesIn(item: Item, keyword: string): readonly Row[] {
  const own = (item.clauses.get(keyword) ?? []).map((use) => row([use.at], keyword === 'compared by' ? `compared by ${valueText(use)}` : valueText(use), capital(heading(item))));
  return [...own, ...item.children.flatMap((child) => clausesIn(child, keyword))];
}

/** Sources that the figures carry with them, each once, with how many figures rest on it. */
function tables(context: Context): readonly Row[] {
  const documents = new Set(documentTexts(context));
  const found = grouped(figures(context).filter(({ derived }) => derived.source && !documents.has(derived.source)).map(({ derived }) => ({ text: derived.source, derived })));
  return found.map(({ text, count }) => row([], text, words(count, 'figure')));
}

const documentTexts = (context: Context): readonly string[] => documents(context).map(({ cells }) => cells[0]?.text ?? '');

/** Every figure behind the results, each once. */
function figures({ snapshot }: Context): readonly { readonly derived: Derived; readonly at: Place }[] {
  const { list } = snapshot.results;
  const results = figuresOf(list);
  const seen = new Map<Derived, Place>();
  for (const result of list) for (const { derived } of workingOf(result, results)) if (!seen.has(derived)) seen.set(derived, result.at);
  return [...seen].map(([derived, at]) => ({ derived, at }));
}

function grouped(uses: readonly { readonly text: string; readonly derived: Derived }[]): readonly { readonly text: string; readonly count: number }[] {
  const counts = new Map<string, Set<Derived>>();
  for (const { text, derived } of uses) counts.set(text, (counts.get(text) ?? new Set()).add(derived));
  return [...counts].map(([text, of]) => ({ text, count: of.size })).sort((a, b) => (a.text < b.text ? -1 : 1));
}
