// What each piece of evidence says a load weighs: its figure, with what is added and taken off, and one allowance.
import { type BoundPlan, childrenOf, given, type Item, namesOf, openLines, type Thing, textOf } from '../plan/index.ts';
import { asWritten, type Cause, type Derived, known, type Origin, open, sum, unique } from '../quantities/derived.ts';
import type { Evidence } from '../vocabulary/index.ts';
import { type Allowance, type Group, together } from './batch.ts';
import { batchesOf, hasParts, type Summed } from './bodies.ts';
import { leftOut } from './doubts.ts';
import type { Context } from './load-context.ts';
import { because } from './notes.ts';
import { builtInRule, leastContingency, unknownContingency } from './rules.ts';
import type { Candidate } from './types.ts';
import { weighedSum } from './weighing.ts';

/** The sum of the parts as a candidate; none without parts. */
export function calculated(context: Context): readonly Candidate[] {
  const { body, plan, item } = context;
  if (!body.pieces.some(hasParts) && !item.opens.length && !childrenOf(item, 'list').length) return [];
  const calculation = allowanceOf(context, null, 'calculation', { at: item.nameAt });
  const allowed = allowedSum(body, calculation, plan);
  const weight = body.weight;
  const because_ = unique([...weight.because, ...calculation.because, ...allowed.because]);
  const heaviest = Math.max(allowed.value ?? Number.NaN, weight.high ?? Number.NaN);
  const total =
    weight.value === null || allowed.value === null || because_.length
      ? open('kg', because_, { at: item.nameAt })
      : known(heaviest, 'kg', {
          ...(heaviest > allowed.value ? withTolerance(weight, heaviest) : byContingency(weight, allowed.groups)),
          source: calculation.from,
          at: item.nameAt,
        });
  return [
    {
      kind: 'calculated',
      evidence: 'calculation',
      weight,
      allowance: weight.value ? (total.value ?? weight.value) / weight.value - 1 : calculation.share,
      allowanceFrom:
        total.value !== null && total.value > (allowed.value ?? 0)
          ? 'its tolerance'
          : allowed.groups.length > 1
            ? `${calculation.from}, another for some parts`
            : calculation.from,
      total,
      at: item.nameAt,
    },
  ];
}

const withTolerance = (weight: Derived, heaviest: number): Origin => ({
  formula: 'sum of parts * (1 + allowance)',
  inputs: [
    { label: 'sum of parts', value: weight },
    { label: 'allowance', value: known(heaviest / (weight.value as number) - 1, '1', { source: 'its tolerance' }) },
  ],
});

/** One line for all parts; where some take another contingency, a product for each: `parts1 * (1 + contingency1) + …`. */
function byContingency(weight: Derived, groups: readonly Group[]): Origin {
  const [only, ...others] = groups;
  const several = others.length > 0;
  const labelled = groups.map((group, i) => ({ ...group, n: several ? `${i + 1}` : '' }));
  const parts = several ? 'parts' : 'sum of parts';
  return {
    formula: labelled.map(({ n }) => `${parts}${n} * (1 + contingency${n})`).join(' + '),
    inputs: labelled.flatMap(({ share, from, weight: kg, n }) => [
      { label: `${parts}${n}`, value: several || !only ? known(kg, 'kg') : weight },
      { label: `contingency${n}`, value: known(share, '1', { source: from }) },
    ]),
  };
}

/** All parts, each with its own contingency; open as soon as one is. */
function allowedSum(
  body: Summed,
  usual: Allowance['usual'],
  plan: BoundPlan,
): { readonly value: number | null; readonly groups: readonly Group[]; readonly because: readonly Cause[] } {
  const by = {
    usual,
    least: leastContingency(plan, 'calculation')?.value ?? 0,
    leastEstimate: estimateFloor(plan),
    ruled: unknownContingency(plan, 'calculation'),
  };
  const sums = batchesOf(body).map((batch) => batch.allowed(by));
  const why = unique(sums.flatMap(({ because }) => because));
  const groups = together(sums.flatMap((sum_) => sum_.groups));
  const total = groups.reduce((sum_, { weight, share }) => sum_ + weight * (1 + share), 0);
  return { value: why.length || !Number.isFinite(total) ? null : total, groups, because: why };
}

