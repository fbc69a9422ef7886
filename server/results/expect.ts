// Holds every `expect` against the results: at the worst end of each, and an open one never holds.
import { type BoundPlan, type Compare, fold, type Item, rangeNames, textOf } from '../plan/index.ts';
import { nearest } from '../quantities/nearest.ts';
import { gearKinds, type ResultRow, resultsOf } from '../vocabulary/index.ts';
import type { Listing } from './list.ts';
import type { Notes } from './notes.ts';
import type { Expectation, Result } from './types.ts';

/** The state of each `expect` line of the plan's own file. */
export function judgeExpects(plan: BoundPlan, list: Listing, notes: Notes): readonly Expectation[] {
  return plan.items
    .filter((item) => item.keyword === 'expect' && item.file === plan.file)
    .map((item) => judge(item, list, notes));
}

function judge(item: Item, list: Listing, notes: Notes): Expectation {
  const value = item.value?.value;
  const at = item.value?.at ?? item.at;
  const text = item.node.row.text.slice(at.from, at.to);
  const compare = value?.kind === 'compare' ? value.compare : null;
  if (!compare) return { item, text, state: 'open', worst: null, at }; // what could not be read is said there
  const stage = textOf(item, 'stage') ?? stageName(item);
  if (stage !== null && !list.all.some((result) => result.stage !== null && fold(result.stage) === fold(stage))) {
    const stages = [...new Set(list.all.flatMap((result) => result.stage ?? []))];
    const place = item.clauses.get('stage')?.[0]?.valueAt ?? at;
    notes.add(
      'name-unknown',
      place,
      { name: stage, nearest: nearest(stage, stages), wanted: 'a stage', is: null, declare: null },
      '',
    );
    return { item, text, state: 'open', worst: null, at };
  }
  const found = matching(compare, list, stage);
  if ('missing' in found) {
    if (found.missing)
      notes.add(
        'name-unknown',
        found.at(at),
        { name: found.missing, nearest: [], wanted: `a ${compare.subject.kind}`, is: null, declare: null },
        '',
      );
    else notes.add('expect-failed', at, facts(compare, text, null, `there is no ${compare.subject.kind} here`), '');
    return { item, text, state: 'open', worst: null, at };
  }
  const open = found.results.find((result) => result.value.value === null);
  const worst =
    open ?? found.results.reduce((bad, result) => (margin(compare, result) < margin(compare, bad) ? result : bad));
  const state = open ? 'open' : margin(compare, worst) >= 0 ? 'met' : 'not met';
  if (state !== 'met')
    notes.add(
      'expect-failed',
      at,
      facts(compare, text, worst, open ? (open.value.because[0]?.what ?? 'it is not known') : null),
      '',
      [{ at: worst.at, says: subjectText(worst) }],
    );
  return { item, text, state, worst, at };
}

const stageName = (item: Item): string | null => {
  const value = item.clauses.get('stage')?.[0]?.value;
  return value?.kind === 'names' ? (value.names[0]?.parts.at(-1)?.text ?? null) : null;
};

/** How far inside the bound a result lies at its worst end; below zero: not met. Rounding noise of the last digits does not decide. */
function margin(compare: Compare, { value }: Result): number {
  const low = value.low as number;
  const high = value.high as number;
  const noise = 1e-12 * Math.max(Math.abs(low), Math.abs(high), Math.abs(compare.low), Math.abs(compare.high));
  const loose = (m: number): number => (Math.abs(m) <= noise ? 0 : m);
  switch (compare.op) {
    case '<':
      return strict(compare.low - high, noise);
    case '<=':
      return loose(compare.low - high);
    case '>':
      return strict(low - compare.low, noise);
    case '>=':
      return loose(low - compare.low);
    case 'between':
      return loose(Math.min(low - compare.low, compare.high - high));
  }
}
const strict = (m: number, noise: number): number => (m > noise ? m : Math.min(m, -Number.MIN_VALUE));

type Found =
  | { readonly results: readonly Result[] }
  | { readonly missing: string | null; readonly at: (whole: Expectation['at']) => Expectation['at'] };

function matching(compare: Compare, list: Listing, stage: string | null): Found {
  const { kind, names } = compare.subject;
  const fits = (result: Result) =>
    result.result === compare.result && (stage === null || result.stage === null || fold(result.stage) === fold(stage));
  const all = list.ofKinds(kind === 'gear' ? gearKinds : [kind]).filter(fits);
  if (!names.length) return all.length ? { results: all } : { missing: null, at: (whole) => whole };
  const results: Result[] = [];
  for (const name of names) {
    const parts = name.parts.map((part) => fold(part.text));
    const last = name.parts.at(-1)?.text ?? '';
    const wanted = name.until ? rangeNames(last, name.until.text) : [last];
    for (const one of typeof wanted === 'string' ? [last] : wanted) {
      const hits = all.filter(
        (result) =>
          fold(result.subject.name ?? '') === fold(one) &&
          parts.slice(0, -1).every((part) => result.subject.path.map(fold).includes(part)),
      );
      if (!hits.length)
        return { missing: one, at: (whole) => ({ row: whole.row, from: name.span.from, to: name.span.to }) };
      results.push(...hits);
    }
  }
  return { results };
}

export const subjectText = ({ subject }: Result): string =>
  subject.name === null ? subject.kind : `${subject.kind} "${subject.name}"`;

function facts(compare: Compare, text: string, worst: Result | null, cause: string | null) {
  const row = resultsOf[compare.subject.kind]?.[compare.result] as ResultRow;
  const value =
    worst?.value.value === null || !worst
      ? null
      : compare.op === '<' || compare.op === '<='
        ? worst.value.high
        : compare.op === 'between'
          ? (worst.value.high as number) > compare.high
            ? worst.value.high
            : worst.value.low
          : worst.value.low;
  const limit =
    compare.op === 'between' && value !== null && (value as number) > compare.high ? compare.high : compare.low;
  return {
    text,
    subject: worst ? subjectText(worst) : compare.subject.kind,
    condition: conditionOf(compare, text),
    value,
    unit: row.unit,
    result: compare.result,
    cause,
    limit,
  };
}

/** The condition as the author wrote it, from its operator on. */
function conditionOf(compare: Compare, text: string): string {
  const from = text.search(/<|>|=|≤|≥|\bbetween\b/);
  return from < 0 ? compare.op : text.slice(from).trim();
}
