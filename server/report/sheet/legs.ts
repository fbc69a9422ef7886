// The section "Legs and picks": the paths as written, then what each item takes, at what angle, and how much of its capacity.
import { fold } from '../../plan/index.ts';
import type { System } from '../../quantities/index.ts';
import type { LegUse, Result } from '../../results/types.ts';
import { type Context, section } from './context.ts';
import { figure, overCapacity, row, unitAt, worseEnd } from './figures.ts';
import type { Block, Cell, Column, Paragraph, Row, Section, Table } from './types.ts';
import { capital, quoted, statementText, valueText } from './written.ts';

export function legsSection(context: Context): readonly Section[] {
  const { legs } = context.snapshot.results;
  if (!legs.length) return [];
  return section('legs', 'Legs and picks', [paths(legs), ...forces(context)]);
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
  const used = list.filter(({ subject, result }) => {
    const columns = subject.kind === 'pick' ? pickResults : gearResults;
    return (
      columns.some(([name]) => name === result) && (subject.kind === 'pick' || inLegs.has(fold(subject.name ?? '')))
    );
  });
  const asked = used.filter(({ result }) => result !== 'capacity');
  if (!asked.length) return [];
  if (asked.every(({ value }) => value.value === null)) return [nothingKnown(asked)];
  const gearRows = rowsOf(
    context,
    used.filter(({ subject }) => subject.kind !== 'pick'),
    gearResults,
  );
  const pickRows = rowsOf(
    context,
    used.filter(({ subject }) => subject.kind === 'pick'),
    pickResults,
  );
  return [
    ...table('What each item of gear takes, worst over sharing and tolerances', gearResults, gearRows),
    ...table('What each pick takes', pickResults, pickRows),
  ];
}

const gearResults = [
  ['tension', 'Tension'],
  ['load', 'As load'],
  ['capacity', 'Capacity'],
  ['capacity used', 'Capacity used'],
  ['angle', 'Angle from horizontal'],
  ['elastic tension', 'Elastic tension'],
] as const;
const pickResults = [
  ['pull', 'Pull'],
  ['load', 'As load'],
  ['capacity used', 'Capacity used'],
  ['angle', 'Angle from horizontal'],
] as const;
type Columns = readonly (readonly [result: string, title: string])[];

const table = (caption: string, results: Columns, rows: readonly Row[]): readonly Table[] => {
  const columns: readonly Column[] = [
    { title: 'Item' },
    ...results.map(([, title]): Column => ({ title, figures: true })),
  ];
  return rows.length ? [{ kind: 'table', caption, columns, rows }] : [];
};

/** One row a subject and stage. */
function rowsOf({ system }: Context, used: readonly Result[], results: Columns): readonly Row[] {
  const subjects = new Map<string, Result[]>();
  for (const result of used) {
    const key = JSON.stringify([result.subject.kind, result.subject.path, result.stage]);
    subjects.set(key, [...(subjects.get(key) ?? []), result]);
  }
  return [...subjects.values()].map((group) => {
    const first = group[0] as Result;
    const tag = group.find(({ result }) => result === 'capacity');
    const unit = tag && unitAt(tag.value);
    const cells = results.map(([name]): Cell | string => {
      const found = group.find(({ result }) => result === name);
      return found ? cellOf(found, system, name === 'load' || name === 'capacity' ? unit : undefined) : '';
    });
    const stage = first.stage ? `, stage ${quoted(first.stage)}` : '';
    return {
      ...row([first.at], `${capital(first.subject.kind)} ${quoted(first.subject.name ?? '')}${stage}`, ...cells),
      repeat: first.subject.kind !== 'pick' || undefined,
    } as Row;
  });
}

/** Load and capacity stand in the unit of the tag, so that no one has to convert to see which is more. */
function cellOf({ subject, result, value }: Result, system: System, unit: string | undefined): Cell {
  const cell = figure(value, system, worseEnd(subject.kind, result), unit);
  return result === 'capacity used' ? overCapacity(value, cell) : cell;
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
