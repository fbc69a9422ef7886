// What each part of a line is, for colouring: keywords and clauses by how the line was read, the rest by the tokens themselves.
import { isWordSign, type Scanned, type Token } from './scan.ts';
import type { ColouredSpan, ReadLine, TokenClass } from './types.ts';

/** The coloured parts of a read line, from left to right, none overlapping. */
export function coloursOf(line: Pick<ReadLine, 'statement' | 'clauses'>, scanned: Scanned): ColouredSpan[] {
  const spans: ColouredSpan[] = [];
  const whole = wholeSpans(line);
  for (const token of scanned.tokens) {
    if (scanned.comment && token.from >= scanned.comment.from) break;
    const around =
      token.sign === 'T' ? undefined : whole.find((span) => token.from >= span.from && token.to <= span.to);
    const kind = around?.class ?? classOf(token);
    if (around ? spans.at(-1)?.from !== around.from : kind)
      spans.push({ from: (around ?? token).from, to: (around ?? token).to, class: kind as TokenClass });
  }
  if (scanned.comment) spans.push({ ...scanned.comment, class: 'comment' });
  return spans;
}

/** Parts of several words that have one colour: keywords, listed words and designations. */
function wholeSpans({ statement, clauses }: Pick<ReadLine, 'statement' | 'clauses'>): ColouredSpan[] {
  const words = clauses.flatMap(({ value }): ColouredSpan[] =>
    value?.kind === 'designation' || (value?.kind === 'word' && !value.amount)
      ? [{ ...value.span, class: 'word' }]
      : [],
  );
  const keywords = clauses.map(({ keyword }): ColouredSpan => ({ ...keyword.span, class: 'clause' }));
  return [...(statement ? [{ ...statement.keyword.span, class: 'keyword' as const }] : []), ...keywords, ...words];
}

function classOf({ sign }: Token): TokenClass | null {
  if (sign === 'N' || sign === 'D') return 'number';
  if (sign === 'U') return 'unit';
  if (sign === 'T') return 'text';
  if ('x×aobF&0?+-*/~^<>≤≥=±‥'.includes(sign)) return 'operator';
  if (isWordSign(sign)) return 'name';
  return null;
}
