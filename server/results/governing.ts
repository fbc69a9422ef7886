// Which of several figures for one load's weight governs, and which do not agree.
import { childrenOf, given, textOf } from '../plan/index.ts';
import { type Derived, known, open, unique } from '../quantities/derived.ts';
import { type Evidence, readings } from '../vocabulary/index.ts';
import type { Summed } from './bodies.ts';
import type { Context } from './load-context.ts';
import { agreement } from './rules.ts';
import type { Candidate } from './types.ts';

/** The heaviest after allowance, or a lighter reading that says everything about itself; and the weight that follows. */
export function govern(
  context: Context,
  candidates: readonly Candidate[],
): { readonly governing: Candidate | null; readonly weight: Derived } {
  const { item, notes, thing } = context;
  if (!candidates.length)
    return {
      governing: null,
      weight: open(
        'kg',
        [notes.add('weight-unknown', item.nameAt, { load: thing.name }, `${thing.name} has no weight.`)],
        { at: item.nameAt },
      ),
    };
  const broken = candidates.flatMap((one) => one.total.because.filter((cause) => !cause.deliberate));
  const knownOnes = candidates.filter((one) => one.total.value !== null);
  const heaviest = heaviestOf(knownOnes);
  if (broken.length || !heaviest)
    return {
      governing: null,
      weight: open('kg', unique(broken.length ? broken : candidates.flatMap((one) => one.total.because)), {
        at: item.nameAt,
      }),
    };
  // What is only partly known (`?`) may be the heaviest of all: then nothing governs.
  const unknown = candidates.filter(
    (one) => one.total.value === null && atLeast(one, context) > (heaviest.total.value as number),
  );
  if (unknown.length)
    return {
      governing: null,
      weight: open('kg', unique(unknown.flatMap((one) => one.total.because)), { at: item.nameAt }),
    };
  const apart = disagree(context, knownOnes);
  const reading = knownOnes.find(
    (one) => one !== heaviest && isReading(one) && (one.total.value as number) < (heaviest.total.value as number),
  );
  const missing = reading ? gaps(reading, context) : [];
  if (reading && missing.length)
    notes.add(
      'measured-lighter',
      reading.at,
      {
        reading: nameOf(reading),
        a: reading.weight.value as number,
        other: nameOf(heaviest),
        b: heaviest.weight.value as number,
        missing,
      },
      '',
      [{ at: heaviest.at, says: nameOf(heaviest) }],
    );
  const governing =
    reading && !missing.length && !apart ? (heaviestOf(knownOnes.filter(isReading)) as Candidate) : heaviest;
  return {
    governing,
    weight: known(governing.total.value as number, 'kg', {
      formula: governing.total.formula,
      inputs: governing.total.inputs,
      source: `${nameOf(governing)}, ${governing.allowanceFrom}`,
      assumptions: governing.total.assumptions,
      at: governing.at,
    }),
  };
}

/** What is known of a figure that is not known in full: its parts, its readings, or the figure before what is still open. */
function atLeast(candidate: Candidate, context: Context): number {
  if (candidate.kind === 'calculated') return knownParts(context.body);
  const item = [...childrenOf(context.item, 'stated'), ...childrenOf(context.item, 'weighed')].find(
    (one) => one.at === candidate.at,
  );
  const figures =
    item?.keyword === 'weighed'
      ? childrenOf(item, 'support').map((one) => given(one, 'reads'))
      : item
        ? [given(item, '')]
        : [];
  return figures.reduce((sum, one) => sum + (one.state === 'known' ? one.quantity.value : 0), 0);
}

const knownParts = (body: Summed): number =>
  body.part ? (body.weight.value ?? 0) : body.bodies.reduce((sum, one) => sum + knownParts(one), 0);

const heaviestOf = (candidates: readonly Candidate[]): Candidate | null =>
  candidates.reduce<Candidate | null>(
    (best, one) => (best && (best.total.value as number) >= (one.total.value as number) ? best : one),
    null,
  );
const isReading = (one: Candidate): boolean => one.evidence !== null && readings.includes(one.evidence as Evidence);
/** A candidate in words. */
export const nameOf = (one: Candidate): string =>
  one.kind === 'calculated'
    ? 'the sum of the parts'
    : one.kind === 'stated'
      ? `the weight stated by ${one.evidence ?? 'nobody named'}`
      : `the weighing by ${one.evidence ?? 'nobody named'}`;

/** What a reading must say before it may govern downwards. */
function gaps(reading: Candidate, context: Context): readonly string[] {
  const item = [...childrenOf(context.item, 'stated'), ...childrenOf(context.item, 'weighed')].find(
    (one) => one.at === reading.at,
  );
  if (!item) return [];
  const accuracy = given(item, 'accuracy');
  const tolerance =
    (accuracy.state === 'known' && accuracy.quantity.value > 0) ||
    (reading.weight.low as number) < (reading.weight.high as number);
  const lift = context.plan.head ? textOf(context.plan.head, 'date') : null;
  const read = textOf(item, 'dated');
  const late = lift !== null && read !== null && read > lift; // no reading is taken after the lift
  return [
    ...(read && !late ? [] : ['dated']),
    ...(item.clauses.has('tare') ? [] : ['tare']),
    ...(tolerance ? [] : ['accuracy']),
    ...(item.clauses.has('state') || item.clauses.has('without') ? [] : ['state']),
  ];
}

/** Notes the pair of figures that lie furthest apart, if they do not agree. */
function disagree(context: Context, candidates: readonly Candidate[]): boolean {
  const rule = agreement(context.plan);
  const sorted = [...candidates].sort((a, b) => (b.weight.value as number) - (a.weight.value as number));
  const [heavy] = sorted;
  const light = sorted.at(-1);
  if (!heavy || !light || heavy === light) return false;
  const apart = ((heavy.weight.value as number) - (light.weight.value as number)) / (heavy.weight.value as number);
  if (!(apart > rule.value)) return false;
  context.notes.add(
    'evidence-disagrees',
    light.kind === 'calculated' ? heavy.at : light.at,
    {
      a: nameOf(heavy),
      b: nameOf(light),
      valueA: heavy.weight.value as number,
      valueB: light.weight.value as number,
      apart,
      limit: rule.value,
      rule: rule.name,
    },
    '',
    [
      {
        at: light.kind === 'calculated' ? light.at : heavy.at,
        says: nameOf(light.kind === 'calculated' ? light : heavy),
      },
      ...(rule.at ? [{ at: rule.at, says: rule.name }] : []),
    ],
  );
  return true;
}
