// Where the facts found while working out a plan are gathered.
import type { Cause } from '../quantities/derived.ts';
import type { Place } from '../syntax/types.ts';
import type { ResultFacts, ResultProblem } from './types.ts';

export class Notes {
  readonly problems: ResultProblem[] = [];

  /** Notes a fact and returns it as a cause for what stays open. */
  add<S extends keyof ResultFacts>(
    slug: S,
    at: Place,
    facts: ResultFacts[S],
    what: string,
    related: ResultProblem['related'] = none,
  ): Cause {
    this.problems.push(sameAsBefore({ slug, at, related, facts } as ResultProblem));
    return { what, at };
  }
}

/** What the text itself leaves open with `?`. */
export const notYet = (what: string, at: Place): Cause => ({
  what: `${what} not known yet (?).`,
  at,
  deliberate: true,
});

const none: readonly never[] = [];
const kept = new WeakMap<Place, ResultProblem>();

/** The last fact of that place if it says the very same, so that its words are found once and not with every key; else this one. */
function sameAsBefore(fact: ResultProblem): ResultProblem {
  const before = kept.get(fact.at);
  if (before?.slug === fact.slug && alike(before.facts, fact.facts) && alikeAll(before.related, fact.related))
    return before;
  kept.set(fact.at, fact);
  return fact;
}

const alikeAll = (a: readonly object[], b: readonly object[]): boolean =>
  a.length === b.length && a.every((one, i) => alike(one, b[i] as object));

/** The same keys with the very same values. */
function alike(a: object, b: object): boolean {
  const own = Object.entries(a);
  return (
    own.length === Object.keys(b).length &&
    own.every(([key, value]) => Object.is(value, (b as Record<string, unknown>)[key]))
  );
}

/** A cause without a fact of its own: what is missing is said elsewhere. */
export const because = (what: string, at: Place): Cause => ({ what, at });
