// What the text says otherwise: statements that came, went, moved, have another name, or have other clauses. Layout says nothing.

import { printOf } from '../../plan/digest.ts';
import { fold } from '../../plan/index.ts';
import type { BoundPlan, Item } from '../../plan/types.ts';
import { inOrder } from '../places.ts';
import { fileClauses } from '../sheet/file-clauses.ts';
import { clauseChanges } from './clauses.ts';
import { headingOf, type Line } from './lines.ts';
import type { Pair, Pairing } from './pairs.ts';
import type { ClauseChange, StatementChange } from './types.ts';

/** In the order of the new text; what went away comes last, in the order of the old one. */
export function statementChanges(old: BoundPlan, now: BoundPlan, pairing: Pairing): readonly StatementChange[] {
  const { pairs, gone, come } = pairing;
  const all = [
    ...together(pairs.flatMap((pair) => changed(pair, pairing, old, now))),
    ...orders(pairs),
    ...together([
      ...come.map((line) => alone('new', line, pairing, now)),
      ...gone.map((line) => alone('gone', line, pairing, now)),
    ]),
    ...['note', 'assumption'].flatMap((keyword) => fileTexts(old, now, keyword)),
  ];
  const there = all.flatMap((change) => (change.nowAt ? [{ change, at: change.nowAt }] : []));
  const went = all.flatMap((change) => (!change.nowAt && change.oldAt ? [{ change, at: change.oldAt }] : []));
  return [...inOrder(now, there, ({ at }) => at), ...inOrder(old, went, ({ at }) => at)].map(({ change }) => change);
}

/** A change with the line it is about, so that one change of `S1..S4` is told once. */
interface Told {
  readonly line: Line;
  readonly was: Line | null;
  readonly change: Omit<StatementChange, 'heading' | 'was'>;
}

function together(all: readonly Told[]): readonly StatementChange[] {
  const groups = new Map<string, Told[]>();
  const items = [...new Set(all.flatMap(({ line, was }) => [line.item, ...(was ? [was.item] : [])]))];
  const ids = new Map(items.map((item, i) => [item, i]));
  const id = (item: Item) => ids.get(item);
  for (const told of all) {
    const key = JSON.stringify([
      id(told.line.item),
      told.was && id(told.was.item),
      told.change.kind,
      told.change.clauses,
    ]);
    groups.set(key, [...(groups.get(key) ?? []), told]);
  }
  return [...groups.values()].map((group) => {
    const { change } = group[0] as Told;
    const was = group.flatMap((told) => told.was ?? []);
    return { ...change, heading: headingOf(group.map(({ line }) => line)), was: was.length ? headingOf(was) : null };
  });
}

function alone(kind: 'new' | 'gone', line: Line, { partner }: Pairing, { units }: BoundPlan): Told {
  const { item } = line;
  return {
    line,
    was: null,
    change: {
      kind,
      keyword: item.keyword,
      under: null,
      clauses: clauseChanges(kind === 'gone' ? item : null, kind === 'new' ? item : null, fold, units),
      below: line.under.flatMap((one) => lost(one, partner)).length,
      oldAt: kind === 'gone' ? item.at : null,
      nowAt: kind === 'new' ? item.at : null,
    },
  };
}

/** A line and those under it that went or came with it; what has another half, and what stands under that, is told by itself. */
const lost = (line: Line, partner: Pairing['partner']): readonly Line[] =>
  partner.has(line) ? [] : [line, ...line.under.flatMap((one) => lost(one, partner))];

function changed(
  { old, now }: Pair,
  { spell, partner }: Pairing,
  before: BoundPlan,
  after: BoundPlan,
): readonly Told[] {
  const clauses = [
    ...clauseChanges(old.item, now.item, spell, after.units),
    ...files(before, old.item, after, now.item),
  ];
  const renamed = fold(old.name) !== fold(now.name) || old.item.keyword !== now.item.keyword;
  const moved =
    old.parent && now.parent
      ? partner.get(old.parent) !== now.parent
      : old.parent !== now.parent || old.used !== now.used;
  if (!clauses.length && !renamed && !moved) return [];
  return [
    {
      line: now,
      was: renamed ? old : null,
      change: {
        kind: moved ? 'moved' : clauses.length ? 'changed' : 'renamed',
        keyword: now.item.keyword,
        under: moved ? { old: parentOf(old), now: parentOf(now) } : null,
        clauses,
        below: 0,
        oldAt: old.item.at,
        nowAt: now.item.at,
      },
    },
  ];
}

const parentOf = ({ parent, used }: Line): string =>
  parent ? headingOf([parent]) : used ? 'a file that it uses' : 'the plan’s own file';

/** A drawing or list whose content is another one, though its name is the same. */
function files(before: BoundPlan, old: Item, after: BoundPlan, now: Item): readonly ClauseChange[] {
  const [a, b] = [before.attached.get(old)?.bytes, after.attached.get(now)?.bytes];
  if (!a || !b || printOf(a) === printOf(b)) return [];
  return [{ keyword: `content of ${after.attached.get(now)?.path}`, old: 'as it was', now: 'another one' }];
}

/** Steps mean something by standing one after the other. */
function orders(pairs: readonly Pair[]): readonly StatementChange[] {
  const steps = pairs.filter(({ old, now }) => old.item.keyword === 'steps' && now.item.keyword === 'steps');
  return steps.flatMap(({ old, now }) => {
    const halves = new Map(pairs.map((pair) => [pair.old, pair.now]));
    const rows = old.under.flatMap((line) => {
      const other = halves.get(line);
      return other && now.under.includes(other) ? [now.under.indexOf(other)] : [];
    });
    if (rows.every((row, i) => i === 0 || row > (rows[i - 1] ?? -1))) return [];
    return [
      {
        kind: 'order' as const,
        keyword: 'steps',
        heading: 'steps',
        was: null,
        under: null,
        clauses: [],
        below: 0,
        oldAt: old.item.at,
        nowAt: now.item.at,
      },
    ];
  });
}

/** Notes and assumptions of the whole plan, which stand under no statement. */
function fileTexts(old: BoundPlan, now: BoundPlan, keyword: string): readonly StatementChange[] {
  const [before, after] = [fileClauses(old, keyword), fileClauses(now, keyword)];
  const rest = [...after];
  const gone = before.filter(({ text }) => {
    const at = rest.findIndex((other) => other.text === text);
    if (at >= 0) rest.splice(at, 1);
    return at < 0;
  });
  const change = (kind: 'gone' | 'new', { text, at }: (typeof before)[number]): StatementChange => ({
    kind,
    keyword,
    heading: `${keyword} “${text}”`,
    was: null,
    under: null,
    clauses: [],
    below: 0,
    oldAt: kind === 'gone' ? at : null,
    nowAt: kind === 'new' ? at : null,
  });
  return [...rest.map((one) => change('new', one)), ...gone.map((one) => change('gone', one))];
}
