// Hover on a load, an assembly or a part: what it weighs, how that came about, its share of the load, and where its centre is.
import { cautions } from '../../checks/index.ts';
import { clauseOf, given, textOf } from '../../plan/index.ts';
import type { BoundPlan, Item } from '../../plan/types.ts';
import { type Derived, known, share, write } from '../../quantities/index.ts';
import {
  type Body,
  type Candidate,
  candidateName,
  type LoadResult,
  leavesOf,
  type Results,
  shares,
} from '../../results/index.ts';
import { builtInRule, leastContingency } from '../../results/rules.ts';
import { figure } from '../figures.ts';
import { asDeclared, spelled } from '../spelling.ts';
import { listed } from './gear.ts';
import { type Line, type Note, note } from './page.ts';
import { tableLines } from './tabled.ts';
import { assumedLines, assumptionsOf, unknownLines, workingLines } from './working.ts';

/** Hover on a load. */
export function loadNote(load: LoadResult, results: Results): Note {
  const { plan } = results;
  const { thing, weight, governing, body, candidates } = load;
  const system = plan.units;
  const name = `load ${asDeclared(thing, 'declared')}`;
  const added = governing ? `, ${share(governing.allowance)} added for doubt to the ${governing.kind} weight` : '';
  const estimates = leavesOf(body)
    .filter(({ thing: { item } }) => textOf(item, 'by') === 'estimate')
    .map((leaf) => leaf.thing);
  return note(`${name}: ${figure(weight, system)}${added}`, {
    working: [
      ...candidates.map((one) => candidateLine(one, governing, plan)),
      ...largest(body, plan),
      ...centreLine(load.cog, plan, load.cogFrom),
      ...listed(results, thing, ['tilt']),
      ...sizeLine(body, plan),
    ],
    rests: [
      ...unknownLines(weight.because),
      ...candidates.flatMap((one) => candidateCautions(one, plan)),
      ...estimates.slice(0, 3).map(({ item }) => estimateLine(item, plan)),
      ...assumedLines([...assumptionsOf(body.weight), ...written(thing.item)]),
    ],
  });
}

/** Hover on `stated`, `weighed`, or the sum of the parts. */
export function candidateNote(candidate: Candidate, load: LoadResult, results: Results): Note {
  const { plan } = results;
  const system = plan.units;
  const counts =
    candidate === load.governing
      ? 'it governs'
      : load.governing
        ? `${candidateName(load.governing)} governs`
        : 'which figure governs is not known';
  return note(
    `${candidateName(candidate)}: ${figure(candidate.total, system)} with ${share(candidate.allowance)} added; ${counts}`,
    {
      working: [
        { says: `${share(candidate.allowance)} added: ${candidate.allowanceFrom}` },
        ...workingLines('with what is added', candidate.total, system),
      ],
      rests: [
        ...unknownLines(candidate.total.because),
        ...candidateCautions(candidate, plan),
        ...assumedLines(assumptionsOf(candidate.total)),
      ],
    },
  );
}

/** Hover on a part or an assembly. */
export function bodyNote(body: Body, results: Results): Note {
  const { plan } = results;
  const { thing, weight, working } = body;
  const { item } = thing;
  const system = plan.units;
  const load = results.loads.find((one) => one.thing === thing.load);
  const estimate = textOf(item, 'by') === 'estimate' ? [estimateLine(item, plan)] : [];
  return note(`${thing.kind} ${asDeclared(thing, 'declared')}: ${figure(weight, system)}`, {
    working: [
      ...(working ? workingLines('weight', weight, system) : largest(body, plan)),
      ...(load ? shareLine(weight, load.body.weight) : []),
      ...centreLine(body.cog, plan),
      ...sizeLine(body, plan),
    ],
    rests: [
      ...restsOn(item, weight),
      ...boundLines(item, results),
      ...tableLines(item, plan),
      ...estimate,
      ...unknownLines(weight.because),
      ...assumedLines([...assumptionsOf(weight), ...written(item)]),
    ],
  });
}

function candidateLine(candidate: Candidate, governing: Candidate | null, { units }: BoundPlan): Line {
  const counts = candidate === governing ? ', governs' : '';
  return {
    says: `${candidate.kind} ${figure(candidate.weight, units)}${candidate.evidence && candidate.kind !== 'calculated' ? ` by ${candidate.evidence}` : ''} + ${share(candidate.allowance)} = ${figure(candidate.total, units)}${counts}`,
    at: candidate.at,
  };
}

