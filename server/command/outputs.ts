// Where reports and sheets go: which format, which file, beside the plan or in a folder.
import { extname } from 'node:path';
import { relativePath } from '../report/index.ts';
import { identity, isFolder } from './files.ts';
import type { Target, Targets } from './targets.ts';
import type { Terminal } from './terminal.ts';

export const reportFormats = ['markdown', 'html', 'json', 'lines'] as const;
export type ReportFormat = (typeof reportFormats)[number];

/** How texts are named after their plans: `skid.sheet.md` is no page that happens to lie there, and git can be told of it. */
const endings: Readonly<Record<ReportFormat, string>> = {
  markdown: '.sheet.md',
  html: '.sheet.html',
  json: '.json',
  lines: '.txt',
};

/** The file a plan's text belongs into. */
export type PlaceOf = (target: Target) => string;

/** The format that the name of the output asks for; undefined where it asks for none. */
export function formatOf(output: string | undefined): ReportFormat | undefined {
  const ending = extname(output ?? '');
  return ending ? reportFormats.find((format) => endings[format].endsWith(ending)) : undefined;
}

/** `plans/skid.sheet.md` for `plans/skid.liftplan`. */
export const besidePlan =
  (format: ReportFormat): PlaceOf =>
  ({ file }) =>
    named(file, format);

/** One file for one plan; else a folder in which each text lies as its plan does in the folder given. */
export function placesIn(terminal: Terminal, targets: Targets, format: ReportFormat, output: string): PlaceOf {
  const path = identity(output, terminal.cwd);
  if (targets.single && !isFolder(path) && !/[\\/]$/.test(output)) return () => path;
  return ({ file, base }) => `${path}/${named(relativePath(base, file), format)}`;
}

/** The one file that takes all reports as a JSON array; null where each plan has its own file. */
export function wholeFile(terminal: Terminal, targets: Targets, format: ReportFormat, output: string): string | null {
  const path = identity(output, terminal.cwd);
  return format === 'json' && (targets.single || extname(output) === '.json') && !isFolder(path) ? path : null;
}

const named = (plan: string, format: ReportFormat): string => plan.replace(/\.liftplan$/, '') + endings[format];