/** An estimate never takes less than the built-in or ruled contingency of estimates. */
const estimateFloor = (plan: BoundPlan): number =>
  leastContingency(plan, 'estimate')?.value ?? builtInRule('estimate').value;

/** The one contingency of a candidate: its own, else the load's, else the built-in; never less than rules ask for. */
function allowanceOf(
  context: Context,
  item: Item | null,
  by: Evidence | null,
  say: { readonly at: Candidate['at'] } | null,
): { readonly share: number; readonly from: string; readonly because: readonly Cause[] } {
  const own = item ? given(item, 'contingency') : ({ state: 'absent' } as const);
  const given_ = own.state !== 'absent' ? own : context.own;
  if (given_.state === 'open') return { share: 0, from: '', because: given_.because };
  const unknown = by ? unknownContingency(context.plan, by) : [];
  if (unknown.length) return { share: 0, from: '', because: unknown };
  const floor = by && leastContingency(context.plan, by);
  const stated =
    given_.state === 'known'
      ? {
          share: given_.quantity.high,
          from: own.state !== 'absent' ? 'its own contingency' : 'contingency of the load',
        }
      : null;
  const least = by === 'estimate' ? estimateFloor(context.plan) : 0;
  if (stated && stated.share < least) return { share: least, from: 'least for an estimate', because: [] };
  const base = stated ?? { share: builtInRule(by).value, from: `built in for ${by ?? 'stated weights'}` };
  if (!stated && !floor && say && !(item ?? context.item).opens.length)
    context.notes.add(
      'contingency-missing',
      say.at,
      { evidence: by ?? 'statement', percent: base.share, rule: base.from },
      '',
    );
  return floor && floor.value > base.share
    ? { share: floor.value, from: floor.name, because: [] }
    : { ...base, because: [] };
}

/** A stated figure. */
export function statedBy(item: Item, context: Context): Candidate {
  const by = textOf(item, 'by') as Evidence | null;
  const figure = given(item, '');
  const lines = openLines(item);
  const value =
    figure.state === 'known' && !lines.length
      ? asWritten(figure, 'kg', sourceOf(item))
      : open(
          'kg',
          figure.state === 'open'
            ? [...lines, ...figure.because]
            : lines.length
              ? lines
              : [because('The stated weight could not be read.', item.at)],
          { at: item.at },
        );
  return candidate('stated', item, by, value, context);
}

/** A weighing on supports. */
export function weighedBy(item: Item, context: Context): Candidate {
  const supports = childrenOf(item, 'support');
  const due = (of: Item, clause: string, why: string) =>
    context.notes.add('clause-missing', of.at, { item: of.names[0] ?? of.keyword, clause, why }, '');
  if (!supports.length && !item.opens.length) due(item, 'a support', 'a `support` with its place and what it `reads`');
  for (const support of supports)
    if (!support.clauses.has('reads') && !support.opens.length)
      due(support, 'reads', 'what the scale or cell under it shows');
  const by = textOf(item, 'by') as Evidence | null;
  return candidate('measured', item, by, weighedSum(item, sourceOf(item)), context);
}

/** What a figure rests on, in words. */
export const sourceOf = (item: Item): string =>
  [
    textOf(item, 'by') && `by ${textOf(item, 'by')}`,
    textOf(item, 'from'),
    textOf(item, 'dated') && `dated ${textOf(item, 'dated')}`,
  ]
    .filter(Boolean)
    .join(', ') || 'typed here';

function candidate(
  kind: Candidate['kind'],
  item: Item,
  by: Evidence | null,
  figure: Derived,
  context: Context,
): Candidate {
  const weight = corrected(figure, item, context);
  const allowance = allowanceOf(context, item, by, { at: item.at });
  const accuracy = given(item, 'accuracy');
  const loose = accuracy.state === 'known' ? heavyEnd(kind, figure, weight, accuracy.quantity.high) : 0;
  const why = unique([...weight.because, ...allowance.because, ...(accuracy.state === 'open' ? accuracy.because : [])]);
  const total =
    weight.value === null || why.length
      ? open('kg', why, { at: item.at })
      : known(Math.max(weight.value * (1 + allowance.share), weight.high as number, loose), 'kg', {
          formula: 'weight * (1 + allowance)',
          inputs: [
            { label: 'weight', value: weight },
            {
              label: 'allowance',
              value: known(
                Math.max(allowance.share, (Math.max(weight.high as number, loose) - weight.value) / weight.value),
                '1',
                { source: allowance.from },
              ),
            },
          ],
          source: weight.source,
          at: item.at,
        });
  const share = weight.value && total.value ? total.value / weight.value - 1 : allowance.share;
  return {
    kind,
    evidence: by,
    weight,
    allowance: share,
    allowanceFrom: share > allowance.share + 1e-12 ? 'its tolerance' : allowance.from,
    total,
    at: item.at,
  };
}

