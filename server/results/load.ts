// A load: what each piece of evidence says it weighs, which figure governs, and where its centre is.
import { type BoundPlan, childrenOf, given, type Item, namesOf, openLines, type Thing, textOf } from '../plan/index.ts';
import { type Cause, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { type Evidence, readings } from '../vocabulary/index.ts';
import { type Summed, sumUp } from './bodies.ts';
import { unstatedContents } from './contents.ts';
import { doubts, leftOut, spanOf } from './doubts.ts';
import { pickPlace } from './hang/model.ts';
import { because, type Notes } from './notes.ts';
import { Layout } from './place.ts';
import { agreement, builtInRule, leastContingency } from './rules.ts';
import type { Candidate, LoadResult } from './types.ts';
import { weighedCentre, weighedSum } from './weighing.ts';

/** Everything known about one load. */
export function loadResult(
  thing: Thing,
  plan: BoundPlan,
  notes: Notes,
): LoadResult & { readonly body: Summed; readonly layout: Layout } {
  const layout = new Layout(plan, thing, notes);
  const body = withContents(sumUp(thing, layout, notes), unstatedContents(layout, notes));
  const context: Context = {
    thing,
    plan,
    body,
    layout,
    notes,
    item: thing.item,
    own: given(thing.item, 'contingency'),
  };
  const candidates = [
    ...calculated(context),
    ...childrenOf(thing.item, 'stated').map((item) => statedBy(item, context)),
    ...childrenOf(thing.item, 'weighed').map((item) => weighedBy(item, context)),
  ];
  const { governing, weight } = govern(context, candidates);
  const cog = centre(context, candidates, governing);
  holding(context);
  const other = doubt(context, { thing, body, candidates, ...cog });
  return {
    thing,
    body,
    layout,
    candidates,
    governing,
    weight,
    ...cog,
    cog: other ? (cog.cog.map((axis, i) => reaching(axis, other[i])) as unknown as LoadResult['cog']) : cog.cog,
  };
}

/** A closed space of which nothing is said leaves the sum open, not the part: what is in it is not known. */
function withContents(body: Summed, unstated: ReadonlyMap<Thing, Cause>): Summed {
  if (!unstated.size) return body;
  const causes = [...unstated.values()];
  const guard = (value: Derived): Derived => open(value.unit, unique([...causes, ...value.because]), { at: value.at });
  return { ...body, weight: guard(body.weight), cog: [guard(body.cog[0]), guard(body.cog[1]), guard(body.cog[2])] };
}

interface Context {
  readonly thing: Thing;
  readonly plan: BoundPlan;
  readonly body: Summed;
  readonly layout: Layout;
  readonly notes: Notes;
  readonly item: Item;
  readonly own: ReturnType<typeof given>;
}

// ---------------------------------------------------------------- candidates

function calculated(context: Context): readonly Candidate[] {
  const { body, plan, item } = context;
  if (!body.bodies.length && !item.opens.length) return [];
  const calculation = allowanceOf(context, null, 'calculation', { at: item.nameAt });
  const leaves = leavesOf(body);
  const parts = leaves.map((leaf): Derived => {
    const own = leaf.contingency;
    if (own?.because.length) return open('kg', own.because, { at: leaf.thing.item.at });
    let share = own?.share ?? calculation.share;
    if (own?.share !== null && own?.share !== undefined)
      share = Math.max(share, leastContingency(plan, 'calculation')?.value ?? 0);
    if (own?.estimate) share = Math.max(share, estimateFloor(plan));
    const { weight } = leaf;
    return weight.value === null ? weight : known(weight.value * (1 + share), 'kg', { at: weight.at });
  });
  const allowed = sum(parts, 'kg');
  const weight = body.weight;
  const because_ = unique([...weight.because, ...calculation.because, ...allowed.because]);
  const total =
    weight.value === null || allowed.value === null || because_.length
      ? open('kg', because_, { at: item.nameAt })
      : known(Math.max(allowed.value, weight.high as number), 'kg', {
          formula: 'sum of parts * (1 + contingency)',
          inputs: [
            { label: 'sum of parts', value: weight },
            {
              label: 'contingency',
              value: known(weight.value > 0 ? allowed.value / weight.value - 1 : 0, '1', { source: calculation.from }),
            },
          ],
          source: calculation.from,
          at: item.nameAt,
        });
  return [
    {
      kind: 'calculated',
      evidence: 'calculation',
      weight,
      allowance: weight.value ? (total.value ?? weight.value) / weight.value - 1 : calculation.share,
      allowanceFrom: calculation.from,
      total,
      at: item.nameAt,
    },
  ];
}

/** An estimate never takes less than the built-in or ruled contingency of estimates. */
const estimateFloor = (plan: BoundPlan): number =>
  leastContingency(plan, 'estimate')?.value ?? builtInRule('estimate').value;

const leavesOf = (body: Summed): readonly Summed[] => (body.part ? [body] : body.bodies.flatMap(leavesOf));

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
  const floor = by && leastContingency(context.plan, by);
  const stated =
    given_.state === 'known'
      ? {
          share: given_.quantity.value,
          from: own.state !== 'absent' ? 'its own contingency' : 'contingency of the load',
        }
      : null;
  const base = stated ?? { share: builtInRule(by).value, from: `built in for ${by ?? 'stated weights'}` };
  if (!stated && !floor && say)
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

function statedBy(item: Item, context: Context): Candidate {
  const by = textOf(item, 'by') as Evidence | null;
  const figure = given(item, '');
  const lines = openLines(item);
  const value =
    figure.state === 'known' && !lines.length
      ? known(
          figure.quantity.value,
          'kg',
          { source: sourceOf(item), at: figure.at },
          figure.quantity.low,
          figure.quantity.high,
        )
      : open(
          'kg',
          figure.state === 'open'
            ? [...lines, ...figure.because]
            : lines.length
              ? lines
              : [because('The stated weight could not be read.', item.at)],
          { at: item.at },
        );
  return candidate('stated', item, by, corrected(value, item, context), context);
}

function weighedBy(item: Item, context: Context): Candidate {
  const by = textOf(item, 'by') as Evidence | null;
  return candidate('measured', item, by, corrected(weighedSum(item, sourceOf(item)), item, context), context);
}

const sourceOf = (item: Item): string =>
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
  weight: Derived,
  context: Context,
): Candidate {
  const allowance = allowanceOf(context, item, by, { at: item.at });
  const accuracy = given(item, 'accuracy');
  const loose = accuracy.state === 'known' && weight.value !== null ? weight.value * (1 + accuracy.quantity.value) : 0;
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

// ---------------------------------------------------------------- which governs

function govern(
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

const heaviestOf = (candidates: readonly Candidate[]): Candidate | null =>
  candidates.reduce<Candidate | null>(
    (best, one) => (best && (best.total.value as number) >= (one.total.value as number) ? best : one),
    null,
  );
const isReading = (one: Candidate): boolean => one.evidence !== null && readings.includes(one.evidence as Evidence);
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
  const tolerance = item.clauses.has('accuracy') || (reading.weight.low as number) < (reading.weight.high as number);
  return [
    ...(item.clauses.has('dated') ? [] : ['dated']),
    ...(item.clauses.has('tare') ? [] : ['tare']),
    ...(tolerance ? [] : [item.keyword === 'weighed' ? 'accuracy' : '±']),
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

// ---------------------------------------------------------------- where its centre is

function centre(
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
  const from = new Set<string>();
  const cog = [0, 1, 2].map((axis) => {
    const options: readonly (readonly [string, Derived | undefined])[] = [
      ['weighed', weighed[axis]],
      ...stated.map((one) => ['stated', one[axis]] as const),
      ['calculated', sums[axis]],
    ];
    const [source, value] = options.find(([, one]) => one && one.value !== null) ?? ['calculated', undefined];
    from.add(source);
    if (value) return value;
    const why = [
      ...(weighed[axis]?.because ?? []),
      ...stated.flatMap((one) => one[axis]?.because ?? []),
      ...(sums[axis]?.because ?? []),
    ];
    return open('m', unique(why), { at: context.item.nameAt });
  }) as unknown as LoadResult['cog'];
  return { cog, cogFrom: from.size === 1 ? ([...from][0] as 'weighed' | 'stated' | 'calculated') : 'mixed' };
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
function doubt(
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
function reaching(axis: Derived, other: Derived | undefined): Derived {
  if (axis.value === null || !other || other.value === null) return axis;
  const off = Math.abs(other.value - axis.value);
  return {
    ...axis,
    low: Math.min(axis.low as number, axis.value - off),
    high: Math.max(axis.high as number, axis.value + off),
  };
}

/** Nothing says what holds the load, or that it is free. */
function holding({ item, notes, thing }: Context): void {
  if (!item.children.some((child) => child.keyword === 'held by' || child.keyword === 'free'))
    notes.add('holding-unstated', item.nameAt, { load: thing.name }, '');
}
