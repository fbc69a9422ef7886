// A name or clause stated twice: neither counts.
import { fold } from '../../plan/fold.ts';
import type { Place, Problem } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { freeName, rewrite } from '../edits.ts';
import { capital, named, written } from '../wording.ts';

export const statedTwice = check({
  slug: 'stated-twice',
  severity: 'error',
  effect: 'open',
  says: (problem) =>
    isName(problem)
      ? `${named(problem.facts.name)} is already stated in ${otherPlace(problem)}; neither is used until one goes or is renamed.`
      : `${capital(problem.facts.name)} is already stated in ${problem.facts.place}; neither is used until one goes.`,
  fixes: (problem, asked) => {
    const { at, facts } = problem;
    if (!isName(problem) || written(at).includes('..')) return [];
    const free = named(freeName(facts.name, asked));
    return [rewrite(at, free, { title: `Rename it ${free}` })];
  },
});

type Twice = Problem<string, { readonly name: string; readonly place: string }>;

/** A name, or a range of them, stands at the place itself; keywords and what clauses give are put into words of their own. */
const isName = ({ at, facts }: Twice): boolean =>
  written(at).includes('..') || fold(written(at).replaceAll('"', '')) === fold(facts.name);

/** The other statement as it is written, up to its name. */
function otherPlace({ at, related, facts }: Twice): string {
  const other = related[0]?.at;
  if (!other) return facts.place;
  const words = other.row.text.slice(0, other.to).trim();
  return other.row.file === at.row.file ? words : `${words} of ${fileName(other)}`;
}

const fileName = ({ row }: Place): string => row.file.slice(row.file.lastIndexOf('/') + 1);
