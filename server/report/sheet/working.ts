// The section "Working": how each figure came about, with its formula, the values put in, and what it rests on.
import { type Derived, pretty, type System, write, writeIn } from '../../quantities/index.ts';
import type { Result } from '../../results/types.ts';
import { resultsOf } from '../../vocabulary/index.ts';
import { figuresOf, type Step, workingOf } from '../working.ts';
import { type Context, section } from './context.ts';
import { figure, notKnown, rounding, row, styled } from './figures.ts';
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
      formula(derived, result, context.system),
      rests(derived, context),
    ),
    depth: i === 0 ? 0 : 1,
    repeat: true,
  };
}

/** A count is a number; everything else without a unit is a share. */
const cell = (label: string, derived: Derived, result: Result, { system }: Context): Cell =>
  label === 'count' && derived.value !== null
    ? { text: write(derived.value, 'number', styled(system, 'near')) }
    : figure(derived, system, worseOf(result, label));

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

/** `massPerLength` as people write it. */
const spaced = (label: string): string => label.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const title = ({ subject, result, stage }: Result): string =>
  [
    subject.name ? `${subject.kind} ${quoted(subject.name)}: ${result}` : result,
    ...(stage ? [`stage ${quoted(stage)}`] : []),
  ].join(', ');

/**
 * `length × width × thickness × density = 3.6576 m × 1.2192 m × …`: in words, then with the values put in, with digits enough to
 * work it out again. A formula that does not name all its inputs, such as `sum of parts`, is left in words.
 */
function formula({ formula, inputs }: Derived, result: Result, system: System): string {
  const shown = pretty(spaced(formula)).replace(/9\.80665/g, '9.80665 m/s²');
  if (!inputs.length || !inputs.every(({ label }) => formula.includes(label))) return shown;
  const values = inputs.map(
    ({ label, value }) => [pretty(spaced(label)), valueText(formula, label, value, result, system)] as const,
  );
  return `${shown} = ${putIn(shown, values)}`;
}

function valueText(formula: string, label: string, { value, unit }: Derived, result: Result, system: System): string {
  if (value === null) return notKnown.text;
  const round = rounding[worseOf(result, label)];
  return writeIn(formula, label, value, unit, { ...styled(system, round), digits: 6 });
}

/** The text with every label in it replaced by its value; of labels that begin alike the longest counts. Labels may be names of the plan. */
function putIn(text: string, values: readonly (readonly [label: string, value: string])[]): string {
  const longest = [...values].sort(([a], [b]) => b.length - a.length);
  let made = '';
  for (let at = 0; at < text.length; ) {
    const found = letter.test(text.charAt(at - 1))
      ? undefined
      : longest.find(([label]) => label && text.startsWith(label, at) && !letter.test(text.charAt(at + label.length)));
    made += found ? found[1] : text.charAt(at);
    at += found ? found[0].length : 1;
  }
  return made;
}

const letter = /[\p{L}\p{N}]/u;
