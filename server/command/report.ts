// `becket report`: writes what plans come to, as sheets or as data, and verifies sheets that are kept beside their plans.

import { filesOf } from '../plan/index.ts';
import {
  folderOf,
  json,
  lines,
  markdown,
  page,
  type Report,
  relativePath,
  report as reportOf,
  sheetOf,
} from '../report/index.ts';
import type { Snapshot } from '../workspace/index.ts';
import { exit } from './exit.ts';
import { type Opened, opened } from './opened.ts';
import {
  besidePlan,
  formatOf,
  type PlaceOf,
  placesIn,
  type ReportFormat,
  reportFormats,
  wholeFile,
} from './outputs.ts';
import { shownPath, type Target, type Targets, targetsOf } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun, oneOf, readArgs } from './usage.ts';
import { verify } from './verify.ts';
import { watch } from './watch.ts';
import { writeFile } from './write-file.ts';

/** Found: `--verify` came upon a sheet that does not show what its plan says. Findings do not count: a report of them is due all the same. */
export async function report(terminal: Terminal, args: readonly string[]): Promise<number> {
  const { values, positionals } = readArgs(args, {
    format: { type: 'string' },
    output: { type: 'string' },
    verify: { type: 'boolean' },
    watch: { type: 'boolean' },
    named: { type: 'string' },
  });
  const { output } = values;
  const format = oneOf('format', values.format ?? formatOf(output), reportFormats, 'markdown');
  if (values.watch) {
    if (output === undefined || values.verify)
      throw new CannotRun('--watch needs --output, and does not go with --verify.');
    if (positionals.includes('-')) throw new CannotRun('--watch looks at files; standard input is read once.');
    return watch(terminal, async () => write({ ...(await job(terminal, positionals, undefined)), format }, output));
  }
  const made = { ...(await job(terminal, positionals, values.named)), format };
  const differs = values.verify
    ? verify(
        terminal,
        sheets(made, output === undefined ? besidePlan(format) : placesIn(terminal, made.targets, format, output)),
      )
    : false;
  if (!values.verify && output === undefined) print(made);
  if (!values.verify && output !== undefined) write(made, output);
  return made.read.failed ? exit.failed : differs ? exit.found : exit.clean;
}

interface Job {
  readonly terminal: Terminal;
  readonly targets: Targets;
  readonly read: Opened;
  readonly format: ReportFormat;
}

async function job(
  terminal: Terminal,
  paths: readonly string[],
  named: string | undefined,
): Promise<Omit<Job, 'format'>> {
  const targets = await targetsOf(terminal, paths, named);
  const read = opened(targets, terminal);
  if (read.plans.every(({ snapshot }) => !snapshot.plan.head)) {
    const files = targets.list.map(({ file }) => shownPath(file, terminal));
    terminal.say(`There is no plan here, only what plans take in: ${files.join(', ')}.\n`);
  }
  return { terminal, targets, read };
}

/** The text for one plan, and the file it belongs into. */
export interface Made {
  readonly target: Target;
  readonly file: string;
  readonly text: string;
}

function sheets({ targets, read, format }: Job, placeOf: PlaceOf): readonly Made[] {
  return read.plans
    .filter(({ snapshot }) => shows(snapshot, targets, format))
    .map(({ target, snapshot }) => {
      const file = placeOf(target);
      return { target, file, text: textOf(snapshot, target, format, relativePath(folderOf(file), target.file)) };
    });
}

/** Plans have sheets and reports; a library has a sheet of what it states, where somebody asks for just that. */
const shows = ({ plan }: Snapshot, { single }: Targets, format: ReportFormat): boolean =>
  plan.head !== null || (single && (format === 'markdown' || format === 'html'));

/** `from` is the plan's path as a reader of the text sees it. */
function textOf(snapshot: Snapshot, target: Target, format: ReportFormat, from: string): string {
  if (format === 'json') return json(entry(snapshot, target) ?? []);
  if (format === 'lines') return lines(snapshot);
  const folder = folderOf(snapshot.plan.file);
  const sheet = sheetOf(snapshot, { pathOf: (file) => relativePath(folder, file) });
  return format === 'html' ? page(sheet, snapshot.plan.units === 'US' ? 'Letter' : 'A4', from) : markdown(sheet, from);
}

/** Paths in a report are as seen from the folder given. */
const entry = (snapshot: Snapshot, { base }: Target): Report | null =>
  reportOf(snapshot, (file) => relativePath(base, file));

/** All reports as one JSON text: an object for one plan named, an array for everything else. */
function joined({ targets, read }: Job): string {
  const reports = read.plans.flatMap(({ target, snapshot }) => entry(snapshot, target) ?? []);
  const [only] = reports;
  return json(targets.single && only ? only : reports);
}

function print(made: Job): void {
  const { terminal, format } = made;
  if (format === 'json') {
    terminal.out(joined(made));
    return;
  }
  const texts = sheets(made, ({ file }) => file);
  const several = texts.length > 1;
  if (several && format !== 'lines')
    throw new CannotRun(`There are ${texts.length} plans: say with --output into which folder their sheets go.`);
  for (const { target, text } of texts) terminal.out(several ? `# ${shownPath(target.file, terminal)}\n${text}` : text);
}

/** Writes the texts and names the files that went into them. */
function write(made: Job, output: string): readonly string[] {
  const { terminal, targets, read, format } = made;
  const whole = wholeFile(terminal, targets, format, output);
  if (whole !== null) writeFile(whole, joined(made));
  else for (const { file, text } of sheets(made, placesIn(terminal, targets, format, output))) writeFile(file, text);
  return [...new Set(read.plans.flatMap(({ snapshot }) => filesOf(snapshot.plan)))];
}
