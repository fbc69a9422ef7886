// Where a load's centre of gravity is: weighed, stated or calculated, axis by axis, and which of them do not agree.
import { childrenOf, type Item, lostCauses, openLines, textOf } from '../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../quantities/derived.ts';
import type { Summed } from './bodies.ts';
import { sourceOf } from './candidates.ts';
import { doubts, spanOf } from './doubts.ts';
import { nameOf } from './governing.ts';
import { pickPlace } from './hang/model.ts';
import type { Context } from './load-context.ts';
import { because } from './notes.ts';
import { agreement } from './rules.ts';
import type { Candidate, LoadResult } from './types.ts';
import { weighedCentre } from './weighing.ts';

/** Weighed before stated before calculated, axis by axis. */
export function centre(
  context: Context,
  candidates: readonly Candidate[],
  governing: Candidate | null,
): Pick<LoadResult, 'cog' | 'cogFrom'> {
  const weighed = weighedCentre(childrenOf(context.item, 'weighed'));
  const stated = childrenOf(context.item, 'cog').map(statedCentre);
  const sums = calculatedCentre(
    context,
    candidates,
    governing,
    [...weighed.map((axis) => axis.value !== null), false],
    stated,
  );
  const [lostWeighed, lostStated] = ['weighed', 'cog'].map((keyword) =>
    unique(childrenOf(context.item, keyword).flatMap(lost)),
  ) as [readonly Cause[], readonly Cause[]];
  const from = new Set<string>();
  const cog = [0, 1, 2].map((axis) => {
    const options: readonly Option[] = [
      { source: 'weighed', value: weighed[axis], lost: lostWeighed },
      ...stated.map((one): Option => ({ source: 'stated', value: one[axis], lost: lostStated })),
      { source: 'calculated', value: sums[axis], lost: [] },
    ];
    const found = options.find(({ value, lost: causes }) => isKnown(value) || causes.length);
    from.add(found?.source ?? 'calculated');
    if (isKnown(found?.value)) return found?.value;
    const why = found ? found.lost : options.flatMap(({ value }) => value?.because ?? []);
    return open('m', unique(why), { at: context.item.nameAt });
  }) as unknown as LoadResult['cog'];
  return { cog, cogFrom: from.size === 1 ? ([...from][0] as Option['source']) : 'mixed' };
}

/** One of the ways an axis may be known. */
interface Option {
  readonly source: 'weighed' | 'stated' | 'calculated';
  readonly value: Derived | undefined;
  readonly lost: readonly Cause[]; // what of it cannot be read
}

const isKnown = (value: Derived | undefined): boolean => value !== undefined && value.value !== null;

/** Clauses of a weighing and its supports that move the centre; '' is the figure of a `cog`. */
const moving = new Set(['', 'at', 'reads', 'tare', 'accuracy', 'incline', 'without']);

/** What of a weighing or a stated centre cannot be read: it may be further out than whatever would take its place. */
function lost(item: Item): readonly Cause[] {
  const clauses = [...(item.value ? [item.value] : []), ...[...item.clauses.values()].flat()];
  return [
    ...openLines(item),
    ...lostCauses(item),
    ...clauses
      .filter(({ keyword, value }) => !value && moving.has(keyword))
      .map(({ at }) => because('What it says of the centre could not be read.', at)),
    ...childrenOf(item, 'support').flatMap(lost),
  ];
}

function statedCentre(item: Item): readonly Derived[] {
  const value = item.value?.value;
  const lines = openLines(item);
  return [0, 1, 2].map((axis) => {
    const cell = value?.kind === 'point' ? value.at[axis] : null;
    if (lines.length || !cell || typeof cell === 'string')
      return open(
        'm',
        lines.length
          ? lines
          : [
              {
                ...because(`The centre along ${'xyz'[axis]} is not known yet (?).`, item.at),
                ...(cell === 'unknown' && { deliberate: true as const }),
              },
            ],
        { at: item.at },
      );
    return known(cell.value, 'm', { source: sourceOf(item), at: item.at }, cell.low, cell.high);
  });
}

/** The parts' centre; open where the governing weight is not explained by them. */
function calculatedCentre(
  context: Context,
  candidates: readonly Candidate[],
  governing: Candidate | null,
  weighed: readonly boolean[],
  stated: readonly (readonly Derived[])[],
): readonly Derived[] {
  const { body, item, notes, thing, plan } = context;
  const parts = candidates.find((one) => one.kind === 'calculated');
  const limit = agreement(plan).value;
  const placed = parts?.weight.value ?? 0;
  const heavy = governing?.weight.value ?? null;
  if (
    governing &&
    governing !== parts &&
    heavy !== null &&
    (!parts || parts.weight.value !== null) &&
    heavy - placed > limit * heavy
  ) {
    const settled = (axis: number) => weighed[axis] || stated.some((one) => one[axis]?.value !== null);
    const cause =
      settled(0) && settled(1)
        ? because(`${thing.name} weighs more than its parts add up to.`, governing.at)
        : notes.add(
            'weight-unplaced',
            item.nameAt,
            { load: thing.name, governing: heavy, difference: heavy - placed },
            `${thing.name} weighs more than its parts add up to.`,
            [{ at: governing.at, says: nameOf(governing) }],
          );
    return [0, 1, 2].map(() => open('m', [cause], { at: item.nameAt }));
  }
  return body.cog;
}

/** Evidence worth a second look; where two centres disagree the legs are judged with both. */
export function doubt(
  context: Context,
  load: Pick<LoadResult, 'thing' | 'candidates' | 'cog'> & { readonly body: Summed },
): readonly Derived[] | null {
  const { item, layout, plan } = context;
  const weighed = weighedCentre(childrenOf(item, 'weighed'));
  const stated = childrenOf(item, 'cog');
  const calculated =
    load.candidates.some((one) => one.kind === 'calculated') &&
    context.body.cog.every((axis) => axis.value !== null) &&
    !context.notes.problems.some((problem) => problem.slug === 'weight-unplaced');
  const centres = [
    ...(weighed.length
      ? [{ name: 'the weighing', at: (childrenOf(item, 'weighed')[0] as Item).at, cog: weighed }]
      : []),
    ...stated.map((one) => ({
      name: `the centre stated by ${textOf(one, 'by') ?? 'nobody named'}`,
      at: one.at,
      cog: statedCentre(one),
    })),
    ...(calculated ? [{ name: 'the sum of the parts', at: item.nameAt, cog: context.body.cog }] : []),
  ];
  const picks = plan.names.things
    .filter((one) => one.kind === 'pick' && one.load === context.thing)
    .flatMap((pick) => {
      const at = pickPlace(pick, layout);
      return at ? [at] : [];
    });
  return doubts(load, centres, spanOf(picks), agreement(plan).value, context.notes);
}

/** A coordinate whose ends reach as far as another reading of it. */
export function reaching(axis: Derived, other: Derived | undefined): Derived {
  if (axis.value === null || !other || other.value === null) return axis;
  const off = Math.abs(other.value - axis.value);
  return {
    ...axis,
    low: Math.min(axis.low as number, axis.value - off),
    high: Math.max(axis.high as number, axis.value + off),
  };
}