function candidateCautions(
  { evidence, weight, allowance, allowanceFrom }: Candidate,
  plan: BoundPlan,
): readonly Line[] {
  const estimate =
    evidence === 'estimate'
      ? [{ says: cautions.estimate(weight.source || 'no document is named', share(allowance), allowanceFrom) }]
      : [];
  const builtIn = allowanceFrom.startsWith('built in')
    ? [{ says: cautions.builtIn(`${share(allowance)}, ${allowanceFrom}, common practice`) }]
    : [];
  return plan.head ? [...estimate, ...builtIn] : estimate;
}

/** The caution on a part whose weight is a guess: the larger of its own contingency and that of estimates is added. */
function estimateLine(item: Item, plan: BoundPlan): Line {
  const least = leastContingency(plan, 'estimate') ?? builtInRule('estimate');
  const own = given(item, 'contingency');
  const stated = own.state === 'known' ? own.quantity.value : 0;
  const [percent, rule] =
    stated > least.value
      ? [stated, 'its own contingency']
      : [least.value, least.at ? least.name : 'the built-in contingency of an estimate'];
  return {
    says: cautions.estimate(
      `${spelled(item.names[0] ?? item.keyword, 'declared')}, ${textOf(item, 'from') ?? 'no document is named'}`,
      share(percent),
      rule,
    ),
  };
}

const written = (item: Item): readonly string[] =>
  (item.clauses.get('assumption') ?? []).flatMap(({ value }) => (value?.kind === 'text' ? [value.text] : []));

/** On an `envelope`: that it is a bound, and how much of the load rests on bounds; nothing on any other part. */
export function boundLines(item: Item, { bodies, loads }: Results): readonly Line[] {
  const body = bodies.get(item);
  if (body?.working?.shape !== 'envelope') return [];
  const all = shares(loads.find(({ thing }) => thing === body.thing.load)?.body ?? body);
  const whole = all?.reduce((sum, { kg }) => sum + kg, 0) ?? 0;
  const bound = all?.find(({ basis }) => basis === 'bound')?.kg ?? 0;
  const much = all
    ? `${share(bound / whole, 'near')} of the weight of all parts rests`
    : 'Not known how much of the load rests';
  return [
    {
      says: `An upper bound: all that is in it weighs no more, as long as nothing in it is denser. ${much} on such bounds.`,
    },
  ];
}

/** What the author names as the source of a figure taken as it stands. */
function restsOn(item: Item, weight: Derived): readonly Line[] {
  const from = textOf(item, 'from');
  const by = textOf(item, 'by');
  if (weight.formula && !from && !by) return [];
  const source = [by && `by ${by}`, from].filter(Boolean).join(', ');
  if (source)
    return [{ says: `Rests on: ${source}`, at: clauseOf(item, 'from')?.at ?? clauseOf(item, 'by')?.at ?? null }];
  return weight.source === 'typed here' ? [{ says: 'Typed here; nothing says what it rests on.' }] : [];
}

const mostParts = 4;

/** The heaviest things in a load or assembly, with their shares; those not known come first. */
function largest(body: Body, { units }: BoundPlan): readonly Line[] {
  const order = (one: Body) => one.weight.value ?? Number.POSITIVE_INFINITY;
  const sorted = [...body.bodies].sort((a, b) => order(b) - order(a));
  const lines = sorted.slice(0, mostParts).map((one): Line => {
    const part = shareOf(one.weight, body.weight);
    return {
      says: `${asDeclared(one.thing, 'declared')} ${figure(one.weight, units)}${part ? `, ${part}` : ''}`,
      at: one.thing.item.nameAt,
    };
  });
  const rest = sorted.length - lines.length;
  return rest > 0 ? [...lines, { says: `and ${rest} lighter ${rest === 1 ? 'one' : 'ones'}` }] : lines;
}

const shareOf = (weight: Derived, whole: Derived): string | null =>
  weight.value === null || whole.value === null || whole.value <= 0 ? null : share(weight.value / whole.value, 'near');

function shareLine(weight: Derived, whole: Derived): readonly Line[] {
  const part = shareOf(weight, whole);
  return part ? [{ says: `${part} of all parts of the load` }] : [];
}

/** `centre of gravity (1.2 m, 0 m, not known) …`. */
function centreLine(cog: readonly Derived[], { units }: BoundPlan, from = ''): readonly Line[] {
  const cells = cog.map((axis) =>
    axis.value === null ? '?' : write(axis.value, 'm', { system: units, round: 'near', plain: false }),
  );
  return [{ says: `centre of gravity (${cells.join(', ')}) in the load's axes${from ? `, ${from}` : ''}` }];
}

function sizeLine({ box }: Body, { units }: BoundPlan): readonly Line[] {
  if (!box) return [];
  const side = (axis: number) =>
    figure(known((box.max[axis] ?? Number.NaN) - (box.min[axis] ?? Number.NaN), 'm'), units);
  return [{ says: `its box: ${side(0)} × ${side(1)} × ${side(2)}` }];
}
