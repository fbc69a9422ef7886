// What weights rest on, before and after, in words: each refinement as a sentence, and the shares of each load.
import { holds, known, type System, share } from '../../quantities/index.ts';
import { bases, type Share } from '../../results/index.ts';
import { basisText } from '../sheet/basis.ts';
import { figureText, notKnown, row } from '../sheet/figures.ts';
import type { Cell, Row, Table } from '../sheet/types.ts';
import { quoted } from '../sheet/written.ts';
import { beforeAndNow, sides } from './figure-tables.ts';
import type { Comparison, Footing, Refinement } from './types.ts';

export const restTables = ({ refined, rests, now }: Comparison): readonly Table[] => [
  ...(refined.length ? [refinedTable(refined, now.plan.units)] : []),
  ...rests.map(
    ({ load, old, now: is }): Table => ({
      kind: 'table',
      caption: `${quoted(load)}: what its parts rest on`,
      columns: beforeAndNow('Rests on'),
      rows: restRows(old, is, now.plan.units),
    }),
  ),
];

const refinedTable = (refined: readonly Refinement[], system: System): Table => ({
  kind: 'table',
  caption: 'Parts that rest on something else now',
  columns: [{ title: 'Part' }, { title: 'Difference', figures: true }],
  rows: refined.map(({ name, old, now }) =>
    row(
      [],
      `${quoted(name)}: ${footingText(old, system)} became ${footingText(now, system)}${exceeds(old, now) ? ', more than its bound' : ''}`,
      sides('part', 'weight', old.weight, now.weight, system)[2] ?? '',
    ),
  ),
});

/** A bound that turns out to be none: something is wrong with one of the two. */
const exceeds = (old: Footing, now: Footing): boolean =>
  old.basis === 'bound' &&
  old.weight.value !== null &&
  now.weight.value !== null &&
  !holds(now.weight.value, '<=', old.weight.value);

/** `bound 5,200 kg`; `assembly of 4 parts, 3,100 kg`. */
function footingText({ basis, evidence, parts, weight }: Footing, system: System): string {
  const text = weight.value === null ? `(weight ${notKnown.text})` : figureText(weight, system, 'up');
  if (basis === 'assembly') return `assembly of ${parts} parts, ${text}`;
  return `${basisText[basis].short}${evidence ? ` by ${evidence}` : ''} ${text}`;
}

/** One row for each thing that weight rests on before or now, with its share of all parts. */
function restRows(old: readonly Share[] | null, now: readonly Share[] | null, system: System): readonly Row[] {
  const used = bases.filter((basis) => [...(old ?? []), ...(now ?? [])].some((one) => one.basis === basis));
  return used.map((basis) => {
    const of = (all: readonly Share[] | null) => all && (all.find((one) => one.basis === basis)?.kg ?? 0);
    const [was, is] = [of(old), of(now)];
    const weight = (kg: number | null) => (kg === null ? null : known(kg, 'kg'));
    const [, , by = ''] = sides('part', 'weight', weight(was), weight(is), system);
    return row([], basisText[basis].long, restCell(was, old, system), restCell(is, now, system), by);
  });
}

function restCell(kg: number | null, all: readonly Share[] | null, system: System): Cell {
  if (kg === null || all === null) return notKnown;
  if (kg === 0) return { text: 'none' };
  const whole = all.reduce((sum, one) => sum + one.kg, 0);
  return { text: `${figureText(known(kg, 'kg'), system, 'up')}, ${share(kg / whole, 'near', false)}` };
}
