// Makes the sheet of a snapshot: every section in reading order, open points first.
import { cautions } from '../../checks/index.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { contentMark } from '../mark.ts';
import { standing } from '../standing.ts';
import { allFigures } from '../working.ts';
import { centreSection } from './centre.ts';
import type { Context } from './context.ts';
import { craneSection } from './cranes.ts';
import { gearSection } from './gear.ts';
import { expectSection, grossSection } from './gross.ts';
import { headSection } from './head.ts';
import { legsSection } from './legs.ts';
import { librarySection } from './library.ts';
import { liftOffSection } from './lift-off.ts';
import {
  approvalSection,
  hazardSection,
  holdingSection,
  notesSection,
  peopleSection,
  rulesSection,
  siteSection,
  stepsSection,
} from './papers.ts';
import { quietSection } from './quiet.ts';
import { sourceNames } from './source-names.ts';
import { sourcesSection } from './sources.ts';
import { standingSection } from './standing.ts';
import type { Section, Sheet, Table } from './types.ts';
import { weightSection } from './weight.ts';
import { workingSection } from './working.ts';
import { clauseText } from './written.ts';

export interface SheetOptions {
  /** How a file is called on the sheet: its path as seen from the plan's own folder. */
  readonly pathOf: (file: string) => string;
  /** For a library: paths of the plans that take it in. */
  readonly usedBy?: readonly string[];
}

/** The sheet of a plan, or of a library as what it states. Pure: the same snapshot and options give the same sheet. */
export function sheetOf(snapshot: Snapshot, { pathOf, usedBy = [] }: SheetOptions): Sheet {
  const { plan } = snapshot;
  const mark = contentMark(plan);
  const sources = sourceNames(allFigures(snapshot.results.list));
  const context: Context = { snapshot, system: plan.units, mark, sources, pathOf, usedBy };
  const state = standing(snapshot);
  const head = headSection(context, state);
  const revision = (plan.head && clauseText(plan.head, 'revision')) || 'not stated';
  const foot = cautions.pageFoot(revision, mark);
  return {
    title: head.title,
    ofLibrary: !plan.head,
    revision,
    mark,
    foot,
    sections: [
      head,
      standingSection(context, state),
      ...(plan.head ? planSections(context) : librarySection(context)),
      footSection(foot),
    ].map(tidy),
  };
}

const planSections = (context: Context): readonly Section[] =>
  [
    weightSection,
    centreSection,
    legsSection,
    gearSection,
    grossSection,
    expectSection,
    craneSection,
    siteSection,
    peopleSection,
    holdingSection,
    liftOffSection,
    stepsSection,
    hazardSection,
    approvalSection,
    rulesSection,
    notesSection,
    quietSection,
    sourcesSection,
    workingSection,
  ].flatMap((make) => make(context));

/** Columns in which nothing stands are left out. */
const tidy = (section: Section): Section => ({
  ...section,
  blocks: section.blocks.map((block) => (block.kind === 'table' ? withoutEmpty(block) : block)),
});

function withoutEmpty(table: Table): Table {
  const kept = table.columns.map((_, i) => i === 0 || table.rows.some(({ cells }) => cells[i]?.text || cells[i]?.link));
  if (kept.every(Boolean)) return table;
  const keep = <T>(list: readonly T[]) => list.filter((_, i) => kept[i]);
  return {
    ...table,
    columns: keep(table.columns),
    rows: table.rows.map((row) => ({ ...row, cells: keep(row.cells) })),
  };
}

const footSection = (text: string): Section => ({
  id: 'foot',
  title: 'How long this sheet holds',
  blocks: [{ kind: 'paragraph', look: 'caution', text, at: [] }],
});
