// One number on two items.
import { check } from '../check.ts';
import { named } from '../wording.ts';

export const serialRepeated = check({
  slug: 'serial-repeated',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${named(facts.serial)} is in two places at once: ${named(facts.a)} and ${named(facts.b)}. One item has one number; read both tags.`,
});
