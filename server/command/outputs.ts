// Where reports and sheets go: which format, which file, beside the plan or in a folder.
import { extname } from 'node:path';
import { folderOf, relativePath } from '../report/index.ts';
import { identity, isFolder } from './files.ts';
import { stem, type Target, type Targets } from './targets.ts';
import type { Terminal } from './terminal.ts';

export const reportFormats = ['markdown', 'html', 'json', 'lines'] as const;
export type ReportFormat = (typeof reportFormats)[number];

const endings: Readonly<Record<ReportFormat, string>> = { markdown: '.md', html: '.html', json: '.json', lines: '.txt' };

/** The file a plan's text belongs into. */
export type PlaceOf = (target: Target) => string;

/** The format that the name of the output asks for; undefined where it asks for none. */
export const formatOf = (output: string | undefined): ReportFormat | undefined =>
  output === undefined ? undefined : reportFormats.find((format) => endings[format] === extname(output));

/** `plans/skid.md` for `plans/skid.liftplan`. */
export const besidePlan = (format: ReportFormat): PlaceOf => (target) => `${folderOf(target.file)}/${nameOf(target, format)}`;

/** One file for one plan; else a folder in which each text lies as its plan does in the folder given. */
export function placesIn(terminal: Terminal, targets: Targets, format: ReportFormat, output: string): PlaceOf {
  const path = identity(output, terminal.cwd);
  if (targets.single && !isFolder(path) && !/[\\/]$/.test(output)) return () => path;
  return (target) => [path, relativePath(target.base, folderOf(target.file)), nameOf(target, format)].filter(Boolean).join('/');
}

/** The one file that takes all reports as a JSON array; null where each plan has its own file. */
export function wholeFile(terminal: Terminal, targets: Targets, format: ReportFormat, output: string): string | null {
  const path = identity(output, terminal.cwd);
  return format === 'json' && (targets.single || extname(output) === '.json') && !isFolder(path) ? path : null;
}

const nameOf = ({ file }: Target, format: ReportFormat): string => `${stem(file)}${endings[format]}`;
