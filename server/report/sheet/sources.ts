// The section "Sources and assumptions": what the figures rest on, and what is taken as true although nobody confirmed it.
import { type Citation, seenMark } from '../../plan/index.ts';
import type { Item } from '../../plan/types.ts';
import { words } from '../../quantities/index.ts';
import { allFigures } from '../working.ts';
import { type Context, section } from './context.ts';
import { row } from './figures.ts';
import { fileClauses } from './file-clauses.ts';
import type { Block, Row, Section } from './types.ts';
import { capital, heading, valueText } from './written.ts';

export const sourcesSection = (context: Context): readonly Section[] =>
  section('sources', 'Sources and assumptions', [
    ...table(
      'Taken as true; nobody has confirmed it for this lift',
      ['Assumption', 'Stands with'],
      assumptions(context),
    ),
    ...table('Documents and persons named', ['Named as source', 'For', 'File'], documents(context)),
    ...table(
      'What the short names of sources stand for; a table of this program is no rule of your site or country',
      ['Named here', 'Source', 'Rests on it'],
      named(context),
    ),
  ]);

const table = (caption: string, titles: readonly string[], rows: readonly Row[]): readonly Block[] =>
  rows.length ? [{ kind: 'table', caption, columns: titles.map((title) => ({ title })), rows }] : [];

/** Written assumptions, then those the working had to make. */
function assumptions(context: Context): readonly Row[] {
  const own = fileClauses(context.snapshot.plan, 'assumption').map(({ text, at }) => row([at], text, 'the whole plan'));
  const written = context.snapshot.plan.items.flatMap((item) => clausesIn(item, 'assumption'));
  const said = new Set([...own, ...written].map(({ cells }) => cells[0]?.text));
  return [...own, ...written, ...made(context).filter(({ cells }) => !said.has(cells[0]?.text))];
}

const documents = (context: Context): readonly Row[] =>
  context.snapshot.plan.items
    .filter(({ file }) => file === context.snapshot.plan.file)
    .flatMap((item) => [...sourcesIn(item, context), ...clausesIn(item, 'compared by')]);

/** What statements name as their source; of a file in the opened folder whether it is the one that was seen. */
function sourcesIn(item: Item, context: Context): readonly Row[] {
  const { plan } = context.snapshot;
  const own = (item.clauses.get('from') ?? []).map((use) => {
    const cited = plan.cited.get(item);
    const there = cited?.paper && cited.file !== null ? { document: context.pathOf(cited.file) } : {};
    return row([use.at], { text: valueText(use), ...there }, capital(heading(item)), cited ? fileWords(cited) : '');
  });
  return [...own, ...item.children.flatMap((child) => sourcesIn(child, context))];
}

function fileWords({ state, paper, seen }: Citation): string {
  const mark = paper && seenMark(paper);
  if (state === 'as seen') return `as seen, ${mark}`;
  if (state === 'changed')
    return `${mark ? `changed, now ${mark}` : 'not there'}; seen as ${seen ? valueText(seen) : ''}`;
  return mark ? `version not marked, now ${mark}` : '';
}

function clausesIn(item: Item, keyword: string): readonly Row[] {
  const own = (item.clauses.get(keyword) ?? []).map((use) =>
    row([use.at], keyword === 'compared by' ? `compared by ${valueText(use)}` : valueText(use), capital(heading(item))),
  );
  return [...own, ...item.children.flatMap((child) => clausesIn(child, keyword))];
}

/** The sources that tables name in short. */
const named = ({ sources }: Context): readonly Row[] =>
  sources.list.map(({ name, source, figures }) => row([], name, source, words(figures, 'figure')));

/** Assumptions that the working had to make, each once. */
function made({ snapshot }: Context): readonly Row[] {
  const counts = new Map<string, number>();
  for (const { assumptions } of allFigures(snapshot.results.list))
    for (const text of assumptions) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([text, count]) => row([], capital(text), words(count, 'figure')));
}
