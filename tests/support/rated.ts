// A sling or fitting in a plan of two like legs, and what the program says it may carry there: for tests of hitches and fittings.
import type { Snapshot } from '../../server/workspace/types.ts';
import { hang, hook } from './hanging.ts';

export interface Rated {
  /** Clauses of the two like slings. */
  readonly sling?: string;
  /** Clauses of both legs. */
  readonly leg?: string;
  /** Clauses of both picks beside their place. */
  readonly pick?: string;
  /** Gear lines more, and what stands in the paths before the picks: `K1 > `, with 1 and 2 put in for `#`. */
  readonly gear?: readonly string[];
  readonly joined?: string;
  /** Half the distance between the picks and the length of the slings, m. */
  readonly out?: number;
  readonly length?: number;
  readonly weight?: number;
  readonly more?: readonly string[];
}

export const rope = 'wire rope, diameter 20 mm, weight 0 kg, capacity 4.6 t';

/** The plan, hung. */
export function rated({
  sling = rope,
  leg = '',
  pick = 'capacity 500 t',
  gear = [],
  joined = '',
  out = 0.5,
  length = 4,
  weight = 2000,
  more = [],
}: Rated): Snapshot {
  const path = (n: number): string =>
    `Hook > S${n} > ${joined.replaceAll('#', String(n))}${n === 1 ? 'A' : 'B'}${leg && `, ${leg}`}`;
  return hang({
    weight,
    cog: '(0, 0, -2 m)',
    more,
    picks: { A: `(${-out}, 0, 0) m, ${pick}`, B: `(${out}, 0, 0) m, ${pick}` },
    gear: [hook(), `sling S1..S2: length ${length} m, ${sling}`, ...gear],
    legs: [path(1), path(2)],
  });
}

/** What an item may carry where it hangs, kg; null where that is open. */
export function mayCarry(s: Snapshot, kind = 'sling', name = 'S1'): number | null {
  const used = s.results.find(kind, name, 'capacity used')?.value;
  if (!used) throw new Error(`There is no ${kind} ${name}`);
  return used.inputs.find((input) => input.label === 'capacity')?.value.low ?? null;
}

/** The factors it is reckoned with, by their names. */
export function factorsOf(s: Snapshot, kind = 'sling', name = 'S1'): Readonly<Record<string, number | null>> {
  const used = s.results.find(kind, name, 'capacity used')?.value;
  const capacity = used?.inputs.find((input) => input.label === 'capacity')?.value;
  return Object.fromEntries((capacity?.inputs ?? []).map(({ label, value }) => [label, value.value]));
}