/** Above this share of what was read, what is taken off again counts in the error of the reading. Chosen here; no source. */
const smallTare = 0.05;

/**
 * The weight where a reading is as far off as its accuracy says, kg. Of an indicator or cell that is a share of what truly hangs, tare and
 * all: reading / (1 - accuracy). Of a weighing on supports it is a share of the readings. What is taken off and added counts at its heavy end;
 * the reading's own tolerance says the same as its accuracy and is not counted beside it.
 */
function heavyEnd(kind: Candidate['kind'], figure: Derived, weight: Derived, accuracy: number): number {
  if (weight.value === null || figure.value === null) return 0;
  const heaviest = (weight.high as number) - ((figure.high as number) - figure.value);
  if (kind === 'stated') return heaviest + (figure.value * accuracy) / (1 - accuracy);
  const taken = figure.value - weight.value;
  return heaviest + accuracy * (taken > smallTare * figure.value ? figure.value : heaviest);
}

/** A figure less its tare plus the parts that are lifted but not in it. */
function corrected(value: Derived, item: Item, context: Context): Derived {
  const tare = given(item, 'tare');
  const named = item.clauses.has('without') ? withoutParts(item, context) : [];
  const added = 'what' in named ? named : [...named, ...unclearAdditions(item, context)];
  if ('what' in added) return open('kg', [added, ...value.because], { at: item.at });
  const parts = sum(added, 'kg');
  const why = unique([...value.because, ...(tare.state === 'open' ? tare.because : []), ...parts.because]);
  if (why.length || value.value === null || parts.value === null) return open('kg', why, { at: item.at });
  if (tare.state !== 'known' && !added.length) return value;
  const off = tare.state === 'known' ? tare.quantity : { value: 0, low: 0, high: 0 };
  const inputs = [
    { label: 'figure', value },
    ...(tare.state === 'known' ? [{ label: 'tare', value: known(off.value, 'kg', { at: tare.at }) }] : []),
    ...(added.length ? [{ label: 'added', value: parts }] : []),
  ];
  if (value.value - off.value + parts.value <= 0) {
    const at = tare.state === 'known' ? tare.at : item.at;
    const written = at.row.text.slice(at.from, at.to);
    const facts = { clause: 'tare', value: written, reason: 'it takes off all of the weight' };
    return open('kg', [context.notes.add('value-outside', at, facts, 'The tare takes off all of the weight.')], {
      at: item.at,
    });
  }
  return known(
    value.value - off.value + parts.value,
    'kg',
    {
      formula: `figure${tare.state === 'known' ? ' - tare' : ''}${added.length ? ' + added' : ''}`,
      inputs,
      source: value.source,
      at: item.at,
    },
    (value.low as number) - off.high + (parts.low as number),
    (value.high as number) - off.low + (parts.high as number),
  );
}

/** Liquids that a dry or net figure leaves out and nothing adds: counted, as the safer reading, and said. */
function unclearAdditions(item: Item, context: Context): readonly Derived[] {
  return leftOut(item, context.body).flatMap((thing) => {
    const body = find(context.body, thing);
    context.notes.add('addition-unclear', item.at, { thing: thing.name, twice: false }, '', [
      { at: thing.item.nameAt, says: thing.name },
    ]);
    return body ? [body.weight] : [];
  });
}

function withoutParts(item: Item, context: Context): readonly Derived[] | Cause {
  const weights: Derived[] = [];
  for (const name of namesOf(item, 'without')) {
    const thing = context.layout.find(name, item);
    if ('what' in thing) return thing;
    const body = find(context.body, thing);
    if (body) weights.push(body.weight);
  }
  return weights.length ? weights : because('What it is without could not be read.', item.at);
}

const find = (body: Summed, thing: Thing): Summed | null =>
  body.thing === thing ? body : body.bodies.reduce<Summed | null>((found, one) => found ?? find(one, thing), null);
