// The section "Working": how each figure came about, with its formula, the values put in, and what it rests on.
import { type Derived, pretty } from '../../quantities/index.ts';
import type { Result } from '../../results/types.ts';
import { resultsOf } from '../../vocabulary/index.ts';
import { figuresOf, type Step, workingOf } from '../working.ts';
import { type Context, section } from './context.ts';
import { figure, figureText, row } from './figures.ts';
import type { Row, Section } from './types.ts';
import { quoted } from './written.ts';

export function workingSection(context: Context): readonly Section[] {
  const { list } = context.snapshot.results;
  const results = figuresOf(list);
  const shown = list.filter(({ value }) => value.value !== null && (value.formula || value.inputs.length || value.source));
  const rows = shown.flatMap((result) =>
    workingOf(result, results)
      .filter((step, i) => i === 0 || (step.derived.formula !== '' && !results.has(step.derived)))
      .map((step, i) => stepRow(context, result, step, i)),
  );
  return section('working', 'Working', rows.length ? [{
    kind: 'table',
    caption: 'How each figure came about; what is set in below a figure goes into it',
    columns: [{ title: 'Figure' }, { title: 'Value', figures: true }, { title: 'Worked out by' }, { title: 'Rests on' }],
    rows,
  }] : []);
}

function stepRow(context: Context, result: Result, { label, derived }: Step, i: number): Row {
  const worse = worseOf(result, label);
  return {
    ...row([result.at], i === 0 ? title(result) : label, figure(derived, context.system, worse), formula(derived, result, context.system), rests(derived, context)),
    depth: i === 0 ? 0 : 1,
    repeat: true,
  };
}

/** A figure that goes into another one is rounded as the result of its name is; any other to the nearest. */
const worseOf = ({ subject }: Result, label: string) => resultsOf[subject.kind]?.[label]?.worse ?? 'either';

/** Its own source, and those of figures that go into it as they stand. */
function rests({ source, inputs, assumptions }: Derived, { sources }: Context): string {
  const taken = inputs.filter(({ value }) => !value.formula && value.source && value.source !== source).map(({ label, value }) => `${label}: ${sources.nameOf(value.source)}`);
  return [...(source ? [sources.nameOf(source)] : []), ...new Set(taken), ...assumptions.map((text) => `assumed: ${text}`)].join('; ');
}

const title = ({ subject, result, stage }: Result): string =>
  [subject.name ? `${subject.kind} ${quoted(subject.name)}: ${result}` : result, ...(stage ? [`stage ${quoted(stage)}`] : [])].join(', ');

/** `length × width × thickness × density = 3.66 m × 1.22 m × …`: in words, then with the values put in. */
function formula({ formula, inputs }: Derived, result: Result, system: Context['system']): string {
  const shown = pretty(formula);
  const values = new Map(inputs.map(({ label, value }) => [pretty(label), figureText({ ...value, low: null, high: null }, system, worseOf(result, label))]));
  const labels = [...values.keys()].sort((a, b) => b.length - a.length).map((label) => label.replace(/[^\p{L}\p{N} ]/gu, '\\$&'));
  const filled = labels.length ? shown.replace(new RegExp(`(?<![\\p{L}\\p{N}])(?:${labels.join('|')})(?![\\p{L}\\p{N}])`, 'gu'), (label) => values.get(label) ?? label) : shown;
  return filled === shown ? shown : `${shown} = ${filled}`;
}
