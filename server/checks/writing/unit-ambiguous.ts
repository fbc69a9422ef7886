// A unit whose size depends on who reads it.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { list } from '../wording.ts';

export const unitAmbiguous = check({
  slug: 'unit-ambiguous',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `"${facts.unit}" has several meanings: ${list(
      facts.meanings.map(({ unit, size }) => (unit.startsWith('* ') ? size : `${unit} (${size})`)),
      'or',
    )}. Say which.`,
  fixes: ({ at, facts }) =>
    facts.meanings.map(({ unit, size }) => rewrite(at, unit, { title: `Write ${unit}: ${size}` })),
});
