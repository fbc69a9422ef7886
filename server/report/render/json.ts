// The JSON report, version 1: the contract with other programs. Keys and their order are fixed; figures are SI and unrounded.
import { cautions, type Finding } from '../../checks/index.ts';
import { filesOf } from '../../plan/index.ts';
import type { Derived } from '../../quantities/index.ts';
import type { Expectation, Result, Subject } from '../../results/types.ts';
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { contentMark } from '../mark.ts';
import { spotOf } from '../places.ts';
import { clauseText, valueText } from '../sheet/written.ts';
import { figuresOf, workingOf } from '../working.ts';

/** One plan as the object of the contract. `pathOf` gives a file's path as the report shall write it. Null for a library. */
export function report(snapshot: Snapshot, pathOf: (file: string) => string): Report | null {
  const { plan, results, findings } = snapshot;
  const { head } = plan;
  if (!head) return null;
  const where = placer(snapshot, pathOf);
  const known = figuresOf(results.list);
  const stated = (keyword: string) => clauseText(head, keyword) || null;
  return {
    format: 'liftplan report',
    version: 1,
    caution: cautions.sheetHead,
    mark: contentMark(plan),
    files: filesOf(plan).map(pathOf),
    plan: {
      name: head.value ? valueText(head.value) : null,
      site: stated('site'),
      date: stated('date'),
      revision: stated('revision'),
      units: plan.units,
    },
    results: results.list.map((result) => resultEntry(result, known, where)),
    expects: results.expects.map((expect) => expectEntry(expect, where)),
    findings: findings.map((finding) => findingEntry(finding, where)),
  };
}

/** The report as text: one object for one plan, an array for several; two spaces, a line break at the end. */
export const json = (reports: Report | readonly Report[]): string => `${JSON.stringify(reports, null, 2)}\n`;

export interface Report {
  readonly format: 'liftplan report';
  readonly version: 1;
  readonly caution: string;
  readonly mark: string;
  readonly files: readonly string[];
  readonly plan: Readonly<Record<'name' | 'site' | 'date' | 'revision', string | null>> & {
    readonly units: 'US' | 'metric';
  };
  readonly results: readonly object[];
  readonly expects: readonly object[];
  readonly findings: readonly object[];
}

type Where = (at: Place) => {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
};

/** Places as the report writes them; a statement is one line, so it ends on the line it begins on. */
const placer =
  ({ plan }: Snapshot, pathOf: (file: string) => string): Where =>
  (at) => {
    const { file, line, column, endColumn } = spotOf(plan, at);
    return { file: pathOf(file), line, column, endLine: line, endColumn };
  };

export const subject = ({ kind, name, path }: Subject) => ({ kind, name, path });

/** Value with the ends of its tolerance; all three null where it is open. */
export function ends({ value, low, high }: Derived) {
  const open = value === null;
  return { value, low: open ? null : (low ?? value), high: open ? null : (high ?? value), open };
}

function resultEntry(result: Result, known: ReadonlySet<Derived>, where: Where) {
  const { value, low, high, open } = ends(result.value);
  const { file, line } = where(result.at);
  return {
    subject: subject(result.subject),
    result: result.result,
    stage: result.stage,
    value,
    unit: result.value.unit,
    low,
    high,
    open,
    because: open ? result.value.because.map(({ what }) => what) : [],
    working: workingOf(result, known).map(({ label, derived }) => ({
      label,
      formula: derived.formula,
      value: derived.value,
      unit: derived.unit,
      source: derived.source,
      assumptions: derived.assumptions,
    })),
    file,
    line,
  };
}

function expectEntry({ text, state, worst, at }: Expectation, where: Where) {
  const { file, line } = where(at);
  return {
    file,
    line,
    text,
    state,
    worst: worst && {
      subject: subject(worst.subject),
      result: worst.result,
      stage: worst.stage,
      ...endsWithUnit(worst.value),
    },
  };
}

function endsWithUnit(derived: Derived) {
  const { value, low, high, open } = ends(derived);
  return { value, unit: derived.unit, low, high, open };
}

function findingEntry({ slug, severity, message, at, related, fixes, waived }: Finding, where: Where) {
  return {
    slug,
    severity,
    message,
    ...where(at),
    related: related.map((other) => ({ ...where(other.at), message: other.message })),
    fixes: fixes.map(({ title }) => title),
    waived: waived && { reason: waived.reason, approvedBy: waived.approvedBy },
  };
}
