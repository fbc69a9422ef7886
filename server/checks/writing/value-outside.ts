// A value outside what its clause can take.
import { check } from '../check.ts';
import { capital, unstopped } from '../wording.ts';

export const valueOutside = check({
  slug: 'value-outside',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${capital(facts.clause)} cannot be ${value(facts)}: ${unstopped(facts.reason)}.`,
});

/** What is written, without the clause's own word before it. */
const value = (facts: { readonly clause: string; readonly value: string }): string =>
  facts.value.startsWith(`${facts.clause} `) ? facts.value.slice(facts.clause.length + 1) : facts.value;
