// A name or clause stated twice: neither counts.
import type { Place, Problem } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { freeName, rewrite } from '../edits.ts';
import { capital, named, written } from '../wording.ts';

export const statedTwice = check({
  slug: 'stated-twice',
  severity: 'error',
  effect: 'open',
  says: (problem) =>
    isKeyword(problem)
      ? `${capital(problem.facts.name)} is already stated in ${problem.facts.place}; neither is used until one goes.`
      : `${named(problem.facts.name)} is already stated in ${otherPlace(problem)}; neither is used until one goes or is renamed.`,
  fixes: (problem, asked) => {
    const { at, facts } = problem;
    if (isKeyword(problem) || written(at).includes('..')) return [];
    const free = named(freeName(facts.name, asked));
    return [rewrite(at, free, { title: `Rename it ${free}` })];
  },
});

type Twice = Problem<string, { readonly name: string; readonly place: string }>;

/** Names are stated elsewhere, keywords and what they give in the same statement or file, which then has words of its own. */
const isKeyword = ({ facts }: Twice): boolean => !facts.place.includes('{line}');

/** The other statement as it is written, up to its name. */
function otherPlace({ at, related }: Twice): string {
  const other = related[0]?.at;
  if (!other) return 'another line';
  const words = other.row.text.slice(0, other.to).trim();
  return other.row.file === at.row.file ? words : `${words} of ${fileName(other)}`;
}

const fileName = ({ row }: Place): string => row.file.slice(row.file.lastIndexOf('/') + 1);
