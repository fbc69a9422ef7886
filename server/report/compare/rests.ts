// What weights rest on, before and after: parts that were refined, and how much of each load rests on what.
import { textOf } from '../../plan/index.ts';
import { type Body, basisOf, leavesOf, type Results, type Share, shares } from '../../results/index.ts';
import type { Pairing } from './pairs.ts';
import type { Footing, Refinement, RestChange } from './types.ts';

/** Parts and assemblies that rest on something else now: a bound that became a calculation, an estimate that became a reading. */
export const refinements = (old: Results, now: Results, { pairs }: Pairing): readonly Refinement[] =>
  pairs.flatMap((pair) => {
    const [was, is] = [old.bodies.get(pair.old.item), now.bodies.get(pair.now.item)];
    if (!was || !is || !bearing.has(pair.old.item.keyword)) return [];
    const [a, b] = [footing(was), footing(is)];
    return a.basis === b.basis && a.evidence === b.evidence ? [] : [{ name: pair.now.name, old: a, now: b }];
  });

const bearing = new Set(['part', 'assembly']);

function footing(body: Body): Footing {
  const { weight, working, thing } = body;
  if (!working) return { basis: 'assembly', evidence: null, parts: leavesOf(body).length, weight };
  const basis = basisOf(body);
  return { basis, evidence: basis === 'stated' ? textOf(thing.item, 'by') : null, parts: 0, weight };
}

/** Loads of which another weight rests on something, or on which nothing can be said any more. */
export const restChanges = (old: Results, now: Results, { partner, pairs }: Pairing): readonly RestChange[] =>
  now.loads.flatMap((load) => {
    const line = pairs.find((pair) => pair.now.item === load.thing.item)?.now;
    const before = line && old.loads.find(({ thing }) => thing.item === partner.get(line)?.item);
    if (!before) return [];
    const [a, b] = [shares(before.body), shares(load.body)];
    return alike(a, b) ? [] : [{ load: load.thing.name, old: a, now: b }];
  });

const alike = (a: readonly Share[] | null, b: readonly Share[] | null): boolean =>
  a === null || b === null
    ? a === b
    : a.length === b.length &&
      a.every(({ basis, kg }, i) => basis === b[i]?.basis && Math.abs(kg - (b[i]?.kg ?? 0)) <= 1e-6 * Math.max(1, kg));
