// What is judged otherwise: expectations dropped, added, bound otherwise or met otherwise, and findings gained, lost or with other words.
import { fold } from '../../plan/index.ts';
import type { Compare, Item } from '../../plan/types.ts';
import type { Expectation, Results } from '../../results/index.ts';
import type { Row } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import type { Spell } from '../meaning.ts';
import { takeEqual } from './equal.ts';
import { saysOf } from './lines.ts';
import type { Pairing } from './pairs.ts';
import type { ExpectChange, FindingChange } from './types.ts';

/** Expectations whose bound or state is another one. */
export function expectChanges(old: Results, now: Results, pairing: Pairing): readonly ExpectChange[] {
  const { pairs, left } = expectPairs(old, now, pairing);
  return [
    ...pairs
      .filter(({ old: a, now: b, same }) => !same || a.state !== b.state)
      .map(({ old: a, now: b }): ExpectChange => {
        return { kind: 'changed', old: a, now: b, bound: bounded(compareOf(a), compareOf(b)) };
      }),
    ...left.now.map((one): ExpectChange => ({ kind: 'new', old: null, now: one, bound: null })),
    ...left.old.map((one): ExpectChange => ({ kind: 'gone', old: one, now: null, bound: null })),
  ];
}

/** The same condition in both, whatever its bound; `same` where that is the same too. */
function expectPairs(old: Results, now: Results, { spell }: Pairing) {
  const left = { old: old.expects, now: now.expects };
  const of = (side: 'old' | 'now') => (side === 'old' ? spell : fold);
  const same = takeEqual(left, ({ item }, side) => JSON.stringify([...saysOf(item, of(side))]));
  const bound = takeEqual(left, (expect, side) => asks(expect, of(side)));
  const pairs = [...same, ...bound].map(([a, b], i) => ({ old: a, now: b, same: i < same.length }));
  return { pairs, left };
}

const compareOf = ({ item: { value } }: Expectation): Compare | null =>
  value?.value?.kind === 'compare' ? value.value.compare : null;

/** What is asked of what, and from which side, whatever the bound; null for a line that could not be read. */
function asks(expect: Expectation, of: Spell): string | null {
  const compare = compareOf(expect);
  if (!compare) return null;
  const { subject, result, op } = compare;
  const names = subject.names.map(({ parts, until }) =>
    [...parts, ...(until ? [until] : [])].map(({ text }) => of(text)),
  );
  return JSON.stringify([subject.kind, names, result, op.charAt(0), saysOf(expect.item, of).get('stage') ?? '']);
}

function bounded(old: Compare | null, now: Compare | null): ExpectChange['bound'] {
  if (!old || !now) return null;
  const lets = ({ op, low, high }: Compare) =>
    op === 'between'
      ? [low, high]
      : op.startsWith('<')
        ? [Number.NEGATIVE_INFINITY, high]
        : [low, Number.POSITIVE_INFINITY];
  const [[a = 0, b = 0], [c = 0, d = 0]] = [lets(old), lets(now)];
  if (a === c && b === d) return old.op === now.op ? null : now.op.endsWith('=') ? 'looser' : 'tighter';
  return c <= a && d >= b ? 'looser' : c >= a && d <= b ? 'tighter' : null;
}

/** Findings on the same statement with the same slug are the same one, though their figures differ. */
export function findingChanges(old: Snapshot, now: Snapshot, pairing: Pairing): readonly FindingChange[] {
  const left = { old: old.findings, now: now.findings };
  const renamed = renaming(pairing);
  const owners = ownersOf([
    ...pairing.pairs.map((pair) => [pair.old.item, pair.now.item] as const),
    ...expectPairs(old.results, now.results, pairing).pairs.map((pair) => [pair.old.item, pair.now.item] as const),
  ]);
  takeEqual(left, ({ slug, severity, message, waived }, side) =>
    JSON.stringify([slug, severity, side === 'old' ? renamed(message) : message, waived]),
  );
  const reworded = takeEqual(left, ({ slug, at }) => {
    const owner = owners.get(at.row);
    return owner === undefined ? null : `${slug} ${owner}`;
  });
  return [
    ...left.now.map((one): FindingChange => ({ kind: 'new', old: null, now: one })),
    ...reworded.map(([a, b]): FindingChange => ({ kind: 'changed', old: a, now: b })),
    ...left.old.map((one): FindingChange => ({ kind: 'gone', old: one, now: null })),
  ];
}

/** A number for the statement that a row belongs to, the same one for both halves of a pair. */
function ownersOf(pairs: readonly (readonly [old: Item, now: Item])[]): ReadonlyMap<Row, number> {
  const rows = (item: Item): readonly Row[] => [
    item.node.row,
    ...[...item.clauses.values()].flat().map(({ at }) => at.row),
  ];
  return new Map(pairs.flatMap(([old, now], i) => [...rows(old), ...rows(now)].map((row) => [row, i] as const)));
}

/** A sentence about the old plan with the names that things have now. */
function renaming({ pairs }: Pairing): (message: string) => string {
  const names = new Map(
    pairs.flatMap(({ old, now }) => (old.name && old.name !== now.name ? [[old.name, now.name] as const] : [])),
  );
  if (!names.size) return (message) => message;
  const any = [...names.keys()]
    .sort((a, b) => b.length - a.length)
    .map((name) => name.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'));
  const word = new RegExp(`(?<![\\p{L}\\p{N}])(?:${any.join('|')})(?![\\p{L}\\p{N}])`, 'gu');
  return (message) => message.replace(word, (name) => names.get(name) ?? name);
}
