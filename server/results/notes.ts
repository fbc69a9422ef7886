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
    related: ResultProblem['related'] = [],
  ): Cause {
    this.problems.push({ slug, at, related, facts } as ResultProblem);
    return { what, at };
  }
}

/** What the text itself leaves open with `?`. */
export const notYet = (what: string, at: Place): Cause => ({
  what: `${what} not known yet (?).`,
  at,
  deliberate: true,
});

/** A cause without a fact of its own: what is missing is said elsewhere. */
export const because = (what: string, at: Place): Cause => ({ what, at });
