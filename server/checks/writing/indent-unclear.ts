// A line whose indentation fits no line above it, or holds a tab.
import type { Place } from '../../syntax/types.ts';
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { list } from '../wording.ts';

export const indentUnclear = check({
  slug: 'indent-unclear',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    facts.tab
      ? 'A tab stands in the indentation; use spaces, so that everyone sees the same nesting.'
      : `Indented by ${facts.found}; lines above allow ${list(facts.levels.map(String), 'or')}.`,
  fixes: ({ at, facts }) => {
    const indentation = leading(at);
    if (facts.tab) {
      const spaces = at.row.text.slice(0, indentation.to).replaceAll('\t', '  ');
      return [rewrite(indentation, spaces, { title: 'Write spaces for tabs', preferred: true })];
    }
    const nearestFirst = [...facts.levels].sort(
      (a, b) => Math.abs(a - facts.found) - Math.abs(b - facts.found) || b - a,
    );
    return nearestFirst.map((level) =>
      rewrite(indentation, ' '.repeat(level), { title: `Indent by ${level}`, preferred: facts.levels.length === 1 }),
    );
  },
});

const leading = ({ row }: Place): Place => ({ row, from: 0, to: /^\s*/.exec(row.text)?.[0].length ?? 0 });
