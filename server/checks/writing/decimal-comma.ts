// A comma in a number that could be a decimal point or group digits.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';

export const decimalComma = check({
  slug: 'decimal-comma',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) =>
    `${facts.text} could mean ${facts.a} or ${facts.b}. Decimals take a point; a comma stands only before each group of three digits.`,
  fixes: ({ at, facts }) => [rewrite(at, facts.a), rewrite(at, facts.b)],
});
