// `becket check`: every finding of plans and libraries, for people and for a build that must stop.
import { cautions, type Finding, type Severity } from '../checks/index.ts';
import { countOpen, notStated, spotOf, standing } from '../report/index.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/index.ts';
import { exit } from './exit.ts';
import { human, type Shown } from './formats/human.ts';
import { opened } from './opened.ts';
import { shownPath, targetsOf } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { oneOf, readArgs } from './usage.ts';

/** Found: a finding at or above the severity asked for that is not set aside. */
export async function check(terminal: Terminal, args: readonly string[]): Promise<number> {
  const { values, positionals } = readArgs(args, {
    severity: { type: 'string' },
    color: { type: 'string' },
    named: { type: 'string' },
  });
  const least = oneOf('severity', values.severity, ranks, 'error');
  const colour = coloured(terminal, oneOf('color', values.color, ['auto', 'always', 'never'], 'auto'));
  const targets = await targetsOf(terminal, positionals, values.named);
  const { plans, failed } = opened(targets, terminal);
  const snapshots = plans.map(({ snapshot }) => snapshot);
  const findings = onceEach(snapshots);
  for (const { finding, where } of findings) terminal.out(`${human(finding, where(terminal), colour)}\n`);
  terminal.out(`${closing(snapshots, findings.length)}\n`);
  if (failed) return exit.failed;
  return findings.some(({ finding }) => !finding.waived && ranks.indexOf(finding.severity) <= ranks.indexOf(least))
    ? exit.found
    : exit.clean;
}

const ranks: readonly Severity[] = ['error', 'warning', 'note'];

/** A choice on the command line wins over NO_COLOR, and that over what the output is. */
function coloured({ env, screen }: Terminal, choice: 'auto' | 'always' | 'never'): boolean {
  return choice === 'auto' ? screen && !env.NO_COLOR && env.TERM !== 'dumb' : choice === 'always';
}

interface Found {
  readonly finding: Finding;
  readonly where: (terminal: Terminal) => (at: Place) => Shown;
}

/** A finding in a library is seen from every plan that takes it in, and counts once. */
function onceEach(snapshots: readonly Snapshot[]): readonly Found[] {
  const seen = new Set<string>();
  return snapshots.flatMap(({ findings, plan }) =>
    findings.flatMap((finding): readonly Found[] => {
      const { file, line, column } = spotOf(plan, finding.at);
      const key = JSON.stringify([file, line, column, finding.slug, finding.message]);
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ finding, where: (terminal) => (at) => shown(spotOf(plan, at), terminal) }];
    }),
  );
}

const shown = ({ file, line, column }: ReturnType<typeof spotOf>, terminal: Terminal): Shown => ({
  path: shownPath(file, terminal),
  line,
  column,
});

/** The standing caution that closes every check. */
function closing(snapshots: readonly Snapshot[], findings: number): string {
  const plans = snapshots.filter(({ plan }) => plan.head);
  if (findings) return cautions.checked(findings, plans.length);
  const subjects = [...new Set(plans.flatMap(({ plan }) => notStated(plan)))];
  const open = plans.reduce((sum, snapshot) => sum + countOpen(standing(snapshot)), 0);
  const unjudged = [...new Set(plans.flatMap(({ results }) => results.notJudged))];
  return [
    ...(open ? [cautions.openFigures(open)] : []),
    ...(unjudged.length ? [cautions.notJudged(unjudged)] : []),
    cautions.nothingFound(plans.length, subjects.length ? subjects : ['whatever the text does not speak of']),
  ].join('\n');
}
