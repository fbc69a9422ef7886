// Results that are other ones now: each figure of the old plan beside that of the same thing in the new one.
import { fold } from '../../plan/index.ts';
import type { Derived } from '../../quantities/index.ts';
import type { Result, Results, Subject } from '../../results/index.ts';
import type { Line } from './lines.ts';
import type { Pairing } from './pairs.ts';
import type { FigureChange } from './types.ts';

/** In the order of the new results; those that went come last. */
export function figureChanges(old: Results, now: Results, { pairs, spell }: Pairing): readonly FigureChange[] {
  const called = new Map(
    pairs.flatMap(({ old: line, now: other }) => {
      const [from, to] = [pathOf(line, old), pathOf(other, now)];
      return from && to ? [[keyOf(line.item.keyword, from), keyOf(other.item.keyword, to)] as const] : [];
    }),
  );
  const key = (result: Result, of: (subject: Subject) => string, stage: string | null) =>
    JSON.stringify([of(result.subject), result.result, stage]);
  const own = ({ kind, path }: Subject) => keyOf(kind, path);
  const before = new Map<string, Result[]>();
  for (const result of old.list) {
    const as = (subject: Subject) => called.get(own(subject)) ?? own(subject);
    const at = key(result, as, result.stage && spell(result.stage));
    before.set(at, [...(before.get(at) ?? []), result]);
  }
  const there = now.list.flatMap((result) => {
    const was = before.get(key(result, own, result.stage && fold(result.stage)))?.shift();
    return was && sameFigure(was.value, result.value) ? [] : [change(result, was?.value ?? null, result.value)];
  });
  return [...there, ...[...before.values()].flat().map((result) => change(result, result.value, null))];
}

const change = ({ subject, result, stage }: Result, old: Derived | null, now: Derived | null): FigureChange => ({
  subject,
  result,
  stage,
  old,
  now,
});

const pathOf = ({ item, name }: Line, { plan }: Results): readonly string[] | null =>
  plan.names.of(item).find((thing) => fold(thing.name) === fold(name))?.path ?? null;

const keyOf = (kind: string, path: readonly string[]): string => JSON.stringify([kind, path.map(fold)]);

/**
 * One part in a million, and a millionth of an SI unit, is no other figure: where lines only change places, sums are added up in
 * another order. What the text says otherwise is told in any case.
 */
const within = 1e-6;

/** Whether two figures are one, open ones for whatever reason. */
export function sameFigure(a: Derived, b: Derived): boolean {
  const near = (x: number | null, y: number | null) =>
    x === null || y === null ? x === y : Math.abs(x - y) <= within * Math.max(1, Math.abs(x), Math.abs(y));
  return (
    near(a.value, b.value) && near(a.low ?? a.value, b.low ?? b.value) && near(a.high ?? a.value, b.high ?? b.value)
  );
}
