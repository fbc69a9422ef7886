// A comparison as a reader meets it: sections of tables; what is judged and what weights rest on first, the text's own words last.
import type { Snapshot } from '../../workspace/index.ts';
import { contentMark } from '../mark.ts';
import { row } from '../sheet/figures.ts';
import type { Row, Section, Table } from '../sheet/types.ts';
import { clauseText, valueText } from '../sheet/written.ts';
import { standing, standingWords } from '../standing.ts';
import { beforeAndNow, figureSections, glance } from './figure-tables.ts';
import { restTables } from './rest-tables.ts';
import { expectRows, findingRows, type PathOf, placer, quietRows, statementRows, tableOf } from './said-tables.ts';
import type { Comparison } from './types.ts';

export const noChange = 'No change in meaning.';

/** Every section in which something stands; the first one names the plan. Where nothing differs it stands alone and says so. */
export function comparedSections(comparison: Comparison, pathOf: PathOf): readonly Section[] {
  const { now, same } = comparison;
  if (same) return [said(now, pathOf, noChange)];
  const where = placer(comparison, pathOf);
  const [legs, text] = statementRows(comparison, where);
  const sections: readonly Section[] = [
    { id: 'head', title: titleOf(now, pathOf), blocks: now.plan.head ? [head(comparison)] : [] },
    section('expects', 'What the plan expects', [
      tableOf('Expectations', ['What', 'Expected', 'State', 'Where'], expectRows(comparison, where)),
    ]),
    section('findings', 'Findings', [
      tableOf(
        'Findings gained, lost, or with other figures',
        ['What', 'Finding', 'Where', 'About'],
        findingRows(comparison, where),
      ),
    ]),
    section('rests', 'What the weight rests on', restTables(comparison)),
    section('quiet', 'Said quietly', [
      tableOf(
        'Short words that change what is counted or judged',
        ['What', 'Word', 'As written'],
        quietRows(comparison),
      ),
    ]),
    section('paths', 'Who carries what', [tableOf('Legs', textColumns, legs)]),
    ...figureSections(comparison),
    section('text', 'What the text says', [tableOf('Lines that say something else', textColumns, text)]),
  ];
  return sections.filter(({ id, blocks }) => id === 'head' || blocks.length);
}

const textColumns = ['What', 'Line', 'Before and now', 'Where'];

const section = (id: string, title: string, tables: readonly Table[]): Section => ({
  id,
  title,
  blocks: tables.filter(({ rows }) => rows.length),
});

/** A plan or library that is there in one version only. */
export function aloneSection(snapshot: Snapshot, kind: 'gone' | 'new', pathOf: PathOf): Section {
  const { head } = snapshot.plan;
  const text = `This ${head ? 'plan' : 'library'} is ${kind}.`;
  const stands = head ? ` Its standing ${kind === 'new' ? 'is' : 'was'}: ${standingWords(standing(snapshot))}.` : '';
  return said(snapshot, pathOf, text + stands);
}

const said = (snapshot: Snapshot, pathOf: PathOf, text: string): Section => ({
  id: 'head',
  title: titleOf(snapshot, pathOf),
  blocks: [{ kind: 'paragraph', look: 'plain', text, at: [] }],
});

function titleOf(snapshot: Snapshot, pathOf: PathOf): string {
  const { head, file } = snapshot.plan;
  return head?.value ? valueText(head.value) : pathOf(snapshot, file);
}

/** What a reviewer asks first, whether it changed or not. */
function head(comparison: Comparison): Table {
  const { old, now } = comparison;
  const words = (name: string, of: (snapshot: Snapshot) => string): Row => {
    const [was, is] = [of(old), of(now)];
    return row([], name, was, is, was === is ? 'as before' : '');
  };
  const revision = ({ plan }: Snapshot) => (plan.head && clauseText(plan.head, 'revision')) || 'not stated';
  return {
    kind: 'table',
    caption: 'At a glance',
    columns: beforeAndNow(''),
    rows: [
      words('Standing', (snapshot) => standingWords(standing(snapshot))),
      ...glance(comparison),
      words('Revision', revision),
      words('Content mark', ({ plan }) => contentMark(plan)),
    ],
  };
}
