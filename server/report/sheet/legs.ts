// The section "Legs and picks": the paths as written, then what each item takes, at what angle, and how much of its capacity.
import { fold, given } from '../../plan/index.ts';
import { asWritten, type Derived } from '../../quantities/index.ts';
import type { LegUse, Result } from '../../results/types.ts';
import { type Context, section } from './context.ts';
import { figure, overCapacity, row, unitAt, worseEnd } from './figures.ts';
import { placesTable, rigSketch } from './rig.ts';
import { stageBlocks } from './rig-stages.ts';
import type { Block, Cell, Column, Paragraph, Row, Section, Table } from './types.ts';
import { capital, quoted, statementText, valueText } from './written.ts';

export function legsSection(context: Context): readonly Section[] {
  const { legs } = context.snapshot.results;
  if (!legs.length) return [];
  return section('legs', 'Legs and picks', [
    rigSketch(context),
    paths(legs),
    ...forces(context),
    ...placesTable(context),
    ...stageBlocks(context),
  ]);
}

function paths(legs: readonly LegUse[]): Table {
  return {
    kind: 'table',
    caption: 'Legs from the hook down, as written',
    columns: [{ title: 'Leg' }, { title: 'Path' }, { title: 'Remarks' }],
    rows: legs.map((leg, i) => {
      const { item, rig, broken } = leg;
      const remarks = [
        rig ? `rig ${quoted(rig.name)}` : '',
        statementText({ ...item, value: null }),
        broken ? 'does not run from a hook to a pick' : '',
      ];
      return row([item.at], String(i + 1), item.value ? valueText(item.value) : '', remarks.filter(Boolean).join(', '));
    }),
  };
}

/** What is worked out of each item and pick in a leg; where nothing is known yet, one sentence instead of a table of gaps. */
function forces(context: Context): readonly Block[] {
  const { list, gear } = context.snapshot.results;
  const inLegs = new Set(gear.filter(({ legs }) => legs.length).map(({ thing }) => thing.key));
  const used = list.filter(
    ({ subject: { kind, name } }) => kind === 'load' || kind === 'pick' || inLegs.has(fold(name ?? '')),
  );
  const asked = used.filter(({ subject: { kind }, result }) =>
    kind === 'load' ? result === 'tilt' : result !== 'capacity',
  );
  if (asked.every(({ value }) => value.value === null)) return [nothingKnown(asked)];
  const stages = [...new Set(asked.map(({ stage }) => stage))];
  return stages.flatMap((stage) =>
    ofStage(
      context,
      stage,
      used.filter((result) => result.stage === stage),
    ),
  );
}

/** Tables of one stage; those without a stage are the worst over all of them. */
function ofStage(context: Context, stage: string | null, used: readonly Result[]): readonly Table[] {
  const when = stage === null ? '' : `stage ${quoted(stage)}: `;
  const of = (wanted: (kind: string) => boolean, columns: Columns) =>
    rowsOf(
      context,
      used.filter(({ subject }) => wanted(subject.kind)),
      columns,
    );
  return [
    ...table(
      `${when}how each load hangs`,
      loadResults,
      of((kind) => kind === 'load', loadResults),
    ),
    ...table(
      `${when}what each item of gear takes, worst over sharing and tolerances`,
      gearResults,
      of((kind) => kind !== 'load' && kind !== 'pick', gearResults),
    ),
    ...table(
      `${when}what each pick takes`,
      pickResults,
      of((kind) => kind === 'pick', pickResults),
    ),
  ];
}

const loadResults = [['tilt', 'Out of level']] as const;
const gearResults = [
  ['tension', 'Tension'],
  ['load', 'As load'],
  ['capacity', 'Capacity'],
  ['capacity used', 'Capacity used'],
  ['angle', 'Angle from horizontal'],
  ['elastic tension', 'Elastic tension'],
  ['compression', 'Compression'],
  ['tilt', 'Out of level'],
] as const;
const pickResults = [
  ['pull', 'Pull'],
  ['load', 'As load'],
  ['capacity', 'Capacity'],
  ['capacity used', 'Capacity used'],
  ['angle', 'Angle from horizontal'],
] as const;
type Columns = readonly (readonly [result: string, title: string])[];

const table = (caption: string, results: Columns, rows: readonly Row[]): readonly Table[] => {
  const columns: readonly Column[] = [
    { title: 'Item' },
    ...results.map(([, title]): Column => ({ title, figures: true })),
  ];
  return rows.length ? [{ kind: 'table', caption: capital(caption), columns, rows }] : [];
};

/** One row a subject. */
function rowsOf(context: Context, used: readonly Result[], columns: Columns): readonly Row[] {
  const subjects = new Map<string, Result[]>();
  for (const result of used) {
    const key = JSON.stringify([result.subject.kind, result.subject.path]);
    subjects.set(key, [...(subjects.get(key) ?? []), result]);
  }
  return [...subjects.values()].map((group) => subjectRow(context, group, columns));
}

/** Load and capacity stand in the unit of the tag, so that no one has to convert to see which is more. */
function subjectRow({ system, snapshot }: Context, group: readonly Result[], columns: Columns): Row {
  const { subject, at } = group[0] as Result;
  const { kind, name } = subject;
  const tag = kind === 'pick' ? pickCapacity(subject, snapshot) : snapshot.results.find(kind, name, 'capacity')?.value;
  const unit = tag && unitAt(tag);
  const cells = columns.map(([column]): Cell | string => {
    const value = column === 'capacity' ? tag : group.find(({ result }) => result === column)?.value;
    if (!value) return '';
    const cell = figure(
      value,
      system,
      worseEnd(kind, column),
      column === 'load' || column === 'capacity' ? unit : undefined,
    );
    return column === 'capacity used' ? overCapacity(value, cell) : cell;
  });
  const own = row([at], `${capital(kind)} ${quoted(name ?? '')}`, ...cells);
  return kind === 'pick' ? own : { ...own, repeat: true };
}

/** What the plan says that a pick may carry: it is no result of its own. */
function pickCapacity({ path }: Result['subject'], { plan }: Context['snapshot']): Derived | undefined {
  const pick = plan.names.kind('pick').find((thing) => thing.path.join('>') === path.join('>'));
  const stated = pick && given(pick.item, 'capacity');
  return stated?.state === 'known' ? asWritten(stated, 'kg', 'typed here') : undefined;
}

function nothingKnown(open: readonly Result[]): Paragraph {
  const causes = [...new Set(open.flatMap(({ value }) => value.because.map(({ what }) => what)))];
  return {
    kind: 'paragraph',
    look: 'alert',
    text: `Tensions, angles and capacity used are not known. ${causes.join(' ')}`,
    at: [],
  };
}
