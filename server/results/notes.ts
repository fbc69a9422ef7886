// Where the facts found while working out a plan are gathered.
import type { Cause } from '../quantities/derived.ts';
import type { Place } from '../syntax/types.ts';
import type { ResultFacts, ResultProblem } from './types.ts';

export class Notes {
  readonly problems: ResultProblem[] = [];
  private readonly worst = new Map<string, Map<Place, { readonly index: number; readonly size: number }>>();

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

  /** As `add`, for what is judged in many attitudes: at one place only the one with the largest `size` is kept. */
  addWorst<S extends keyof ResultFacts>(slug: S, at: Place, facts: ResultFacts[S], what: string, size: number, related: ResultProblem['related'] = []): Cause {
    const kept = this.worst.get(slug) ?? new Map<Place, { readonly index: number; readonly size: number }>();
    this.worst.set(slug, kept);
    const before = kept.get(at);
    if (before && before.size >= size) return { what, at };
    kept.set(at, { index: before?.index ?? this.problems.length, size });
    this.problems[before?.index ?? this.problems.length] = { slug, at, related, facts } as ResultProblem;
    return { what, at };
  }
}

/** A cause without a fact of its own: what is missing is said elsewhere. */
export const because = (what: string, at: Place): Cause => ({ what, at });
