// The first section: what is lifted, where and when, which revision this is, and the cautions that stand over everything.
import { cautions } from '../../checks/index.ts';
import { filesOf } from '../../plan/index.ts';
import { countOpen, type Standing } from '../standing.ts';
import type { Context } from './context.ts';
import { row } from './figures.ts';
import type { Paragraph, Row, Section, Table } from './types.ts';
import { clauseText, valueText } from './written.ts';

export function headSection(context: Context, standing: Standing): Section {
  const { head } = context.snapshot.plan;
  const title = head?.value ? valueText(head.value) : context.pathOf(context.snapshot.plan.file);
  return { id: 'head', title, blocks: [...over(context, standing), head ? facts(context) : library(context)] };
}

/** The standing cautions, in the order of the page that lists them. */
function over({ snapshot }: Context, standing: Standing): readonly Paragraph[] {
  const { notJudged } = snapshot.results;
  const open = countOpen(standing);
  const aside = standing.setAside.map(
    ({ slug, waived }) => `${slug} (approved by ${waived?.approvedBy ?? 'nobody named'})`,
  );
  const alert = (text: string): Paragraph => ({ kind: 'paragraph', look: 'alert', text, at: [] });
  return [
    { kind: 'paragraph', look: 'caution', text: cautions.sheetHead, at: [] },
    ...(snapshot.plan.head && open ? [alert(cautions.openFigures(open))] : []),
    ...(aside.length ? [alert(cautions.rulesSetAside(aside))] : []),
    ...(snapshot.plan.head && notJudged.length ? [alert(cautions.notJudged(notJudged))] : []),
  ];
}

function facts(context: Context): Table {
  const { snapshot, mark, pathOf, system } = context;
  const head = snapshot.plan.head;
  const stated = (keyword: string, title: string): readonly Row[] => {
    const text = head ? clauseText(head, keyword) : '';
    const at = head?.clauses.get(keyword)?.[0]?.at ?? head?.at;
    return [row(at ? [at] : [], title, text || 'not stated')];
  };
  return {
    kind: 'table',
    caption: 'The plan',
    columns: [],
    rows: [
      ...stated('site', 'Site'),
      ...stated('date', 'Date of the lift'),
      ...stated('revision', 'Revision'),
      ...stated('prepared by', 'Prepared by'),
      ...stated('category', 'Category'),
      ...(head?.clauses.has('reference') ? stated('reference', 'References') : []),
      row([], 'Shown in', system === 'US' ? 'US units' : 'metric units'),
      row([], 'Content mark', mark),
      row([], 'Taken from', filesOf(snapshot.plan).map(pathOf).join(', ')),
    ],
  };
}

const library = ({ usedBy, mark }: Context): Table => ({
  kind: 'table',
  caption: 'A library: it states what plans take in, and is no plan itself',
  columns: [],
  rows: [row([], 'Used by', usedBy.join(', ') || 'no plan among the files known here'), row([], 'Content mark', mark)],
});
