// The sections "Gross load" and "What the plan expects": all that hangs on the crane, and the author's own conditions.

import type { Item } from '../../plan/types.ts';
import { known, type System, writePair } from '../../quantities/index.ts';
import type { Expectation, Result } from '../../results/types.ts';
import type { Place } from '../../syntax/types.ts';
import { type Context, section, statementsOf } from './context.ts';
import { figure, notKnown, row, styled, worseEnd } from './figures.ts';
import type { Cell, Row, Section } from './types.ts';
import { clauseText, quoted, slice, valueText } from './written.ts';

export function grossSection(context: Context): readonly Section[] {
  const { system, snapshot } = context;
  const { loads, totals } = snapshot.results;
  if (!snapshot.plan.head) return [];
  const rows: readonly Row[] = [
    ...loads.map(
      (load): Row => ({
        ...row(
          [load.thing.item.at],
          `Load ${quoted(load.thing.name)}`,
          figure(load.weight, system),
          'with what is added for doubt',
        ),
        repeat: true,
      }),
    ),
    row([], 'Gear that hangs', figure(totals.rigging, system), 'all items above'),
    ...deductions(context),
    { ...row([], 'Gross load', figure(totals.gross, system), 'all that hangs on the crane'), total: true },
  ];
  return section('gross', 'Gross load', [
    {
      kind: 'table',
      caption: 'What makes up the gross load',
      columns: [{ title: 'What' }, { title: 'Weight', figures: true }, { title: 'Remarks' }],
      rows,
    },
  ]);
}

function deductions(context: Context): readonly Row[] {
  const { snapshot, system } = context;
  const written = statementsOf(context, 'crane').flatMap((crane) =>
    crane.children.filter(({ keyword }) => keyword === 'deduct').map((item) => ({ crane, item })),
  );
  if (!written.length)
    return [row([], 'Deductions', 'none stated', 'what the chart still counts as load: jib, rope, idle hook')];
  const rows = written.map(({ crane, item }) => {
    const from = clauseText(item, 'from');
    const remarks = [`deduction of ${quoted(crane.names[0] ?? '')}`, ...(from ? [`from “${from}”`] : [])].join(', ');
    return row([item.at], item.names[0] ?? 'deduction', deduction(item, system), remarks);
  });
  return [...rows, row([], 'All deductions', figure(snapshot.results.totals.deductions, system), '')];
}

/** Its weight; `none` as written, which says that the chart already has it. */
function deduction({ value: own }: Item, system: System): Cell {
  const value = own?.value;
  if (!own || !value || value.kind === 'unknown') return notKnown;
  if (value.kind !== 'quantity') return { text: valueText(own) };
  const { value: kg, low, high } = value.quantity;
  return figure(known(kg, 'kg', {}, low, high), system);
}

export function expectSection(context: Context): readonly Section[] {
  const { expects } = context.snapshot.results;
  if (!expects.length) return [];
  return section('expects', 'What the plan expects', [
    {
      kind: 'table',
      caption: 'Conditions the author wants to hold, judged at the worst end of every figure',
      columns: [
        { title: 'Expected' },
        { title: 'State' },
        { title: 'At its worst', figures: true },
        { title: 'Decided by' },
      ],
      rows: expects.map((expect) => expectRow(context, expect)),
    },
  ]);
}

const expectRow = (context: Context, expect: Expectation): Row =>
  row(
    [expect.at],
    expect.item.value?.value ? expect.text : slice(wholeLine(expect.at)),
    expectStates[expect.state],
    worstOf(expect, context.system),
    expect.worst ? decidedBy(expect.worst) : '',
  );

const wholeLine = ({ row: { file, text } }: Place): Place => ({ row: { file, text }, from: 0, to: text.length });

/** The end that was compared, with as many digits as it takes to show on which side of the bound it lies. */
export function worstOf({ item, state, worst }: Expectation, system: System): Cell {
  const value = item.value?.value;
  const compare = value?.kind === 'compare' ? value.compare : null;
  if (state === 'open' || !worst || worst.value.value === null || !compare) return notKnown;
  const { value: middle, low, high, unit } = worst.value;
  if (compare.op === 'between') return figure(worst.value, system, worseEnd(worst.subject.kind, worst.result));
  const end = compare.op.startsWith('<') ? (high ?? middle) : (low ?? middle);
  return { text: writePair(end, compare.low, compare.op, unit, styled(system, 'near')).value };
}

export const expectStates: Readonly<Record<Expectation['state'], Cell>> = {
  met: { text: 'met' },
  'not met': { text: 'not met', is: 'over' },
  open: { text: 'not known', is: 'not known' },
};

const decidedBy = ({ subject, result, stage }: Result): string =>
  [
    subject.name ? `${subject.kind} ${quoted(subject.name)}, ${result}` : result,
    ...(stage ? [`stage ${quoted(stage)}`] : []),
  ].join(', ');
