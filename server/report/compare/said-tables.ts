// What is said in one version and not in the other, as rows for a reader: expectations, findings, quiet words, lines of the text.
import type { Expectation } from '../../results/index.ts';
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { spotOf } from '../places.ts';
import { row } from '../sheet/figures.ts';
import { expectStates, worstOf } from '../sheet/gross.ts';
import type { Cell, Row, Table } from '../sheet/types.ts';
import type { ClauseChange, Comparison, StatementChange } from './types.ts';

/** How a file is called for the reader of a plan. */
export type PathOf = (plan: Snapshot, file: string) => string;

/** `line 12`, with its file where that is not the plan's own; `was line 11` for what is gone. */
export type Where = (old: Place | null, now: Place | null) => string;

export function placer({ old, now }: Comparison, pathOf: PathOf): Where {
  const spot = (snapshot: Snapshot, at: Place) => {
    const { file, line } = spotOf(snapshot.plan, at);
    return [file === snapshot.plan.file ? '' : pathOf(snapshot, file), `line ${line}`].filter(Boolean).join(', ');
  };
  return (was, is) => (is ? spot(now, is) : was ? `was ${spot(old, was)}` : '');
}

export const tableOf = (caption: string, columns: readonly string[], rows: readonly Row[]): Table => ({
  kind: 'table',
  caption,
  columns: columns.map((title) => ({ title })),
  rows,
});

export const expectRows = ({ expects, now }: Comparison, where: Where): readonly Row[] =>
  expects.map(({ kind, old, now: is, bound }) => {
    const what = kind === 'gone' ? 'dropped' : bound ? `changed, ${bound}` : kind;
    const state = (expect: Expectation) => {
      const { text } = expectStates[expect.state];
      const worst = worstOf(expect, now.plan.units);
      return expect.state === 'open' ? text : `${text}, ${worst.text} at its worst`;
    };
    return row(
      [],
      what,
      change(old?.text ?? null, is?.text ?? null),
      marked(old && state(old), is && state(is), is),
      where(old?.at ?? null, is?.at ?? null),
    );
  });

/** The state now is what the mark speaks of. */
const marked = (old: string | null, now: string | null, expect: Expectation | null): Cell => ({
  ...(expect && expectStates[expect.state]),
  text: change(old, now),
});

export const findingRows = ({ findings }: Comparison, where: Where): readonly Row[] =>
  findings.map(({ kind, old, now }) => {
    const what = kind === 'new' ? 'gained' : kind === 'gone' ? 'lost' : 'changed';
    const { severity, slug } = now ?? old ?? { severity: '', slug: '' };
    const aside = [old, now].map((one) => (one?.waived ? ' (set aside)' : ''));
    return row(
      [],
      `${what}: ${severity}`,
      change(old && old.message + aside[0], now && now.message + aside[1]),
      where(old?.at ?? null, now?.at ?? null),
      slug,
    );
  });

/** Short words, and lines that stand under something else though nothing in them changed. */
export const quietRows = ({ quiet, statements }: Comparison): readonly Row[] => [
  ...quiet.map(({ kind, what, old, now }) => row([], kind, what, change(old, now))),
  ...statements.flatMap(({ under, heading }) =>
    under ? [row([], 'moved', 'Stands under something else', `${heading}: ${underText(under)}`)] : [],
  ),
];

const underText = ({ old, now }: NonNullable<StatementChange['under']>): string => `from under ${old} to under ${now}`;

/** Legs by themselves, then all other statements. */
export function statementRows(
  { statements }: Comparison,
  where: Where,
): readonly [legs: readonly Row[], others: readonly Row[]] {
  const rows = (wanted: (change: StatementChange) => boolean) =>
    statements.filter(wanted).map((one) => statementRow(one, where));
  return [rows(({ keyword }) => keyword === 'leg'), rows(({ keyword }) => keyword !== 'leg')];
}

function statementRow({ kind, heading, was, under, clauses, below, oldAt, nowAt }: StatementChange, where: Where): Row {
  const alone = kind === 'gone' || kind === 'new';
  const lines = below ? `${below === 1 ? '1 statement' : `${below} statements`} under it` : '';
  const said = [
    ...(under ? [underText(under)] : []),
    ...(was ? [`was ${was}`] : []),
    ...clauses
      .filter(({ keyword, old, now }) => keyword || !alone || !heading.includes(old ?? now ?? ''))
      .map((clause) => clauseText(clause, alone)),
    ...(kind === 'order' ? ['in another order'] : []),
    ...(lines ? [`with ${lines}`] : []),
  ];
  return row([], kind === 'order' ? 'changed' : kind, heading, said.join('; '), where(oldAt, nowAt));
}

function clauseText({ keyword, old, now }: ClauseChange, alone: boolean): string {
  const named = (text: string) => [keyword, text].filter(Boolean).join(' ');
  if (alone) return named(old ?? now ?? '');
  if (old === null) return `${named(now ?? '')} (new)`;
  return now === null ? `${named(old)} (gone)` : `${named(old)} → ${now}`;
}

/** `a → b`; what is there once only stands as it is. */
const change = (old: string | null, now: string | null): string =>
  old === null || now === null || old === now ? (now ?? old ?? '') : `${old} → ${now}`;
