// `becket check`: every finding of plans and libraries, for people and for a build that must stop.
import { cautions, type Finding, type Severity } from '../checks/index.ts';
import { countOpen, notStated, spotOf, standing } from '../report/index.ts';
import type { Snapshot } from '../workspace/index.ts';
import { exit } from './exit.ts';
import { human, type Shown } from './formats/human.ts';
import { opening } from './opened.ts';
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
  const tally = new Tally();
  const seen = new Set<string>();
  let found = false;
  for (const { snapshot } of opening(targets, terminal)) {
    const findings = snapshot.setAside ? [] : newOf(snapshot, seen);
    for (const finding of findings)
      terminal.out(`${human(finding, (at) => shown(spotOf(snapshot.plan, at), terminal), colour)}\n`);
    found ||= findings.some(({ waived, severity }) => !waived && ranks.indexOf(severity) <= ranks.indexOf(least));
    tally.add(snapshot, findings.length);
  }
  terminal.out(`${tally.closing()}\n`);
  return tally.failed ? exit.failed : found ? exit.found : exit.clean;
}

const ranks: readonly Severity[] = ['error', 'warning', 'note'];

/** A choice on the command line wins over NO_COLOR, and that over what the output is. */
function coloured({ env, screen }: Terminal, choice: 'auto' | 'always' | 'never'): boolean {
  return choice === 'auto' ? screen && !env.NO_COLOR && env.TERM !== 'dumb' : choice === 'always';
}

/** The findings of a snapshot not yet seen: one in a library is seen from every plan that takes it in, and counts once. */
function newOf({ findings, plan }: Snapshot, seen: Set<string>): readonly Finding[] {
  return findings.filter((finding) => {
    const { file, line, column } = spotOf(plan, finding.at);
    const key = JSON.stringify([file, line, column, finding.slug, finding.message]);
    return !seen.has(key) && seen.add(key);
  });
}

const shown = ({ file, line, column }: ReturnType<typeof spotOf>, terminal: Terminal): Shown => ({
  path: shownPath(file, terminal),
  line,
  column,
});

/** What is left of the plans looked at: enough for the caution that closes every check. */
class Tally {
  failed = false;
  private plans = 0;
  private findings = 0;
  private open = 0;
  private readonly subjects = new Set<string>();
  private readonly unjudged = new Set<string>();

  add(snapshot: Snapshot, findings: number): void {
    if (snapshot.setAside) this.failed = true;
    else this.findings += findings;
    if (snapshot.setAside || !snapshot.plan.head) return;
    this.plans += 1;
    if (this.findings) return; // of nothing found alone it is said what was not looked at
    this.open += countOpen(standing(snapshot));
    for (const subject of notStated(snapshot.plan)) this.subjects.add(subject);
    for (const unjudged of snapshot.results.notJudged) this.unjudged.add(unjudged);
  }

  closing(): string {
    if (this.findings) return cautions.checked(this.findings, this.plans);
    return [
      ...(this.open ? [cautions.openFigures(this.open)] : []),
      ...(this.unjudged.size ? [cautions.notJudged([...this.unjudged])] : []),
      cautions.nothingFound(
        this.plans,
        this.subjects.size ? [...this.subjects] : ['whatever the text does not speak of'],
      ),
    ].join('\n');
  }
}
