// Weight at the tip that the chart still counts as load: the `deduct` lines of the cranes.
import { type BoundPlan, childrenOf, given, type Item, lostCauses, openLines } from '../plan/index.ts';
import { asWritten, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { because, type Notes } from './notes.ts';

const noneStated = 'no deduction is stated';

/** All deductions of one crane; `none` with `from` is one that the chart already has. */
export function deductionsOf(crane: Item, notes: Notes): Derived {
  const items = childrenOf(crane, 'deduct');
  const each = items.map((item) => deduction(item, notes));
  const lines = [...openLines(crane), ...lostCauses(crane)];
  const total = each.length
    ? sum(each, 'kg', {
        formula: 'sum of deductions',
        inputs: items.map((item, i) => ({ label: item.names[0] ?? 'deduct', value: each[i] as Derived })),
        at: crane.nameAt,
      })
    : known(0, 'kg', { source: noneStated, at: crane.nameAt });
  return lines.length ? open('kg', unique([...lines, ...total.because]), { at: crane.nameAt }) : total;
}

function deduction(item: Item, notes: Notes): Derived {
  const weight = given(item, '');
  const lines = openLines(item);
  if (lines.length) return open('kg', lines, { at: item.at });
  if (weight.state === 'known') return asWritten({ ...weight, at: item.at }, 'kg', 'typed here');
  if (weight.state === 'none') {
    if (item.clauses.has('from')) return known(0, 'kg', { source: 'none: already in the chart', at: item.at });
    return open(
      'kg',
      [
        notes.add(
          'clause-missing',
          item.at,
          {
            item: `deduct ${item.names[0] ?? ''}`.trim(),
            clause: 'from',
            why: '`none` needs the note of the chart that says so',
          },
          `Nothing says why ${item.names[0] ?? 'it'} is not deducted.`,
        ),
      ],
      { at: item.at },
    );
  }
  return open(
    'kg',
    weight.state === 'open' ? weight.because : [because(`${item.names[0] ?? 'A deduction'} has no weight.`, item.at)],
    { at: item.at },
  );
}

/** Of all cranes of the plan. */
export function deductions(plan: BoundPlan, notes: Notes): Derived {
  const cranes = plan.items.filter((item) => item.keyword === 'crane' && item.file === plan.file);
  const each = cranes.map((crane) => deductionsOf(crane, notes));
  if (!each.length) return known(0, 'kg', { source: noneStated });
  return sum(each, 'kg', {
    formula: 'sum of deductions',
    inputs: each.map((value, i) => ({ label: cranes[i]?.names[0] ?? 'crane', value })),
  });
}
