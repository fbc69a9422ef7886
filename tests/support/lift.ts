// Short plans for tests: the pieces every lift needs, and the figures most tests ask for.

import { markdown, sheetOf } from '../../server/report/index.ts';
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';

export const head = 'plan "Test lift": date 2026-03-02, units metric\n';

/** A snapshot of a plan text; other files by name. */
export const lift = (text: string, others: Readonly<Record<string, string>> = {}): Snapshot =>
  check({ 'plan.liftplan': text, ...others }, 'plan.liftplan');

/** A load of those lines, with nothing added to its weight. */
export const loadOf = (lines: string): Snapshot =>
  lift(`${head}load "L"\n  contingency 0 %\n  free "stands loose"\n${lines}\n`);

/** A result's SI value; null where it is open. Fails where there is no such result, so that no test compares nothing. */
export function value(
  snapshot: Snapshot,
  kind: string,
  name: string | null,
  result: string,
  stage: string | null = null,
): number | null {
  const found = snapshot.results.find(kind, name, result, stage);
  if (!found) throw new Error(`There is no ${kind} ${name ?? ''} ${result}`);
  return found.value.value;
}

export const slugs = (snapshot: Snapshot): readonly string[] => snapshot.findings.map((finding) => finding.slug);
export const errors = (snapshot: Snapshot): readonly string[] =>
  snapshot.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.slug);
export const message = (snapshot: Snapshot, slug: string): string =>
  snapshot.findings.find((finding) => finding.slug === slug)?.message ?? '';

/** The sheet of a plan as text, with the backslashes of Markdown taken back. */
export const paper = (snapshot: Snapshot): string =>
  markdown(sheetOf(snapshot, { pathOf: (file) => file }), snapshot.file).replace(/\\([^\w\s])/g, '$1');

/** Titles of the ways out of a finding, the preferred one marked. */
export const waysOut = (snapshot: Snapshot, slug: string): readonly string[] =>
  (snapshot.findings.find((finding) => finding.slug === slug)?.fixes ?? []).map(
    ({ title, preferred }) => title + (preferred ? ' (preferred)' : ''),
  );
