// The section "Working": how each figure came about, with its formula, the values put in, and what it rests on.
import { type Derived, filledIn, inLines, mostAddends, placeOf, spaced, write } from '../../quantities/index.ts';
import type { Result } from '../../results/types.ts';
import { resultsOf } from '../../vocabulary/index.ts';
import { figuresOf, type Step, workingOf } from '../working.ts';
import { type Context, section } from './context.ts';
import { notKnown, rounding, row, styled, withEnds } from './figures.ts';
import type { Cell, Row, Section } from './types.ts';
import { quoted } from './written.ts';

export function workingSection(context: Context): readonly Section[] {
  const { list } = context.snapshot.results;
  const shown = list.filter(({ value, ...of }) => value.value !== null && (value.formula || value.source) && tells(of));
  const results = figuresOf(list);
  const rows = shown.flatMap((result) =>
    stepsOf(result, results, context).map((step, i) => stepRow(context, result, step, i)),
  );
  return section(
    'working',
    'Working',
    rows.length
      ? [
          {
            kind: 'table',
            caption: 'How each figure came about; what is set in below a figure goes into it',
            columns: [
              { title: 'Figure' },
              { title: 'Value', figures: true },
              { title: 'Worked out by' },
              { title: 'Rests on' },
            ],
            rows,
          },
        ]
      : [],
  );
}

/** Where a part lies follows from its place as written; a tension as mass and a capacity as stated stand in other rows. */
function tells({ subject: { kind }, result }: Pick<Result, 'subject' | 'result'>): boolean {
  if (kind === 'part' || kind === 'assembly') return result === 'weight' || result === 'volume';
  return (result !== 'load' && result !== 'capacity') || kind === 'load';
}

/** The figure, and below it what has a formula of its own and no place among the results. */
function stepsOf(result: Result, known: ReadonlySet<Derived>, { snapshot: { results } }: Context): readonly Step[] {
  const { kind, name } = result.subject;
  const [first, ...steps] = workingOf(result, known);
  const below = steps.filter(
    ({ label, derived }) =>
      derived.formula !== '' && !known.has(derived) && results.find(kind, name, label, result.stage) === undefined,
  );
  return first
    ? [first, ...below.filter((step, i) => below.findIndex(({ derived }) => derived === step.derived) === i)]
    : [];
}

function stepRow(context: Context, result: Result, { label, derived }: Step, i: number): Row {
  return {
    ...row(
      [result.at],
      i === 0 ? title(result) : spaced(label),
      cell(label, derived, result, context),
      formula(derived, result, context),
      rests(derived, context),
    ),
    depth: i === 0 ? 0 : 1,
    repeat: true,
  };
}

/** A count is a number; everything else without a unit is a share. Units are those of the formulas, so that one line gives the figure of the next. */
function cell(label: string, derived: Derived, result: Result, { system }: Context): Cell {
  if (derived.value === null) return notKnown;
  if (label === 'count') return { text: write(derived.value, 'number', styled(system, 'near')) };
  const unit = inLines(derived.unit, system);
  const style = unit === undefined ? {} : { unit, digits: 4 };
  return { text: withEnds(derived, worseOf(result, label), (round) => ({ ...styled(system, round), ...style })) };
}

/** A figure that goes into another one is rounded as the result of its name is; any other to the nearest. */
const worseOf = ({ subject }: Result, label: string) => resultsOf[subject.kind]?.[label]?.worse ?? 'either';

/** Its own source, and those of figures that go into it as they stand. */
function rests({ source, inputs, assumptions }: Derived, { sources }: Context): string {
  const taken = new Map<string, string[]>();
  for (const { label, value } of inputs) {
    if (value.formula || plain.has(value.source) || value.source === source) continue;
    const name = sources.nameOf(value.source);
    taken.set(name, [...(taken.get(name) ?? []), spaced(label)]);
  }
  const others = [...taken].map(([name, labels]) => `${labels.join(', ')}: ${name}`);
  return [
    ...(plain.has(source) ? [] : [sources.nameOf(source)]),
    ...others,
    ...assumptions.map((text) => `assumed: ${text}`),
  ].join('; ');
}

/** Sources that say no more than the formula does. */
const plain = new Set(['', 'typed here', 'closed form']);

const title = ({ subject, result, stage }: Result): string =>
  [
    subject.name ? `${subject.kind} ${quoted(subject.name)}: ${result}` : result,
    ...(stage ? [`stage ${quoted(stage)}`] : []),
  ].join(', ');

/** The formula with its figures; each goes in rounded as the result of its name is, what makes up a centre to the nearest. */
function formula(derived: Derived, result: Result, context: Context): string {
  const inputs = derived.inputs.length ? placesToo(derived, result, context) : volumesIn(derived, result, context);
  return filledIn({ ...derived, inputs }, (label) => ({
    system: context.system,
    round: result.result.startsWith('cog') ? 'near' : rounding[worseOf(result, label)],
  }));
}

/** Weights that make up a centre, with the places that stand among the results. */
function placesToo({ inputs, formula }: Derived, { result }: Result, { snapshot }: Context): Derived['inputs'] {
  if (formula !== 'sum of weight * place / sum of weight' || inputs.length > mostAddends) return inputs;
  const { list } = snapshot.results;
  return inputs.flatMap((input) => {
    const of = list.find((one) => one.value === input.value && one.result === 'weight')?.subject;
    const place = of && list.find((one) => one.subject === of && one.result === result)?.value;
    return place ? [input, { label: placeOf(input.label), value: place }] : [input];
  });
}

/** The volumes of what is in a load or assembly, which its sum does not name. */
function volumesIn({ formula }: Derived, { subject, result }: Result, { snapshot }: Context): Derived['inputs'] {
  if (formula !== 'sum of parts' || result !== 'volume') return [];
  const inside = ({ path }: Result['subject']) =>
    path.length === subject.path.length + 1 && subject.path.every((name, i) => name === path[i]);
  return snapshot.results.list
    .filter((one) => one.result === result && one.value.value !== null && inside(one.subject))
    .map((one) => ({ label: one.subject.name ?? '', value: one.value }));
}
