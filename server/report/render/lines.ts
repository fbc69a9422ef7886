// One result a line, for tools that compare lines: a change of one figure is a change of one line, and nothing else moves.
import { cautions } from '../../checks/index.ts';
import type { System } from '../../quantities/index.ts';
import type { Result } from '../../results/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { withEnds, worseEnd } from '../sheet/figures.ts';
import { visible } from './visible.ts';

/** The caution, each result in the plan's units, then each expectation. No places: a line that only moved changes nothing. */
export function lines({ plan, results }: Snapshot): string {
  const text = [
    `# ${cautions.sheetHead}`,
    ...results.list.map((result) => `${subject(result)}: ${figure(result, plan.units)}`),
    ...results.expects.map(({ text, state }) => `expect ${text}: ${state === 'open' ? 'not known' : state}`),
  ];
  return `${text.map(visible).join('\n')}\n`;
}

const subject = ({ subject: { kind, path }, result, stage }: Result): string =>
  [
    path.length ? `${kind} ${path.map(named).join(' > ')}` : kind,
    ...(stage ? [`stage ${named(stage)}`] : []),
    result,
  ].join(', ');

const named = (name: string): string => (/\s|^$/.test(name) ? `"${name}"` : name);

/** With the characters of a keyboard only: what compares lines may not know others. */
const figure = ({ subject: { kind }, result, value }: Result, system: System): string =>
  value.value === null
    ? `not known: ${value.because.map(({ what }) => what).join(' ')}`
    : withEnds(value, worseEnd(kind, result), (round) => ({ system, round }));
