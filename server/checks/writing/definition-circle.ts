// Names or files that rest on themselves.
import { check } from '../check.ts';
import { named } from '../wording.ts';

export const definitionCircle = check({
  slug: 'definition-circle',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${named(facts.names[0] ?? '')} rests on itself${facts.names.length > 2 ? `: ${facts.names.map(named).join(', ')}` : ''}.`,
});
