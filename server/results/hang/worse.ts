// The worse of several ways the same rig can hang: running free or held, step by step of an incline, stage by stage.
import type { Thing } from '../../plan/index.ts';
import { type Derived, unique } from '../../quantities/derived.ts';
import type { ResultProblem } from '../types.ts';
import type { Figures } from './figures.ts';

/** One way with the words that tell it from the others: `held in its middle`, `at 65 deg`. */
export interface Told {
  readonly words: string;
  readonly figures: ReadonlyMap<Thing, Figures>;
}

/** Of every figure the worse one, with the figures of all ways as what it rests on; a figure that is open in one of them is open. */
export function worstOf(ways: readonly Told[], formula: string): ReadonlyMap<Thing, Figures> {
  const [only, ...others] = ways;
  if (!only) return new Map();
  if (!others.length) return only.figures;
  const things = new Set(ways.flatMap((way) => [...way.figures.keys()]));
  return new Map(
    [...things].map((thing) => {
      const words = new Set(ways.flatMap((way) => Object.keys(way.figures.get(thing) ?? {})));
      return [thing, Object.fromEntries([...words].map((word) => [word, worst(word, thing, ways, formula)]))];
    }),
  );
}

function worst(word: string, thing: Thing, ways: readonly Told[], formula: string): Derived {
  const all = ways.flatMap((way) => {
    const value = way.figures.get(thing)?.[word];
    return value ? [{ label: way.words, value }] : [];
  });
  const known = all.filter((one) => one.value.value !== null);
  const open = all.filter((one) => one.value.value === null);
  const [first] = open;
  // A leg has no angle where it hangs slack; where it pulls it has one.
  if (first && !(word === 'angle' && known.length))
    return { ...first.value, because: unique(open.flatMap((one) => one.value.because)) };
  const bad = known.reduce((most, one) => (badness(word, one.value) > badness(word, most.value) ? one : most));
  const span = {
    low: Math.min(...known.map((one) => one.value.low as number)),
    high: Math.max(...known.map((one) => one.value.high as number)),
  };
  const keeps = word === 'capacity used' || (known.length > 3 && formula !== '');
  return {
    ...bad.value,
    ...span,
    source: `${bad.value.source}; worst ${bad.label}`,
    ...(keeps ? {} : { formula, inputs: known }),
  };
}

/** Larger is worse, but flatter is worse for angles. */
const badness = (word: string, { value, high, low }: Derived): number =>
  word === 'angle' ? -(low ?? value ?? 0) : (high ?? value ?? 0);

/** Findings of several ways as one list: what is said of one place by several of them is said once, with the worst figure. */
export class WorstFindings {
  readonly list: ResultProblem[] = [];
  private readonly known = new Map<object, Map<string, number>>(); // by row, then by slug, place in it and item: where in the list

  /** Takes a finding unless one as bad of the same is there; it stands as `told` where it is told another way. */
  take(problem: ResultProblem, told = problem): void {
    const { slug, at, facts } = problem;
    const row = this.known.get(at.row) ?? new Map<string, number>();
    this.known.set(at.row, row);
    const key = `${slug} ${at.from} ${'item' in facts ? String(facts.item) : ''}`;
    const place = row.get(key);
    if (place === undefined) row.set(key, this.list.push(told) - 1);
    else if (measure(problem) > measure(this.list[place] as ResultProblem)) this.list[place] = told;
  }
}

/** How bad a fact is beside another of its slug. */
function measure({ facts }: ResultProblem): number {
  if ('used' in facts && typeof facts.used === 'number') return facts.used;
  if ('leg' in facts && 'angle' in facts && typeof facts.angle === 'number') return -facts.angle;
  return 'angle' in facts && typeof facts.angle === 'number' ? facts.angle : 0;
}
