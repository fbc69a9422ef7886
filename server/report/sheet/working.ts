// The section "Working": how each figure came about, with its formula, the values put in, and what it rests on.
import { pretty } from '../../quantities/index.ts';
import type { Result } from '../../results/types.ts';
import { figuresOf, type Step, workingOf } from '../working.ts';
import { type Context, section } from './context.ts';
import { figure, figureText, row, worseEnd } from './figures.ts';
import type { Row, Section } from './types.ts';
import { quoted } from './written.ts';

export function workingSection(context: Context): readonly Section[] {
  const { list } = context.snapshot.results;
  const results = figuresOf(list);
  const shown = list.filter(({ value }) => value.value !== null && (value.formula || value.inputs.length || value.source));
  const rows = shown.flatMap((result) => workingOf(result, results).map((step, i) => stepRow(context, result, step, i)));
  return section('working', 'Working', rows.length ? [{
    kind: 'table',
    caption: 'How each figure came about; the figures below one are what it is worked out from',
    columns: [{ title: 'Figure' }, { title: 'Value', figures: true }, { title: 'Worked out by' }, { title: 'Rests on' }],
    rows,
  }] : []);
}

function stepRow({ system }: Context, result: Result, { label, derived }: Step, i: number): Row {
  const worse = i === 0 ? worseEnd(result.subject.kind, result.result) : 'either';
  const rests = [derived.source, ...derived.assumptions.map((text) => `assumed: ${text}`)].filter(Boolean).join('; ');
  return {
    ...row([result.at], i === 0 ? title(result) : label, figure(derived, system, worse), formula(derived.formula, derived.inputs, system), rests),
    depth: i === 0 ? 0 : 1,
    repeat: true,
  };
}

const title = ({ subject, result, stage }: Result): string =>
  [subject.name ? `${subject.kind} ${quoted(subject.name)}: ${result}` : result, ...(stage ? [`stage ${quoted(stage)}`] : [])].join(', ');

/** `length × width × thickness × density = 3.66 m × 1.22 m × …`: in words, then with the values put in. */
function formula(text: string, inputs: Step['derived']['inputs'], system: Context['system']): string {
  const shown = pretty(text);
  const values = new Map(inputs.map(({ label, value }) => [pretty(label), figureText({ ...value, low: null, high: null }, system, 'either')]));
  const labels = [...values.keys()].sort((a, b) => b.length - a.length).map((label) => label.replace(/[^\p{L}\p{N} ]/gu, '\\$&'));
  const filled = labels.length ? shown.replace(new RegExp(`(?<![\\p{L}\\p{N}])(?:${labels.join('|')})(?![\\p{L}\\p{N}])`, 'gu'), (label) => values.get(label) ?? label) : shown;
  return filled === shown ? shown : `${shown} = ${filled}`;
}
