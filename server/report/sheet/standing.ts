// The section "Standing": open points first, each with its line; then what a person must decide, and what nobody stated.
import type { Finding } from '../../checks/index.ts';
import type { Result } from '../../results/types.ts';
import type { Place } from '../../syntax/types.ts';
import { placeIn } from '../places.ts';
import { type Gap, type Standing, standingWords } from '../standing.ts';
import { type Context, linkTo } from './context.ts';
import { row } from './figures.ts';
import type { Block, Cell, Row, Section } from './types.ts';
import { capital, quoted } from './written.ts';

export function standingSection(context: Context, standing: Standing): Section {
  const { over, atOdds, notJudged, gaps, setAside, toDecide, remarks, notStated } = standing;
  const of = (findings: readonly Finding[], state: Cell) =>
    findings.map((finding) => point(context, state, finding.message, finding.at, '', finding.slug));
  const rows = [
    ...of(over, { text: 'over', is: 'over' }),
    ...gaps.map((gap) => gapRow(context, gap)),
    ...of(notJudged, { text: 'not judged', is: 'not known' }),
    ...of(atOdds, { text: 'at odds' }),
    ...setAside.map((finding) => asideRow(context, finding)),
    ...of(toDecide, { text: 'to decide' }),
    ...of(remarks, { text: 'worth knowing' }),
  ];
  return {
    id: 'standing',
    title: 'Standing',
    blocks: [
      { kind: 'paragraph', look: 'plain', text: `${capital(standingWords(standing))}.`, at: [] },
      ...table(rows),
      ...unstated(notStated),
    ],
  };
}

const table = (rows: readonly Row[]): readonly Block[] =>
  rows.length
    ? [
        {
          kind: 'table',
          caption: 'Points found, open ones first',
          columns: [
            { title: 'State' },
            { title: 'Point' },
            { title: 'Where' },
            { title: 'Leaves open' },
            { title: 'Finding' },
          ],
          rows,
        },
      ]
    : [];

const point = (context: Context, state: Cell, text: string, at: Place | null, leaves: string, slug: string): Row => ({
  ...row(at ? [at] : [], state, text, at ? { text: '', link: linkTo(context, at) } : '', leaves, slug),
  repeat: true,
});

const gapRow = (context: Context, { finding, causes, leaves }: Gap): Row =>
  point(
    context,
    { text: 'not known', is: 'not known' },
    finding?.message ?? causes.map(({ what }) => what).join(' '),
    finding?.at ?? placeIn(causes[0]?.at),
    names(leaves),
    finding?.slug ?? '',
  );

const shownNames = 8;

/** The figures by name; many of them as the first few and a count, since all of them say `not known` in their own place. */
function names(results: readonly Result[]): string {
  const all = results.map(({ subject, result, stage }) =>
    [subject.name ? `${quoted(subject.name)}: ${result}` : result, ...(stage ? [`(${stage})`] : [])].join(' '),
  );
  return all.length > shownNames
    ? `${all.slice(0, shownNames - 1).join('; ')}; and ${all.length - shownNames + 1} more`
    : all.join('; ');
}

const asideRow = (context: Context, { message, slug, at, waived }: Finding): Row =>
  point(
    context,
    { text: 'set aside' },
    `${message} Set aside by ${waived?.approvedBy || 'nobody named'}: “${waived?.reason ?? ''}”`,
    at,
    '',
    slug,
  );

const unstated = (subjects: readonly string[]): readonly Block[] =>
  subjects.length
    ? [{ kind: 'paragraph', look: 'plain', text: `Not stated, so not checked: ${subjects.join('; ')}.`, at: [] }]
    : [];
