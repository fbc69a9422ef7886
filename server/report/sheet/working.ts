// The section "Working": how each figure came about, with its formula, the values put in, and what it rests on.
import { type Derived, pretty, type System, write } from '../../quantities/index.ts';
import type { Result } from '../../results/types.ts';
import { resultsOf } from '../../vocabulary/index.ts';
import { figuresOf, type Step, workingOf } from '../working.ts';
import { type Context, section } from './context.ts';
import { figure, row, styled } from './figures.ts';
import type { Cell, Row, Section } from './types.ts';
import { quoted } from './written.ts';

export function workingSection(context: Context): readonly Section[] {
  const { list } = context.snapshot.results;
  const shown = list.filter(({ value }) => value.value !== null && (value.formula || value.inputs.length || value.source));
  const results = figuresOf(list);
  const rows = shown.flatMap((result) => stepsOf(result, results, context).map((step, i) => stepRow(context, result, step, i)));
  return section('working', 'Working', rows.length ? [{
    kind: 'table',
    caption: 'How each figure came about; what is set in below a figure goes into it',
    columns: [{ title: 'Figure' }, { title: 'Value', figures: true }, { title: 'Worked out by' }, { title: 'Rests on' }],
    rows,
  }] : []);
}

/** The figure, and below it what has a formula of its own and no place among the results. */
function stepsOf(result: Result, known: ReadonlySet<Derived>, { snapshot: { results } }: Context): readonly Step[] {
  const { kind, name } = result.subject;
  const [first, ...steps] = workingOf(result, known);
  const below = steps.filter(({ label, derived }) => derived.formula !== '' && !known.has(derived) && results.find(kind, name, label, result.stage) === undefined);
  return first ? [first, ...below.filter((step, i) => below.findIndex(({ derived }) => derived === step.derived) === i)] : [];
}

function stepRow(context: Context, result: Result, { label, derived }: Step, i: number): Row {
  return {
    ...row([result.at], i === 0 ? title(result) : spaced(label), cell(label, derived, result, context), formula(derived, result, context.system), rests(derived, context)),
    depth: i === 0 ? 0 : 1,
    repeat: true,
  };
}

/** A count is a number; everything else without a unit is a share. */
const cell = (label: string, derived: Derived, result: Result, { system }: Pick<Context, 'system'>): Cell =>
  label === 'count' && derived.value !== null ? { text: write(derived.value, 'number', styled(system, 'near')) } : figure(derived, system, worseOf(result, label));

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
  return [...(plain.has(source) ? [] : [sources.nameOf(source)]), ...others, ...assumptions.map((text) => `assumed: ${text}`)].join('; ');
}

/** Sources that say no more than the formula does. */
const plain = new Set(['', 'typed here', 'closed form']);

/** `massPerLength` as people write it. */
const spaced = (label: string): string => label.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const title = ({ subject, result, stage }: Result): string =>
  [subject.name ? `${subject.kind} ${quoted(subject.name)}: ${result}` : result, ...(stage ? [`stage ${quoted(stage)}`] : [])].join(', ');

/** `length × width × thickness × density = 3.66 m × 1.22 m × …`: in words, then with the values put in. */
function formula({ formula, inputs }: Derived, result: Result, system: System): string {
  const shown = pretty(spaced(formula)).replace(/9\.80665/g, '9.80665 m/s²');
  const values = new Map(inputs.map(({ label, value }) => [pretty(spaced(label)), cell(label, { ...value, low: null, high: null }, result, { system }).text]));
  const labels = [...values.keys()].sort((a, b) => b.length - a.length).map((label) => label.replace(/[^\p{L}\p{N} ]/gu, '\\$&'));
  const filled = labels.length ? shown.replace(new RegExp(`(?<![\\p{L}\\p{N}])(?:${labels.join('|')})(?![\\p{L}\\p{N}])`, 'gu'), (label) => values.get(label) ?? label) : shown;
  return filled === shown ? shown : `${shown} = ${filled}`;
}
