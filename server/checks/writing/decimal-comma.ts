// A comma in a number that could be a decimal point or group digits.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';

export const decimalComma = check({
  slug: 'decimal-comma',
  severity: 'error',
  effect: 'open',
  says: ({ facts: { text, a, b } }) =>
    b === null
      ? `${text} can only mean ${a} here, for no other reading gives as many numbers as are due. Decimals take a point; a comma between two numbers has a space behind it.`
      : `${text} could mean ${a} or ${b}. Decimals take a point; a comma stands only before each group of three digits.`,
  fixes: ({ at, facts: { a, b } }) => [a, ...(b === null ? [] : [b])].map((reading) => rewrite(at, reading)),
});
