// `becket report`: writes what plans come to, as sheets or as data, and verifies sheets that are kept beside their plans.
import { extname } from 'node:path';
import { folderOf, json, lines, markdown, page, relativePath, report as reportOf, sheetOf } from '../report/index.ts';
import type { Snapshot } from '../workspace/types.ts';
import { identity, isFolder } from './files.ts';
import { opened } from './opened.ts';
import { shownPath, stem, type Target, type Targets, targetsOf } from './targets.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun, oneOf, readArgs } from './usage.ts';
import { verify } from './verify.ts';
import { watch } from './watch.ts';
import { writeFile } from './write.ts';

export const reportFormats = ['markdown', 'html', 'json', 'lines'] as const;
export type ReportFormat = (typeof reportFormats)[number];

/** One sheet or report and where it belongs; `file` null: to the output. */
export interface Made {
  readonly target: Target;
  readonly file: string | null;
  readonly text: string;
}

interface Job {
  readonly targets: Targets;
  readonly format: ReportFormat;
  /** Where each target's text goes; null: to the output. */
  readonly place: (target: Target) => string | null;
}

/** Exit code 0: written, or every sheet agrees with its plan; 1: `--verify` found one that does not. */
export async function report(terminal: Terminal, args: readonly string[]): Promise<number> {
  const { values, positionals } = readArgs(args, {
    format: { type: 'string' }, output: { type: 'string' }, verify: { type: 'boolean' }, watch: { type: 'boolean' }, named: { type: 'string' },
  });
  const targets = await targetsOf(terminal, positionals, values.named);
  const format = oneOf('format', values.format ?? formatOf(values.output), reportFormats, 'markdown');
  if (values.verify && values.watch) throw new CannotRun('--verify looks once; it does not go with --watch.');
  if (values.verify) return verify(terminal, make({ targets, format, place: placer(terminal, targets, format, values.output ?? 'beside') }, terminal), format);
  const job = { targets, format, place: placer(terminal, targets, format, values.output) };
  if (values.watch) return watch(terminal, positionals, values.output, () => put(job, terminal));
  put(job, terminal);
  return 0;
}

/** The format that the name of the output asks for. */
const formatOf = (output: string | undefined): ReportFormat | undefined =>
  output === undefined ? undefined : endings.find(([, ending]) => ending === extname(output))?.[0];

const endings: readonly (readonly [ReportFormat, string])[] = [['markdown', '.md'], ['html', '.html'], ['json', '.json'], ['lines', '.txt']];
export const endingOf = (format: ReportFormat): string => endings.find(([name]) => name === format)?.[1] ?? '';

/** A file for one plan; a folder, in which each sheet lies as its plan does in the folder given; beside the plan; or the output. */
function placer(terminal: Terminal, { single }: Targets, format: ReportFormat, output: string | undefined): Job['place'] {
  if (output === undefined) return () => null;
  const named = (target: Target) => `${stem(target.file)}${endingOf(format)}`;
  if (output === 'beside') return (target) => `${folderOf(target.file)}/${named(target)}`;
  const path = identity(output, terminal.cwd);
  if (single && !isFolder(path) && !/[\\/]$/.test(output)) return () => path;
  return (target) => `${path}/${[relativePath(target.base, folderOf(target.file)), named(target)].filter(Boolean).join('/')}`;
}

/** All texts of a job, worked out from the files as they are now. */
function make({ targets, format, place }: Job, terminal: Terminal): readonly Made[] {
  const snapshotOf = opened(targets);
  return targets.list.flatMap((target): readonly Made[] => {
    const snapshot = snapshotOf(target);
    if (!snapshot.plan.head && !(targets.single && (format === 'markdown' || format === 'html'))) return [];
    const file = place(target);
    const text = format === 'json' ? json(single(snapshot, target)) : textOf(snapshot, format, file, terminal);
    return [{ target, file, text }];
  });
}

/** Paths in the report are as seen from the folder given. */
const single = (snapshot: Snapshot, { base }: Target) => reportOf(snapshot, (file) => relativePath(base, file)) ?? [];

/** A sheet or the lines of one plan; a sheet that lies in a file names its plan as seen from there. */
export function textOf(snapshot: Snapshot, format: Exclude<ReportFormat, 'json'>, file: string | null, terminal: Terminal): string {
  if (format === 'lines') return lines(snapshot);
  const own = snapshot.plan.file;
  const sheet = sheetOf(snapshot, { pathOf: (other) => relativePath(folderOf(own), other) });
  if (format === 'html') return page(sheet, snapshot.plan.units === 'US' ? 'Letter' : 'A4');
  return markdown(sheet, file === null ? shownPath(own, terminal) : relativePath(folderOf(file), own));
}

/** Writes every text where it belongs. */
function put(job: Job, terminal: Terminal): readonly string[] {
  const made = make(job, terminal);
  const toOutput = made.filter(({ file }) => file === null);
  const files = job.targets.list.map(({ file }) => file);
  if (!made.length) terminal.say(`${job.targets.list.map(({ file }) => shownPath(file, terminal)).join(', ')}: no plan among these, so there is no report.\n`);
  if (job.format === 'json' && job.place(job.targets.list[0] as Target) === null) {
    terminal.out(joined(job, toOutput));
    return files;
  }
  return files;
}
